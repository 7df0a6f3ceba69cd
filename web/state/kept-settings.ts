import type { Job, Units } from '../../server/job/job.ts';
import type { Kept, KeptSettings } from '../../server/job/kept.ts';
import type { WeldForm } from '../../server/job/welding.ts';
import { closeParts } from '../../server/language/length-format.ts';
import { words } from '../../server/language/words.ts';
import { settingsOf } from './fitting-settings.ts';
import { differingFields } from './kept.ts';
import { differences } from './pointer.ts';

/** As long as the name of kept settings may be [letters]. */
export const LONGEST_SETTINGS_NAME = 60;

/** '38.1 × 1.65', in the job's unit of length. */
export const sizeWords = ({ outsideDiameter, wall }: Pick<KeptSettings, 'outsideDiameter' | 'wall'>, units: Units) =>
  `${closeParts(outsideDiameter, units).number} × ${closeParts(wall, units).number}`;

/** Whether the job has just these settings at that form of weld, for the tube that they were proved on. */
export const standsInJob = ({ document }: Kept<'settings'>, job: Job, form: WeldForm): boolean =>
  document.form === form && differingFields('settings', document, settingsOf(job, form, document.name)).length === 0;

/** Whether the job has just these settings at that form of weld, whatever tube they were proved on. */
export const settingsAreIn = ({ document }: Kept<'settings'>, { welding }: Job, form: WeldForm): boolean =>
  document.form === form && differences(document.settings, welding[form]).length === 0;

/** A name to keep settings under, which says what they are for: 'butt 38.1 × 1.65 316L, test piece 7'. */
export function usualSettingsName(job: Job, form: WeldForm): string {
  const { grade, settings, ...tube } = settingsOf(job, form, '');
  const said = {
    form: words(`weld.form.${form}`),
    size: sizeWords(tube, job.units),
    grade,
    proved: settings.provedOn.trim(),
  };
  return words('weld.kept.usual', said).slice(0, LONGEST_SETTINGS_NAME);
}
