import { words } from '../language/words.ts';
import type { ViewMark } from '../plan/view.ts';
import { arrowhead } from './dimension.ts';
import { freest } from './free-place.ts';
import { hatch } from './hatch.ts';
import {
  COLOURS,
  HEIGHTS,
  STROKES,
  line,
  shape,
  write,
  type Drawn,
  type Item,
  type Rectangle,
  type Role,
  type Spot,
  type Written,
} from './ink.ts';

/** What can be marked: what a view holds, and a gap under tape and a weld besides. */
export type MarkKind = ViewMark['kind'] | 'tape' | 'weld';

/** A mark on the page: a place with a direction out of the tube; for a weld and its tape, along it. */
export type Mark = {
  readonly kind: MarkKind;
  readonly label: string;
  readonly at: Spot;
  readonly towards: Spot;
  /** What it says instead of its usual words. */
  readonly text?: string;
  /** Half the tube's diameter as drawn [mm], where signs reach across it. */
  readonly half?: number;
  /** Height of its words [mm]; that of texts where it is left out. */
  readonly lettering?: number;
};

/** A sign that reaches across a tube goes this far past it, and is no smaller than that [mm]. */
const PAST_EDGE = 0.7;
const LEAST_HALF = 2.4;

const along = ([x, y]: Spot, [dx, dy]: Spot, distance: number, aside = 0): Spot => [
  x + dx * distance - dy * aside,
  y + dy * distance + dx * aside,
];

/** A small filled dot, drawn as a polygon. */
export function dot([x, y]: Spot, radius: number, role: Role = 'mark'): Drawn {
  const points = Array.from({ length: 10 }, (_, index) => {
    const angle = (Math.PI * index) / 5;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
  });
  return shape(role, points, { stroke: null, fill: COLOURS.black });
}

/**
 * What each kind of mark looks like: gas is a row of dots with an arrow, a plug a solid bar, a dam an open one, a weld a
 * line across the tube, tape a hatched band round it.
 */
export function markSign({ kind, at, towards, half = 0 }: Mark): Drawn[] {
  const out: Spot = towards;
  const into: Spot = [-towards[0], -towards[1]];
  const reach = Math.max(LEAST_HALF, half + PAST_EDGE);
  const bar = (from: number, to: number): Spot[] => [
    along(at, out, from, -reach),
    along(at, out, from, reach),
    along(at, out, to, reach),
    along(at, out, to, -reach),
  ];
  switch (kind) {
    case 'feed':
      return [
        ...[8, 6.5, 5, 3.5].map((distance) => dot(along(at, out, distance), 0.35)),
        arrowhead(along(at, out, 0.5), { x: into[0], y: into[1] }),
      ];
    case 'vent':
      return [
        ...[0.5, 2, 3.5, 5].map((distance) => dot(along(at, out, distance), 0.35)),
        arrowhead(along(at, out, 8.5), { x: out[0], y: out[1] }),
      ];
    case 'plug':
      return [shape('mark', bar(0, 1.4), { stroke: STROKES.thin, fill: COLOURS.black })];
    case 'dam':
      return [shape('mark', bar(-0.6, 0.6), { stroke: STROKES.narrow, fill: COLOURS.white })];
    case 'tape': {
      const band = bar(-1.5, 1.5);
      return [shape('mark', band, { stroke: STROKES.thin, fill: COLOURS.white }), ...hatch(band, 0.7)];
    }
    case 'weld':
      return [line('mark', [along(at, out, 0, -reach), along(at, out, 0, reach)], { ...STROKES.edge, width: 0.7 })];
    case 'joint':
      return [
        line('mark', [along(at, out, 1), along(at, out, 6)], STROKES.narrow),
        arrowhead(along(at, out, 0.5), { x: into[0], y: into[1] }),
      ];
    case 'end':
    case 'bend':
      return [];
  }
}

/** Where the words of a mark begin, past its sign [mm]. */
const PAST: Readonly<Record<MarkKind, number>> = {
  feed: 9.5,
  vent: 9.5,
  plug: 3,
  dam: 4,
  joint: 7,
  end: 3,
  bend: 4,
  tape: 4,
  weld: 3,
};

/** The sign of a mark with its words at the freest place round it. */
export function markItems(mark: Mark, items: readonly Item[], area: Rectangle): Item[] {
  const drawn = markSign(mark);
  const placed = freest(wordPlaces(mark), [...items, ...drawn], area);
  return placed === undefined ? drawn : [...drawn, placed];
}

/** Ways that its words may stand off a mark, the best first [degrees from its direction]. */
const ROUND = [0, 35, -35, 70, -70, 110, -110, 180] as const;
const ASIDE = [90, -90, 60, -60, 120, -120, 35, -35, 145, -145] as const;
/** How much further off they may stand [mm]. */
const FURTHER = [0, 3, 7, 12] as const;

/** Where the words of a mark may stand, the best first; none where it says nothing. */
export function wordPlaces(mark: Mark): Written[] {
  const text = wordsFor(mark);
  if (text === '') return [];
  const height = mark.lettering ?? HEIGHTS.text;
  const beyond = Math.max(0, (mark.half ?? 0) - 1);
  const ways = mark.kind === 'weld' ? ASIDE : ROUND;
  return ways.flatMap((degrees) =>
    FURTHER.map((further) => {
      const angle = (degrees * Math.PI) / 180;
      const [x, y] = mark.towards;
      const direction: Spot = [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
      const at = along(mark.at, direction, PAST[mark.kind] + beyond + further);
      const align = direction[0] > 0.4 ? 'left' : direction[0] < -0.4 ? 'right' : 'middle';
      const down = direction[1] > 0.4 ? height : direction[1] < -0.4 ? 0 : height / 2;
      return write([at[0], at[1] + down], text, { height, weight: 600, align });
    }),
  );
}

function wordsFor({ kind, label, text }: Mark): string {
  if (text !== undefined) return text;
  if (kind === 'bend' || kind === 'joint' || kind === 'weld' || kind === 'tape') return label;
  if (kind === 'end') return words('sheet.datum-end-of', { member: label });
  const name =
    kind === 'feed'
      ? words('mark.feed')
      : kind === 'vent'
        ? words('mark.vent')
        : kind === 'plug'
          ? words('mark.plug')
          : words('mark.dam');
  return label === '' || label === name || label.startsWith(name) ? label || name : `${name} ${label}`;
}
