// Made-up sites with two legs under a hinged frame, and the same site elsewhere.
import fc from 'fast-check';
import type { Leg } from '../../server/job/leg.ts';
import type { Site } from '../../server/job/site.ts';
import type { FrameGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import type { Piece } from '../../server/solver/geometry/centreline.ts';
import type { Vector3 } from '../../server/solver/geometry/vector.ts';
import type { SiteSource } from '../../server/solver/site/laid-site.ts';
import { along, frameOf, HINGE, sourceOf, tubeOf } from '../solver/site/legs-made-up.ts';

export const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A hinge athwart, a bent rail astern of it, two legs under the rail, a level read in two ways, a slope asked level. */
export const sites = fc
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
export type Move = { readonly point: (a: Vector3) => Vector3; readonly axis: (a: Vector3) => Vector3 };

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
export function movedSource(source: SiteSource, move: Move): SiteSource {
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
