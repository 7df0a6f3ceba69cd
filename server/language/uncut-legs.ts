import type { Job } from '../job/job.ts';
import type { Finding } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { describeFinding } from './finding-words.ts';
import { words } from './words.ts';

/** A leg that is typed and cannot be cut: its number as the job lists it, and what is found that keeps it from that. */
export type UncutLeg = { readonly number: number; readonly name: string; readonly why: string };

/** The legs of a job that its plan has no leg for, each with the first of what stops it, in words. */
export function uncutLegs({ site, findings }: Plan, { site: { legs }, units }: Job): UncutLeg[] {
  const cut = new Set((site?.legs ?? []).map(({ number }) => number));
  return legs.flatMap(({ name }, index): UncutLeg[] => {
    const number = index + 1;
    if (cut.has(number)) return [];
    const found = findings.find((finding) => stops(finding, `/site/legs/${String(index)}`, name));
    const why = found === undefined ? words('sheet.leg-uncut-elsewhere') : describeFinding(found, units);
    return [{ number, name, why }];
  });
}

const stops = ({ grade, field, data }: Finding, leg: string, name: string): boolean =>
  grade === 'stop' &&
  (field === leg || field.startsWith(`${leg}/`) || (name !== '' && field.startsWith('/site') && data['name'] === name));
