import type { TubeRate } from '../../job/rates.ts';
import { wholeMinor } from '../quote/minor-units.ts';
import { worthOf } from './bar-credit.ts';

/** What a bar that is to be bought costs [minor], and the value of its row of rates that says so; null: nobody typed it. */
export type BoughtPrice = { readonly price: number | null; readonly by: 'perMetre' | 'perBar' };

/**
 * The price of a bar that is to be bought, as the rates say it today: by the bar, a longer or shorter one by its length, or
 * by the metre. What tube is charged by comes first, and the other where that is open.
 *
 * @param length of the bar [mm]
 */
export function boughtPrice(rate: TubeRate, length: number): BoughtPrice {
  const { perMetre, perBar, barLength, by } = rate;
  const byMetre: BoughtPrice = {
    price: perMetre.value === null ? null : wholeMinor((perMetre.value * length) / 1000),
    by: 'perMetre',
  };
  const byBar: BoughtPrice = {
    price: perBar.value === null ? null : wholeMinor(worthOf({ price: perBar.value, length: barLength }, length)),
    by: 'perBar',
  };
  const [first, second] = by === 'bar' ? [byBar, byMetre] : [byMetre, byBar];
  return first.price === null && second.price !== null ? second : first;
}
