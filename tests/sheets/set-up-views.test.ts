import { describe, expect, it } from 'vitest';
import type { Point } from '../../server/plan/figure.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { FlatPoint, View } from '../../server/plan/view.ts';
import { setUpsOf } from '../../server/sheets/set-up.ts';
import { viewsOf } from '../../server/sheets/set-up-view.ts';
import { onView, towardsReader } from '../../server/sheets/view-places.ts';
import { makeJob, makePlan } from './fixture.ts';
import { chamber } from './fixture-gas.ts';
import { planWith } from './fixture-set-ups.ts';

const X = { x: 1, y: 0, z: 0 };
const Y = { x: 0, y: 1, z: 0 };
const Z = { x: 0, y: 0, z: 1 };
const third = 1 / Math.sqrt(6);

const AXES: Readonly<Record<View['key'], { right: Point; up: Point }>> = {
  top: { right: X, up: Y },
  face: { right: X, up: Z },
  side: { right: Y, up: Z },
  pictorial: {
    right: { x: Math.SQRT1_2, y: -Math.SQRT1_2, z: 0 },
    up: { x: third, y: third, z: 2 * third },
  },
};

/** A frame in space of straight tubes, in its four views. */
function inSpace(tubes: Readonly<Record<string, readonly [Point, Point]>>): Plan {
  const views = (['top', 'face', 'side', 'pictorial'] as const).map((key): View => {
    const axes = AXES[key];
    const members = Object.entries(tubes).map(([member, ends]) => {
      const centreline = ends.map((point): FlatPoint => onView(axes, point));
      return { member, edges: [centreline], centreline };
    });
    return {
      key,
      ...axes,
      bounds: [0, 0, 1, 1],
      layers: [{ role: 'wanted', members }],
      dimensions: [],
      marks: [],
      gas: [],
    };
  });
  const stretches = Object.keys(tubes).map((member) => ({ member, from: 0, to: 1000 }));
  const plan = planWith([{ ...chamber(), stretches, paths: [], deadLegs: [] }]);
  if (plan.frame === null) throw new Error('the made-up plan is whole');
  return { ...plan, views, frame: { ...plan.frame, planar: false } };
}

const shown = (plan: Plan): string[] => {
  const input = { plan, job: makeJob(), revision: null };
  return viewsOf(setUpsOf(input)[0]!, input).map(({ view }) => view.key);
};

const at = (x: number, y: number, z: number): Point => ({ x, y, z });

describe('the view of a set-up in space', () => {
  it('is the one in which its tubes are longest', () => {
    expect(shown(inSpace({ a: [at(0, 0, 0), at(900, 500, 0)] }))).toEqual(['top']);
    expect(shown(inSpace({ a: [at(0, 0, 0), at(900, 0, 500)] }))).toEqual(['face']);
    expect(shown(inSpace({ a: [at(0, 0, 0), at(0, 900, 500)] }))).toEqual(['side']);
  });

  it('has a second one beside it where it hides a tube', () => {
    const tubes = {
      a: [at(0, 0, 0), at(900, 0, 0)],
      b: [at(0, 0, 0), at(0, 0, 800)],
      c: [at(0, 0, 0), at(0, 500, 0)],
    } as const;
    expect(shown(inSpace(tubes))).toEqual(['face', 'pictorial']);
  });

  it('is the face of a flat frame', () => {
    expect(shown(makePlan())).toEqual(['face']);
  });
});

describe('a direction on a view', () => {
  it('is right, up and towards the reader by the right-handed rule', () => {
    const { top, side } = AXES;
    expect(onView(top, at(3, 4, 5))).toEqual([3, 4]);
    expect(towardsReader(top, Z)).toBe(1);
    expect(onView(side, at(3, 4, 5))).toEqual([4, 5]);
    expect(towardsReader(side, X)).toBe(1);
    expect(towardsReader(AXES.face, Y)).toBe(-1);
  });
});
