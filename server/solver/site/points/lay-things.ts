import type { Direction, SitePlace } from '../../../job/direction.ts';
import type { Site } from '../../../job/site.ts';
import type { SiteThing } from '../../../job/site-thing.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import { RADIANS } from '../../geometry/angle.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import { directionOf, type DirectionContext } from '../level/directions.ts';
import type { LaidFrame, LaidThing, Off, SolvedLevel } from '../laid-site.ts';
import { namedTwice } from './named.ts';
import { sitePlace } from './site-places.ts';
import { thingDirections, type ThingDirections } from './thing-directions.ts';

/** What things are laid by; of a frame that does not stand there are no places. */
type ThingsKnown = {
  readonly levels: readonly (SolvedLevel | null)[];
  readonly points: ReadonlyMap<string, Vector3>;
  readonly frame: LaidFrame | null;
  readonly placeOnFrame?: DirectionContext['placeOnFrame'];
  readonly off: Off;
};

/** Ends of a cylinder are this far apart at the least [mm]: a disc is as thin as a micrometer reads; our own choice. */
const THINNEST = 0.001;

/** Where places are and which way directions run; null where that cannot be told, which has been said then. */
type Ground = {
  readonly place: (place: SitePlace, field: string) => Vector3 | null;
  readonly pointNamed: (name: string, field: string) => Vector3 | null;
  readonly directions: ThingDirections;
};

/**
 * The things of the site in the structure's axes, in the order of the job; null where one cannot be told: a finding says
 * why. The names of things are apart from those of points. Of two of one name both are laid, and the first is meant
 * where that name is asked for. The two ends of a cylinder, and those of a swing, may be typed either way round.
 */
export function layThings(
  site: Pick<Site, 'things'>,
  known: ThingsKnown,
): { things: readonly (LaidThing | null)[]; findings: readonly Finding[] } {
  const { points, off } = known;
  const findings = namedTwice(site.things, '/site/things');
  const say = (one: Finding) => void findings.push(one);
  const context: DirectionContext = {
    levels: known.levels,
    points,
    frame: known.frame,
    alongOf: () => undefined, // directions by another thing are taken before
    placeOnFrame: known.placeOnFrame ?? (() => undefined),
    off,
  };
  const place = (typed: SitePlace, field: string): Vector3 | null => {
    const found = sitePlace(typed, field, points, off);
    if ('point' in found) return found.point;
    say(found.finding);
    return null;
  };
  const resolved = (direction: Direction, field: string): Vector3 | null => {
    const found = directionOf(direction, field, context);
    if ('direction' in found) return found.direction;
    say(found.finding);
    return null;
  };
  const pointNamed = (name: string, field: string): Vector3 | null => {
    const point = points.get(name);
    if (point === undefined) say(finding('site-name-missing', 'stop', field, { name }));
    return point ?? null;
  };
  const ground = { place, pointNamed, directions: thingDirections(site.things, { resolved, pointNamed, say }) };
  return { things: site.things.map((thing, index) => laid(thing, index, ground)), findings };
}

function laid(thing: SiteThing, index: number, ground: Ground): LaidThing | null {
  const field = `/site/things/${String(index)}`;
  const body = bodyOf(thing, index, ground);
  const swing = thing.swing === null ? null : swingOf(thing.swing, `${field}/swing`, ground);
  // without its swing it would be kept clear of where it stands alone
  if (body === null || swing === 'untold') return null;
  return { field, name: thing.name, clearance: thing.clearance, body, swing };
}

function bodyOf({ shape }: SiteThing, index: number, ground: Ground): LaidThing['body'] | null {
  const field = `/site/things/${String(index)}/shape`;
  if (shape.shape === 'point') {
    const at = ground.place(shape.at, `${field}/at`);
    return at && { shape: 'point', at, radius: shape.radius };
  }
  const told = ground.directions.along(index);
  const along = 'value' in told ? told.value : null;
  if (shape.shape === 'cylinder') {
    const at = ground.place(shape.at, `${field}/at`);
    return at && along && { shape: 'cylinder', at, axis: along, radius: shape.diameter / 2, ends: inOrder(shape.ends) };
  }
  if (shape.plane.by === 'normal') {
    const at = ground.place(shape.plane.at, `${field}/plane/at`);
    return at && along && { shape: 'plane', at, normal: along };
  }
  // points that are missing were said with the normal
  const at = along && ground.pointNamed(shape.plane.points[0] ?? '', `${field}/plane/points/0`);
  return at && along && { shape: 'plane', at, normal: along };
}

function inOrder(ends: { readonly from: number; readonly to: number } | null) {
  if (ends === null) return null;
  const from = Math.min(ends.from, ends.to);
  return { from, to: Math.max(ends.from, ends.to, from + THINNEST) };
}

function swingOf(
  swing: NonNullable<SiteThing['swing']>,
  field: string,
  ground: Ground,
): NonNullable<LaidThing['swing']> | 'untold' {
  const about = ground.place(swing.about, `${field}/about`);
  const axis = ground.directions.of(swing.axis, `${field}/axis`);
  if (about === null || axis === null) return 'untold';
  const [from, to] = [Math.min(swing.from, swing.to) * RADIANS, Math.max(swing.from, swing.to) * RADIANS];
  return { about, axis, from, to };
}
