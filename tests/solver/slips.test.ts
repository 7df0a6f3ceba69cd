import { describe, expect, it } from 'vitest';
import type { Frame } from '../../server/job/frame.ts';
import type { ShopContext } from '../../server/solver/correction/misreadings.ts';
import { scoreSlips } from '../../server/solver/correction/slips.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { DIAMETER, find, LEG, off, RADIUS, readingsFrom, SHOP, slipCase, U } from './slip-shop.ts';

const at = (x: number, y: number, z = 0) => ({ x, y, z, radius: null });
const [T, ARC] = [RADIUS, (Math.PI / 2) * RADIUS];

describe('what each slip does to a U frame with square corners', () => {
  const noSpare: Partial<ShopContext> = { spareLength: 0 };
  const made = slipCase(U, noSpare);
  const expectOff = (sizes: Record<string, number>, wanted: Record<string, number>): void => {
    for (const [key, value] of Object.entries(wanted)) expect(sizes[key], key).toBeCloseTo(value, 6);
  };

  it('an outside width read between centres, or inside: wider by one diameter, or by two', () => {
    expectOff(off(made, 'outside-read-as-centre'), { 'width-at-corners': DIAMETER, 'width-at-feet': DIAMETER });
    expectOff(off(made, 'outside-read-as-inside'), { 'width-at-corners': 2 * DIAMETER, 'left-leg': 0 });
  });

  it('an inside width read over the outside: narrower by two diameters', () => {
    const inside = slipCase({ ...U, width: { value: 950, reference: 'inside' } });
    expectOff(off(inside, 'inside-read-as-outside'), { 'width-at-corners': -2 * DIAMETER });
  });

  it('legs to the outside of the corner read between centres: longer by half a diameter', () => {
    const outside = { value: LEG, reference: 'outside' as const };
    const legs = slipCase({ ...U, width: { value: 950, reference: 'centre' }, leftLeg: outside, rightLeg: outside });
    expectOff(off(legs, 'outside-read-as-centre'), {
      'left-leg': DIAMETER / 2,
      'right-leg': DIAMETER / 2,
      'width-at-corners': 0,
    });
  });

  it('apexes taken for starts: first leg + T, crossbar + (2 T − arc), the last leg what is left', () => {
    const more = 2 * T - ARC;
    expectOff(off(made, 'apex-as-start'), { 'left-leg': T, 'width-at-corners': more, 'right-leg': -T - more });
  });

  it('apexes taken for middles: first leg + (T − arc / 2), crossbar + (2 T − arc)', () => {
    const [more, first] = [2 * T - ARC, T - ARC / 2];
    expectOff(off(made, 'apex-as-middle'), { 'left-leg': first, 'width-at-corners': more, 'right-leg': -first - more });
  });

  it('bends on the wrong side of their marks: first leg − arc, last leg + arc', () => {
    expectOff(off(made, 'start-as-end'), { 'left-leg': -ARC, 'width-at-corners': 0, 'right-leg': ARC });
  });

  it('sawn to the apexes: the last leg long by 2 T − arc for each bend', () => {
    expectOff(off(made, 'cut-to-apexes'), { 'left-leg': 0, 'width-at-corners': 0, 'right-leg': 2 * (2 * T - ARC) });
  });

  it('growth of the bends left out, or taken off twice: what follows each bend longer, or shorter, by it', () => {
    const grows = SHOP.stretch(Math.PI / 2);
    const by = (sign: 1 | -1) => ({ 'left-leg': 0, 'width-at-corners': sign * grows, 'right-leg': sign * grows });
    expectOff(off(made, 'stretch-left-out'), by(1));
    expectOff(off(made, 'stretch-twice'), by(-1));
  });

  it('another die: first leg by the change in T, crossbar by the change in 2 T − arc', () => {
    const less = SHOP.otherDies[0]!.leaves - RADIUS;
    expectOff(off(made, 'other-die'), { 'left-leg': less, 'width-at-corners': less * (2 - Math.PI / 2) });
  });

  it('springback left out, or added twice: the feet splay, or close, by 2 s sin δ', () => {
    for (const [key, ends] of [
      ['springback-left-out', SHOP.released(Math.PI / 2)],
      ['springback-twice', SHOP.told(Math.PI / 2)],
    ] as const) {
      const opened = Math.PI / 2 - ends;
      const sizes = off(made, key);
      // each bend draws in R δ less of the tube and stands 1 − cos δ of its radius further in, at either end
      const corners = RADIUS * (opened - 2 * (1 - Math.cos(opened)));
      expect(sizes['width-at-corners'], key).toBeCloseTo(corners, 6);
      // read level with the foot of the shorter leg: the last one has what its bend did not draw in
      const straight = LEG - RADIUS + Math.min(0, RADIUS * opened);
      expect(sizes['width-at-feet'], key).toBeCloseTo(corners + 2 * straight * Math.sin(opened), 6);
    }
  });
});

describe('slips at bends that are not square, and in space', () => {
  const across = { value: 500, reference: 'centre' as const };
  const offset: Frame = { shape: 'offset', across, angle: 60, first: across, last: { ...across, value: 640 } };
  const step: Frame = { shape: 'run', points: [at(0, 0), at(700, 0), at(700, 900), at(1100, 900, 500)] };

  it('the angle inside the corner bent: every bend is its supplement, from the same start mark', () => {
    const made = slipCase(offset);
    const pieces = find(made, 'angle-as-supplement').made!.frame().members[0]!.centreline.pieces;
    const angles = pieces.flatMap((piece) => (piece.kind === 'arc' ? [(piece.angle * 180) / Math.PI] : []));
    expect(angles[0]).toBeCloseTo(120, 9);
    expect(pieces[0]!.length).toBeCloseTo(made.wanted.members[0]!.centreline.pieces[0]!.length, 9);
    expect(slipCase(U).found.some(({ slips }) => slips[0].key === 'angle-as-supplement')).toBe(false);
  });

  it('laid out from the other end: the straights in the other order', () => {
    const made = slipCase(step);
    const straights = (frame: FrameGeometry) =>
      frame.members[0]!.centreline.pieces.flatMap(({ kind, length }) => (kind === 'straight' ? [length] : []));
    const is = straights(find(made, 'marks-from-other-end').made!.frame());
    for (const [place, length] of straights(made.wanted).reverse().entries()) expect(is[place]).toBeCloseTo(length, 9);
    // equal legs are the same from either end
    expect(slipCase(U).found.some(({ slips }) => slips[0].key === 'marks-from-other-end')).toBe(false);
  });

  it('rotations counted the other way: every distance as wanted, and found by its rotations alone', () => {
    const made = slipCase(step);
    for (const value of Object.values(off(made, 'rotations-other-way'))) expect(value).toBeCloseTo(0, 6);
    const one = find(made, 'rotations-other-way').made!.frame();
    expect(scoreSlips(made.found, readingsFrom(made.wanted, one), made.wanted)[0]!.keys).toEqual([
      'rotations-other-way',
    ]);
    expect(slipCase(offset).found.some(({ slips }) => slips[0].key === 'rotations-other-way')).toBe(false);
  });

  it('one bend to the wrong side says which', () => {
    const made = slipCase(step, { from: () => 'finish' });
    const one = made.found.find(({ slips }) => slips[0].bend?.number === 2)!;
    const [best] = scoreSlips(made.found, readingsFrom(made.wanted, one.made!.frame()), made.wanted);
    expect(best).toMatchObject({ keys: ['bend-other-way'], bend: { member: 'run', number: 2 } });
  });
});
