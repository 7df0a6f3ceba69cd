import { describe, expect, it } from 'vitest';
import type { GapPlan } from '../../../server/plan/gap.ts';
import type { FlatPoint } from '../../../server/plan/view.ts';
import { cross, dot } from '../../../server/solver/geometry/vector.ts';
import { at, HINGE, sourceOf, standing, type Around } from './standing-site.ts';
import { PLACED, thing, leg, views, expectInside, POST, ENDLESS } from './viewed-site.ts';

const KEYS = ['from-starboard', 'from-back', 'from-above', 'pictorial'] as const;

const DECK = thing('deck', { shape: 'plane', at: at(0, 0, 0), normal: at(0, 0, 1) });
const RUDDER = thing(
  'rudder',
  { shape: 'point', at: at(500, 0, 300), radius: 20 },
  { about: at(0, 0, 300), axis: at(0, 0, 1), from: -Math.PI / 2, to: 0 },
);
const AROUND: Around = {
  up: at(0.02, -0.03, Math.sqrt(1 - 0.0013)),
  points: { A: at(-100, 300, 0), B: at(400, -300, 10) },
  things: [POST, ENDLESS, DECK, RUDDER],
  legs: [leg(at(0, 300, 0), at(0, 430.95, 600))],
};

describe('the views of a site', () => {
  const source = sourceOf({ ...PLACED, ...standing({ hinge: HINGE }) });
  const all = views(source, AROUND);

  it('are four; right × up points at the reader, who stands where the view is named after', () => {
    expect(Object.keys(all)).toEqual([...KEYS]);
    const towards = KEYS.map((key) => cross(all[key]!.right, all[key]!.up));
    expect(dot(towards[0]!, at(0, -1, 0))).toBe(1);
    expect(dot(towards[1]!, at(-1, 0, 0))).toBe(1);
    expect(dot(towards[2]!, at(0, 0, 1))).toBe(1);
    // from behind, from starboard and from above at once, alike
    for (const axis of [at(-1, 0, 0), at(0, -1, 0), at(0, 0, 1)]) {
      expect(dot(towards[3]!, axis)).toBeCloseTo(1 / Math.sqrt(3), 12);
    }
  });

  it('hold everything that they draw', () => {
    for (const key of KEYS) expectInside(all[key]!);
  });

  it('draw a post where it stands', () => {
    const edges = (key: string) => all[key]!.things.find(({ name }) => name === 'post')!.lines;
    // 40 mm either side of 700 ahead, from 100 to 1000 up
    expect(edges('from-starboard').slice(0, 2)).toEqual([
      [
        [660, 100],
        [660, 1000],
      ],
      [
        [740, 100],
        [740, 1000],
      ],
    ]);
    // 200 to port is to the left, looking ahead
    expect(
      edges('from-back')
        .slice(0, 2)
        .map((line) => line[0]),
    ).toEqual([
      [-240, 100],
      [-160, 100],
    ]);
    // seen along its axis it is a circle
    const [circle] = edges('from-above');
    for (const [x, y] of circle!) expect(Math.hypot(x + 200, y - 700)).toBeCloseTo(40, 1);
  });

  it('draw the frame as it stands, its legs from foot to head, and where each foot is', () => {
    const { members, legs, feet } = all['from-back']!;
    // the hoop lies level 600 mm up: seen from its feet it is as wide as it is outside, and a tube high
    const xs = members.flatMap(({ edges }) => edges.flat()).map(([x]) => x);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([-450, 450]);
    expect(legs[0]!.centreline).toEqual([
      [-300, 0],
      [-430.95, 600],
    ]);
    expect(feet).toEqual([{ field: '/site/legs/0', at: [-300, 0], surface: expect.anything() as unknown }]);
    expect(feet[0]!.surface.map(([, y]) => y)).toEqual([0, 0]);
    expect(Math.abs(feet[0]!.surface[1][0] - feet[0]!.surface[0][0])).toBe(60);
  });

  it('draw a hinge a tenth longer at both ends than its places are apart', () => {
    const [from, to] = all['from-back']!.hinge!;
    expect(Math.abs(to[0] - from[0])).toBeCloseTo(1.2 * (900 - 38.1), 2);
    expect(views(sourceOf(PLACED))['from-back']!.hinge).toBeNull();
  });

  it('draw both ends of a swing, and one that is where the thing stands once', () => {
    const rudder = all['from-above']!.things.filter(({ name }) => name === 'rudder');
    expect(rudder.map(({ swung }) => swung)).toEqual([false, true]);
    const middle = ({ lines: [circle] }: (typeof rudder)[number]): FlatPoint => {
      const xs = circle!.map(([x]) => x);
      const ys = circle!.map(([, y]) => y);
      return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
    };
    expect(middle(rudder[0]!)).toEqual([0, 500]);
    // a quarter left-handed about up: from ahead to starboard, which is right
    expect(middle(rudder[1]!)[0]).toBeCloseTo(500, 2);
    expect(middle(rudder[1]!)[1]).toBeCloseTo(0, 2);
  });

  it('cut what goes on without end a little beyond the frame and its legs', () => {
    const mast = all['from-starboard']!.things.find(({ name }) => name === 'mast')!;
    const zs = mast.lines.flat().map(([, z]) => z);
    expect(Math.max(...zs)).toBeLessThan(2500);
    expect(Math.max(...zs)).toBeGreaterThan(600);
    expect(Math.min(...zs)).toBeLessThan(0);
  });

  it('draw a plane as a line from its edge, and as a closed stretch round what stands on it from above', () => {
    const lines = (key: string) => all[key]!.things.find(({ name }) => name === 'deck')!.lines;
    expect(lines('from-starboard')).toHaveLength(1);
    expect(lines('from-starboard')[0]).toHaveLength(2);
    expect(lines('from-starboard')[0]!.map(([, z]) => z)).toEqual([0, 0]);
    const [outline] = lines('from-above');
    expect(outline).toHaveLength(5);
    expect(outline![0]).toEqual(outline![4]);
    // the foot and point A stand on it
    for (const [x, y] of [
      [-300, 0],
      [-300, -100],
    ] as const) {
      expect(Math.min(...outline!.map((one) => one[0]))).toBeLessThan(x);
      expect(Math.max(...outline!.map((one) => one[0]))).toBeGreaterThan(x);
      expect(Math.min(...outline!.map((one) => one[1]))).toBeLessThan(y);
    }
  });

  it('draw what is level across them, square to up, and not from above', () => {
    const { level, bounds } = all['from-starboard']!;
    const [from, to] = level!;
    // up leans ahead: what is level falls towards ahead
    expect((to[1] - from[1]) / (to[0] - from[0])).toBeCloseTo(-0.02 / Math.sqrt(1 - 0.0013), 4);
    expect([from[0], to[0]]).toEqual([bounds[0], bounds[2]]);
    expect((from[1] + to[1]) / 2).toBeCloseTo((bounds[1] + bounds[3]) / 2, 1);
    expect(all['from-above']!.level).toBeNull();
  });

  it('draw the least gap from surface to surface', () => {
    const made = (value: number) => ({
      value,
      unit: 'mm' as const,
      band: null,
      working: { formula: '', inputs: [], sources: [] },
    });
    const row = {
      of: 'leg' as const,
      name: 'leg',
      field: '/site/legs/0',
      gap: made(25),
      station: made(0),
      thingSwing: null,
      frameSwing: null,
    };
    const gap: GapPlan = {
      thing: 'post',
      field: POST.field,
      clearance: made(0),
      rows: [{ ...row, onTube: at(620, 200, 500), onThing: at(700, 200, 500) }],
      ellipse: null,
      keptClear: false,
    };
    const { gaps } = views(source, AROUND, [gap])['from-starboard']!;
    // 80 mm between the axes, half of 30 and 40 mm off: from 635 to 660
    expect(gaps).toEqual([{ thing: 'post', field: POST.field, from: [635, 500], to: [660, 500], value: 25 }]);
  });

  it('draw the tube, and the thing, as they have swung where the gap is least', () => {
    const made = (value: number, unit: 'mm' | 'deg') => ({
      value,
      unit,
      band: null,
      working: { formula: '', inputs: [], sources: [] },
    });
    const frame = { of: 'member' as const, name: 'hoop', field: '', gap: made(9, 'mm'), station: made(0, 'mm') };
    const row = { ...frame, thingSwing: made(-45, 'deg'), frameSwing: made(-90, 'deg') };
    const gap: GapPlan = {
      thing: 'rudder',
      field: RUDDER.field,
      clearance: made(0, 'mm'),
      rows: [{ ...row, onTube: at(0, 0, 0), onThing: at(0, 0, 1) }],
      ellipse: null,
      keptClear: false,
    };
    const { things } = views(source, AROUND, [gap])['from-starboard']!;
    expect(things.filter(({ name }) => name === 'rudder').map(({ swung }) => swung)).toEqual([false, true, true]);
    const hoop = things.find(({ name }) => name === 'hoop')!;
    expect(hoop.swung).toBe(true);
    const all = hoop.lines.flat();
    // the hinge runs to starboard: a quarter left-handed about it takes what lies ahead upright, over or under it
    const reach = Math.max(...all.map(([, z]) => Math.abs(z - 600)));
    expect(reach).toBeGreaterThan(500);
    const xs = all.map(([x]) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(38.1, 1);
    expectInside(views(source, AROUND, [gap])['from-starboard']!);
  });
});
