import { describe, expect, it } from 'vitest';
import type { WeldSymbol } from '../../server/plan/welding.ts';
import type { Drawn, Spot } from '../../server/sheets/ink.ts';
import { weldSymbol } from '../../server/sheets/weld-symbol.ts';
import { makeJob } from './fixture.ts';
import { lines, texts } from './layout-faults.ts';

const ISO: WeldSymbol = {
  standard: 'iso-2553',
  elementary: 'square',
  allRound: true,
  flush: true,
  angle: null,
  gap: null,
  leg: null,
  process: '142',
};

const drawn = (change: Partial<WeldSymbol> = {}) => {
  const { items, height, width } = weldSymbol({ ...ISO, ...change }, makeJob());
  return { height, width, lines: lines(items), said: texts(items).map(({ text }) => text), texts: texts(items) };
};

const AWS = { standard: 'aws-a2-4' } as const;

const isLevel = ({ points }: Drawn): boolean => points.length === 2 && points[0]![1] === points[1]![1];
const lengthOf = ({ points: [a, b] }: Drawn): number => Math.hypot(a![0] - b![0], a![1] - b![1]);

/** The continuous reference line: the longest level one without dashes. */
const referenceLine = (all: readonly Drawn[]): Drawn =>
  all
    .filter((one) => isLevel(one) && one.stroke?.dash.length === 0)
    .toSorted((one, other) => lengthOf(other) - lengthOf(one))[0]!;

const dashed = (all: readonly Drawn[]): Drawn[] => all.filter(({ stroke }) => (stroke?.dash.length ?? 0) > 0);

/** Lines of the elementary symbol: those that begin or end on the reference line between its ends. */
function elementary(all: readonly Drawn[]): Drawn[] {
  const { points } = referenceLine(all);
  const [from, to] = points as [Spot, Spot];
  const inside = ([x, y]: Spot): boolean => Math.abs(y - from[1]) < 1e-9 && x > from[0] + 2 && x < to[0] - 0.5;
  return all.filter((one) => !one.closed && one.points.some(inside));
}

const centreOf = ({ points }: Drawn): Spot => [
  points.reduce((sum, [x]) => sum + x, 0) / points.length,
  points.reduce((sum, [, y]) => sum + y, 0) / points.length,
];

describe('a weld symbol', () => {
  it('by ISO 2553 has a dashed line as long as the reference line beside it, and says in the tail that it is ground', () => {
    const { lines: all, said } = drawn();
    const [dash] = dashed(all);
    expect(dashed(all)).toHaveLength(1);
    expect(lengthOf(dash!)).toBeCloseTo(lengthOf(referenceLine(all)), 9);
    expect(said).toEqual(['142, ground']);
  });

  it('by AWS A2.4 has one line, G at the flush line, and no number of a process', () => {
    const { lines: all, said } = drawn(AWS);
    expect(dashed(all)).toHaveLength(0);
    expect(said).toEqual(['G', 'GTAW, no filler']);
    expect(drawn({ ...AWS, process: '141' }).said).toEqual(['G', 'GTAW']);
  });

  it('says nothing of grinding where the weld is not flush', () => {
    expect(drawn({ flush: false }).said).toEqual(['142']);
    expect(drawn({ ...AWS, flush: false }).said).toEqual(['GTAW, no filler']);
    const levels = (change: Partial<WeldSymbol>): number => drawn(change).lines.filter(isLevel).length;
    expect(levels({ flush: true }) - levels({ flush: false })).toBe(1);
    expect(levels({ ...AWS, flush: true }) - levels({ ...AWS, flush: false })).toBe(1);
  });

  it.each(['iso-2553', 'aws-a2-4'] as const)('has a circle at its elbow for all round only, by %s', (standard) => {
    const rounds = (allRound: boolean): Drawn[] =>
      drawn({ standard, allRound }).lines.filter(({ closed, points }) => closed && points.length > 12);
    expect(rounds(false)).toHaveLength(0);
    const [circle] = rounds(true);
    const { lines: all } = drawn({ standard });
    const elbow = referenceLine(all).points[0]!;
    const centre = centreOf(circle!);
    expect(Math.hypot(centre[0] - elbow[0], centre[1] - elbow[1])).toBeLessThan(1e-6);
    for (const [x, y] of circle!.points) expect(Math.hypot(x - elbow[0], y - elbow[1])).toBeCloseTo(1.5, 6);
  });

  it('stands above the continuous line by ISO and below the only line by AWS', () => {
    const level = (all: readonly Drawn[]): number => referenceLine(all).points[0]![1];
    for (const form of ['square', 'v', 'flare-bevel', 'fillet'] as const) {
      const iso = drawn({ elementary: form }).lines;
      const aws = drawn({ ...AWS, elementary: form }).lines;
      for (const { points } of elementary(iso)) for (const [, y] of points) expect(y).toBeLessThanOrEqual(level(iso));
      for (const { points } of elementary(aws))
        for (const [, y] of points) expect(y).toBeGreaterThanOrEqual(level(aws));
      expect(elementary(iso).length).toBeGreaterThan(0);
      expect(elementary(aws)).toHaveLength(elementary(iso).length);
    }
  });

  it('has two upright strokes for a square butt, a V that meets the line in a point, a right triangle with its upright left', () => {
    const [left, right] = elementary(drawn().lines);
    for (const { points } of [left!, right!]) expect(points[0]![0]).toBe(points[1]![0]);
    const [v] = elementary(drawn({ elementary: 'v' }).lines);
    expect(v!.points).toHaveLength(3);
    expect(v!.points[0]![1]).toBe(v!.points[2]![1]);
    expect(v!.points[1]![0]).toBeCloseTo((v!.points[0]![0] + v!.points[2]![0]) / 2, 9);
    const [fillet] = elementary(drawn({ elementary: 'fillet' }).lines);
    const [foot, top, toe] = fillet!.points;
    expect(foot![0]).toBe(top![0]);
    expect(foot![1]).toBe(toe![1]);
    expect(toe![0]).toBeGreaterThan(foot![0]);
  });

  it('has an upright stroke and a quarter of a circle that leaves the line upright for a flare bevel', () => {
    const [stroke, arc] = elementary(drawn({ elementary: 'flare-bevel' }).lines);
    expect(stroke!.points[0]![0]).toBe(stroke!.points[1]![0]);
    const [begin, next] = arc!.points;
    const [before, last] = arc!.points.slice(-2);
    expect(Math.abs(next![0] - begin![0])).toBeLessThan(0.25 * Math.abs(next![1] - begin![1]));
    expect(Math.abs(last![1] - before![1])).toBeLessThan(0.25 * Math.abs(last![0] - before![0]));
    const centre: Spot = [last![0], begin![1]];
    const radius = Math.abs(last![1] - begin![1]);
    for (const [x, y] of arc!.points) expect(Math.hypot(x - centre[0], y - centre[1])).toBeCloseTo(radius, 6);
  });

  it('says sizes: z before a leg by ISO only, the gap, the angle of a V, in the unit of the job', () => {
    expect(drawn({ elementary: 'fillet', leg: 2.33, flush: false }).said).toEqual(['z2.33', '142']);
    expect(drawn({ ...AWS, elementary: 'fillet', leg: 2.33, flush: false }).said).toEqual(['2.33', 'GTAW, no filler']);
    expect(drawn({ elementary: 'v', angle: 65, gap: 2, flush: false }).said).toEqual(['65°', '2', '142']);
    const job = makeJob();
    const inches = { ...job, units: { ...job.units, length: 'inch' as const } };
    const { items } = weldSymbol({ ...ISO, ...AWS, elementary: 'v', angle: 65, gap: 2.032 }, inches);
    expect(texts(items).map(({ text }) => text)).toEqual(['G', '65°', '.08', 'GTAW, no filler']);
  });

  it('points at the joint with an arrow that leads down from its elbow', () => {
    const { lines: all } = drawn();
    const head = all.find(({ closed, points }) => closed && points.length === 3)!;
    const elbow = referenceLine(all).points[0]!;
    const [tip] = head.points;
    expect(tip![1]).toBeGreaterThan(elbow[1]);
    expect(tip![0]).toBeLessThan(elbow[0]);
    const leader = all
      .filter(({ closed }) => !closed)
      .find(({ points: [from] }) => from![0] === tip![0] && from![1] === tip![1])!;
    expect(leader.points[1]).toEqual(elbow);
  });

  it('stays inside its own rectangle', () => {
    for (const standard of ['iso-2553', 'aws-a2-4'] as const) {
      for (const form of ['square', 'v', 'flare-bevel', 'fillet'] as const) {
        const one = drawn({ standard, elementary: form, angle: 65, gap: 2.5, leg: 3 });
        const spots = [...one.lines.flatMap(({ points }) => points), ...one.texts.map(({ at }) => at)];
        for (const [x, y] of spots) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(one.height);
          expect(x).toBeLessThanOrEqual(one.width);
        }
      }
    }
  });
});
