import { describe, expect, it } from 'vitest';
import type { Leg } from '../../../server/job/leg.ts';
import type { Site } from '../../../server/job/site.ts';
import type { Centreline } from '../../../server/solver/geometry/centreline.ts';
import { closestStation } from '../../../server/solver/geometry/closest-station.ts';
import { add, scale, subtract, unit } from '../../../server/solver/geometry/vector.ts';
import { distanceToTube, piecesNear } from '../../../server/solver/site/legs/head-tube.ts';
import { legDoubts } from '../../../server/solver/site/legs/leg-doubts.ts';
import { along, frameOf, HINGE, hinged, legOf, planned, sourceOf, tubeOf } from './legs-made-up.ts';

const UNHINGED = { hinge: null, slopes: [], height: null, swing: null };

/** A leg straight under the rail, so far astern of its foot, on a point known well. */
const under = (name: string, at: number, back: number): Leg =>
  legOf({
    name,
    foot: { ...legOf().foot, at: { x: back - 480, y: at - 400, z: -610 } },
    head: { ...legOf().head, at: along('rail', at) },
  });

/** The frame asked level by a level that is good to half a degree, everything else known to a hundredth. */
const byLevel: Partial<Site> = {
  level: {
    sets: [
      {
        taken: '',
        note: '',
        readings: [
          { reading: 'incline', along: { x: 1, y: 0, z: 0 }, angle: 0.4, accuracy: 0.5 },
          { reading: 'incline', along: { x: 0, y: 1, z: 0 }, angle: -0.3, accuracy: 0.5 },
        ],
      },
    ],
    angleAccuracy: 0.5,
    heightAccuracy: 1,
    goodFor: 2,
  },
  tapeAccuracy: 0.01,
  standing: { ...UNHINGED, hinge: HINGE, slopes: [{ along: { x: 1, y: 0, z: 0 }, angle: 0, to: 'level' }] },
};

describe('the order in which legs are set up', () => {
  const legs = [under('far', 800, 250), under('near', 150, 60)];

  it('first the one that fixes the slope best; what the level leaves open is then settled for the other', () => {
    const plans = planned(sourceOf(hinged, { ...byLevel, legs })).legs;
    const [far, near] = plans as [(typeof plans)[0], (typeof plans)[0]];
    const fixes = (leg: typeof far) => leg.cutLength.band!.plusMinus / leg.perDegree!.value;
    expect(near.order).toBe(fixes(near) < fixes(far) ? 1 : 2);
    const [first, second] = near.order === 1 ? [near, far] : [far, near];
    expect(first.bandThen.value).toBeCloseTo(first.cutLength.band!.plusMinus, 9);
    // half a degree of slope is 4 mm of leg; all of it turns the frame, and none is left but the sawing of both
    expect(second.cutLength.band!.plusMinus).toBeGreaterThan(3);
    const share = second.perDegree!.value / first.perDegree!.value;
    expect(second.bandThen.value).toBeCloseTo(Math.hypot(1, share) * Math.SQRT2 * 0.5, 1);
    expect(second.measureAgain).toMatchObject({ from: 'level' });
  });

  it('legs without a hinge come in the order of what is known of them, and keep it', () => {
    const loose = { ...legs[0]!, foot: { ...legs[0]!.foot, at: { named: 'pile' } } };
    const points: Site['points'] = [
      { name: 'pile', at: { by: 'typed', point: { x: -480, y: 400, z: -610 }, accuracy: 6 } },
    ];
    const plans = planned(sourceOf(hinged, { legs: [loose, legs[1]!], points })).legs;
    expect(plans.map(({ order }) => order)).toEqual([2, 1]);
    for (const leg of plans) {
      expect(leg.bandThen.value).toBeCloseTo(leg.cutLength.band!.plusMinus, 9);
    }
  });

  it('a leg in line with its hinge does not set the slope', () => {
    const through = legOf({ foot: { ...legOf().foot, at: { x: -960, y: 380, z: -38.1 } } });
    const surface = { by: 'axes', vector: { x: 1, y: 0, z: 0 } } as const;
    const site = {
      legs: [{ ...through, foot: { ...through.foot, surface } }],
      standing: { ...UNHINGED, hinge: HINGE },
    };
    expect(planned(sourceOf(hinged, site)).legs[0]!.perDegree).toBeNull();
  });

  it('each leg is on one side of the structure, or of the legs where all are on one side, or in the middle', () => {
    // heads and feet at so much to starboard of port 400
    const sides = (...at: number[]) => {
      const legs = at.map((one, index) => under(String(index), one, 0));
      return planned(sourceOf(hinged, { legs })).legs.map(({ side }) => side);
    };
    expect(sides(100, 400.5, 800)).toEqual(['starboard', 'middle', 'port']);
    // on both sides the structure's middle counts, not that of the legs
    expect(sides(100, 450, 800)).toEqual(['starboard', 'port', 'port']);
    expect(sides(500, 600, 700)).toEqual(['starboard', 'middle', 'port']);
    expect(sides(400, 700)).toEqual(['starboard', 'port']);
    expect(sides(700, 700.6)).toEqual(['port', 'port']);
    expect(sides(100)).toEqual(['starboard']);
    expect(sides(399.5)).toEqual(['middle']);
  });
});

describe('what a leg is doubtful by', () => {
  it('every value of its own that was measured', () => {
    const leg = legOf({
      foot: { ...legOf().foot, surface: { by: 'plumb', ahead: 1, port: 0, set: 1 } },
    });
    const { site } = sourceOf(hinged, { legs: [leg, legOf({ foot: { ...leg.foot, at: { named: 'pile' } } })] });
    expect(
      legDoubts(site).map(({ field, plusMinus, from }) => [field.replace('/site/legs/', ''), plusMinus, from]),
    ).toEqual([
      ['0/foot/at/x', 2, 'point'],
      ['0/foot/at/y', 2, 'point'],
      ['0/foot/at/z', 2, 'point'],
      ['0/foot/surface/ahead', 0.1, 'thing'],
      ['0/foot/surface/port', 0.1, 'thing'],
      ['0/head/at', 2, 'frame'],
      ['0/head/at/across', 2, 'frame'],
      ['1/foot/surface/ahead', 0.1, 'thing'],
      ['1/foot/surface/port', 0.1, 'thing'],
      ['1/head/at', 2, 'frame'],
      ['1/head/at/across', 2, 'frame'],
    ]);
  });

  it('the parts of a band are all of it, and sawing is among them', () => {
    const leg = planned(sourceOf(hinged, { legs: [legOf()] }, { shrinkage: 1 })).legs[0]!;
    const parts = leg.doubts.map(({ plusMinus }) => plusMinus.value);
    expect(Math.hypot(...parts)).toBeCloseTo(leg.cutLength.band!.plusMinus, 9);
    expect(parts).toEqual([...parts].sort((a, b) => b - a));
    const cutting = leg.doubts.find(({ from }) => from === 'cutting')!;
    // two cuts of 0.5 mm, half of what each of two welds pulls in
    expect(cutting.plusMinus.value).toBeCloseTo(1, 9);
    expect(leg.centreLength.band!.from).not.toContain('site-cutting');
  });
});

describe('the tube under a head', () => {
  const bent = tubeOf('rail', { x: 0, y: 0, z: 0 }, { x: 1, y: 0, z: 0 }, [
    { kind: 'straight', length: 300 },
    { kind: 'arc', radius: 100, angle: 1.2, rotation: 0.4, made: 'die' },
    { kind: 'straight', length: 300 },
  ]);
  const line = bent.centreline;
  const none = { x: 0, y: 0, z: 0 };

  const every = (centreline: Centreline) => [...centreline.pieces.keys()];

  it('is the pieces that the leg can touch, those that bend back to it among them', () => {
    const up = (x: number, to = 500) => ({ from: { x, y: 0, z: -40 }, to: { x, y: 0, z: to } });
    expect(piecesNear({ line, closed: false }, up(200), 45)).toEqual([0]);
    expect(piecesNear({ line, closed: false }, up(270), 45)).toEqual([0, 1]);
    // past an open end the tube is carried on, past one that another piece follows it is not
    expect(piecesNear({ line, closed: false }, up(-200), 45)).toEqual([0]);
    expect(piecesNear({ line, closed: true }, up(-200), 45)).toEqual([]);
    const beyond = line.pieces[2]!;
    const leg = { from: { x: 200, y: 0, z: 0 }, to: add(beyond.start, scale(beyond.direction, 200)) };
    expect(piecesNear({ line, closed: false }, leg, 45)).toContain(2);
  });

  it('is straight where those are one straight', () => {
    expect(distanceToTube({ line, closed: false }, [0], none)).toBeNull();
    expect(distanceToTube({ line, closed: false }, [0, 1], none)).not.toBeNull();
    expect(distanceToTube({ line, closed: false }, [0, 2], none)).not.toBeNull();
  });

  it('is straight and bent on the two sides of a tangent point', () => {
    const distance = distanceToTube({ line, closed: false }, every(line), none)!;
    for (const [x, y, z] of [
      [270, 15, 4],
      [310, -12, 9],
      [330, 3, -16],
      [290, 0, 20],
    ] as const)
      expect(distance(x, y, z)).toBeCloseTo(closestStation(line, { x, y, z })!.distance, 9);
  });

  it('moves with the tube', () => {
    const shift = { x: 0, y: 3, z: -2 };
    const distance = distanceToTube({ line, closed: false }, every(line), shift)!;
    const point = { x: 310, y: -12, z: 9 };
    const there = add(point, shift);
    expect(distance(there.x, there.y, there.z)).toBeCloseTo(closestStation(line, point)!.distance, 9);
  });

  it('goes round a ring past its closing, and on beyond an open end', () => {
    const ring = tubeOf('ring', { x: 0, y: 0, z: 0 }, { x: 1, y: 0, z: 0 }, [
      { kind: 'straight', length: 200 },
      { kind: 'arc', radius: 100, angle: Math.PI, rotation: 0, made: 'die' },
      { kind: 'straight', length: 200 },
      { kind: 'arc', radius: 100, angle: Math.PI, rotation: 0, made: 'die' },
    ]).centreline;
    const distance = distanceToTube({ line: ring, closed: true }, every(ring), none)!;
    const last = ring.pieces.at(-1)!;
    const behind = add(last.start, scale(unit(subtract({ x: 0, y: 0, z: 0 }, last.start))!, 190));
    expect(distance(behind.x, behind.y, behind.z)).toBeCloseTo(closestStation(ring, behind)!.distance, 9);
    const open = distanceToTube({ line, closed: false }, every(line), none)!;
    expect(open(-50, 3, 4)).toBeCloseTo(5, 9);
  });

  it('a head where a bend begins is cut for both, not for the straight alone', () => {
    const site = (station: number): Partial<Site> => ({
      legs: [
        legOf({
          foot: { ...legOf().foot, at: { x: station, y: 0, z: -500 } },
          head: { ...legOf().head, at: along('rail', station) },
        }),
      ],
    });
    const takes = (station: number): number =>
      planned(sourceOf(frameOf([bent]), site(station))).legs[0]!.templates.find(({ place }) => place === 'finish')!.low;
    expect(Math.abs(takes(300) - takes(200))).toBeGreaterThan(0.3);
  });
});
