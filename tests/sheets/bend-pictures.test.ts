import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { clock, clockSize } from '../../server/sheets/clock.ts';
import { STROKES, type Spot } from '../../server/sheets/ink.ts';
import { protractor } from '../../server/sheets/protractor.ts';
import { layoutSheet } from '../../server/sheets/render-sheet.ts';
import type { Block } from '../../server/sheets/text-block.ts';
import { plan } from '../../server/solver/plan.ts';
import { makeJob, makePlan } from './fixture.ts';
import { figure } from './fixture-figure.ts';
import { lines, texts } from './layout-faults.ts';

const DEGREE = 180 / Math.PI;
const RADIUS = 6;

/** Where a turn's arrow ends, clockwise from the top [degrees], in (−180, 180]. */
function arrowEnd({ items }: Block): number | undefined {
  const end = lines(items)
    .find(({ role }) => role === 'turn')
    ?.points.at(-1);
  if (end === undefined) return undefined;
  const centre = clockSize(RADIUS) / 2;
  return Math.atan2(end[0] - centre, centre - end[1]) * DEGREE;
}

/** How far round the arrow's own line goes, clockwise positive [degrees]. */
function sweep({ items }: Block): number {
  const centre = clockSize(RADIUS) / 2;
  const angles = lines(items)
    .find(({ role }) => role === 'turn')!
    .points.map(([x, y]) => Math.atan2(x - centre, centre - y) * DEGREE);
  return angles.slice(1).reduce((sum, angle, index) => {
    const step = angle - angles[index]!;
    return sum + (step > 180 ? step - 360 : step < -180 ? step + 360 : step);
  }, 0);
}

describe('the clock of a turn', () => {
  it.each([
    { rotation: 90, sign: 1, end: 90 },
    { rotation: 90, sign: -1, end: -90 },
    { rotation: -37.5, sign: 1, end: -37.5 },
    { rotation: -37.5, sign: -1, end: 37.5 },
    { rotation: 171.25, sign: 1, end: 171.25 },
  ] as const)('ends at $end from the top for $rotation on a machine of sign $sign', ({ rotation, sign, end }) => {
    const drawn = clock(rotation, sign, RADIUS);
    expect(arrowEnd(drawn)).toBeCloseTo(end, 6);
    expect(sweep(drawn)).toBeCloseTo(end, 6);
  });

  it('has no arrow where the tube is not turned', () => {
    expect(arrowEnd(clock(0, 1, RADIUS))).toBeUndefined();
  });

  it.each([1, -1] as const)('turns a tube the way that its next bend needs, machine of sign %i', (rotationSign) => {
    // First to the left along y, then up along z. With the die on the right the first bend's axis (z) stands up on the
    // machine; the second's (x) must come up. From behind, along −y, x lies on the left: left comes up clockwise.
    const job = newJob('run');
    const points = [
      [0, 0, 0],
      [600, 0, 0],
      [600, 600, 0],
      [600, 600, 600],
    ].map(([x = 0, y = 0, z = 0]) => ({ x, y, z, radius: null }));
    const machine = { ...job.machine, rotationSign };
    const made = plan({ ...job, machine, frame: { shape: 'run', points } });
    const { rotation } = made.frame!.members[0]!.bends[1]!;
    expect(rotation.value).toBeCloseTo(90 * rotationSign, 6);
    expect(arrowEnd(clock(rotation.value, rotationSign, RADIUS))).toBeCloseTo(90, 6);
  });
});

describe('the true angle on paper', () => {
  const { units } = makeJob();

  it.each([15, 45, 81.537, 90, 123.4, 150])('encloses %f degrees, and what the machine is told', (wanted) => {
    const told = wanted * 1.0261;
    const { items } = protractor({ wanted: figure(wanted, 'deg'), told: figure(told, 'deg') }, units, 170);
    const directions = lines(items)
      .filter(({ role }) => role === 'leg')
      .map(({ points: [from, to] }) => direction(from!, to!));
    const [before, after, machine] = directions;
    // the leg before comes from the corner; straight on is the other way
    expect(between(before! + 180, after!)).toBeCloseTo(wanted, 3);
    expect(between(before! + 180, machine!)).toBeCloseTo(told, 3);
    for (const [x] of lines(items).flatMap(({ points }) => points)) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(170);
    }
  });
});

/** Direction of a line on the page, anticlockwise from the right [degrees]. */
const direction = ([x0, y0]: Spot, [x1, y1]: Spot): number => Math.atan2(y0 - y1, x1 - x0) * DEGREE;
const between = (from: number, to: number): number => (((to - from) % 360) + 360) % 360;

describe('the marks on the straight tube', () => {
  it('stand where the scale says', () => {
    const made = makePlan();
    const sheet = layoutSheet('bend', { plan: made, job: makeJob(), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    const page = sheet.pages.find(({ items }) => texts(items).some(({ text }) => text.startsWith('1 start')))!;
    const scale = /Scale 1:(\d+);/.exec(
      texts(page.items)
        .map(({ text }) => text)
        .join(' '),
    )?.[1];
    const at = (stroke: object): number[] =>
      lines(page.items)
        .filter((line) => line.role === 'mark' && line.stroke === stroke)
        .map(({ points }) => points[0]![0])
        .toSorted((a, b) => a - b);
    const { bends, cutLength } = made.frame!.members[0]!;
    // datum end, three starts, and the far end
    const wide = at(STROKES.edge);
    const middles = at(STROKES.centreline);
    expect(wide).toHaveLength(5);
    expect(middles).toHaveLength(3);
    for (const [index, { made: how, startMark, middleMark }] of bends.entries()) {
      if (how === 'rolled') continue;
      const apart = (middleMark.value - startMark.value) / Number(scale);
      expect(middles[index]! - wide[index + 1]!).toBeCloseTo(apart, 6);
    }
    // what is broken is never drawn longer than it is
    expect(wide[4]! - wide[0]!).toBeLessThanOrEqual(cutLength.value / Number(scale) + 1e-9);
  });
});
