import type { JobProblem } from './problem.ts';
import { isPlainObject, type Document } from './check-value.ts';
import { JOB_VERSION } from './job.ts';
import { describeProblem } from './problem-words.ts';
import { withDies } from './version-2.ts';
import { withReadings } from './version-3.ts';
import { withWelds } from './version-4.ts';
import { withSite } from './version-5.ts';
import { withQuote } from './version-6.ts';

/** Turns a document of one version into the next one. It need not be valid: that is looked at when the chain is done. */
export type UpgradeStep = { readonly from: number; readonly upgrade: (document: Document) => Document };

/** One step for each older version, in order. */
const STEPS: readonly UpgradeStep[] = [
  { from: 1, upgrade: withDies },
  { from: 2, upgrade: withReadings },
  { from: 3, upgrade: withWelds },
  { from: 4, upgrade: withSite },
  { from: 5, upgrade: withQuote },
];

export type Upgraded =
  { readonly ok: true; readonly document: Document } | { readonly ok: false; readonly problem: JobProblem };

/**
 * Brings a document of any older version up to `version`, step by step; a newer one is refused.
 *
 * @param input anything at all
 * @param steps one for each version from the oldest known up to `version`, in order
 * @param version the version that this program writes
 */
export function upgradeJob(
  input: unknown,
  steps: readonly UpgradeStep[] = STEPS,
  version: number = JOB_VERSION,
): Upgraded {
  const problem = (code: 'not-a-job' | 'newer-version', field: string, value: unknown): Upgraded => ({
    ok: false,
    problem: describeProblem({ code, field, title: 'job', value, wanted: 'object', allowed: { high: version } }),
  });
  if (!isPlainObject(input) || input['format'] !== 'hoopwright-job') return problem('not-a-job', '', input);
  const given = input['version'];
  if (typeof given !== 'number' || !Number.isInteger(given)) return problem('not-a-job', '/version', given ?? null);
  if (given > version) return problem('newer-version', '/version', given);
  const oldest = steps[0]?.from ?? version;
  if (given < oldest) return problem('not-a-job', '/version', given);
  const document = steps
    .filter(({ from }) => from >= given)
    .reduce<Document>((before, { from, upgrade }) => ({ ...upgrade(before), version: from + 1 }), input);
  return { ok: true, document };
}
