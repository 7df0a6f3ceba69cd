import type { SiteView } from '../../server/plan/site-view.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { CROWDED, placeLabels, textWidth, type Area, type Label, type Placed } from './label-places.ts';
import { onScreen, type Screen } from './screen.ts';
import { levelAcross } from './site-lines.ts';

export type LabelKind = 'gap' | 'level' | 'hinge' | 'leg' | 'point' | 'thing';

/** A text of the drawing of the site; its field is what it belongs to, empty for what has none. */
export type SiteLabel = Label & { readonly kind: LabelKind; readonly field: string };

/** What is said on the drawing. */
export type LabelWords = {
  readonly level: string;
  readonly hinge: string;
  readonly gap: (value: number) => string;
  readonly swung: (name: string) => string;
  /** What a leg, a point or a thing is called, by its field and the name that the plan has for it. */
  readonly called: (field: string, name: string) => string;
};

/** What is written on a drawing, where, and what there is no room for. */
export type Written = {
  readonly placed: readonly Placed<SiteLabel>[];
  /** Legs bear their numbers: there is no room for their names. */
  readonly numbered: boolean;
  /** Names that have no room. */
  readonly leftOut: readonly string[];
};

/**
 * Where along a leg its name may point, best first: a name at the middle, a number at the foot, because many legs run
 * together at the frame and apart on what they stand on.
 */
const ALONG = { name: [0.5, 0.3, 0.7, 0.12, 0.88], number: [0, 0.1, 0.25, 0.4, 0.6] };

/** Names of points and things that would cover more lines than three are given up: the drawing matters more. */
const MOST = 8;

/** Above what is level, and below. */
const OFF_LEVEL: readonly FlatPoint[] = [
  [0, -1],
  [0, 1],
];

/** Every line of a view, on the screen [px]. */
export const linesOf = (view: SiteView, screen: Screen): readonly (readonly FlatPoint[])[] =>
  [
    ...[...view.members, ...view.legs].flatMap(({ edges }) => edges),
    ...view.things.flatMap(({ lines }) => lines),
    ...view.gaps.map(({ from, to }) => [from, to]),
    ...view.feet.map(({ surface }) => surface),
    ...(view.hinge === null ? [] : [view.hinge]),
  ].map((line) => line.map((point) => onScreen(point, screen)));

const between = ([a, b]: FlatPoint, [c, d]: FlatPoint, share = 0.5): FlatPoint => [
  a + (c - a) * share,
  b + (d - b) * share,
];

/** The middle of everything that a thing is drawn by; undefined for one that is not seen. */
function middleOf(lines: SiteView['things'][number]['lines']): FlatPoint | undefined {
  const points = lines.flat();
  if (points.length === 0) return undefined;
  const [x, y] = [points.map((point) => point[0]), points.map((point) => point[1])];
  return [(Math.min(...x) + Math.max(...x)) / 2, (Math.min(...y) + Math.max(...y)) / 2];
}

/** Where a thing's name may point: its middle, then the middles of its longest lines. */
function anchorsOf(lines: SiteView['things'][number]['lines']): FlatPoint[] {
  const middle = middleOf(lines);
  if (middle === undefined) return [];
  const [longest = []] = lines;
  const sides = longest.slice(1).flatMap((end, index) => {
    const start = longest[index] ?? end;
    return [between(start, end), between(start, end, 0.2), between(start, end, 0.8)];
  });
  return [middle, ...sides.slice(0, 12)];
}

/** The number of a leg among those of the job, from 1. */
export const numberOf = (field: string): number => Number(/\d+$/.exec(field)?.[0] ?? -1) + 1;

/** Where the word at the line that is level may stand: at its right end, else at its left one [px]. */
function levelAnchors(text: string, line: readonly [FlatPoint, FlatPoint]): FlatPoint[] {
  const [left, right] = line[0][0] < line[1][0] ? line : [line[1], line[0]];
  const length = Math.hypot(right[0] - left[0], right[1] - left[1]);
  const share = Math.min(0.5, (textWidth(text) / 2 + 6) / Math.max(length, 1));
  return [between(right, left, share), between(left, right, share)];
}

/**
 * What is written on a view of the site, most important first.
 *
 * @param numbered legs bear their numbers
 */
export function labelsOf(
  view: SiteView,
  screen: Screen,
  said: LabelWords,
  { area, numbered }: { readonly area: Area; readonly numbered: boolean },
): readonly SiteLabel[] {
  const on = (point: FlatPoint): FlatPoint => onScreen(point, screen);
  const { hinge } = view;
  const level = levelAcross(view, screen, area);
  return [
    ...view.gaps.map(({ field, from, to, value }) => ({
      kind: 'gap' as const,
      field,
      text: said.gap(value),
      anchors: [on(between(from, to))],
    })),
    ...(level === null
      ? []
      : [
          {
            kind: 'level' as const,
            field: '',
            text: said.level,
            anchors: levelAnchors(said.level, level),
            ways: OFF_LEVEL,
          },
        ]),
    ...view.legs.flatMap(({ member, field, centreline }): SiteLabel[] => {
      const [first, last] = [centreline[0], centreline.at(-1)];
      if (first === undefined || last === undefined) return [];
      const along = numbered ? ALONG.number : ALONG.name;
      const text = numbered ? String(numberOf(field)) : said.called(field, member);
      return [{ kind: 'leg', field, text, anchors: along.map((share) => on(between(first, last, share))) }];
    }),
    ...(hinge === null
      ? []
      : [
          {
            kind: 'hinge' as const,
            field: '',
            text: said.hinge,
            anchors: [0.5, 0.25, 0.75].map((share) => on(between(hinge[0], hinge[1], share))),
          },
        ]),
    ...view.points.map(({ name, field, at }) => ({
      kind: 'point' as const,
      field,
      text: said.called(field, name),
      anchors: [on(at)],
      most: MOST,
    })),
    ...view.things.flatMap(({ name, field, swung, lines }): SiteLabel[] => {
      const anchors = anchorsOf(lines).map(on);
      const called = field === '' ? name : said.called(field, name);
      return anchors.length === 0
        ? []
        : [{ kind: 'thing', field, text: swung ? said.swung(called) : called, anchors, most: MOST }];
    }),
  ];
}

/**
 * What is written on a view of the site. Legs bear their names where every one of them can stand beside its leg, else
 * their numbers.
 *
 * @param few a small picture has room for the numbers of its legs, what is level and the gaps alone
 */
export function writtenOn(
  view: SiteView,
  screen: Screen,
  said: LabelWords,
  { area, taken, few }: { readonly area: Area; readonly taken: readonly Area[]; readonly few: boolean },
): Written {
  const level = levelAcross(view, screen, area);
  const lines = [...linesOf(view, screen), ...(level === null ? [] : [level])];
  const write = (numbered: boolean): Written => {
    const wanted = labelsOf(view, screen, said, { area, numbered });
    const written = few ? wanted.filter(({ kind }) => kind === 'gap' || kind === 'level' || kind === 'leg') : wanted;
    const placed = placeLabels(written, area, { lines, taken });
    const shown = new Set(placed.map(({ label }) => label));
    const leftOut = wanted.filter((label) => !shown.has(label)).map(({ text }) => text);
    return { placed, numbered, leftOut: [...new Set(leftOut)] };
  };
  const named = write(false);
  const beside = named.placed.filter(({ label, cost }) => label.kind === 'leg' && cost < CROWDED).length;
  return view.legs.length === 0 || beside === view.legs.length ? named : write(true);
}
