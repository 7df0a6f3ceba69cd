import { newJob } from '../../../server/job/default-job.ts';
import type { Leg } from '../../../server/job/leg.ts';
import type { Site } from '../../../server/job/site.ts';
import type { EndGeometry, FrameGeometry } from '../../../server/solver/frame/frame-geometry.ts';
import { arcPiece, straightPiece, type Centreline, type Piece } from '../../../server/solver/geometry/centreline.ts';
import { UNMOVED } from '../../../server/solver/geometry/rigid-motion.ts';
import { length, scale, subtract, unit, type Vector3 } from '../../../server/solver/geometry/vector.ts';
import type { LaidLeg, LaidSite, SiteSource } from '../../../server/solver/site/laid-site.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';
import { resolveGrade } from '../../../server/solver/tube/grades.ts';

export const at = (x: number, y: number, z: number): Vector3 => ({ x, y, z });
const line = (...pieces: Piece[]): Centreline => ({ pieces, length: pieces.reduce((sum, one) => sum + one.length, 0) });
const straight = (from: Vector3, to: Vector3): Piece =>
  straightPiece({ start: from, direction: unit(subtract(to, from))!, length: length(subtract(to, from)) });

const FREE: EndGeometry = { kind: 'free' };
const onto = (member: string, station: number): EndGeometry => ({
  kind: 'saddle',
  onto: member,
  station,
  axisAngle: Math.PI / 2,
  offset: 0,
});

/** Two arms that run back from a hinge at x = 0, a crossbar between them, and a hook that goes round a bend. */
const MEMBERS = [
  { name: 'port arm', start: FREE, finish: FREE, centreline: line(straight(at(0, 300, 0), at(-500, 300, 0))) },
  {
    name: 'starboard arm',
    start: FREE,
    finish: FREE,
    centreline: line(straight(at(0, -300, 0), at(-250, -300, 0)), straight(at(-250, -300, 0), at(-500, -300, 0))),
  },
  {
    name: 'bar',
    start: onto('port arm', 400),
    finish: onto('starboard arm', 400),
    centreline: line(straight(at(-400, 300, 0), at(-400, -300, 0))),
  },
  {
    name: 'hook',
    start: onto('bar', 300),
    finish: FREE,
    centreline: line(
      straight(at(-400, 0, 0), at(-600, 0, 0)),
      arcPiece({
        start: at(-600, 0, 0),
        direction: at(-1, 0, 0),
        normal: at(0, 1, 0),
        radius: 100,
        angle: Math.PI / 2,
        made: 'die',
      }),
      straight(at(-700, 0, 100), at(-700, 0, 400)),
    ),
  },
];

const place = (member: string) => ({ member, spot: 'start' as const, number: 1, distance: 0 });

type Held = Leg['foot']['held'];
export type Under = {
  readonly member: string;
  readonly station: number;
  readonly foot: Vector3;
  readonly held: readonly [Held, Held];
};

/** Two legs from 400 below the hinge to 300 along the arms, pinned at both ends. */
export const TWO: readonly Under[] = [
  { member: 'port arm', station: 300, foot: at(0, 300, -400), held: ['pinned', 'pinned'] },
  { member: 'starboard arm', station: 300, foot: at(0, -300, -400), held: ['pinned', 'pinned'] },
];

const typedLeg = (name: string, { held: [foot, head] }: Under): Leg => ({
  name,
  foot: {
    at: at(0, 0, 0),
    surface: { by: 'axes', vector: at(0, 0, 1) },
    end: { end: 'mitre', plate: 0 },
    held: foot,
  },
  head: { at: place('port arm'), end: { end: 'saddle' }, held: head },
  tube: null,
  adjust: null,
});

export type Made = {
  readonly legs?: readonly Under[];
  readonly hinged?: boolean;
  readonly load?: number | null;
  readonly tube?: { outsideDiameter: number; wall: number };
  readonly up?: Vector3;
  /** Everything this many times as large. */
  readonly times?: number;
};

const grown = (piece: Piece, times: number): Piece =>
  piece.kind === 'straight'
    ? straightPiece({ ...piece, start: scale(piece.start, times), length: piece.length * times })
    : arcPiece({ ...piece, start: scale(piece.start, times), radius: piece.radius * times });

/** A study of that frame: its site as it stands, and once more with the heads and feet of its legs off by 2 mm. */
export function carried(made: Made = {}): SiteStudy {
  const { legs = TWO, hinged = true, load = null, up = at(0, 0, 1), times = 1 } = made;
  const job = newJob('members');
  const tube = { ...job.tube, ...(made.tube ?? { outsideDiameter: 25.4, wall: 1.65 }) };
  const members = MEMBERS.map(({ centreline: { pieces }, ...member }) => ({
    ...member,
    closed: false,
    closing: null,
    centreline: line(...pieces.map((piece) => grown(piece, times))),
  }));
  const wanted: FrameGeometry = { members, checks: [], feet: [], corners: [], planeNormal: null };
  const lines = members.map(({ name, closed, centreline }) => ({ name, closed, centreline }));
  const hinge = { from: place('port arm'), to: place('starboard arm') };
  const site: Site = {
    ...job.site,
    legs: legs.map((leg, index) => typedLeg(`leg ${String(index + 1)}`, leg)),
    load,
    standing: { ...job.site.standing, hinge: hinged ? hinge : null },
  };
  const source: SiteSource = {
    site,
    wanted,
    made: lines,
    tube,
    grade: resolveGrade(job.tube.grade),
    gap: 0,
    shrinkage: 0,
    paperThickness: 0.1,
    templateStations: 16,
  };
  const laidWith = (slip: number, lower: number): LaidSite => ({
    levels: [],
    up,
    points: new Map(),
    frame: {
      motion: UNMOVED,
      placed: UNMOVED,
      hinge: hinged ? { at: at(0, 0, 0), axis: at(0, 1, 0) } : null,
      turn: 0,
      misfits: [],
      lines,
    },
    things: [],
    legs: legs.map(({ member, station, foot }, index): LaidLeg => {
      const y = member === 'port arm' ? 300 : -300;
      return {
        field: `/site/legs/${String(index)}`,
        name: `leg ${String(index + 1)}`,
        foot: scale(at(foot.x, foot.y, foot.z - lower), times),
        surface: at(0, 0, 1),
        head: scale(at(-(station + slip), y, 0), times),
        member,
        station: (station + slip) * times,
        outsideDiameter: tube.outsideDiameter,
        wall: tube.wall,
      };
    }),
  });
  return {
    source,
    laid: laidWith(0, 0),
    varied: [
      { doubt: { field: '/site/legs/0/head/at', plusMinus: 2, from: 'frame', name: '' }, off: 2, laid: laidWith(2, 0) },
      {
        doubt: { field: '/site/legs/0/foot/at/z', plusMinus: 2, from: 'point', name: 'leg 1' },
        off: 2,
        laid: laidWith(0, 2),
      },
    ],
  };
}
