import type { Units } from '../../server/job/job.ts';
import { describeFinding, isFindingCode } from '../../server/language/finding-words.ts';
import { wordsOf } from '../../server/language/words.ts';
import type { Way } from '../../server/plan/correction.ts';
import type { Finding } from '../../server/plan/finding.ts';

/**
 * What keeps a way from being possible, in words. Where the plan has a finding of that code about this way, it is said
 * with its numbers and its place; else the code's own words are.
 */
export function reasonsOfWay(way: Way, findings: readonly Finding[], units: Units): readonly string[] {
  const said = way.reasons.map((code) => {
    const found = findings.find(
      (finding) => finding.code === code && (finding.data['way'] === undefined || finding.data['way'] === way.key),
    );
    if (found !== undefined) return found.message ?? describeFinding(found, units);
    if (!isFindingCode(code)) return wordsOf('notPossible', code);
    return describeFinding({ code, grade: 'stop', field: '', data: { way: way.key }, wayOut: null }, units);
  });
  return [...new Set(said)];
}
