// What must not change where a whole site is mirrored, turned or scaled; and bands held against drawn errors.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Leg } from '../../server/job/leg.ts';
import type { Site } from '../../server/job/site.ts';
import type { LegPlan } from '../../server/plan/leg.ts';
import type { FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import type { Piece } from '../../server/solver/geometry/centreline.ts';
import { rotate, type Vector3 } from '../../server/solver/geometry/vector.ts';
import type { SiteSource } from '../../server/solver/site/laid-site.ts';
import { laySite } from '../../server/solver/site/lay-site.ts';
import { cuttingDoubt } from '../../server/solver/site/legs/leg-band.ts';
import { cutLength } from '../../server/solver/site/legs/leg-cut.ts';
import { studyLeg } from '../../server/solver/site/legs/leg-study.ts';
import { siteDoubts } from '../../server/solver/site/site-doubts.ts';
import { faultsOf } from '../solver/figures-in.ts';
import { along, frameOf, HINGE, legOf, planned, sourceOf, studyOf, tubeOf } from '../solver/site/legs-made-up.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A hinge athwart, a bent rail astern of it, two legs under the rail, a level read in two ways, a slope asked level. */
const sites = fc
  .record({
    astern: number(350, 700),
    bend: number(0.3, 1.2),
    heads: fc.tuple(number(60, 380), number(640, 800)),
    feet: fc.tuple(number(-80, 200), number(-80, 200)),
    deep: number(350, 900),
    lean: fc.tuple(number(-0.3, 0.3), number(-0.3, 0.3)),
    trim: number(-3, 3),
    list: number(-3, 3),
    slope: number(-4, 4),
    plate: number(0, 10),
    diameter: number(20, 38),
  })
  .map((of) => {
    const hinge = tubeOf('hinge', { x: 10, y: -380, z: 5 }, { x: 0.05, y: 1, z: 0.02 }, [
      { kind: 'straight', length: 800 },
    ]);
    const rail = tubeOf('rail', { x: -of.astern, y: -420, z: -20 }, { x: 0, y: 1, z: 0 }, [
      { kind: 'straight', length: 420 },
      { kind: 'arc', radius: 150, angle: of.bend, rotation: 0.3, made: 'die' },
      { kind: 'straight', length: 500 },
    ]);
    const leg = (name: string, which: 0 | 1): Leg => ({
      name,
      foot: {
        at: { x: of.feet[which] - of.astern, y: which === 0 ? -300 : 250, z: -of.deep },
        surface: { by: 'axes', vector: { x: of.lean[which], y: of.lean[1 - which]!, z: 1 } },
        end: { end: which === 0 ? 'mitre' : 'square', plate: of.plate },
        held: 'pinned',
      },
      head: { at: along('rail', of.heads[which]), end: { end: 'saddle' }, held: 'pinned' },
      tube: { outsideDiameter: of.diameter, wall: 1.5 },
      adjust: null,
    });
    const incline = (x: number, y: number, angle: number) =>
      ({ reading: 'incline', along: { x, y, z: 0 }, angle, accuracy: null }) as const;
    const { site } = sourceOf(frameOf([]), {});
    const whole: Site = {
      ...site,
      level: {
        ...site.level,
        sets: [{ taken: '', note: '', readings: [incline(1, 0, of.trim), incline(0, 1, of.list)] }],
      },
      standing: {
        hinge: HINGE,
        slopes: [{ along: { x: 1, y: 0, z: 0 }, angle: of.slope, to: 'level' }],
        height: null,
        swing: null,
      },
      legs: [leg('one', 0), leg('two', 1)],
    };
    return sourceOf(frameOf([hinge, rail]), whole, { gap: 0.7, shrinkage: 0.5 });
  });

/** Every place and direction of these sites moved; `axis` moves what is turned about. */
type Move = { readonly point: (a: Vector3) => Vector3; readonly axis: (a: Vector3) => Vector3 };

function movedSite(site: Site, { point }: Move): Site {
  const { level, legs } = site;
  return {
    ...site,
    level: {
      ...level,
      sets: level.sets.map((set) => ({
        ...set,
        readings: set.readings.map((one) => (one.reading === 'incline' ? { ...one, along: point(one.along) } : one)),
      })),
    },
    legs: legs.map((leg) => ({ ...leg, foot: movedFoot(leg.foot, point) })),
  };
}

function movedFoot(foot: Leg['foot'], point: Move['point']): Leg['foot'] {
  if ('named' in foot.at || foot.surface.by !== 'axes') throw new Error('feet of these sites are typed');
  return { ...foot, at: point(foot.at), surface: { by: 'axes', vector: point(foot.surface.vector) } };
}

function movedFrame(frame: FrameGeometry, { point, axis }: Move): FrameGeometry {
  const piece = (one: Piece): Piece => {
    const placed = { start: point(one.start), direction: point(one.direction) };
    return one.kind === 'straight' ? { ...one, ...placed } : { ...one, ...placed, normal: axis(one.normal) };
  };
  const member = (one: MemberGeometry): MemberGeometry => ({
    ...one,
    centreline: { ...one.centreline, pieces: one.centreline.pieces.map(piece) },
  });
  return { ...frame, members: frame.members.map(member) };
}

/** The same site elsewhere: the frame itself is moved, so that it is still placed by the structure's own axes. */
function movedSource(source: SiteSource, move: Move): SiteSource {
  const wanted = movedFrame(source.wanted, move);
  const [slope] = source.site.standing.slopes;
  const slopes = slope === undefined ? [] : [{ ...slope, along: move.point(slope.along) }];
  const site = movedSite(source.site, move);
  return {
    ...sourceOf(wanted, {}),
    ...source,
    wanted,
    made: sourceOf(wanted, {}).made,
    site: { ...site, standing: { ...site.standing, slopes } },
  };
}

/** Numbers of a leg that belong to it alone, wherever it stands. */
const ownNumbers = (leg: LegPlan): number[] => [
  leg.centreLength.value,
  leg.cutLength.value,
  leg.middleLength.value,
  leg.shortest.value,
  leg.longest.value,
  leg.foot.tilt.value,
  leg.foot.takes.value,
  leg.head.axisAngle.value,
  leg.head.station.value,
  leg.mass.value,
  leg.perDegree?.value ?? 0,
  leg.rollRound === null ? 0 : Math.abs(leg.rollRound.value),
];

function expectAlike(one: readonly number[], other: readonly number[], digits: number): void {
  expect(one).toHaveLength(other.length);
  for (const [index, value] of one.entries()) expect(value).toBeCloseTo(other[index]!, digits);
}

/** Between two turns that mean the same where they are half a turn apart [degrees]: a saddle at right angles has two sides. */
const turnedApart = (one: number, other: number): number =>
  Math.abs(Math.sin((one - other) * (Math.PI / 180))) * (180 / Math.PI);

/** Legs of a site that can be cut; some of the drawn ones cannot, and say so. */
const legsOf = (source: SiteSource): readonly LegPlan[] => planned(source).legs;

it('a mirrored site has the same legs, their roll the other way round', () => {
  const mirror: Move = {
    point: ({ x, y, z }) => ({ x, y: -y, z }),
    axis: ({ x, y, z }) => ({ x: -x, y, z: -z }),
  };
  fc.assert(
    fc.property(sites, (source) => {
      const [here, there] = [legsOf(source), legsOf(movedSource(source, mirror))];
      expect(there.map(({ order }) => order)).toEqual(here.map(({ order }) => order));
      for (const [index, leg] of here.entries()) {
        const other = there[index]!;
        expectAlike(ownNumbers(other), ownNumbers(leg), 6);
        // a value that is off to the other side does the same, but for what is not straight in it
        const share = other.cutLength.band!.plusMinus / leg.cutLength.band!.plusMinus;
        expect(Math.abs(share - 1)).toBeLessThan(0.01);
        expect(Math.abs(other.bandThen.value / leg.bandThen.value - 1)).toBeLessThan(0.02);
        expect(other.side).toBe({ port: 'starboard', starboard: 'port', middle: 'middle' }[leg.side]);
        if (leg.roll !== null) expect(turnedApart(other.roll!.value, -leg.roll.value)).toBeLessThan(1e-5);
      }
    }),
    { numRuns: 60 },
  );
});

it('a site that is turned altogether has the same legs', () => {
  fc.assert(
    fc.property(sites, number(-3, 3), number(-0.3, 0.3), number(-0.3, 0.3), (source, yaw, pitch, heel) => {
      const turn = (a: Vector3): Vector3 =>
        rotate(rotate(rotate(a, { x: 0, y: 0, z: 1 }, yaw), { x: 0, y: 1, z: 0 }, pitch), { x: 1, y: 0, z: 0 }, heel);
      const [here, there] = [legsOf(source), legsOf(movedSource(source, { point: turn, axis: turn }))];
      expect(there).toHaveLength(here.length);
      for (const [index, leg] of here.entries()) {
        const other = there[index]!;
        // the level is solved to a billionth of a turn
        expectAlike(ownNumbers(other), ownNumbers(leg), 4);
        if (leg.roll !== null) expect(turnedApart(other.roll!.value, leg.roll.value)).toBeLessThan(1e-4);
      }
    }),
    { numRuns: 60 },
  );
});

it('a site a thousand times as large or as small has legs of that size', () => {
  fc.assert(
    fc.property(sites, fc.constantFrom(1e-3, 1e3), (source, factor) => {
      const size = ({ x, y, z }: Vector3): Vector3 => ({ x: x * factor, y: y * factor, z: z * factor });
      const straight = (of: SiteSource, by: number): SiteSource => {
        const rail = tubeOf('rail', { x: -500 * by, y: -420 * by, z: -20 * by }, { x: 0, y: 1, z: 0 }, [
          { kind: 'straight', length: 900 * by },
        ]);
        const hinge = tubeOf('hinge', { x: 0, y: -1500 * by, z: 0 }, { x: 0, y: 1, z: 0 }, [
          // no hinge is shorter than a millimetre
          { kind: 'straight', length: 3000 * by },
        ]);
        const wanted = frameOf([hinge, rail]);
        const legs = of.site.legs.map((leg): Leg => {
          const { end } = leg.foot;
          if (!('spot' in leg.head.at) || end.end === 'socket' || leg.tube === null || 'named' in leg.foot.at)
            throw new Error('legs of these sites are typed');
          return {
            ...leg,
            foot: {
              ...leg.foot,
              at: by === 1 ? leg.foot.at : size(leg.foot.at),
              end: { ...end, plate: end.plate * by },
            },
            head: { ...leg.head, at: along('rail', leg.head.at.distance * by) },
            tube: { outsideDiameter: leg.tube.outsideDiameter * by, wall: leg.tube.wall * by },
          };
        });
        const tube = { ...of.tube, outsideDiameter: 38.1 * by, wall: 1.65 * by };
        const made = sourceOf(wanted, {}).made;
        const site = { ...of.site, legs, tapeAccuracy: of.site.tapeAccuracy * by };
        return { ...of, wanted, made, site, tube, gap: of.gap * by, shrinkage: of.shrinkage * by };
      };
      const [here, there] = [legsOf(straight(source, 1)), legsOf(straight(source, factor))];
      expect(there).toHaveLength(here.length);
      for (const [index, leg] of here.entries()) {
        const other = there[index]!;
        for (const key of ['centreLength', 'cutLength', 'middleLength', 'shortest', 'longest'] as const)
          expect(other[key].value / factor).toBeCloseTo(leg[key].value, 5);
        if (leg.roll !== null) expect(turnedApart(other.roll!.value, leg.roll.value)).toBeLessThan(1e-4);
        expect(other.centreLength.band!.plusMinus / factor).toBeCloseTo(leg.centreLength.band!.plusMinus, 5);
      }
    }),
    { numRuns: 60 },
  );
});

/** Normal numbers of mean 0 and standard deviation 1 by Box and Muller's method, the same every time. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    // Park & Miller's generator, Comm. ACM 31 (1988) 1192
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

const DRAWS = 2000;

it('the ± of a leg is what errors drawn at random make of it, and so is what is left once the first leg stands', () => {
  const normal = normals(2811);
  for (const source of fc.sample(sites, { numRuns: 3, seed: 7 })) {
    const study = studyOf(source);
    const legs = planned(source).legs;
    expect(legs).toHaveLength(2);
    const studied = [0, 1].map((index) => {
      const one = studyLeg(study, index);
      if (one === undefined || !('study' in one)) throw new Error('a leg that cannot be cut');
      return one.study;
    });
    const doubts = siteDoubts(source);
    const drawn = Array.from({ length: DRAWS }, () => {
      const errors = new Map(doubts.map(({ field, plusMinus }) => [field, plusMinus * normal()]));
      const { laid } = laySite(source, (field) => errors.get(field) ?? 0);
      return studied.map((one) => {
        const length = one.pick((cut) => cutLength(cut, one.at.headTip))(laid)!;
        return length - legs[one.index]!.cutLength.value + cuttingDoubt(one.cut) * normal();
      });
    });
    const spread = (values: readonly number[]): number =>
      Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
    for (const index of [0, 1]) {
      const band = legs[index]!.cutLength.band!.plusMinus;
      expect(Math.abs(spread(drawn.map((errors) => errors[index]!)) / band - 1)).toBeLessThan(0.1);
    }
    const first = legs.findIndex(({ order }) => order === 1);
    const [stands, fitted] = [legs[first]!, legs[1 - first]!];
    const share = fitted.perDegree!.value / stands.perDegree!.value;
    const then = drawn.map((errors) => errors[1 - first]! - share * errors[first]!);
    expect(Math.abs(spread(then) / fitted.bandThen.value - 1)).toBeLessThan(0.1);
  }
});

it('a plan of legs has no number that is none, whatever foot, head and tube are', () => {
  const coordinate = number(-900, 900);
  const anywhere = fc.record({ x: coordinate, y: coordinate, z: coordinate });
  const any = fc.record({
    at: anywhere,
    vector: anywhere,
    end: fc.constantFrom(
      { end: 'mitre', plate: 3 } as const,
      { end: 'square', plate: 0 } as const,
      { end: 'socket', depth: 30 } as const,
    ),
    distance: number(0, 1000),
    head: fc.constantFrom({ end: 'saddle' } as const, { end: 'eye', takes: 20 } as const),
    outsideDiameter: number(1, 60),
    wall: number(0.1, 20),
    adds: number(0, 900),
  });
  fc.assert(
    fc.property(sites, any, (source, of) => {
      const base = legOf();
      const leg: Leg = {
        ...base,
        foot: { ...base.foot, at: of.at, surface: { by: 'axes', vector: of.vector }, end: of.end },
        head: { ...base.head, at: along('rail', of.distance), end: of.head },
        tube: { outsideDiameter: of.outsideDiameter, wall: of.wall },
        adjust: { by: 'slip', adds: of.adds, travel: 5 },
      };
      const { legs, findings } = planned({ ...source, site: { ...source.site, legs: [leg] } });
      expect(faultsOf(legs)).toEqual([]);
      const data = findings.flatMap((one) => Object.values(one.data)).filter((value) => typeof value === 'number');
      expect(data.every(Number.isFinite)).toBe(true);
      // a leg is planned, or something stops it
      expect(legs.length === 1 || findings.some(({ grade }) => grade === 'stop')).toBe(true);
    }),
    { numRuns: 150 },
  );
});
