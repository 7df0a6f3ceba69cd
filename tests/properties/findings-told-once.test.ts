import fc from 'fast-check';
import { expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { parseJob } from '../../server/job/validate.ts';
import { plan } from '../../server/solver/plan.ts';
import { oddJobs } from './odd-jobs.ts';

/** Findings that stand more than once, word for word. */
function toldTwice(findings: readonly object[]): string[] {
  const texts = findings.map((finding) => JSON.stringify(finding));
  return texts.filter((text, index) => texts.indexOf(text) !== index);
}

it('nothing is told twice', () => {
  expect(toldTwice(plan(landingStage()).findings)).toEqual([]);
  fc.assert(
    fc.property(oddJobs, (document) => {
      const parsed = parseJob(document);
      if (parsed.ok) expect(toldTwice(plan(parsed.job).findings)).toEqual([]);
    }),
    { numRuns: 60 },
  );
});
