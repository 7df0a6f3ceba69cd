import type { Job } from '../../server/job/job.ts';
import type { OwnValue, Rates } from '../../server/job/rates.ts';

/** What the shop of the example takes. Invented. */
export function landingStageRates({ rates }: Job): Rates {
  const own = (value: number): OwnValue => ({ value, since: '2026-11-02', example: false });
  const labour = (hour: number, setUp: number, each: number) => ({
    hour: own(hour),
    machine: null,
    setUp: own(setUp),
    each: own(each),
    perMetre: own(0),
  });
  return {
    ...rates,
    from: '2026-11-02',
    tubes: rates.tubes.map((tube) => ({ ...tube, perMetre: own(1450) })),
    waste: own(5),
    gas: { ...rates.gas, perCubicMetre: own(1100), rentPerDay: own(60) },
    fillerPerKilogram: own(2800),
    abrasivesPerWeld: own(250),
    labour: {
      bend: { ...labour(5200, 20, 4), machine: own(1800) },
      cut: labour(4600, 10, 6),
      fit: labour(5200, 15, 8),
      purge: labour(4600, 10, 5),
      bottle: labour(4600, 0, 10),
      weld: labour(5600, 10, 6),
      finish: labour(4600, 10, 4),
    },
    overhead: own(12),
    margin: own(10),
    tax: own(20),
    roundTo: 100,
  };
}
