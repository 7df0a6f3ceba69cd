import type { PurgePlan } from '../plan/purge.ts';
import type { Scale } from './scale.ts';
import { bigNumbers, doNotWeld, meterWords, numbersOf, timeWords } from './set-up-numbers.ts';
import { openings } from './set-up-openings.ts';
import { legend, setUpPicture } from './set-up-picture.ts';
import type { SetUp } from './set-up.ts';
import { viewsOf } from './set-up-view.ts';
import { markedView, pictureHeight, scaleIn, type MarkedView } from './set-up-window.ts';
import type { SheetInput } from './sheet-input.ts';
import { beside, space, stacked, type Block } from './text-block.ts';
import { setUpCaption } from './up-arrow.ts';

/** Width of the column of big numbers beside the picture, and the air between [mm]. */
const NUMBERS = 46;
const AIR = 4;

/** Heights of the picture that are tried [mm]. */
const HEIGHTS_TRIED = [112, 104, 96, 88, 80, 72, 64, 56, 48, 40, 32] as const;

/** Shares of the largest picture that the page has room for, from which one is large, and from which it still reads; our own choice. */
const [LARGE, FAIR] = [0.49, 0.3];

/** What the head takes at the most where nothing gets the set-up onto one page: half of it [mm]. */
const MOST = 120;

/** The head of a set-up's page as it could be: how large its picture is, how high the head is, and how to draw it. */
export type Top = { readonly size: 'large' | 'fair' | 'small'; readonly height: number; readonly draw: () => Block };

/**
 * The head of a set-up's page: its picture with the big numbers beside or under it, and what is opened, shut and waited
 * for. At each scale that a height allows; those that are drawn larger, then those that take less of the page, come first.
 */
export function topsOf(setUp: SetUp, purge: PurgePlan, input: SheetInput, width: number): Top[] {
  const views = viewsOf(setUp, input).map((one) => markedView(setUp, one, input));
  const below = told(setUp, purge, input, width);
  const arrangements = [
    { room: width - NUMBERS - AIR, numbers: numbers(setUp, purge, input, NUMBERS, 1), aside: true },
    { room: width, numbers: numbers(setUp, purge, input, width, 3), aside: false },
  ] as const;
  const tops = arrangements.flatMap(({ room, numbers: big, aside }) => {
    const each = (room - AIR * (views.length - 1)) / Math.max(1, views.length);
    const scaled = HEIGHTS_TRIED.map((height) => views.map(({ window }) => scaleIn(window, { width: each, height })));
    const different = new Map(scaled.map((scales) => [JSON.stringify(scales), scales]));
    return [...different.values()].map((scales) => {
      const pictures = Math.max(0, ...views.map((one, index) => heightOf(one, scales[index], input, each)));
      const head = aside ? Math.max(pictures, big.height) : pictures + big.height;
      return {
        factor: Math.max(0, ...scales.map(({ factor }) => factor)),
        height: head + below.height,
        draw: () => {
          const drawn = drawnViews(views, scales, input, each);
          const above = aside
            ? beside([
                { left: 0, block: drawn },
                { left: room + AIR, block: big },
              ])
            : stacked([drawn, big]);
          return stacked([above, below]);
        },
      };
    });
  });
  const largest = Math.max(0, ...tops.map(({ factor }) => factor));
  return tops
    .toSorted((one, other) => other.factor - one.factor || one.height - other.height)
    .map(({ factor, height, draw }) => ({
      size: factor >= LARGE * largest ? 'large' : factor >= FAIR * largest ? 'fair' : 'small',
      height,
      draw,
    }));
}

/** What is taken where nothing gets it all onto one page: as large as half a page allows. */
export const ordinary = (tops: readonly Top[]): Top =>
  tops.find(({ height }) => height <= MOST) ?? tops.at(-1) ?? { size: 'small', height: 0, draw: () => space(0) };

const numbers = (setUp: SetUp, purge: PurgePlan, input: SheetInput, width: number, columns: 1 | 3): Block =>
  setUp.stops.length > 0 ? doNotWeld(width) : bigNumbers(numbersOf(setUp, purge, input), width, columns);

function told(setUp: SetUp, purge: PurgePlan, input: SheetInput, width: number): Block {
  const stopped = setUp.stops.length > 0;
  return stacked([
    space(1),
    ...(stopped ? [] : [meterWords(width)]),
    openings(setUp, input, width),
    ...(stopped ? [] : [timeWords(setUp, purge, input, width)]),
    legend(width),
  ]);
}

const heightOf = (one: MarkedView, scale: Scale | undefined, input: SheetInput, width: number): number =>
  scale === undefined ? 0 : setUpCaption(one, scale, input, width).height + pictureHeight(one.window, scale);

/** The views of a set-up with their captions; two stand beside each other. */
const drawnViews = (views: readonly MarkedView[], scales: readonly Scale[], input: SheetInput, width: number): Block =>
  beside(
    views.flatMap((one, index) => {
      const scale = scales[index];
      if (scale === undefined) return [];
      const block = stacked([setUpCaption(one, scale, input, width), setUpPicture(one, scale, input, width)]);
      return [{ left: index * (width + AIR), block }];
    }),
  );
