import { words } from '../language/words.ts';
import type { ViewMark } from '../plan/view.ts';
import { arrowhead } from './dimension.ts';
import { freest } from './free-place.ts';
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
  type Spot,
} from './ink.ts';

/** A mark on the page: a place with a direction out of the tube. */
export type Mark = {
  readonly kind: ViewMark['kind'];
  readonly label: string;
  readonly at: Spot;
  readonly towards: Spot;
  /** What it says instead of its usual words. */
  readonly text?: string;
};

const along = ([x, y]: Spot, [dx, dy]: Spot, distance: number, aside = 0): Spot => [
  x + dx * distance - dy * aside,
  y + dy * distance + dx * aside,
];

/** A small filled dot, drawn as a polygon. */
function dot([x, y]: Spot, radius: number): Drawn {
  const points = Array.from({ length: 10 }, (_, index) => {
    const angle = (Math.PI * index) / 5;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
  });
  return shape('mark', points, { stroke: null, fill: COLOURS.black });
}

/** What each kind of mark looks like: gas is a row of dots with an arrow, a plug a solid bar, a dam an open one. */
function sign({ kind, at, towards }: Mark): Drawn[] {
  const out: Spot = towards;
  const into: Spot = [-towards[0], -towards[1]];
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
      return [
        shape(
          'mark',
          [along(at, out, 0, -2.4), along(at, out, 0, 2.4), along(at, out, 1.4, 2.4), along(at, out, 1.4, -2.4)],
          { stroke: STROKES.thin, fill: COLOURS.black },
        ),
      ];
    case 'dam':
      return [
        shape(
          'mark',
          [along(at, out, -0.6, -2), along(at, out, -0.6, 2), along(at, out, 0.6, 2), along(at, out, 0.6, -2)],
          { stroke: STROKES.narrow, fill: COLOURS.white },
        ),
      ];
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
const PAST: Readonly<Record<Mark['kind'], number>> = {
  feed: 9.5,
  vent: 9.5,
  plug: 3,
  dam: 4,
  joint: 7,
  end: 3,
  bend: 4,
};

/** The sign of a mark with its words at the freest place round it. */
export function markItems(mark: Mark, items: readonly Item[], area: Rectangle): Item[] {
  const drawn = sign(mark);
  const text = wordsFor(mark);
  if (text === '') return drawn;
  const candidates = [0, 35, -35, 70, -70, 110, -110, 180].flatMap((degrees) =>
    [0, 3, 7].map((further) => {
      const angle = (degrees * Math.PI) / 180;
      const [x, y] = mark.towards;
      const direction: Spot = [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)];
      const at = along(mark.at, direction, PAST[mark.kind] + further);
      const align = direction[0] > 0.4 ? 'left' : direction[0] < -0.4 ? 'right' : 'middle';
      const down = direction[1] > 0.4 ? HEIGHTS.text : direction[1] < -0.4 ? 0 : HEIGHTS.text / 2;
      return write([at[0], at[1] + down], text, { weight: 600, align });
    }),
  );
  const placed = freest(candidates, [...items, ...drawn], area);
  return placed === undefined ? drawn : [...drawn, placed];
}

function wordsFor({ kind, label, text }: Mark): string {
  if (text !== undefined) return text;
  if (kind === 'bend' || kind === 'joint') return label;
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
