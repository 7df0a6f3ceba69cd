import type { Site } from '../../../job/site.ts';
import type { PointFound } from '../../../job/site-point.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import type { Off, SolvedLevel } from '../laid-site.ts';
import type { NamedPlane } from './distance-odds.ts';
import { fixedByDistances, isSamePlace, isSolved, placeAtDistances, type FixedDistances } from './distance-place.ts';
import { isFirst, lookup, namedTwice, untold, type Lookup, type Told } from './named.ts';
import { levelAxes, plumbPlace } from './plumb-place.ts';
import { typedPlace } from './site-places.ts';
import { thingsBefore } from './things-before.ts';

type Known = { readonly levels: readonly (SolvedLevel | null)[]; readonly off: Off };

/** What a point may be found from; whoever cannot tell it has said why. */
type Ground = Known & {
  readonly tapeAccuracy: number;
  readonly point: (name: string) => Told<Vector3>;
  /** The same, asked for at a field: what it lacks is said. */
  readonly pointNamed: (name: string, field: string) => Vector3 | null;
  readonly planeNamed: (name: string, field: string) => NamedPlane | null;
  readonly say: (finding: Finding) => void;
  /** What was solved for this point as typed, and where to keep what is solved now. */
  readonly before: FixedDistances | undefined;
  readonly keep: (fixed: FixedDistances) => void;
};

/** Points by name, and the distances that were solved for them, by their places in the list. */
type SolvedPoints = {
  readonly points: ReadonlyMap<string, Vector3>;
  readonly findings: readonly Finding[];
  readonly solved: ReadonlyMap<number, FixedDistances>;
};

/**
 * Where the points of the site are, in the structure's axes [mm], by name: those that can be told, in the order of the
 * job; findings say why the others cannot. They may be measured from each other in any order. The names of points are
 * apart from those of things; of two of one name the first counts, and an empty name is a name.
 *
 * @param typed the same points as typed: distances from places that have not moved since are not solved again
 */
export function sitePoints(
  site: Pick<Site, 'points' | 'things' | 'tapeAccuracy'>,
  known: Known,
  typed?: SolvedPoints,
): SolvedPoints {
  const findings = namedTwice(site.points, '/site/points');
  const say = (one: Finding) => void findings.push(one);
  const solved = new Map<number, FixedDistances>();
  const points: Lookup<Vector3> = lookup(site.points, ({ at }, index) =>
    found(at, `/site/points/${String(index)}/at`, {
      ...ground,
      before: typed?.solved.get(index),
      keep: (fixed) => void solved.set(index, fixed),
    }),
  );
  const pointNamed = (name: string, field: string): Vector3 | null => {
    const told = points.named(name);
    if ('value' in told) return told.value;
    const why = untold(told, name, field);
    if (why !== null) say(why);
    return null;
  };
  const { planeNamed } = thingsBefore(site.things, { ...known, point: points.named, say });
  const ground = { ...known, tapeAccuracy: site.tapeAccuracy, point: points.named, pointNamed, planeNamed, say };
  const all = site.points.flatMap(({ name }, index): [string, Vector3][] => {
    const told = isFirst(site.points, index) ? points.at(index) : undefined;
    return told !== undefined && 'value' in told ? [[name, told.value]] : [];
  });
  return { points: new Map(all), findings, solved };
}

function found(at: PointFound, field: string, ground: Ground): Vector3 | null {
  switch (at.by) {
    case 'typed':
      return typedPlace(at.point, `${field}/point`, ground.off);
    case 'plumb':
      return byPlumb(at, field, ground);
    case 'distances':
      return byDistances(at, field, ground);
  }
}

function byPlumb(at: Extract<PointFound, { by: 'plumb' }>, field: string, ground: Ground): Vector3 | null {
  const from = ground.pointNamed(at.from, `${field}/from`);
  const level = ground.levels[at.set - 1];
  if (!level) {
    ground.say(finding('level-set-missing', 'stop', `${field}/set`, { value: at.set }));
    return null;
  }
  const axes = levelAxes(level.up);
  if (axes === undefined) {
    ground.say(finding('direction-none', 'stop', `${field}/ahead`));
    return null;
  }
  const off = (part: 'ahead' | 'port' | 'up'): number => at[part] + ground.off(`${field}/${part}`);
  return from && plumbPlace(from, { ahead: off('ahead'), port: off('port'), up: off('up') }, axes);
}

function byDistances(at: Extract<PointFound, { by: 'distances' }>, field: string, ground: Ground): Vector3 | null {
  const { before } = ground;
  const still = before === undefined ? undefined : placeAsBefore(before, ground);
  if (still !== undefined) return still;
  const measured = at.distances.flatMap(({ from: name, distance, accuracy }, index) => {
    const one = `${field}/distances/${String(index)}`;
    const from = ground.pointNamed(name, `${one}/from`);
    const pointer = `${one}/distance`;
    const off = ground.off(pointer);
    return from === null
      ? []
      : [{ name, from, distance, accuracy: accuracy ?? ground.tapeAccuracy, field: pointer, off }];
  });
  const plane = at.on === null ? null : ground.planeNamed(at.on, `${field}/on`);
  if (measured.length < at.distances.length || (at.on !== null && plane === null)) return null;
  const fixed =
    before !== undefined && isSolved(before, { measured, plane })
      ? before
      : fixedByDistances(measured, plane, at.towards, field);
  ground.keep(fixed);
  const told = placeAtDistances(fixed, measured, at.towards);
  if (!('finding' in told)) return told;
  ground.say(told.finding);
  return null;
}

/** The place as it was solved before, where nothing that it rests on is off or has moved; of one on a plane ask anew. */
function placeAsBefore({ measured, plane, told }: FixedDistances, { off, point }: Ground): Vector3 | undefined {
  if ('finding' in told || plane !== null) return undefined;
  const stays = measured.every(({ name, from, field }) => {
    const now = off(field) === 0 ? point(name) : undefined;
    return now !== undefined && 'value' in now && isSamePlace(now.value, from);
  });
  return stays ? told.place : undefined;
}
