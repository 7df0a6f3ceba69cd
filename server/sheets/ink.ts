import { widthOf, type Weight } from './fonts.ts';

/** A place on the page [mm], x to the right and y down from the top left corner. */
export type Spot = readonly [number, number];

export type Rectangle = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
};

/** How a line is drawn; `dash` holds lengths on and off [mm], empty for a continuous line. */
export type Stroke = { readonly width: number; readonly dash: readonly number[]; readonly colour: string };

/** What a line is for; tests and the placing of values read it. */
export type Role =
  | 'border'
  | 'table'
  | 'edge'
  | 'centreline'
  | 'dimension'
  | 'hatch'
  | 'mark'
  | 'frame'
  | 'turn'
  | 'leg'
  | 'gas'
  | 'symbol'
  | 'quarter'
  | 'log'
  | 'template'
  | 'check-mm'
  | 'check-inch';

export type Drawn = {
  readonly kind: 'line';
  readonly role: Role;
  readonly points: readonly Spot[];
  readonly closed: boolean;
  readonly stroke: Stroke | null;
  readonly fill: string | null;
};

/** One line of text. `at` is the end or middle of its baseline. */
export type Written = {
  readonly kind: 'text';
  readonly at: Spot;
  readonly text: string;
  /** Height of the capitals [mm]. */
  readonly height: number;
  readonly weight: Weight;
  readonly align: 'left' | 'middle' | 'right';
  /** Degrees anticlockwise from lying; 90 is read from the right of the page. */
  readonly turn: number;
  readonly colour: string;
  readonly width: number;
};

export type Item = Drawn | Written;

/** Colours help and never carry: each stands beside a line type, a hatch or a word. */
export const COLOURS = {
  black: '#000000',
  white: '#ffffff',
  grey: '#555555',
  light: '#b0b0b0',
  bronze: '#7a4a12',
  blue: '#1a4480',
  red: '#a01010',
} as const;

/** Line widths [mm] from the row of ISO 128-2; wide to narrow is 2 to 1. */
export const WIDTHS = { thin: 0.18, narrow: 0.25, medium: 0.35, wide: 0.5 } as const;

const stroke = (width: number, colour: string = COLOURS.black, dash: readonly number[] = []): Stroke => ({
  width,
  dash,
  colour,
});

/** Line types after ISO 128-2, with the long dashes of a frame as it came back added. */
export const STROKES = {
  edge: stroke(WIDTHS.wide),
  narrow: stroke(WIDTHS.narrow),
  thin: stroke(WIDTHS.thin),
  faint: stroke(WIDTHS.thin, COLOURS.light),
  centreline: stroke(WIDTHS.thin, COLOURS.black, [5, 0.8, 0.4, 0.8]),
  cameBack: stroke(WIDTHS.medium, COLOURS.bronze, [4, 1.2]),
  corrected: stroke(WIDTHS.wide, COLOURS.blue),
  /** The line to cut to on a wrap, and the bars that check its scale: widths that nothing else is drawn with. */
  template: stroke(0.4),
  check: stroke(0.3),
  hidden: stroke(WIDTHS.narrow, COLOURS.black, [1.5, 0.8]),
} as const;

/** Letter heights of ISO 3098 [mm]. */
export const HEIGHTS = { small: 1.8, text: 2.5, head: 3.5, title: 5, big: 7, wall: 10 } as const;

export const line = (role: Role, points: readonly Spot[], how: Stroke): Drawn => ({
  kind: 'line',
  role,
  points,
  closed: false,
  stroke: how,
  fill: null,
});

export const shape = (
  role: Role,
  points: readonly Spot[],
  how: { stroke: Stroke | null; fill: string | null },
): Drawn => ({
  kind: 'line',
  role,
  points,
  closed: true,
  ...how,
});

export const corners = ({ left, top, width, height }: Rectangle): Spot[] => [
  [left, top],
  [left + width, top],
  [left + width, top + height],
  [left, top + height],
];

export const box = (role: Role, area: Rectangle, how: Stroke = STROKES.narrow): Drawn =>
  shape(role, corners(area), { stroke: how, fill: null });

type TextOptions = Partial<Pick<Written, 'height' | 'weight' | 'align' | 'turn' | 'colour'>>;

export function write(at: Spot, text: string, options: TextOptions = {}): Written {
  const { height = HEIGHTS.text, weight = 400, align = 'left', turn = 0, colour = COLOURS.black } = options;
  return { kind: 'text', at, text, height, weight, align, turn, colour, width: widthOf(text, height, weight) };
}

/** Above the baseline and below it, as shares of the height of the capitals (accents of capitals left out). */
export const ABOVE = 1.1;
export const BELOW = 0.32;

/** The corners of the rectangle that a text fills, as it is turned. */
export function textCorners({ at: [x, y], width, height, align, turn }: Written): Spot[] {
  const before = align === 'left' ? 0 : align === 'middle' ? width / 2 : width;
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = turn === 90 ? [0, 1] : [Math.cos(angle), Math.sin(angle)];
  const place = (along: number, down: number): Spot => [x + along * cos + down * sin, y - along * sin + down * cos];
  return [
    place(-before, -ABOVE * height),
    place(width - before, -ABOVE * height),
    place(width - before, BELOW * height),
    place(-before, BELOW * height),
  ];
}

/** The upright rectangle round some places. */
export function around(spots: readonly Spot[]): Rectangle {
  const xs = spots.map(([x]) => x);
  const ys = spots.map(([, y]) => y);
  const left = Math.min(...xs);
  const top = Math.min(...ys);
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

export const textBox = (text: Written): Rectangle => around(textCorners(text));

/** The same item moved. */
export function moved<T extends Item>(item: T, by: Spot): T {
  const shift = ([x, y]: Spot): Spot => [x + by[0], y + by[1]];
  return item.kind === 'text' ? { ...item, at: shift(item.at) } : { ...item, points: item.points.map(shift) };
}
