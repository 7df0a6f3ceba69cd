import { describe, expect, it } from 'vitest';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { differences } from '../../server/solver/returned/differences.ts';
import {
  came,
  deformed,
  drawn,
  everyPiece,
  everySize,
  fitted,
  hoop,
  offset,
  readOn,
  ring,
  run,
} from './returned-frames.ts';
import { randomSource } from './returned-scatter.ts';

const RUNS = 500;

const bandsOf = (wanted: FrameGeometry, answer: ReturnType<typeof fitted>): number[] =>
  differences(wanted, answer.returned!).map(({ difference }) => difference.band?.plusMinus ?? 0);

const cases = [
  ['hoop', drawn(hoop({ innerCrossbars: [], crossbar: { form: 'straight' } }))],
  ['ring', drawn(ring)],
  ['offset', drawn(offset)],
  ['run in space', drawn(run)],
] as const;

describe('bands of the fitted frame', () => {
  it.each(cases)('%s: as wide as frames fitted to readings that scatter spread', (_, wanted) => {
    const { normal } = randomSource(7);
    const readings = [...everyPiece(wanted), ...everySize(wanted)];
    const actual = deformed(
      wanted,
      (index, what) => (wanted.members[0]!.closed ? 0 : 0.1) * Math.sin(5 * index + what.length),
    );
    const exact = readOn(wanted, actual, readings);
    const answer = fitted(wanted, came(exact));
    const bands = bandsOf(wanted, answer);
    const sums = bands.map(() => ({ sum: 0, squares: 0 }));
    const sizes = differences(wanted, answer.returned!).map(({ cameBack }) => cameBack.value);
    const accuracies = answer.solved.readings.map(({ accuracy }) => accuracy);
    for (let round = 0; round < RUNS; round += 1) {
      const measured = exact.map((one, index) =>
        one.reading === 'point' ? one : { ...one, value: one.value! + accuracies[index]! * normal() },
      );
      const { fit, returned } = fitted(wanted, came(measured));
      // a suspect that is left out makes another frame: bands are about the fit itself
      if (fit.readings.some(({ disagrees }) => disagrees)) continue;
      differences(wanted, returned!).forEach(({ cameBack }, index) => {
        const off = cameBack.value - sizes[index]!;
        sums[index]!.sum += 1;
        sums[index]!.squares += off * off;
      });
    }
    bands.forEach((band, index) => {
      const { sum, squares } = sums[index]!;
      expect(sum).toBeGreaterThan(0.8 * RUNS);
      const spread = Math.sqrt(squares / sum);
      expect(band / spread, wanted.checks[index]!.key).toBeGreaterThan(0.9);
      expect(band / spread, wanted.checks[index]!.key).toBeLessThan(1.1);
    });
  });

  it('scale with the accuracy of the readings', () => {
    const wanted = drawn(offset);
    const readings = readOn(wanted, wanted, [...everyPiece(wanted), ...everySize(wanted)]);
    const rough = fitted(wanted, came(readings, { tapeAccuracy: 2, angleAccuracy: 0.4 }));
    const fine = fitted(wanted, came(readings, { tapeAccuracy: 1, angleAccuracy: 0.2 }));
    const [wide, narrow] = [bandsOf(wanted, rough), bandsOf(wanted, fine)];
    wide.forEach((band, index) => expect(band / narrow[index]!).toBeCloseTo(2, 2));
  });

  it('are as wide as the machine scatters where nobody measured', () => {
    const wanted = drawn(hoop({ innerCrossbars: [] }));
    const readings = readOn(wanted, wanted, everySize(wanted)).slice(0, 1);
    const answer = fitted(wanted, came(readings));
    const bands = new Map(
      differences(wanted, answer.returned!).map(({ key, difference }) => [key, difference.band?.plusMinus ?? 0]),
    );
    expect(bands.get('width-at-corners')).toBeCloseTo(1, 2);
    // two bends of ± 0.5 degrees over legs of 600, and nothing like the 100 that a leg may be off in the fit
    expect(bands.get('width-at-feet')!).toBeGreaterThan(3);
    expect(bands.get('width-at-feet')!).toBeLessThan(12);
    expect(bands.get('left-leg')!).toBeLessThan(3);
  });
});
