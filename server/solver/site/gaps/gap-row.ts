import type { Figure } from '../../../plan/figure.ts';
import type { GapRow } from '../../../plan/gap.ts';
import { band, figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { placeAt, type Centreline } from '../../geometry/centreline.ts';
import type { LeastGap } from '../../geometry/least-gap.ts';
import { clearOf } from '../../geometry/solid.ts';
import { turnedAbout, type Turning } from '../../geometry/turning.ts';
import { add, dot, scale, subtract, type Vector3 } from '../../geometry/vector.ts';
import type { LaidSite, LaidThing } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import { frameTravel } from './frame-travel.ts';
import { FINE, swingOf, thingGap } from './thing-gap.ts';

/** A tube of the frame, or a leg, as a laid site has it [mm]. */
export type GapTube = {
  readonly of: GapRow['of'];
  readonly name: string;
  readonly outsideDiameter: number;
  /** Its centreline; undefined where that site has none. */
  readonly lineIn: (laid: LaidSite) => Centreline | undefined;
};

/** A row, and how far the thing and the frame have swung there [rad]. */
export type FoundGap = { readonly row: GapRow; readonly thingTurn: number; readonly frameTurn: number };

/**
 * Room between a thing and one tube where it is least over all that swings, with its place and its band: what the
 * accuracies of the site change it by while the tube's place and the turns stay as found, which is all of it at a least
 * value. Legs stay where they are: they carry the frame only where it stands.
 *
 * @param index of the thing
 */
export function gapRow(study: SiteStudy, index: number, tube: GapTube): FoundGap | null {
  const thing = study.laid.things[index];
  const line = tube.lineIn(study.laid);
  if (thing === undefined || thing === null || line === undefined) return null;
  const travel = tubeTravel(tube, study, study.laid);
  const found = thingGap(line, thing, travel);
  const at = found === undefined ? undefined : placesAt(line, thing, travel, found);
  if (found === undefined || at === undefined) return null;
  const radius = tube.outsideDiameter / 2;
  const doubt = siteBand(study, (laid) => {
    const [own, tubeLine] = [laid.things[index], tube.lineIn(laid)];
    if (own === undefined || own === null || tubeLine === undefined) return undefined;
    const seen = placesAt(tubeLine, own, tubeTravel(tube, study, laid), found)?.seen;
    return seen === undefined ? undefined : clearOf(own.body, seen).distance;
  });
  // where the search ended early the least that it can be is told, with what is open as its doubt
  const open = found.distance - found.atLeast;
  const isOpen = open > 2 * FINE;
  const distance = isOpen ? found.atLeast : found.distance;
  const all = isOpen ? band(Math.hypot(open, doubt?.plusMinus ?? 0), ...(doubt?.from ?? []), 'gap-search') : doubt;
  const swings = swingOf(thing) !== null;
  return {
    row: {
      of: tube.of,
      name: tube.name,
      gap: figure(
        distance - radius,
        'mm',
        'g = s − D / 2',
        [input('s', 'surface-to-centreline', distance, 'mm'), input('D', 'outside-diameter', 2 * radius, 'mm')],
        ['gap-search', 'first-order'],
        all,
      ),
      station: figure(found.station, 'mm', 'a', [input('a', 'station', found.station, 'mm')], ['gap-search']),
      onTube: at.onTube,
      onThing: at.onThing,
      thingSwing: swings ? swung(found.solidTurn) : null,
      frameSwing: travel === null ? null : swung(found.lineTurn),
    },
    thingTurn: swings ? found.solidTurn : 0,
    frameTurn: travel === null ? 0 : found.lineTurn,
  };
}

const tubeTravel = ({ of }: GapTube, { source }: SiteStudy, { frame }: LaidSite): Turning | null =>
  of === 'leg' || frame === null ? null : frameTravel(frame, source.site);

const swung = (turn: number): Figure =>
  figure(turn * DEGREES, 'deg', 'φ', [input('φ', 'swung-by', turn * DEGREES, 'deg')], ['gap-search']);

type Places = { readonly seen: Vector3; readonly onTube: Vector3; readonly onThing: Vector3 };

/** Where a found place of the tube is, as the thing at rest sees it and as it stands; and the place of the thing. */
function placesAt(
  line: Centreline,
  { body, swing }: LaidThing,
  travel: Turning | null,
  { station, lineTurn, solidTurn }: LeastGap,
): Places | undefined {
  const point = placeAt(line, station)?.point;
  if (point === undefined) return undefined;
  const onTube = travel === null ? point : turnedAbout(point, travel, lineTurn);
  const seen = swing === null ? onTube : turnedAbout(onTube, swing, -solidTurn);
  const onThing = placeOnBody(body, seen);
  return { seen, onTube, onThing: swing === null ? onThing : turnedAbout(onThing, swing, solidTurn) };
}

/** The nearest place of a thing's axis, centre or plane. */
function placeOnBody(body: LaidThing['body'], point: Vector3): Vector3 {
  const away = subtract(point, body.at);
  if (body.shape === 'point') return body.at;
  if (body.shape === 'plane') return subtract(point, scale(body.normal, dot(away, body.normal)));
  const along = dot(away, body.axis);
  const { from = along, to = along } = body.ends ?? {};
  return add(body.at, scale(body.axis, Math.min(to, Math.max(from, along))));
}
