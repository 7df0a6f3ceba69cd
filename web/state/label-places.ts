import type { FlatPoint } from '../../server/plan/view.ts';

/** Part of the screen [px]. */
export type Area = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

/** A text that belongs to something on the screen, and where it may point at that, best first [px]. */
export type Label = {
  readonly text: string;
  readonly anchors: readonly FlatPoint[];
  /** Which way off the anchor it may stand; left out: any. */
  readonly ways?: readonly FlatPoint[];
  /** Given up where it could stand only at this cost or more; left out: never. */
  readonly most?: number;
};

/** Where a text stands: the left end of its foot [px]. */
export type Placed<One extends Label> = {
  readonly label: One;
  readonly left: number;
  readonly foot: number;
  /** A line from what it belongs to where it stands off that; null where it stands beside. */
  readonly leader: readonly [FlatPoint, FlatPoint] | null;
  /** How well it stands: 0 right beside its place and on nothing. */
  readonly cost: number;
};

/** About how large a sign of these texts is [px]; wider than most, so that estimates err on the clear side. */
const SIGN = { width: 7.4, height: 16 };

/** From a place to its text [px], near first; from `LEADER` on a line leads there. */
const STEPS = [7, 16, 30, 48, 72, 100];
const LEADER = 30;

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

/** What a line under a text costs beside standing further off, on a worse side, or at a worse place. */
const COST = { crossed: 2, step: 1, way: 0.1, anchor: 0.4 };

/** A text that stands at this cost or more is not beside its thing any more: it crosses lines, or needs a long leader. */
export const CROWDED = 3;

/** Kept free round a place that is named [px]. */
const PLACE = 3;

const meet = (one: Area, other: Area): boolean =>
  one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;

/** How wide a text is [px], about. */
export const textWidth = (text: string): number => SIGN.width * text.length;

function boxBeside(text: string, at: FlatPoint, [right, down]: FlatPoint, step: number): Area {
  const wide = textWidth(text);
  const left = at[0] + right * step - (right === 0 ? wide / 2 : right < 0 ? wide : 0);
  const middle = at[1] + down * (step + SIGN.height / 2);
  return { left, top: middle - SIGN.height / 2, right: left + wide, bottom: middle + SIGN.height / 2 };
}

/** The part of a straight line that lies in a box, as shares from its start; null for none. */
export function insideOf(from: FlatPoint, to: FlatPoint, box: Area): readonly [number, number] | null {
  let [first, last] = [0, 1];
  const sides = [
    [from[0], to[0] - from[0], box.left, box.right],
    [from[1], to[1] - from[1], box.top, box.bottom],
  ] as const;
  for (const [start, run, low, high] of sides) {
    if (run === 0) {
      if (start <= low || start >= high) return null;
      continue;
    }
    const [near, far] = [(low - start) / run, (high - start) / run];
    first = Math.max(first, Math.min(near, far));
    last = Math.min(last, Math.max(near, far));
    if (first >= last) return null;
  }
  return [first, last];
}

const crosses = (line: readonly FlatPoint[], box: Area): boolean =>
  line.some((end, index) => index > 0 && insideOf(line[index - 1] ?? end, end, box) !== null);

/** From an anchor to the nearest place of a text's box. */
const leaderTo = ([x, y]: FlatPoint, { left, top, right, bottom }: Area): readonly [FlatPoint, FlatPoint] => [
  [x, y],
  [Math.min(right, Math.max(left, x)), Math.min(bottom, Math.max(top, y))],
];

type Candidate = { readonly box: Area; readonly leader: Placed<Label>['leader']; readonly cost: number };

/** Every place where a text may stand, cheapest first, before it is known what is there. */
const candidatesOf = ({ text, anchors, ways = WAYS }: Label): readonly Candidate[] =>
  anchors
    .flatMap((anchor, worst) =>
      STEPS.flatMap((step, far) =>
        ways.map((way, worse): Candidate => {
          const box = boxBeside(text, anchor, way, step);
          const leader = step < LEADER ? null : leaderTo(anchor, box);
          return { box, leader, cost: COST.step * far + COST.way * worse + COST.anchor * worst };
        }),
      ),
    )
    .toSorted((a, b) => a.cost - b.cost);

/**
 * Each text beside its place, clear of those before it and of every place that is named, within the area, and on as few
 * lines as can be; where it cannot stand beside, a leader leads to it. One that finds no room is left out: what matters
 * most must come first.
 *
 * @param lines what is drawn, on the screen [px]
 * @param taken where nothing may be written [px]
 */
export function placeLabels<One extends Label>(
  labels: readonly One[],
  area: Area,
  { lines, taken = [] }: { readonly lines: readonly (readonly FlatPoint[])[]; readonly taken?: readonly Area[] },
): readonly Placed<One>[] {
  const places = labels.map(({ anchors: [at] }): Area | null =>
    at === undefined ? null : { left: at[0] - PLACE, top: at[1] - PLACE, right: at[0] + PLACE, bottom: at[1] + PLACE },
  );
  const texts: Area[] = [...taken];
  const leaders: (readonly FlatPoint[])[] = [];
  return labels.flatMap((label, index): Placed<One>[] => {
    const others = [...texts, ...places.filter((place, at) => place !== null && at !== index)] as readonly Area[];
    let best: Candidate | null = null;
    const most = label.most ?? Infinity;
    for (const one of candidatesOf(label)) {
      if (one.cost >= (best?.cost ?? most)) break;
      const { box, leader } = one;
      if (!isWithin(box, area) || others.some((other) => meet(box, other))) continue;
      if (leaders.some((line) => crosses(line, box))) continue;
      if (leader !== null && texts.some((other) => crosses(leader, other))) continue;
      const cost = one.cost + COST.crossed * lines.filter((line) => crosses(line, box)).length;
      if (cost < (best?.cost ?? most)) best = { ...one, cost };
    }
    if (best === null) return [];
    texts.push(best.box);
    if (best.leader !== null) leaders.push(best.leader);
    return [{ label, left: best.box.left, foot: best.box.bottom - 4, leader: best.leader, cost: best.cost }];
  });
}

const isWithin = (box: Area, { left, top, right, bottom }: Area): boolean =>
  box.left >= left && box.right <= right && box.top >= top && box.bottom <= bottom;
