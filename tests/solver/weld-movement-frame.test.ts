import { describe, expect, it } from 'vitest';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { add, cross, dot, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { placedWelds } from '../../server/solver/welding/movement/placed-welds.ts';
import { sizePulls } from '../../server/solver/welding/movement/size-pulls.ts';
import { weldInfluences, type WeldInfluence } from '../../server/solver/welding/movement/weld-influences.ts';
import { weldSites, type WeldPlace } from '../../server/solver/welding/weld-sites.ts';
import { drawnAs, hoopOf } from '../properties/spliced-frames.ts';
import {
  checkOf,
  frameOf,
  movementOf,
  seatOn,
  spliceAt,
  spotOf,
  straightOf,
  TUBE,
  tubeOf,
} from './weld-movement-frames.ts';

const at = (x: number, y: number, z = 0): Vector3 => ({ x, y, z });
const centre = (value: number) => ({ value, reference: 'centre' as const });

function influenceOf(frame: FrameGeometry, place: WeldPlace): WeldInfluence {
  const [site] = weldSites([place], frame, []);
  const placed = placedWelds([{ site: site!, shrinkage: 0.5 }], frame, []);
  return weldInfluences(frame, TUBE, placed).welds[0]!;
}

describe('a tube with one bend', () => {
  /** From the origin along +x, round to +y: inside of the bend towards +y − x, outside towards the first end's −y. */
  const tube = tubeOf('run', { point: at(0, 0), direction: at(1, 0), normal: at(0, 0, 1) }, [
    { kind: 'straight', length: 500 },
    { kind: 'arc', radius: 100, angle: Math.PI / 2, rotation: 0, made: 'die' },
    { kind: 'straight', length: 300 },
  ]);
  const { length } = tube.centreline;
  const frame = frameOf(
    [tube],
    [checkOf('end-to-end', 0, spotOf([tube], 'run', 0), spotOf([tube], 'run', length))],
    at(0, 0, 1),
  );
  /** From end to end: (600, 400). */
  const whole = Math.hypot(600, 400);

  it('turns rigidly about its weld, towards the side that is welded last', () => {
    const { outside, top, shrinkage } = influenceOf(frame, spliceAt(1, 'run', 200));
    // last on the outside: what is beyond turns by −z about (200, 0), its end at (600, 400) by (400, −400) for 1 rad
    expect(outside[0]).toBeCloseTo((400 * 600 - 400 * 400) / whole, 9);
    // across the plane the first end's distance does not change
    expect(top[0]).toBe(0);
    expect(shrinkage[0]).toBeCloseTo(-600 / whole, 12);
  });

  it('shortens along the leg that its weld is on', () => {
    expect(influenceOf(frame, spliceAt(1, 'run', length - 50)).shrinkage[0]).toBeCloseTo(-400 / whole, 12);
  });

  it('pulls half a degree by half of what once round does', () => {
    const order = [{ weld: '1', first: 1 as const, way: 'round' as const }];
    const round = movementOf(frame, { places: [spliceAt(1, 'run', 200)], pull: 0.5, order });
    // 1-2-3-4 pulls towards the bottom generator, across the plane; 4-1-2-3 towards the inside
    expect(round.movement!.checks[0]!.given.value).toBeCloseTo(0, 12);
    const outward = movementOf(frame, {
      places: [spliceAt(1, 'run', 200)],
      pull: 0.5,
      order: [{ weld: '1', first: 2, way: 'round' }],
    });
    const growing = ((400 * 600 - 400 * 400) / whole) * (Math.PI / 360);
    expect(outward.movement!.checks[0]!.given.value).toBeCloseTo(growing, 9);
    const opposed = movementOf(frame, {
      places: [spliceAt(1, 'run', 200)],
      pull: 0.5,
      order: [{ weld: '1', first: 2, way: 'opposed' }],
    });
    expect(opposed.movement!.checks[0]!.given.value).toBeCloseTo(growing / 2, 9);
  });
});

describe('a rectangle of four tubes', () => {
  /** Two posts of b with their feet on the lower rail, and rails of a that sit on them; all axes meet. */
  const [a, b] = [800, 500];
  const rail = (name: string, y: number, station: number) => ({
    ...straightOf(name, at(0, y), at(a, y)),
    start: seatOn('left', station),
    finish: seatOn('right', station),
  });
  const members = [
    straightOf('left', at(0, 0), at(0, b)),
    straightOf('right', at(a, 0), at(a, b)),
    rail('lower', 0, 0),
    rail('upper', b, b),
  ];
  const widths = checkOf('width', 0, spotOf(members, 'left', b / 2), spotOf(members, 'right', b / 2));
  const heights = checkOf('height', 0, spotOf(members, 'lower', a / 2), spotOf(members, 'upper', a / 2));
  const frame = frameOf(members, [widths, heights], at(0, 0, 1));
  /** I/A of the tube. */
  const gyration = (TUBE.outsideDiameter ** 2 + (TUBE.outsideDiameter - 2 * TUBE.wall) ** 2) / 16;

  it('bends as Castigliano has it where its upper rail is turned in the middle', () => {
    const found = influenceOf(frame, spliceAt(1, 'upper', a / 2));
    /*
     * Cut at the weld: by symmetry a moment M and a thrust H alone, EI = 1, y downwards from the upper rail. The
     * bending moment is M + H y on both posts and on the lower rail (y = b). The faces turn by 1
     * against M and do not part:
     *   M P + H S1 = −1,   M S1 + H S2 + H (2 a) i² = 0,   P = ∮ ds, S1 = ∮ y ds, S2 = ∮ y² ds
     */
    const perimeter = 2 * (a + b);
    const first = 2 * (b ** 2 / 2) + a * b;
    const second = 2 * (b ** 3 / 3) + a * b ** 2 + 2 * a * gyration;
    const determinant = perimeter * second - first ** 2;
    const moment = -second / determinant;
    const thrust = first / determinant;
    /*
     * Width between the middles of the posts, by a unit pair of forces that opens them, carried by the lower half:
     * m = y − b/2 on the lower halves of the posts, b/2 and a pull of 1 in the lower rail.
     */
    const half = (from: number, to: number) => {
      // ∫ (M + H y) (y − b/2) dy
      const at = (y: number) =>
        (thrust * y ** 3) / 3 + ((moment - (thrust * b) / 2) * y ** 2) / 2 - (moment * b * y) / 2;
      return at(to) - at(from);
    };
    const width = 2 * half(b / 2, b) + a * (moment + thrust * b) * (b / 2) + thrust * a * gyration;
    // last on the upper side: the rail sags, and the posts that it turns swing out
    expect(width).toBeGreaterThan(0);
    expect(found.outside[0]).toBeCloseTo(width, 6);
    expect(found.top[0]).toBe(0);
  });

  it('takes up a part of a shrinkage in its middle, in either rail alike', () => {
    const found = influenceOf(frame, spliceAt(1, 'upper', a / 2));
    expect(found.shrinkage[0]).toBeLessThan(0);
    expect(found.shrinkage[0]).toBeGreaterThan(-1);
    const other = influenceOf(frame, spliceAt(1, 'lower', a / 3));
    // the frame turned over: the width is taken in the middle, and a pull along a rail is the same all along it
    expect(other.shrinkage[0]).toBeCloseTo(found.shrinkage[0]!, 9);
  });

  it('that hangs together nowhere else moves a part by itself, and says nothing of sizes across', () => {
    const apart = straightOf('apart', at(0, 900), at(300, 900));
    const across = checkOf('end-to-end', 1, spotOf(members, 'left', 0), spotOf([apart], 'apart', 0));
    const two = frameOf([...members, apart], [widths, across]);
    const { movement } = movementOf(two);
    expect(movement!.checks.map(({ key }) => key)).toEqual(['width']);
  });
});

describe('a hoop', () => {
  const frame = hoopOf({ width: 900, legs: [600, 600] });
  const whole = frame.members[0]!.centreline.length;
  const sizeOf = (influence: WeldInfluence, list: readonly number[], key: string) =>
    list[frame.checks.findIndex((check) => check.key === key)];

  it('opens at the feet by the turn of a leg times what hangs below the weld', () => {
    const one = influenceOf(frame, spliceAt(1, 'hoop', 250));
    expect(sizeOf(one, one.outside, 'width-at-feet')).toBeCloseTo(250, 9);
    expect(sizeOf(one, one.outside, 'width-at-corners')).toBe(0);
    expect(sizeOf(one, one.shrinkage, 'left-leg')).toBeCloseTo(-1, 12);
    expect(sizeOf(one, one.shrinkage, 'right-leg')).toBe(0);
  });

  it('keeps its reach square to the line of its feet', () => {
    const one = influenceOf(frame, spliceAt(1, 'hoop', whole / 2));
    // last on the outside, each half turns by 1/2 upwards at its end, and the feet sink below the middle by 450/2
    expect(sizeOf(one, one.outside, 'reach')).toBeCloseTo(-450 / 2, 9);
    const leg = influenceOf(frame, spliceAt(1, 'hoop', 250));
    // one foot by 1: half of it in the middle
    expect(sizeOf(leg, leg.shrinkage, 'reach')).toBeCloseTo(-1 / 2, 12);
  });

  it('raises its crown by a quarter of its chord', () => {
    const crowned = hoopOf({ width: 900, legs: [600, 600], crown: 2000 });
    const [, , crown] = crowned.members[0]!.centreline.pieces;
    const one = influenceOf(crowned, spliceAt(1, 'hoop', crowned.members[0]!.centreline.length / 2));
    const rise = crowned.checks.findIndex(({ key }) => key === 'crown-rise');
    const chord = crown!.kind === 'arc' ? 2 * crown!.radius * Math.sin(crown!.angle / 2) : 0;
    expect(chord).toBeGreaterThan(500);
    expect(one.outside[rise]).toBeCloseTo(-chord / 4, 9);
  });

  it('with a crossbar stays even where both its ends are pulled alike', () => {
    const barred = hoopOf({ width: 900, legs: [600, 600], bars: [250] });
    // 2-3-4-1 ends round the outside generator, which is one side of the crossbar at both its ends
    const alike = (weld: string) => ({ weld, first: 2 as const, way: 'round' as const });
    const { movement } = movementOf(barred, { order: [alike('S1'), alike('S2')] });
    const value = (key: string, index = 0) =>
      movement!.checks.find((check) => check.key === key && check.index === index)!.given.value;
    expect(value('diagonal', 1)).toBeCloseTo(value('diagonal', 2), 9);
    expect(value('left-leg')).toBeCloseTo(value('right-leg'), 9);
    expect(Math.abs(value('width-at-feet'))).toBeGreaterThan(0.1);
  });
});

describe('the sizes of a frame', () => {
  it('stay as they are when the whole frame is moved and turned', () => {
    const motion = { shift: at(3, -5, 7), turn: at(0.2, -0.5, 0.3) };
    const frames = [
      hoopOf({ width: 900, widthAtFeet: 1000, legs: [600, 660], crown: 2500, bars: [300] }),
      drawnAs({ shape: 'ring', width: centre(900), height: centre(600) }),
      drawnAs({ shape: 'offset', across: centre(200), angle: 45, first: centre(400), last: centre(300) }),
    ];
    for (const frame of frames) {
      for (const { check, pulls } of sizePulls(frame)) {
        const grown = pulls.reduce((sum, { spot, along }) => {
          const move = add(motion.shift, cross(motion.turn, spot.point));
          return sum + dot(along, move);
        }, 0);
        expect([check.key, Math.abs(grown) < 1e-9]).toEqual([check.key, true]);
      }
    }
  });
});

describe('a ring', () => {
  const ring = drawnAs({ shape: 'ring', width: centre(900), height: centre(600) });
  it('takes up the shrinkage of its closing weld all round', () => {
    const { movement } = movementOf(ring);
    const shrinkage = Object.fromEntries(
      movement!.checks.map((row) => [`${row.key}${String(row.index)}`, row.shrinkage.value]),
    );
    // the weld is in a long side: the two sides share its 0.5 mm at the middle of the width
    expect(shrinkage['width0']).toBeCloseTo(-0.25, 3);
    expect(shrinkage['diagonal1']).toBeCloseTo(shrinkage['diagonal2']!, 9);
  });
});
