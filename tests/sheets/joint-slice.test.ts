import { describe, expect, it } from 'vitest';
import { sliceOf } from '../../server/sheets/joint-slice.ts';
import { bend, joint as cut, line, member, planned, radians } from '../solver/made-up-joints.ts';
import { joint } from './fixture-joint.ts';

describe('the slice of a joint', () => {
  const D = 48.3;
  const lean = (degrees: number) => (D / 2) * Math.tan(radians(degrees));

  it('shows the full lean of the steeper face, wherever round the tube that is', () => {
    const made = joint(
      {
        number: 1,
        member: 'hoop',
        a: { station: 500, offSquare: 2, longest: 37 },
        b: { station: 560, offSquare: 0.5, longest: 127 },
      },
      D,
    );
    const { upper, a, b } = sliceOf(made);
    const sense = Math.sign(a.upper - a.lower);
    expect(upper).toBeCloseTo(sense > 0 ? 37 : 217, 6);
    expect(sense * (a.upper - 500)).toBeCloseTo(lean(2), 6);
    expect(sense * (a.lower - 500)).toBeCloseTo(-lean(2), 6);
    // a quarter turn on, where the other face leans no way
    expect([b.upper, b.lower].map((edge) => Math.abs(edge - 560) < 1e-6)).toEqual([true, true]);
  });

  it('lays a bend straight: a square face stays square, though a tape finds it further along the outside', () => {
    const own = member([line(900), bend(1000, 1, 'rolled'), line(900)]);
    const made = planned(cut(own, 1300, 40, { a: 0, b: radians(1) })).joint;
    const [outside, , inside] = made.faceA.marks.generators.map(({ distance }) => distance.value);
    expect(outside! - inside!).toBeGreaterThan(10);
    const { a, b } = sliceOf(made);
    expect(a.upper).toBeCloseTo(a.lower, 9);
    expect(Math.abs(b.upper - b.lower)).toBeCloseTo(2 * lean(1), 1);
  });
});
