import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { WeldSettings } from '../../server/job/welding.ts';
import { arc, BRANCH, jobWith, line, MAIN, onto, padAt, SADDLE, spliceAt, tube, welded } from './welding-frames.ts';

type Range = { minimum: number; maximum: number };

/** Its bounds, nothing at all, or any size between. */
const within = ({ minimum, maximum }: Range): fc.Arbitrary<number | null> =>
  fc.oneof(
    fc.constantFrom(null, minimum, maximum),
    fc.double({ min: 0, max: 1, noNaN: true }).map((share) => minimum + (maximum - minimum) * share ** 4),
  );

const bounds = Object.fromEntries(
  Object.entries(WeldSettings.properties).flatMap(([name, schema]) => {
    const range = 'anyOf' in schema ? (schema.anyOf[0] as Partial<Range>) : {};
    return range.minimum === undefined ? [] : [[name, range as Range]];
  }),
);

const settings = fc.record({
  provedOn: fc.constantFrom('', 'piece'),
  process: fc.constantFrom('141', '142', null),
  filler: fc.constantFrom('', 'ER316L'),
  ...Object.fromEntries(
    Object.entries(bounds).map(([name, range]) => [
      name,
      name === 'runs' ? within(range).map((value) => (value === null ? null : Math.round(value))) : within(range),
    ]),
  ),
}) as unknown as fc.Arbitrary<Job['welding']['butt']>;

const size = (min: number, max: number) =>
  fc.double({ min: 0, max: 1, noNaN: true }).map((share) => min + (max - min) * share ** 3);
const tubes = size(0.1, 400).chain((outsideDiameter) =>
  size(0.001, 0.4999 * outsideDiameter).map((wall) => ({ outsideDiameter, wall })),
);
const weldings = fc.record({
  butt: settings,
  saddle: settings,
  pad: settings,
  groove: fc.record({
    form: fc.constantFrom('square' as const, 'bevel' as const, null),
    angle: size(5, 60),
    land: size(0, 20),
  }),
  backing: fc.constantFrom('purge' as const, 'sleeve' as const),
  sleeve: fc.record({ wall: size(0.01, 20), length: fc.oneof(fc.constant(null), size(0.01, 1000)) }),
  pull: size(0, 10),
});

/** Every number below a value. */
const numbers = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : typeof value === 'object' && value !== null
      ? Object.values(value).flatMap(numbers)
      : [];

describe('any settings on any tube', () => {
  const bentMain = tube('main', [line(500), arc(80, 3), line(0), arc(50, 1)]);
  const short = tube('branch', [line(1e-6)], { ends: { start: onto(0.05, 30), finish: onto(1.2, 400) } });
  it('give numbers everywhere, none below nothing, and the same ones twice', () => {
    fc.assert(
      fc.property(
        tubes,
        weldings,
        size(0, 10),
        fc.oneof(fc.constant(null), size(0, 10)),
        fc.constantFrom([MAIN, BRANCH], [bentMain, short], [{ ...bentMain, closed: true }, BRANCH]),
        (tubeSize, welding, gap, shrinkage, members) => {
          const job = jobWith({
            tube: tubeSize,
            welding,
            closing: { gap, shrinkage },
            more: { fixing: [padAt('start')] },
          });
          const work = { members, places: [spliceAt(490, 1), spliceAt(600, 2), SADDLE] };
          const made = welded(job, work);
          expect(numbers([made.welding, made.findings]).filter((value) => !Number.isFinite(value))).toEqual([]);
          for (const weld of made.welding.welds)
            for (const { value } of [weld.length, weld.arcTime, weld.fillerMass, weld.fillerLength, weld.shrinkage])
              expect(value).toBeGreaterThanOrEqual(0);
          expect(welded(structuredClone(job), work)).toEqual(made);
        },
      ),
      { numRuns: 150 },
    );
  });
});
