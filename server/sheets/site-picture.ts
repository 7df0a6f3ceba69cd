import type { SiteView } from '../plan/site-view.ts';
import type { FlatPoint, ViewMember } from '../plan/view.ts';
import { clipLine } from './clip.ts';
import { hatch } from './hatch.ts';
import { around, COLOURS, STROKES, line, type Item, type Rectangle, type Spot, type Stroke } from './ink.ts';
import { dot } from './marks.ts';
import { largestOfAll, type Scale } from './scale.ts';
import { siteNames, type Named } from './site-names.ts';
import type { Block } from './text-block.ts';

/** What of the site is drawn besides tubes and things. */
export type SiteSelection = {
  /** Job field of the leg that is drawn thick, and alone has its name; null: all alike. */
  readonly leg: string | null;
  /** The tube whose start has a dot, from where places on it are measured; null: none. */
  readonly startOf: string | null;
  /** Names at points and things, and the least gaps with what they are. */
  readonly named: boolean;
  readonly gap: (value: number) => string;
  /** What stands at the line that is level now. */
  readonly level: string;
};

/** Room round the drawing for names, and where only one thing has one [mm on paper]. */
const ROOM = 7;
const LITTLE_ROOM = 3;

/** Where things need not be whole, they are drawn so far beyond the tubes, as a share of the size of those. */
const BEYOND = 0.04;

/** The level line runs on past everything else by this [mm on paper]. */
const PAST = 5;

/** A foot is hatched on the side away from the leg, this deep [mm]. */
const GROUND = 1.8;

const LEVEL: Stroke = { ...STROKES.narrow, colour: COLOURS.blue, dash: [7, 1.5, 1.5, 1.5] };
const HINGE: Stroke = { ...STROKES.narrow, dash: [5, 0.8, 0.4, 0.8] };
const CHOSEN: Stroke = { ...STROKES.edge, width: 1 };

const roomFor = ({ named: full }: SiteSelection): number => (full ? ROOM : LITTLE_ROOM);

/** The view cut to what must fit, at full size: things are whole where they are named, else only what stands near. */
function reach(view: SiteView, { named: full }: SiteSelection): { view: SiteView; size: Rectangle } {
  const { members, legs, things, points, feet, hinge } = view;
  const tubes = [
    ...[...members, ...legs].flatMap(({ edges, centreline }) => [...edges.flat(), ...centreline]),
    ...feet.flatMap(({ surface }) => surface),
    ...(hinge ?? []),
  ];
  const all = [...things.flatMap(({ lines }) => lines.flat()), ...points.map(({ at }) => at)];
  if (full || tubes.length === 0) return { view, size: around([...tubes, ...all]) };
  const bare = around(tubes);
  const by = BEYOND * Math.max(bare.width, bare.height);
  const size = { left: bare.left - by, top: bare.top - by, width: bare.width + 2 * by, height: bare.height + 2 * by };
  const near = things.map((thing) => ({
    ...thing,
    lines: thing.lines.flatMap((one) => clipLine(one, size).map((part) => part.map(([x, y]): FlatPoint => [x, y]))),
  }));
  return { view: { ...view, things: near }, size };
}

/** The largest scale at which a view of the site fits [mm]. */
export function siteScale(
  view: SiteView,
  what: SiteSelection,
  room: { readonly width: number; readonly height: number },
): Scale {
  const { size } = reach(view, what);
  const round = 2 * roomFor(what);
  return largestOfAll(
    (factor) => size.width * factor + round <= room.width && size.height * factor + round <= room.height,
  );
}

/** A view of the site at a scale, in the middle of a width, from its own top left corner. */
export function sitePicture(
  whole: SiteView,
  what: SiteSelection,
  room: { readonly width: number; readonly height: number; readonly scale?: Scale },
): Block & { readonly scale: Scale } {
  const { view, size } = reach(whole, what);
  const scale = room.scale ?? siteScale(whole, what, room);
  const round = roomFor(what);
  const inner = {
    left: (room.width - size.width * scale.factor) / 2,
    top: round,
    width: size.width * scale.factor,
    height: size.height * scale.factor,
  };
  const height = inner.height + 2 * round;
  const place = ([x, y]: FlatPoint): Spot => [
    inner.left + (x - size.left) * scale.factor,
    inner.top + (size.top + size.height - y) * scale.factor,
  ];
  const level = levelLine(view, place, inner);
  const items: Item[] = [...drawn(view, what, place), ...level];
  const area = { left: 0, top: 0, width: room.width, height };
  return {
    height,
    items: [...items, ...siteNames(named(view, what, place, level), items, area)],
    scale,
    scales: [scale.text],
  };
}

function drawn(view: SiteView, { leg, startOf, named: full }: SiteSelection, place: (at: FlatPoint) => Spot): Item[] {
  const tube = ({ edges }: ViewMember, stroke: Stroke): Item[] =>
    edges.map((edge) => line('edge', edge.map(place), stroke));
  const quiet: Stroke = leg === null ? STROKES.edge : STROKES.narrow;
  return [
    ...view.things.flatMap(({ lines, swung }) =>
      lines.map((one) => line('mark', one.map(place), swung ? STROKES.hidden : STROKES.narrow)),
    ),
    ...view.members.flatMap((member) => tube(member, quiet)),
    ...view.legs.flatMap((one) => tube(one, one.field === leg ? CHOSEN : quiet)),
    ...view.feet.flatMap((foot) => ground(foot, view, place)),
    ...(view.hinge === null ? [] : [line('centreline', view.hinge.map(place), HINGE)]),
    ...(full ? view.points.map(({ at }) => dot(place(at), 0.6)) : []),
    ...view.members
      .filter(({ member }) => member === startOf)
      .flatMap(({ centreline: [start] }) => (start === undefined ? [] : [dot(place(start), 1.1)])),
    ...(full ? view.gaps.map(({ from, to }) => line('mark', [place(from), place(to)], STROKES.edge)) : []),
  ];
}

/** The surface that a leg stands on, hatched behind it. */
function ground(
  { field, at, surface }: SiteView['feet'][number],
  view: SiteView,
  place: (at: FlatPoint) => Spot,
): Item[] {
  const [from, to] = [place(surface[0]), place(surface[1])];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < GROUND) return [];
  const centre = view.legs.find((leg) => leg.field === field)?.centreline ?? [];
  const far = centre.reduce((best, one) => (away(one, at) > away(best, at) ? one : best), at);
  const [mx, my] = place(far);
  const normal: Spot = [(to[1] - from[1]) / length, (from[0] - to[0]) / length];
  const side = (mx - from[0]) * normal[0] + (my - from[1]) * normal[1] > 0 ? -GROUND : GROUND;
  const behind = ([x, y]: Spot): Spot => [x + normal[0] * side, y + normal[1] * side];
  return [line('mark', [from, to], STROKES.edge), ...hatch([from, to, behind(to), behind(from)], 0.9)];
}

const away = ([x, y]: FlatPoint, [x0, y0]: FlatPoint): number => Math.hypot(x - x0, y - y0);

/** What is level now, as far as the drawing goes and a little more. */
function levelLine({ level }: SiteView, place: (at: FlatPoint) => Spot, inner: Rectangle): Item[] {
  if (level === null) return [];
  const wide = { ...inner, left: inner.left - PAST, width: inner.width + 2 * PAST };
  return clipLine(level.map(place), wide).map((part) => line('mark', part, LEVEL));
}

/** What has a name on the drawing, the most needed first. */
function named(
  view: SiteView,
  { leg, named: full, gap, level: levelSaid }: SiteSelection,
  place: (at: FlatPoint) => Spot,
  level: readonly Item[],
): Named[] {
  const middle = (points: readonly FlatPoint[], share = 0.5): Spot | undefined => {
    const at = points[Math.floor((points.length - 1) * share)];
    const next = points[Math.floor((points.length - 1) * share) + 1] ?? at;
    if (at === undefined || next === undefined) return undefined;
    const [x, y] = [place(at), place(next)];
    return [(x[0] + y[0]) / 2, (x[1] + y[1]) / 2];
  };
  const legs = view.legs.filter(({ field }) => leg === null || field === leg);
  const levelAt = level.flatMap((item) => (item.kind === 'line' ? item.points.slice(-1) : []));
  const names: (Named | undefined)[] = [
    ...legs.map(({ member, centreline }) => nameAt(member, middle(centreline), true)),
    ...levelAt.map((at) => nameAt(levelSaid, at, false)),
    ...(full ? view.gaps.map(({ from, to, value }) => nameAt(gap(value), middle([from, to]), true)) : []),
    ...(full
      ? view.things.filter(({ swung }) => !swung).map(({ name, lines }) => nameAt(name, middle(lines[0] ?? []), false))
      : []),
    ...(full ? view.points.map(({ name, at }) => nameAt(name, place(at), false)) : []),
  ];
  return names.filter((one) => one !== undefined);
}

const nameAt = (text: string, at: Spot | undefined, bold: boolean): Named | undefined =>
  at === undefined || text === '' ? undefined : { text, at, bold };
