import { words } from '../language/words.ts';
import type { FlatPoint } from '../plan/view.ts';
import { clipLine } from './clip.ts';
import { freest } from './free-place.ts';
import { gasCrosses, gasDots, lengthOf, placesAlong } from './gas-line.ts';
import { HEIGHTS, STROKES, line, type Item, type Rectangle, type Spot } from './ink.ts';
import { markSign, wordPlaces, type Mark } from './marks.ts';
import type { Scale } from './scale.ts';
import type { PlacedMark } from './set-up-marks.ts';
import { MARGIN, pictureHeight, type MarkedView } from './set-up-window.ts';
import type { SheetInput } from './sheet-input.ts';
import { paragraph, type Block } from './text-block.ts';
import { upArrow } from './up-arrow.ts';

/** A plug is this thick; what passes through it is drawn from its outside on [mm on paper]. */
const PLUG = 1.8;

/**
 * The tubes of a set-up to scale, with the way of the gas, what is plugged, dammed and taped, and the welds by name; other
 * tubes of the frame faint. From its own top left corner [mm].
 */
export function setUpPicture(one: MarkedView, scale: Scale, input: SheetInput, width: number): Block {
  const diameter = input.job.tube.outsideDiameter;
  const { marks, window } = one;
  const { factor } = scale;
  const size = { width: (window.right - window.left) * factor, height: (window.top - window.bottom) * factor };
  const left = (width - size.width) / 2;
  const place = ([x, y]: FlatPoint): Spot => [
    left + (x - window.left) * factor,
    MARGIN.top + (window.top - y) * factor,
  ];
  const frame: Rectangle = {
    left: left - 0.01,
    top: MARGIN.top - 0.01,
    width: size.width + 0.02,
    height: size.height + 0.02,
  };
  const clipped = (points: readonly FlatPoint[]): Spot[][] => clipLine(points.map(place), frame);
  const height = pictureHeight(window, scale);
  const area: Rectangle = { left: 0, top: 0, width, height };
  const items: Item[] = [
    ...upArrow(one.view, input, width),
    ...one.others.flatMap(({ edges }) =>
      edges.flatMap((edge) => clipped(edge).map((part) => line('edge', part, STROKES.faint))),
    ),
    ...one.filled.flatMap(({ edges }) =>
      edges.flatMap((edge) => clipped(edge).map((part) => line('edge', part, STROKES.edge))),
    ),
    ...one.gas.flatMap(({ flows, line: way }) => (flows ? gasDots : gasCrosses)(way.map(place))),
  ];
  const half = (diameter * factor) / 2;
  const drawn = marks.map((mark) => onPaper(mark, place, half));
  for (const mark of drawn) items.push(...markSign(mark));
  for (const mark of drawn) items.push(...wordsAt(mark, items, area));
  const dead = one.gas.filter(({ flows }) => !flows).map(({ line: way }) => ({ way, text: words('sheet.no-flow') }));
  const names = one.filled.map(({ member, centreline }) => ({ way: centreline, text: member }));
  for (const { way, text } of [...dead, ...names])
    items.push(...nameAlong(way.map(place), text, { half, items, area }));
  return { items, height, scales: [scale.text] };
}

function wordsAt(mark: Mark, items: readonly Item[], area: Rectangle): Item[] {
  const placed = freest(wordPlaces(mark), items, area);
  return placed === undefined ? [] : [placed];
}

/** A name beside a line, where along it there is room. */
function nameAlong(
  way: readonly Spot[],
  text: string,
  { half, items, area }: { readonly half: number; readonly items: readonly Item[]; readonly area: Rectangle },
): Item[] {
  const places = [1, 3, 5].flatMap((parts) => placesAlong(way, lengthOf(way) / parts));
  const placed = freest(
    places.flatMap(({ at, along }) =>
      wordPlaces({ kind: 'weld', at, towards: along, half, label: '', text, lettering: HEIGHTS.small }),
    ),
    items,
    area,
  );
  return placed === undefined ? [] : [placed];
}

/** A mark on paper; what passes through a wall or a plug begins outside it. */
function onPaper(mark: PlacedMark, place: (at: FlatPoint) => Spot, half: number): Mark {
  const [x, y] = place(mark.at);
  const towards: Spot = [mark.towards[0], -mark.towards[1]];
  const off = mark.off === 'wall' ? half + 0.6 : mark.off === 'plug' ? PLUG : 0;
  const across = mark.kind === 'feed' || mark.kind === 'vent' ? {} : { half };
  return {
    kind: mark.kind,
    label: mark.text,
    text: mark.text,
    at: [x + towards[0] * off, y + towards[1] * off],
    towards,
    lettering: mark.lettering,
    ...across,
  };
}

/** What the signs of the picture mean. */
export const legend = (width: number): Block =>
  paragraph(words('sheet.set-up-legend'), width, { height: HEIGHTS.small });
