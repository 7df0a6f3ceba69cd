import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Chamber, GasSpot, Stretch } from '../../server/plan/purge.ts';
import type { FlatPoint, View, ViewMark } from '../../server/plan/view.ts';
import type { FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { closestStation } from '../../server/solver/geometry/closest-station.ts';
import { planViews, type Drawn } from '../../server/solver/views/plan-views.ts';
import { project, type Projection } from '../../server/solver/views/projection.ts';
import { chamberOf, gasSpot } from './made-up-chambers.ts';
import { bend, FLAT, frameOf, hoopLine, laidIn, memberOf, straight, vector, wayOf } from './made-up-ways.ts';

const DIAMETER = 40;
const hoop = memberOf('hoop', hoopLine());
/** A bar between the legs: its ends stand on their axes, which the gas passes through. */
const rung: MemberGeometry = {
  ...memberOf('rung', laidIn({ right: vector(0, 1, 0), up: vector(1, 0, 0) }, [straight(rungLength())], legAt(250))),
  start: { kind: 'saddle', onto: 'hoop', station: 250, axisAngle: Math.PI / 2, offset: 0 },
  finish: {
    kind: 'saddle',
    onto: 'hoop',
    station: hoop.centreline.length - 250,
    axisAngle: Math.PI / 2,
    offset: 0,
  },
};
const frame = frameOf([hoop, rung], vector(0, 0, 1));
const inSpace: FrameGeometry = { ...frame, planeNormal: null };
const whole = hoop.centreline.length;

function legAt(height: number) {
  return placeAt(hoop.centreline, height)!.point;
}
function rungLength(): number {
  return placeAt(hoop.centreline, hoop.centreline.length - 250)!.point.x - legAt(250).x;
}

const drawn = (given: Partial<Chamber>, of: FrameGeometry = frame, more: Partial<Drawn> = {}): View[] =>
  planViews({
    wanted: of,
    cameBack: null,
    correction: null,
    purge: { chambers: [chamberOf({ feed: gasSpot('end', 'hoop', 0), ...given })] },
    welding: null,
    fromFinish: new Set(),
    outsideDiameter: DIAMETER,
    ...more,
  });

const path = (...stretches: Stretch[]): Chamber['paths'][number] => ({
  stretches,
  vent: 0,
  share: { value: 100, unit: 'percent', band: null, working: { formula: 's', inputs: [], sources: [] } },
});
const leg = (...stretches: Stretch[]): Chamber['deadLegs'][number] => ({
  stretches,
  length: path().share,
  clears: path().share,
  points: 'up',
  welds: [],
});
const lengthOf = (line: readonly FlatPoint[]): number =>
  line.slice(1).reduce((sum, [x, y], index) => sum + Math.hypot(x - line[index]![0], y - line[index]![1]), 0);
const at = ({ right, up }: Projection, member: MemberGeometry, station: number): FlatPoint =>
  project({ right, up }, placeAt(member.centreline, station)!.point);
const near = ([x, y]: FlatPoint) => [expect.closeTo(x, 1) as number, expect.closeTo(y, 1) as number];
const marksOf = (view: View, kind: ViewMark['kind']) => view.marks.filter((mark) => mark.kind === kind);

describe('the ways of the gas', () => {
  it('run along the tube from the feed on, as long as the tube is, and never off it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: whole, noNaN: true }),
        fc.double({ min: 0, max: whole, noNaN: true }),
        (from, to) => {
          fc.pre(Math.abs(from - to) > 1);
          const [view] = drawn({ paths: [path({ member: 'hoop', from, to })] });
          const [{ line, flows, chamber, layer } = { line: [] as FlatPoint[] }] = view!.gas;
          expect({ flows, chamber, layer }).toEqual({ flows: true, chamber: 1, layer: 'wanted' });
          expect(line[0]).toEqual(near(at(view!, hoop, from)));
          expect(line.at(-1)).toEqual(near(at(view!, hoop, to)));
          // chords of a bend of 100 that stand less than 0.3 off it are short by less than 1 in 300
          expect(lengthOf(line)).toBeLessThan(Math.abs(from - to) + 0.3);
          expect(lengthOf(line)).toBeGreaterThan(Math.abs(from - to) * (1 - 1 / 300) - 0.3);
          for (const [x, y] of line)
            expect(closestStation(hoop.centreline, vector(x, y, 0))!.distance).toBeLessThan(0.02);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('go on through a hole under a saddle end as one line, and each way is its own', () => {
    const through = [
      { member: 'hoop', from: 0, to: 250 },
      { member: 'rung', from: 0, to: rung.centreline.length },
      { member: 'hoop', from: whole - 250, to: whole },
    ];
    const [view] = drawn({ paths: [path(...through), path({ member: 'hoop', from: 0, to: whole })] });
    expect(view!.gas.map(({ flows }) => flows)).toEqual([true, true]);
    const [one, other] = view!.gas;
    expect(lengthOf(one!.line)).toBeCloseTo(500 + rung.centreline.length, 1);
    expect(lengthOf(other!.line)).toBeGreaterThan(lengthOf(one!.line) + 500);
    for (const { line } of view!.gas) expect(line.at(-1)).toEqual(near(at(view!, hoop, whole)));
  });

  it('leave bore that no gas runs through apart, branch by branch', () => {
    const dead = leg(
      { member: 'hoop', from: 600, to: 250 },
      { member: 'hoop', from: 250, to: 0 },
      { member: 'rung', from: 0, to: 300 },
    );
    const [view] = drawn({ paths: [path({ member: 'hoop', from: whole, to: 600 })], deadLegs: [dead] });
    expect(view!.gas.map(({ flows, line }) => [flows, Math.round(lengthOf(line))])).toEqual([
      [true, expect.closeTo(whole - 600, -1)],
      [false, 600],
      [false, 300],
    ]);
  });

  it('are drawn in every view of a frame in space, where its tubes are drawn', () => {
    const views = drawn({ paths: [path({ member: 'hoop', from: 100, to: 900 })] }, inSpace);
    expect(views.map(({ key }) => key)).toEqual(['top', 'face', 'side', 'pictorial']);
    for (const view of views) {
      const [{ line } = { line: [] as FlatPoint[] }] = view.gas;
      expect(line[0]).toEqual(near(at(view, hoop, 100)));
      expect(line.at(-1)).toEqual(near(at(view, hoop, 900)));
      // no point twice, though the whole hoop is one line where it is seen from its end
      for (const [index, point] of line.entries()) expect(point).not.toEqual(line[index - 1]);
    }
  });

  it('are on the frame that is welded', () => {
    const cameBack = frameOf([memberOf('hoop', hoopLine(FLAT, { crown: 862 }))], vector(0, 0, 1));
    const correction = (chosen: 'leave' | 'new-frame') => ({ ways: [wayOf(chosen)], chosen, differences: [] });
    const paths = [path({ member: 'hoop', from: 0, to: cameBack.members[0]!.centreline.length })];
    const [left] = drawn({ paths }, frame, { cameBack, correction: correction('leave') });
    expect(left!.gas[0]).toMatchObject({ layer: 'came-back' });
    expect(left!.gas[0]!.line.at(-1)![0]).toBeCloseTo(
      placeAt(cameBack.members[0]!.centreline, cameBack.members[0]!.centreline.length)!.point.x,
      1,
    );
    const [fresh] = drawn({ paths }, frame, { cameBack, correction: correction('new-frame') });
    expect(fresh!.gas[0]!.layer).toBe('wanted');
    expect(planViews({ ...noGas(), purge: null })[0]!.gas).toEqual([]);
  });

  it('of a ring go on over its closing weld', () => {
    const side = [straight(200), bend(Math.PI / 2), straight(200)];
    const ring = memberOf('ring', laidIn(FLAT, [...side, ...side, ...side, ...side]), true);
    const { length } = ring.centreline;
    const paths = [path({ member: 'ring', from: 700, to: length }, { member: 'ring', from: 0, to: 200 })];
    const [view] = drawn({ feed: gasSpot('hole', 'ring', 700), paths }, frameOf([ring], vector(0, 0, 1)));
    expect(view!.gas).toHaveLength(1);
    expect(lengthOf(view!.gas[0]!.line)).toBeCloseTo(length - 500, -1);
  });
});

function noGas(): Drawn {
  return {
    wanted: frame,
    cameBack: null,
    correction: null,
    purge: null,
    welding: null,
    fromFinish: new Set(),
    outsideDiameter: DIAMETER,
  };
}

describe('the marks of the gas', () => {
  const place = (member: string, station: number) => ({ member, station, point: vector(0, 0, 0) });

  it('stand at the feed, at every vent, at dams and plugs, each with the number of its chamber', () => {
    const [view] = drawn({
      number: 3,
      feed: gasSpot('end', 'hoop', whole),
      vents: [gasSpot('hole', 'hoop', 900), gasSpot('plate', 'hoop', 0), gasSpot('gap', 'hoop', 400)],
      dams: [place('hoop', 300), place('rung', 200)],
      plugs: [
        { member: 'hoop', end: 'start', point: vector(0, 0, 0) },
        { member: 'hoop', end: 'finish', point: vector(0, 0, 0) },
      ],
    });
    const stations: Record<string, [MemberGeometry, number][]> = {
      feed: [[hoop, whole]],
      vent: [
        [hoop, 900],
        [hoop, 0],
        [hoop, 400],
      ],
      dam: [
        [hoop, 300],
        [rung, 200],
      ],
      plug: [
        [hoop, 0],
        [hoop, whole],
      ],
    };
    for (const [kind, places] of Object.entries(stations)) {
      const marks = marksOf(view!, kind as ViewMark['kind']);
      expect(marks.map((mark) => mark.at)).toEqual(places.map(([member, station]) => near(at(view!, member, station))));
      for (const { label, layer } of marks) expect([label, layer]).toEqual(['3', 'wanted']);
    }
  });

  it('of an opening at an end point out of the tube, of one through the wall beside it', () => {
    const ends: [GasSpot['kind'], number, FlatPoint][] = [
      ['end', 0, [0, -1]],
      ['plate', whole, [0, -1]],
      ['hole', 100, [1, 0]],
      ['gap', 100, [1, 0]],
    ];
    for (const [kind, station, [x, y]] of ends) {
      const [view] = drawn({ feed: gasSpot(kind, 'hoop', station) });
      const [feed] = marksOf(view!, 'feed');
      expect(feed!.towards[0]).toBeCloseTo(x, 9);
      expect(feed!.towards[1]).toBeCloseTo(y, 9);
    }
    const [view] = drawn({ vents: [gasSpot('hole', 'rung', 100)] });
    expect(marksOf(view!, 'vent')[0]!.towards).toEqual([expect.closeTo(0, 9), expect.closeTo(1, 9)]);
  });

  it('have a direction of length one in every view, and are left out where there is no such tube', () => {
    const given = { vents: [gasSpot('hole', 'hoop', 900), gasSpot('end', 'hoop', whole), gasSpot('end', 'none', 0)] };
    for (const view of drawn(given, inSpace)) {
      expect(marksOf(view, 'vent')).toHaveLength(2);
      for (const { towards } of view.marks.filter(({ kind }) => kind !== 'end'))
        expect(Math.hypot(...towards)).toBeCloseTo(1, 9);
    }
  });
});
