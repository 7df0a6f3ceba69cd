import type { Job } from '../job/job.ts';
import { formatBand, formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Figure } from '../plan/figure.ts';
import type { Doubt, LegPlan } from '../plan/leg.ts';
import type { Side } from '../plan/site.ts';

/** A side of the structure as this job calls it: 'starboard', or 'right' on a ramp or a wall. */
export const sideWords = ({ site }: Job, side: Side): string => wordsOf(`side.${site.sides}`, side);

/** Names of all sides, to be filled into a sentence. */
export const sidesOf = (job: Job): Readonly<Record<'ahead' | 'back' | 'port' | 'starboard', string>> => ({
  ahead: sideWords(job, 'ahead'),
  back: sideWords(job, 'back'),
  port: sideWords(job, 'port'),
  starboard: sideWords(job, 'starboard'),
});

/** 'Leg 2: aft strut, port side'. */
export function legTitle({ number, name, side }: LegPlan, job: Job): string {
  const where = side === 'middle' ? words('sheet.leg-middle') : words('sheet.leg-side', { side: sideWords(job, side) });
  return name === ''
    ? words('sheet.leg-unnamed', { number, where })
    : words('sheet.leg-named', { number, name, where });
}

/** What a leg is called in a sentence. */
export const legName = ({ number, name }: LegPlan): string =>
  name === '' ? words('sheet.leg-number', { number }) : name;

/** Less than this in mm or degrees is no band that anybody could use. */
const NOTHING = 0.0005;

/** '5.3 mm ± 0.4 mm', or the number alone where it has no band. */
export const withBand = (figure: Figure, { units }: Job): string =>
  figure.band === null || figure.band.plusMinus < NOTHING
    ? formatFigure(figure, units)
    : `${formatFigure(figure, units)} ${formatBand(figure.band, figure.unit, units)}`;

/** The ± alone; a dash where there is none. */
export const bandOf = ({ band, unit }: Figure, { units }: Job): string =>
  band === null ? '—' : formatBand(band, unit, units);

/** Where a part of a band comes from: 'the level', 'foot port aft, a point of the site'. */
export const doubtWords = ({ from, name }: Doubt): string =>
  name === '' ? wordsOf('doubt', from) : words('sheet.doubt-named', { name, what: wordsOf('doubt', from) });
