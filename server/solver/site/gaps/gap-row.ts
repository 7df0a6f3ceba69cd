import type { Figure } from '../../../plan/figure.ts';
import type { GapRow } from '../../../plan/gap.ts';
import { band, figure, input } from '../../figure.ts';
import { DEGREES } from '../../geometry/angle.ts';
import { placeAt, type Centreline } from '../../geometry/centreline.ts';
import { keptPlace, keptStation } from '../../geometry/kept-place.ts';
import type { LeastGap } from '../../geometry/least-gap.ts';
import { clearOf, heartOf } from '../../geometry/solid.ts';
import { turnedAbout, type Turning } from '../../geometry/turning.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import type { LaidThing } from '../laid-site.ts';
import { siteBand, type SiteStudy } from '../site-study.ts';
import type { Beside } from './gap-search.ts';
import { tubeTravel } from './gap-tubes.ts';
import { FINE, swingOf } from './thing-gap.ts';

/** A row, and how far the thing and the frame have swung there [rad]. */
export type FoundGap = { readonly row: GapRow; readonly thingTurn: number; readonly frameTurn: number };

/**
 * Room between a thing and one tube where it is least over all that swings, with its place and its band: what the
 * accuracies of the site change it by while the tube's place and the turns stay as found, which is all of it at a least
 * value.
 *
 * @param study with the doubts that move the two
 * @param index of the thing
 */
export function gapRow(study: SiteStudy, index: number, { tube, found }: Beside): FoundGap | null {
  const thing = study.laid.things[index];
  const line = tube.lineIn(study.laid);
  if (thing === undefined || thing === null || line === undefined) return null;
  const travel = tubeTravel(tube, study, study.laid);
  const at = placesAt(line, thing, travel, found);
  if (at === undefined) return null;
  const radius = tube.outsideDiameter / 2;
  const place = keptPlace(line, found.station);
  const doubt = siteBand(study, (laid) => {
    const [own, tubeLine] = [laid.things[index], tube.lineIn(laid)];
    if (own === undefined || own === null || tubeLine === undefined) return undefined;
    const station =
      place === undefined || tubeLine.pieces.length !== line.pieces.length
        ? found.station
        : keptStation(place, tubeLine);
    const seen = placesAt(tubeLine, own, tubeTravel(tube, study, laid), { ...found, station })?.seen;
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
      field: tube.field,
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
  const onThing = heartOf(body, seen);
  return { seen, onTube, onThing: swing === null ? onThing : turnedAbout(onThing, swing, solidTurn) };
}
