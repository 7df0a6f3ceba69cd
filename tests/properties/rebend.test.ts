import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { mirrorFrame } from '../../server/solver/frame/mirror-frame.ts';
import type { WayDraft } from '../../server/solver/correction/outcome.ts';
import { rebentFrame, type BendTurn } from '../../server/solver/correction/rebend.ts';
import { rebendWay } from '../../server/solver/correction/rebend-way.ts';
import { arcsOf } from '../../server/solver/correction/turn-limits.ts';
import { DEGREE, drawn, EASY, HOOP, RUN, workOn } from '../solver/made-up-corrections.ts';

/** A frame whose arcs came back turned by so many degrees too far each. */
function offBy(
  frame: FrameGeometry,
  degrees: readonly number[],
  fromFinish: ReadonlySet<string> = new Set(),
): FrameGeometry {
  const turns = arcsOf(frame).map((arc, index): BendTurn => ({ ...arc, turn: (degrees[index] ?? 0) * DEGREE }));
  return rebentFrame(frame, turns, fromFinish);
}

/** Turns of all arcs in the order of the frame, to 1e-4 degrees. */
const turnsOf = (frame: FrameGeometry, { rebends }: Pick<WayDraft, 'rebends'>): number[] =>
  arcsOf(frame).map(({ member, made, bend }) => {
    const row = rebends.find((one) => one.member === member && one.made === made && one.bend === bend);
    return Math.round((row?.turn.value ?? 0) * 1e4) / 1e4 + 0;
  });

const widthOf = (frame: FrameGeometry, key: string): number => {
  const { from, to } = frame.checks.find((check) => check.key === key)!;
  return Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y, to.point.z - from.point.z);
};

const hoop = drawn(HOOP);
const crowned = drawn({ ...HOOP, crossbar: { form: 'crowned', radius: 2400 } });
const run = drawn(RUN);

describe('bends that came back off are bent back by exactly as much', () => {
  it.each([
    ['a hoop, one corner', hoop, [2]],
    ['a hoop, both corners', hoop, [-1.5, 0.7]],
    ['a hoop, both corners too far', hoop, [1.5, 1.2]],
    ['a crowned hoop', crowned, [-1, 0, 0.5]],
    ['a crown that was rolled too tight', crowned, [0, 3, 0]],
    ['a run in space, one bend', run, [0, -1.3, 0]],
    ['a run in space, all bends', run, [1, -2, 0.8]],
  ])('%s', (_, frame, degrees) => {
    const work = workOn(frame, offBy(frame, degrees));
    const { way, findings } = rebendWay(work, EASY);
    expect(turnsOf(frame, way)).toEqual(arcsOf(frame).map((_, index) => -(degrees[index] ?? 0) + 0));
    expect(way.trims).toEqual([]);
    expect(findings.map(({ code }) => code).filter((code) => !/opens|re-roll/.test(code))).toEqual([]);
    expect(way.fixingMisfit.value).toBeLessThan(2e-3);
  });

  it('from the finish as well as from the start', () => {
    const fromFinish = new Set(['run']);
    const work = workOn(run, offBy(run, [0.6, 0, -1.1], fromFinish));
    expect(turnsOf(run, rebendWay(work, { ...EASY, fromFinish }).way)).toEqual([-0.6, 0, 1.1]);
  });
});

describe('what stays whatever is bent', () => {
  it('a hoop with a straight crossbar keeps its width at the corners, but for the lean of its legs across the bends', () => {
    const degrees = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(degrees, degrees, (first, second) => {
        const bent = offBy(hoop, [first, second]);
        const turned = (Math.abs(first) + Math.abs(second)) * DEGREE;
        const lean = 115 * turned + 900 * turned ** 2 + 1e-9;
        expect(Math.abs(widthOf(bent, 'width-at-corners') - widthOf(hoop, 'width-at-corners'))).toBeLessThan(lean);
        // the second corner keeps its mark: the bar between loses what the first one used, and no more
        const bar = (frame: FrameGeometry) => frame.members[0]!.centreline.pieces[2]!.length;
        expect(bar(bent) - bar(hoop)).toBeCloseTo(-115 * first * DEGREE, 9);
      }),
    );
  });

  it('however far apart the corners came back, rebending leaves them so', () => {
    const wider = fc.double({ min: 5, max: 120, noNaN: true });
    fc.assert(
      fc.property(wider, fc.boolean(), (by, narrow) => {
        const size = narrow ? 900 - by : 900 + by;
        const back = drawn({ ...HOOP, width: { value: size, reference: 'outside' } });
        const { way } = rebendWay(workOn(hoop, back), EASY);
        const turned = way.rebends.reduce((sum, { turn }) => sum + Math.abs(turn.value), 0);
        const left = Math.abs(way.cornerWidth!.value);
        expect(left).toBeGreaterThan(by - 116 * turned * DEGREE);
        expect(left).toBeLessThan(by + 116 * turned * DEGREE + 1e-6);
        expect(Math.abs(way.rebends[0]?.turn.value ?? 0)).toBeLessThanOrEqual(7);
      }),
      { numRuns: 25 },
    );
  });

  it('turning and turning back leaves the frame where it was', () => {
    for (const frame of [hoop, run]) {
      const there = offBy(frame, [1.2, -0.7, 2]);
      const back = offBy(there, [-1.2, 0.7, -2]);
      for (const [index, foot] of back.feet.entries()) {
        const was = frame.feet[index]!;
        expect(
          Math.hypot(foot.point.x - was.point.x, foot.point.y - was.point.y, foot.point.z - was.point.z),
        ).toBeLessThan(1e-8);
      }
    }
  });

  it('no tube is stretched', () => {
    for (const frame of [hoop, crowned, run])
      expect(offBy(frame, [2, -1, 3]).members[0]!.centreline.length).toBeCloseTo(
        frame.members[0]!.centreline.length,
        8,
      );
  });
});

describe('the frame for the other side', () => {
  it('asks for the same turns and leaves the same over', () => {
    const off = offBy(run, [0.9, -0.4, 1.4]);
    const shop = { ...EASY, machine: { ...EASY.machine, angleScatter: 0.5 } };
    const one = rebendWay(workOn(run, off), shop).way;
    const other = rebendWay(workOn(mirrorFrame(run), mirrorFrame(off)), shop).way;
    expect(other.rebends.length).toBe(one.rebends.length);
    for (const [index, row] of other.rebends.entries())
      expect(row.turn.value).toBeCloseTo(one.rebends[index]!.turn.value, 6);
    expect(other.fixingMisfit.value).toBeCloseTo(one.fixingMisfit.value, 6);
    expect(other.fixingMisfit.band!.plusMinus).toBeCloseTo(one.fixingMisfit.band!.plusMinus, 6);
    expect(other.toe.value).toBeCloseTo(one.toe.value, 6);
  });
});
