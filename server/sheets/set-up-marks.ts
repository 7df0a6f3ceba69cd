import { words } from '../language/words.ts';
import type { Point } from '../plan/figure.ts';
import type { Chamber, GasSpot } from '../plan/purge.ts';
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

/** Where things lie on a view, and which way the tube runs there. */
type Ways = {
  readonly at: (spot: { readonly point: Point }) => FlatPoint;
  readonly along: (spot: Spot) => FlatPoint;
  /** Out of a tube's side, or out of its end, away from the middle of the picture where both ways would do. */
  readonly aside: (spot: Spot) => FlatPoint;
  readonly outOf: (spot: Spot) => FlatPoint;
};

function waysOn(one: SetUpView, input: SheetInput): Ways {
  const { view, filled, others } = one;
  const centre = middleOf(one);
  const at: Ways['at'] = ({ point }) => onView(view, point);
  const along: Ways['along'] = (spot) => {
    const member = [...filled, ...others].find(({ member: name }) => name === spot.member);
    return tubeWay(member?.centreline ?? [], at(spot));
  };
  const outwards = (from: FlatPoint, [x, y]: FlatPoint): FlatPoint =>
    (from[0] - centre[0]) * x + (from[1] - centre[1]) * y >= 0 ? [x, y] : [-x, -y];
  return {
    at,
    along,
    aside: (spot) => {
      const [x, y] = along(spot);
      return outwards(at(spot), [-y, x]);
    },
    outOf: (spot) => {
      const end = endOf(spot, input);
      if (end === null) return outwards(at(spot), along(spot));
      return end === 'start' ? reversed(along(spot)) : along(spot);
    },
  };
}

/** A sign that reaches across the tube. */
const across = (
  kind: MarkKind,
  spot: Spot,
  ways: Ways,
  { text = '', lettering = HEIGHTS.text }: { readonly text?: string; readonly lettering?: number } = {},
): PlacedMark => ({ kind, at: ways.at(spot), towards: ways.along(spot), text, lettering, off: 'none' });

/** Everything of a set-up that is marked on its picture, each where it is. */
export function marksOf({ chambers, welds }: SetUp, one: SetUpView, input: SheetInput): PlacedMark[] {
  const ways = waysOn(one, input);
  const alone = chambers.length === 1;
  const taped = chambers.flatMap((chamber) => chamber.taped);
  return [
    ...taped
      .filter((spot, index) => taped.findIndex(({ weld }) => weld === spot.weld) === index)
      .map((spot) => across('tape', spot, ways)),
    ...welds.map((weld) => across('weld', weld, ways, { text: weld.name, lettering: HEIGHTS.head })),
    ...chambers.flatMap((chamber) => stoppersOf(chamber, ways)),
    ...chambers.flatMap((chamber) => passagesOf(chamber, ways, alone)),
  ];
}

/** Dams, and plugs; one that a hose or a vent passes through has its name by that. */
function stoppersOf({ dams, plugs, feed, vents }: Chamber, ways: Ways): PlacedMark[] {
  return [
    ...dams.map((dam) => across('dam', dam, ways, { text: words('mark.dam') })),
    ...plugs.map((plug): PlacedMark => {
      const shared = [feed, ...vents].some(({ point }) => near(point, plug.point));
      const mark = across('plug', { ...plug, station: 0 }, ways, { text: shared ? '' : words('mark.plug') });
      return plug.end === 'start' ? { ...mark, towards: reversed(mark.towards) } : mark;
    }),
  ];
}

/** Hose and ways out of a chamber, numbered by the chamber where there are several. */
function passagesOf({ number, feed, vents, plugs }: Chamber, ways: Ways, alone: boolean): PlacedMark[] {
  const passage = (kind: 'feed' | 'vent', text: string, spot: GasSpot): PlacedMark => {
    const sideways = spot.kind === 'gap' || spot.kind === 'hole';
    // hose and way out at one gap stand on two sides of it
    const other = kind === 'vent' && near(spot.point, feed.point);
    const aside = ways.aside(spot);
    const plugged = plugs.some((plug) => near(plug.point, spot.point));
    return {
      kind,
      at: ways.at(spot),
      towards: !sideways ? ways.outOf(spot) : other ? reversed(aside) : aside,
      text,
      lettering: HEIGHTS.text,
      off: sideways ? 'wall' : plugged ? 'plug' : 'none',
    };
  };
  const feedWords = alone ? words('mark.feed') : words('sheet.feed-of', { chamber: number });
  const ventWords = (index: number): string => {
    if (!alone) return words('sheet.vent-of', { chamber: number });
    return vents.length === 1 ? words('mark.vent') : words('sheet.vent-number', { number: index + 1 });
  };
  return [
    passage('feed', isMissing(feed) ? words('sheet.drill-here') : feedWords, feed),
    ...vents.map((vent, index) => passage('vent', ventWords(index), vent)),
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
