import type { SiteView } from '../../server/plan/site-view.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { onScreen, type Screen, type Size } from './screen.ts';

export type LabelKind = 'gap' | 'level' | 'hinge' | 'leg' | 'point' | 'thing';

/** A text that belongs to a place on the screen [px]. */
export type SiteLabel = { readonly kind: LabelKind; readonly text: string; readonly at: FlatPoint };

/** Where a text stands: the left end of its foot [px]. */
export type PlacedLabel = SiteLabel & { readonly left: number; readonly foot: number };

/** About how large a sign of these texts is [px]; wider than most, so that estimates err on the clear side. */
const SIGN = { width: 7.4, height: 16 };

/** From a place to its text [px], near first. */
const STEPS = [7, 16, 28];

/** Right, left, above, below, then the four corners between. */
const WAYS: readonly FlatPoint[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
];

type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

const meet = (one: Box, other: Box): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;

function boxBeside({ text, at }: SiteLabel, [right, down]: FlatPoint, step: number): Box {
  const wide = SIGN.width * text.length;
  const left = at[0] + right * step - (right === 0 ? wide / 2 : right < 0 ? wide : 0);
  const middle = at[1] + down * (step + SIGN.height / 2);
  return { left, top: middle - SIGN.height / 2, right: left + wide, bottom: middle + SIGN.height / 2 };
}

/** What a line under a text costs beside standing further off, or on a worse side. */
const COST = { crossed: 2, step: 1, way: 0.1 };

/** Whether any of a line comes into a box, looked at every few pixels. */
function crosses(line: readonly FlatPoint[], { left, top, right, bottom }: Box): boolean {
  return line.slice(1).some((end, index) => {
    const start = line[index] ?? end;
    const looks = Math.ceil(Math.hypot(end[0] - start[0], end[1] - start[1]) / (SIGN.height / 4)) || 1;
    return Array.from({ length: looks + 1 }, (_, look) => look / looks).some((share) => {
      const [x, y] = [start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share];
      return x > left && x < right && y > top && y < bottom;
    });
  });
}

type Candidate = { readonly box: Box; readonly cost: number };

/**
 * Each text beside its place, clear of those before it and of every place that is named, within the picture, and on as
 * few lines as can be. One that finds no room is left out: what matters most must come first.
 *
 * @param lines what is drawn, on the screen [px]
 */
export function placeLabels(
  labels: readonly SiteLabel[],
  { width, height }: Size,
  lines: readonly (readonly FlatPoint[])[],
): readonly PlacedLabel[] {
  const places: readonly Box[] = labels.map(({ at: [x, y] }) => ({
    left: x - 3,
    top: y - 3,
    right: x + 3,
    bottom: y + 3,
  }));
  const taken: Box[] = [];
  const isInside = (box: Box): boolean => box.left >= 0 && box.right <= width && box.top >= 0 && box.bottom <= height;
  return labels.flatMap((label, index) => {
    const others = [...taken, ...places.filter((_, place) => place !== index)];
    const candidates = STEPS.flatMap((step, far) =>
      WAYS.flatMap((way, worse): Candidate[] => {
        const box = boxBeside(label, way, step);
        if (!isInside(box) || others.some((other) => meet(box, other))) return [];
        const crossed = lines.filter((line) => crosses(line, box)).length;
        return [{ box, cost: COST.crossed * crossed + COST.step * far + COST.way * worse }];
      }),
    );
    const [best] = candidates.toSorted((a, b) => a.cost - b.cost);
    if (best === undefined) return [];
    taken.push(best.box);
    return [{ ...label, left: best.box.left, foot: best.box.bottom - 4 }];
  });
}

/** Every line of a view, on the screen [px]. */
export const linesOf = (view: SiteView, screen: Screen): readonly (readonly FlatPoint[])[] =>
  [
    ...[...view.members, ...view.legs].flatMap(({ edges }) => edges),
    ...view.things.flatMap(({ lines }) => lines),
    ...view.gaps.map(({ from, to }) => [from, to]),
    ...view.feet.map(({ surface }) => surface),
    ...[view.level, view.hinge].filter((line) => line !== null),
  ].map((line) => line.map((point) => onScreen(point, screen)));

const between = ([a, b]: FlatPoint, [c, d]: FlatPoint): FlatPoint => [(a + c) / 2, (b + d) / 2];

/** The middle of everything that a thing is drawn by; undefined for one that is not seen. */
function middleOf(lines: SiteView['things'][number]['lines']): FlatPoint | undefined {
  const points = lines.flat();
  const [first] = points;
  if (first === undefined) return undefined;
  const [x, y] = [points.map((point) => point[0]), points.map((point) => point[1])];
  return [(Math.min(...x) + Math.max(...x)) / 2, (Math.min(...y) + Math.max(...y)) / 2];
}

export type LabelWords = {
  readonly level: string;
  readonly hinge: string;
  readonly gap: (value: number) => string;
  readonly swung: (name: string) => string;
};

/** What is written on a view of the site, most important first. */
export function labelsOf(view: SiteView, screen: Screen, said: LabelWords): readonly SiteLabel[] {
  const on = (point: FlatPoint): FlatPoint => onScreen(point, screen);
  const { level, hinge } = view;
  return [
    ...view.gaps.map(({ from, to, value }) => ({
      kind: 'gap' as const,
      text: said.gap(value),
      at: on(between(from, to)),
    })),
    ...(level === null
      ? []
      : [{ kind: 'level' as const, text: said.level, at: on(level[0][0] > level[1][0] ? level[0] : level[1]) }]),
    ...view.legs.flatMap(({ member, centreline }) => {
      const [first, last] = [centreline[0], centreline.at(-1)];
      if (first === undefined || last === undefined) return [];
      return [{ kind: 'leg' as const, text: member, at: on(between(first, last)) }];
    }),
    ...view.points.map(({ name, at }) => ({ kind: 'point' as const, text: name, at: on(at) })),
    ...(hinge === null ? [] : [{ kind: 'hinge' as const, text: said.hinge, at: on(between(hinge[0], hinge[1])) }]),
    ...view.things.flatMap(({ name, swung, lines }) => {
      const at = middleOf(lines);
      return at === undefined ? [] : [{ kind: 'thing' as const, text: swung ? said.swung(name) : name, at: on(at) }];
    }),
  ];
}

/** How high a picture of the site is for its width: as the view is, within what a screen can show well. */
export function pictureHeight([left, bottom, right, top]: SiteView['bounds'], width: number): number {
  const [least, most] = [0.45, 1.05];
  const wide = Math.max(right - left, 1e-6);
  return Math.round(width * Math.min(most, Math.max(least, (top - bottom) / wide)));
}
