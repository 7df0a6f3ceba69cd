import { describe, expect, it } from 'vitest';
import { at, AXES, sourceOf, type Around } from './standing-site.ts';
import { PLACED, thing, leg, views, expectInside, POST, ENDLESS } from './viewed-site.ts';

describe('a drawing of little, or of too much', () => {
  it('has a size without anything to draw, and with one point alone', () => {
    const bare = { ...sourceOf({ placing: { ...AXES, x: at(0, 0, 0) } }), made: [] };
    for (const points of [{}, { A: at(20_000, -30_000, 5) }]) {
      for (const view of Object.values(views(bare, { points }))) expectInside(view);
    }
    const { points } = views(bare, { points: { A: at(20_000, -30_000, 5) } })['from-above']!;
    expect(points).toEqual([{ name: 'A', at: [30_000, 20_000] }]);
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
});
