import { words } from '../language/words.ts';
import type { Point } from '../plan/figure.ts';
import type { GasSpot } from '../plan/purge.ts';
import type { FlatPoint } from '../plan/view.ts';
import { HEIGHTS } from './ink.ts';
import type { MarkKind } from './marks.ts';
import type { SetUp } from './set-up.ts';
import type { SetUpView } from './set-up-view.ts';
import type { SheetInput } from './sheet-input.ts';
import { endOf, isMissing } from './tube-place-words.ts';
import { onView, tubeWay } from './view-places.ts';

/** Something to mark, in the view's own millimetres; `towards` is a unit vector there. */
export type PlacedMark = {
  readonly kind: MarkKind;
  readonly at: FlatPoint;
  readonly towards: FlatPoint;
  readonly text: string;
  readonly lettering: number;
  /** Begins clear of the tube's wall, or of the plug in the end. */
  readonly off: 'wall' | 'plug' | 'none';
};

type Spot = { readonly member: string; readonly station: number; readonly point: Point };

/** Places this near to each other are one [mm]. */
const SAME = 0.5;

const near = (a: Point, b: Point): boolean => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z) < SAME;

const reversed = ([x, y]: FlatPoint): FlatPoint => [-x, -y];

/** Everything of a set-up that is marked on its picture, each where it is. */
export function marksOf({ chamber, welds }: SetUp, one: SetUpView, input: SheetInput): PlacedMark[] {
  const { view, filled, others } = one;
  const at = ({ point }: { readonly point: Point }): FlatPoint => onView(view, point);
  const way = (spot: Spot): FlatPoint => {
    const member = [...filled, ...others].find(({ member: name }) => name === spot.member);
    return tubeWay(member?.centreline ?? [], at(spot));
  };
  const centre = middleOf(one);
  /** Of two opposite ways the one that leads away from the middle of the picture. */
  const outwards = (from: FlatPoint, [x, y]: FlatPoint): FlatPoint =>
    (from[0] - centre[0]) * x + (from[1] - centre[1]) * y >= 0 ? [x, y] : [-x, -y];
  const aside = (spot: Spot): FlatPoint => {
    const [x, y] = way(spot);
    return outwards(at(spot), [-y, x]);
  };
  const outOf = (spot: Spot): FlatPoint => {
    const end = endOf(spot, input);
    return end === 'start' ? reversed(way(spot)) : end === 'finish' ? way(spot) : outwards(at(spot), way(spot));
  };
  const plugged = ({ point }: Spot): boolean => chamber.plugs.some((plug) => near(plug.point, point));
  /** Hose and way out at one gap stand on two sides of it. */
  const shares = (kind: 'feed' | 'vent', { point }: GasSpot): boolean =>
    kind === 'vent' && near(point, chamber.feed.point);
  const passage = (kind: 'feed' | 'vent', text: string, spot: GasSpot): PlacedMark => {
    const sideways = spot.kind === 'gap' || spot.kind === 'hole';
    return {
      kind,
      at: at(spot),
      towards: !sideways ? outOf(spot) : shares(kind, spot) ? reversed(aside(spot)) : aside(spot),
      text,
      lettering: HEIGHTS.text,
      off: sideways ? 'wall' : plugged(spot) ? 'plug' : 'none',
    };
  };
  const across = (kind: MarkKind, spot: Spot, text = '', lettering: number = HEIGHTS.text): PlacedMark => ({
    kind,
    at: at(spot),
    towards: way(spot),
    text,
    lettering,
    off: 'none',
  });
  const passages = [chamber.feed, ...chamber.vents];
  return [
    ...chamber.taped.map((spot) => across('tape', spot)),
    ...welds.map((weld) => across('weld', weld, weld.name, HEIGHTS.head)),
    ...chamber.dams.map((dam) => across('dam', dam, words('mark.dam'))),
    ...chamber.plugs.map((plug): PlacedMark => {
      const shared = passages.some(({ point }) => near(point, plug.point));
      const direction = way({ ...plug, station: 0 });
      return {
        kind: 'plug',
        at: at(plug),
        towards: plug.end === 'start' ? reversed(direction) : direction,
        text: shared ? '' : words('mark.plug'),
        lettering: HEIGHTS.text,
        off: 'none',
      };
    }),
    passage('feed', words(isMissing(chamber.feed) ? 'sheet.drill-here' : 'mark.feed'), chamber.feed),
    ...chamber.vents.map((vent, index) =>
      passage(
        'vent',
        chamber.vents.length === 1 ? words('mark.vent') : words('sheet.vent-number', { number: index + 1 }),
        vent,
      ),
    ),
  ];
}

/** Middle of the tubes that are filled, as drawn. */
function middleOf({ gas, filled }: SetUpView): FlatPoint {
  const lines = gas.length > 0 ? gas.map(({ line }) => line) : filled.map(({ centreline }) => centreline);
  const points = lines.flat();
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  if (points.length === 0) return [0, 0];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
}
