import type { Job } from '../job/job.ts';
import { formatBand, formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { LegPlan } from '../plan/leg.ts';
import type { Side } from '../plan/site.ts';

/** A side of the structure as this job calls it: 'starboard', or 'right' on a ramp or a wall. */
export const sideWords = ({ site }: Job, side: Side): string => wordsOf(`side.${site.sides}`, side);

/** 'astern', 'to port' or 'to the left': which way something leans or is turned. */
export const towardsWords = ({ site }: Job, side: Side): string => wordsOf(`towards.${site.sides}`, side);

/** 'Leg 2: aft leg, port side'. */
export function legTitle(leg: LegPlan, job: Job): string {
  const { number, name } = leg;
  const where = legSide(leg, job);
  return name === ''
    ? words('sheet.leg-unnamed', { number, where })
    : words('sheet.leg-named', { number, name, where });
}

/** 'port side', or 'in the middle'. */
export const legSide = ({ side }: LegPlan, job: Job): string =>
  side === 'middle' ? words('sheet.leg-middle') : words('sheet.leg-side', { side: sideWords(job, side) });

/** What a leg is called in a sentence. */
export const legName = ({ number, name }: LegPlan): string =>
  name === '' ? words('sheet.leg-number', { number }) : name;

/** '5.3 mm ± 0.4 mm', or the number alone where it has no band, or one that is shown as nothing. */
export function withBand(figure: Figure, { units }: Job): string {
  const said = formatFigure(figure, units);
  const band = figure.band === null ? '' : formatBand(figure.band, figure.unit, units);
  return /[1-9]/.test(band) ? `${said} ${band}` : said;
}

/** The ± alone; a dash where there is none. */
export const bandOf = ({ band, unit }: Figure, { units }: Job): string =>
  band === null ? '—' : formatBand(band, unit, units);
