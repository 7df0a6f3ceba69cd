import type { Units } from '../job/job.ts';
import { INCH, fixed } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Figure } from '../plan/figure.ts';
import type { Plan } from '../plan/plan.ts';

/** A customer reads a tape: tenths of a millimetre, hundredths of an inch. */
const told = (mm: number, { length }: Units): string => (length === 'mm' ? fixed(mm, 1) : fixed(mm / INCH, 2));

const unitOf = ({ length }: Units): string => (length === 'mm' ? 'mm' : 'in');

/** '2.1 ± 4.5 mm off': a distance, and how sure it is; a new frame is as wanted, with the ± alone: 'as wanted, ± 15.4 mm'. */
export function nearness({ key }: Way, { value, band }: Figure, units: Units): string {
  if (key === 'new-frame') return asWanted(band?.plusMinus ?? 0, units);
  const off = told(value, units);
  const number = band === null ? off : `${off} ± ${told(band.plusMinus, units)}`;
  return words('sheet.quote-off', { distance: `${number} ${unitOf(units)}` });
}

/** How near the sizes of a frame that is made come: the largest ± of them. */
export const sizesNearness = ({ frame }: Plan, units: Units): string =>
  asWanted(Math.max(0, ...(frame?.checks ?? []).map(({ outside: { band } }) => band?.plusMinus ?? 0)), units);

function asWanted(plusMinus: number, units: Units): string {
  const band = told(plusMinus, units);
  if (!/[1-9]/.test(band)) return words('sheet.quote-as-wanted-sizes');
  return words('sheet.quote-as-wanted-band', { band: `${band} ${unitOf(units)}` });
}
