import type { Site } from '../../../job/site.ts';
import type { PointFound } from '../../../job/site-point.ts';
import type { Finding } from '../../../plan/finding.ts';
import { finding } from '../../finding.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import type { Off, SolvedLevel } from '../laid-site.ts';
import type { NamedPlane } from './distance-odds.ts';
import { distancePlace } from './distance-place.ts';
import { isFirst, lookup, namedTwice, untold } from './named.ts';
import { levelAxes, plumbPlace } from './plumb-place.ts';
import { typedPlace } from './site-places.ts';
import { thingsBefore } from './things-before.ts';

type Known = { readonly levels: readonly (SolvedLevel | null)[]; readonly off: Off };

/** What a point may be found from; whoever cannot tell it has said why. */
type Ground = Known & {
  readonly tapeAccuracy: number;
  readonly pointNamed: (name: string, field: string) => Vector3 | null;
  readonly planeNamed: (name: string, field: string) => NamedPlane | null;
  readonly say: (finding: Finding) => void;
};

/**
 * Where the points of the site are, in the structure's axes [mm], by name: those that can be told, in the order of the
 * job; findings say why the others cannot. They may be measured from each other in any order. The names of points are
 * apart from those of things; of two of one name the first counts, and an empty name is a name.
 */
export function sitePoints(
  site: Pick<Site, 'points' | 'things' | 'tapeAccuracy'>,
  known: Known,
): { points: ReadonlyMap<string, Vector3>; findings: readonly Finding[] } {
  const findings = namedTwice(site.points, '/site/points');
  const say = (one: Finding) => void findings.push(one);
  const points = lookup(site.points, ({ at }, index) => found(at, `/site/points/${String(index)}/at`, ground));
  const pointNamed = (name: string, field: string): Vector3 | null => {
    const told = points.named(name);
    if ('value' in told) return told.value;
    const why = untold(told, name, field);
    if (why !== null) say(why);
    return null;
  };
  const { planeNamed } = thingsBefore(site.things, { ...known, point: points.named, say });
  const ground: Ground = { ...known, tapeAccuracy: site.tapeAccuracy, pointNamed, planeNamed, say };
  const all = site.points.flatMap(({ name }, index): [string, Vector3][] => {
    const told = isFirst(site.points, index) ? points.at(index) : undefined;
    return told !== undefined && 'value' in told ? [[name, told.value]] : [];
  });
  return { points: new Map(all), findings };
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
  const measured = at.distances.flatMap(({ from: name, distance, accuracy }, index) => {
    const one = `${field}/distances/${String(index)}`;
    const from = ground.pointNamed(name, `${one}/from`);
    const off = ground.off(`${one}/distance`);
    return from === null ? [] : [{ name, from, distance, accuracy: accuracy ?? ground.tapeAccuracy, off }];
  });
  const plane = at.on === null ? null : ground.planeNamed(at.on, `${field}/on`);
  if (measured.length < at.distances.length || (at.on !== null && plane === null)) return null;
  const told = distancePlace(measured, plane, at.towards, field);
  if ('place' in told) return told.place;
  ground.say(told.finding);
  return null;
}
