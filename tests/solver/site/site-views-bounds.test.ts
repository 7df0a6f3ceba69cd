import { describe, expect, it } from 'vitest';
import type { GapRow } from '../../../server/plan/gap.ts';
import type { SiteView } from '../../../server/plan/site-view.ts';
import { at, AXES, sourceOf, type Around } from './standing-site.ts';
import { PLACED, thing, leg, views, expectInside, POST, ENDLESS } from './viewed-site.ts';

describe('a drawing of little, or of too much', () => {
  it('has a size without anything to draw, and with one point alone', () => {
    const bare = { ...sourceOf({ placing: { ...AXES, x: at(0, 0, 0) } }), made: [] };
    for (const points of [{}, { A: at(20_000, -30_000, 5) }]) {
      for (const view of Object.values(views(bare, { points }))) expectInside(view);
    }
    const { points } = views(bare, { points: { A: at(20_000, -30_000, 5) } })['from-above']!;
    expect(points).toEqual([{ name: 'A', field: '/site/points/0', at: [30_000, 20_000] }]);
  });

  it('leaves out a point and a thing that lie absurdly far from the frame, with its gap, and keeps a foot', () => {
    const far = thing('far', { shape: 'point', at: at(0, 49_000, 0), radius: 0 });
    const around: Around = { points: { A: at(50_000, 0, 0), B: at(500, 0, 0) }, things: [far, POST] };
    const view = views(sourceOf(PLACED), around)['from-above']!;
    expect(view.points.map(({ name }) => name)).toEqual(['B']);
    expect(view.things.map(({ name }) => name)).toEqual(['post']);
    expect(view.bounds[2] - view.bounds[0]).toBeLessThan(3000);
    const longLeg = views(sourceOf(PLACED), { legs: [leg(at(0, 40_000, 0), at(0, 431, 600))] })['from-back']!;
    expect(longLeg.bounds[0]).toBeLessThan(-39_000);
    expectInside(longLeg);
  });

  it('draws a leg without a length, and a plane and a cylinder far off their own origin', () => {
    const around: Around = {
      legs: [leg(at(0, 0, 600), at(0, 0, 600))],
      things: [thing('wall', { shape: 'plane', at: at(900, 49_000, -49_000), normal: at(1, 0, 0) }), ENDLESS],
    };
    const all = views(sourceOf(PLACED), around);
    for (const view of Object.values(all)) expectInside(view);
    const wall = all['from-starboard']!.things[0]!.lines[0]!;
    expect(wall.map(([x]) => x)).toEqual([900, 900]);
    expect(Math.abs(wall[0]![1] - 600)).toBeLessThan(500);
  });

  it('cuts what has no end an eighth beyond the frame, its legs and the points, with a break mark at both ends', () => {
    const source = sourceOf(PLACED);
    const pole = (ends: { from: number; to: number } | null) =>
      thing('pole', { shape: 'cylinder', at: at(450, 0, 0), axis: at(0, 0, 1), radius: 30, ends });
    const seen = (ends: { from: number; to: number } | null) =>
      views(source, { points: { A: at(0, 0, -400) }, things: [pole(ends)] })['from-starboard']!;
    const heights = ({ things }: SiteView) => things[0]!.lines.slice(0, 2).map((line) => line.map(([, z]) => z));
    // from the point 400 below to the frame's centrelines 600 up is 1000, which is more than the frame is wide
    expect(heights(seen(null))).toEqual([
      [-520, 720],
      [-520, 720],
    ]);
    // the ends are no plain lines across: they swing to both sides of the cut
    const low = seen(null).things[0]!.lines[2]!;
    expect([low[0]![1], low.at(-1)![1]]).toEqual([-520, -520]);
    expect(low.map(([, z]) => z).toSorted((a, b) => a - b)).toEqual([-538, -520, -520, -520, -520, -502]);
    // an end that is typed stays where it is unless it is very far off
    expect(heights(seen({ from: -100, to: 1000 }))[0]).toEqual([-100, 1000]);
    const long = seen({ from: -100, to: 30_000 });
    expect(heights(long)[0]).toEqual([-100, 720]);
    expect(long.things[0]!.lines.slice(2).map((line) => line.length)).toEqual([2, 6]);
    // one that begins far above the frame is drawn from its nearer end on
    const [from, to] = heights(seen({ from: 5000, to: 90_000 }))[0]!;
    expect(from).toBe(5000);
    expect(to).toBeGreaterThan(5000);
    expect(to).toBeLessThan(5500);
  });

  it('draws a leaning pole that passes through as far as it is beside the frame, and one that passes by as well', () => {
    const lean = Math.SQRT1_2;
    const pole = (x: number) =>
      thing('pole', { shape: 'cylinder', at: at(x, 0, 600), axis: at(0, lean, lean), radius: 30, ends: null });
    for (const x of [450, 3000]) {
      const view = views(sourceOf(PLACED), { points: { A: at(0, 0, -400) }, things: [pole(x)] })['from-back']!;
      const zs = view.things[0]!.lines.flat().map(([, z]) => z);
      expect(Math.max(...zs)).toBeGreaterThan(600);
      expect(Math.max(...zs)).toBeLessThan(1400);
      expect(Math.min(...zs)).toBeGreaterThan(-1000);
      expectInside(view);
    }
  });

  it('tells two legs of one name apart, and which of them a gap belongs to', () => {
    const two = [
      { ...leg(at(0, 300, 0), at(0, 430, 600)), name: 'leg', field: '/site/legs/0', outsideDiameter: 30 },
      { ...leg(at(0, -300, 0), at(0, -430, 600)), name: 'leg', field: '/site/legs/1', outsideDiameter: 50 },
    ];
    const made = { value: 20, unit: 'mm' as const, band: null, working: { formula: '', inputs: [], sources: [] } };
    const row: GapRow = {
      of: 'leg',
      name: 'leg',
      field: '/site/legs/1',
      gap: made,
      station: made,
      onTube: at(600, 200, 500),
      onThing: at(700, 200, 500),
      thingSwing: null,
      frameSwing: null,
    };
    const gap = { thing: 'post', field: POST.field, clearance: made, rows: [row], ellipse: null, keptClear: false };
    const view = views(sourceOf(PLACED), { legs: two, things: [POST] }, [gap])['from-starboard']!;
    expect(view.legs.map(({ member, field }) => [member, field])).toEqual([
      ['leg', '/site/legs/0'],
      ['leg', '/site/legs/1'],
    ]);
    expect(view.feet.map(({ field }) => field)).toEqual(['/site/legs/0', '/site/legs/1']);
    // half of the second leg's 50 mm off its axis
    expect(view.gaps[0]).toMatchObject({ from: [625, 500], to: [645, 500] });
  });
});
