import type { Job } from '../../server/job/job.ts';
import type { Kept, KeptSettings } from '../../server/job/kept.ts';
import type { Grade } from '../../server/job/tube.ts';
import type { WeldForm } from '../../server/job/welding.ts';
import { nameKey } from './kept.ts';
import { withChoice } from './typed-text.ts';

/** In what kept settings are for another weld than the one at hand, the gravest first. */
export const SETTING_DIFFERENCES = ['form', 'wall', 'outsideDiameter', 'grade'] as const;
export type SettingDifference = (typeof SETTING_DIFFERENCES)[number];

/** Kept settings as they are offered for a weld of a job; nothing differs where they were proved on the same. */
export type OfferedSettings = { readonly kept: Kept<'settings'>; readonly differs: readonly SettingDifference[] };

/** Walls and diameters this near are one, as a share of the larger: tube is bought to about ten percent of its wall. */
const SAME = 0.1; // our own choice
const same = (one: number, other: number): boolean => Math.abs(one - other) <= SAME * Math.max(one, other);

/** A grade by its key in the catalogue, or by the name of the shop's own. */
export const gradeText = (grade: Grade): string => (grade.from === 'catalogue' ? grade.key : grade.name);

/** What stands in a job for one form of weld, under a name, with the tube that it is for. */
export const settingsOf = ({ tube, welding }: Pick<Job, 'tube' | 'welding'>, form: WeldForm, name: string) =>
  ({
    name,
    form,
    outsideDiameter: tube.outsideDiameter,
    wall: tube.wall,
    grade: gradeText(tube.grade),
    settings: welding[form],
  }) satisfies KeptSettings;

/** The job with kept settings at one form of weld; texts that were typed there no longer hold. */
export const withSettings = (job: Job, form: WeldForm, { settings }: Pick<KeptSettings, 'settings'>): Job =>
  withChoice(job, `/welding/${form}`, settings);

/**
 * All kept settings in the order in which they are worth a try for a weld: those for the same form first, among them
 * those for the same wall, then diameter, then grade; of equals the nearer wall, then by name.
 */
export function fittingSettings(
  kept: readonly Kept<'settings'>[],
  { tube }: Pick<Job, 'tube'>,
  form: WeldForm,
): OfferedSettings[] {
  const offered = kept.map((one) => ({ kept: one, differs: differencesOf(one.document, tube, form) }));
  const rank = ({ differs }: OfferedSettings): number =>
    SETTING_DIFFERENCES.reduce((sum, difference) => 2 * sum + (differs.includes(difference) ? 1 : 0), 0);
  const off = ({ kept: { document } }: OfferedSettings): number => Math.abs(document.wall - tube.wall);
  return offered.sort(
    (one, other) =>
      rank(one) - rank(other) ||
      off(one) - off(other) ||
      one.kept.document.name.localeCompare(other.kept.document.name, undefined, { numeric: true }),
  );
}

const differencesOf = (document: KeptSettings, tube: Job['tube'], form: WeldForm): SettingDifference[] => {
  const fits: Readonly<Record<SettingDifference, boolean>> = {
    form: document.form === form,
    wall: same(document.wall, tube.wall),
    outsideDiameter: same(document.outsideDiameter, tube.outsideDiameter),
    grade: nameKey(document.grade) === nameKey(gradeText(tube.grade)),
  };
  return SETTING_DIFFERENCES.filter((difference) => !fits[difference]);
};
