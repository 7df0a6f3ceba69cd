import type { Job } from '../job/job.ts';
import { INCH, closeParts, fixed } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { WeldSymbol } from '../plan/welding.ts';
import { arrowhead } from './dimension.ts';
import { widthOf } from './fonts.ts';
import { STROKES, line, shape, write, type Drawn, type Item, type Spot } from './ink.ts';
import type { Block } from './text-block.ts';

/** Sizes on paper [mm]: in the proportions of the letters beside them (our own choice). */
const TALL = 4.6;
const ELBOW = 11;
const REACH = 15;
const LEAD = 7.5;
const CIRCLE = 1.5;
const TAIL = 2.4;
const DASHED = 1.3;
const FLUSH = 0.9;
const TEXT = 2;
const ASIDE = 3.4;

/** Chords of a circle and of a quarter of one. */
const CHORDS = 24;
const QUARTER = 8;

const drawn = (points: readonly Spot[], stroke = STROKES.edge): Drawn =>
  line('symbol', points, { ...stroke, width: stroke === STROKES.edge ? 0.35 : stroke.width });

/**
 * A weld symbol as lines, from its own top left corner: the arrow's tip at the bottom left, the reference line with the
 * elementary symbol on the arrow side, the tail at the right.
 *
 * ISO 2553, system A: a dashed line beside the reference line, the symbol on the continuous one; that a flush weld is ground
 * is said in the tail, because the flush line alone means as welded. AWS A2.4: one line, the arrow side below it, and G for
 * ground by the flush line.
 */
export function weldSymbol(symbol: WeldSymbol, { units }: Job): Block & { readonly width: number } {
  const iso = symbol.standard === 'iso-2553';
  const size = (mm: number): string => sizeWords(mm, units);
  const { angle, gap, leg } = symbol;
  const sense = iso ? -1 : 1;
  const axis = iso ? 11 : 4;
  const tip: Spot = [1, axis + 6.5];
  const gapText = gap === null || gap === 0 ? '' : size(gap);
  const half = Math.max(1.1, widthOf(gapText, TEXT, 400) / 2 + 0.7);
  const legText = leg === null ? '' : `${iso ? 'z' : ''}${size(leg)}`;
  const middle = ELBOW + Math.max(LEAD, half + 3, CIRCLE + 1 + widthOf(legText, TEXT, 400) + ASIDE);
  const end = middle + Math.max(REACH - LEAD, half + 3);
  const top = axis + sense * TALL;
  const beyond = top + sense * FLUSH;
  const lowest = (height: number): number => (iso ? 0 : height * 1.05);
  let outer = symbol.flush ? beyond : top;
  const above = (text: string): Item => {
    const at = outer + sense * 0.9 + lowest(TEXT);
    outer += sense * (TEXT + 1.4);
    return write([middle, at], text, { height: TEXT, align: 'middle' });
  };
  const tail = tailWords(symbol);
  const items: Item[] = [
    drawn([tip, [ELBOW, axis]]),
    { ...arrowhead(tip, unit([ELBOW, axis], tip)), role: 'symbol' },
    drawn([
      [ELBOW, axis],
      [end, axis],
    ]),
    ...(iso
      ? [
          drawn(
            [
              [ELBOW, axis + DASHED],
              [end, axis + DASHED],
            ],
            STROKES.hidden,
          ),
        ]
      : []),
    ...(symbol.allRound
      ? [shape('symbol', circle([ELBOW, axis], CIRCLE), { stroke: { ...STROKES.narrow }, fill: null })]
      : []),
    ...elementary(symbol.elementary, { middle, axis, sense, half }),
    ...(symbol.flush
      ? [
          drawn([
            [middle - 3, beyond],
            [middle + 3, beyond],
          ]),
        ]
      : []),
    ...(symbol.flush && !iso ? [above('G')] : []),
    ...(angle === null ? [] : [above(`${fixed(angle, Number.isInteger(angle) ? 0 : 1)}°`)]),
    ...(gapText === ''
      ? []
      : [write([middle, inside(symbol, { axis, sense })], gapText, { height: TEXT, align: 'middle' })]),
    ...(legText === ''
      ? []
      : [write([middle - ASIDE, iso ? axis - 1 : axis + 1 + TEXT], legText, { height: TEXT, align: 'right' })]),
    drawn([
      [end + TAIL, axis - TAIL],
      [end, axis],
      [end + TAIL, axis + TAIL],
    ]),
    write([end + TAIL + 1, axis + 0.9], tail, { height: TEXT }),
  ];
  return { items, height: axis + (iso ? 7.5 : 14), width: end + TAIL + 1 + widthOf(tail, TEXT, 400) };
}

/** A size without its unit, which is said under the symbol; inches to a hundredth, without the nought before the point. */
const sizeWords = (mm: number, units: Job['units']): string =>
  units.length === 'mm' ? closeParts(Number(mm.toFixed(2)), units).number : fixed(mm / INCH, 2).replace(/^0(?=\.)/, '');

/** The process, and for ISO that a flush weld is ground. */
function tailWords({ standard, process, flush }: WeldSymbol): string {
  if (standard === 'aws-a2-4') return words(process === '142' ? 'sheet.tail-aws-no-filler' : 'sheet.tail-aws');
  return flush ? words('sheet.tail-iso-ground', { process }) : process;
}

const unit = ([x0, y0]: Spot, [x1, y1]: Spot): { x: number; y: number } => {
  const size = Math.hypot(x1 - x0, y1 - y0);
  return { x: (x1 - x0) / size, y: (y1 - y0) / size };
};

const circle = ([x, y]: Spot, radius: number): Spot[] =>
  Array.from({ length: CHORDS }, (_, index): Spot => {
    const angle = (2 * Math.PI * index) / CHORDS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });

type Frame = { readonly middle: number; readonly axis: number; readonly sense: number; readonly half: number };

/** Baseline of the root gap: between the strokes of a square butt, in the mouth of a groove. */
function inside({ elementary: form }: WeldSymbol, { axis, sense }: Pick<Frame, 'axis' | 'sense'>): number {
  const off = form === 'square' ? TALL / 2 : TALL - 0.5 - TEXT / 2;
  return axis + sense * off + TEXT / 2;
}

/** The elementary symbol on its side of the reference line: `sense` −1 above it, +1 mirrored below it. */
function elementary(form: WeldSymbol['elementary'], { middle, axis, sense, half }: Frame): Drawn[] {
  const at = (across: number, off: number): Spot => [middle + across, axis + sense * off];
  switch (form) {
    case 'square':
      return [drawn([at(-half, 0), at(-half, TALL)]), drawn([at(half, 0), at(half, TALL)])];
    case 'v': {
      // wide enough for the gap in its mouth
      const mouth = Math.max(TALL / 1.6, ((half - 0.2) * TALL) / (TALL - 0.5 - TEXT));
      return [drawn([at(-mouth, TALL), at(0, 0), at(mouth, TALL)])];
    }
    case 'flare-bevel': {
      // the round edge touches the line upright and leaves it by a quarter of a circle
      const arc = Array.from({ length: QUARTER + 1 }, (_, index): Spot => {
        const angle = (Math.PI / 2) * (index / QUARTER);
        return at(0.8 + TALL * (1 - Math.cos(angle)), TALL * Math.sin(angle));
      });
      return [drawn([at(-0.8, 0), at(-0.8, TALL)]), drawn(arc)];
    }
    case 'fillet':
      return [drawn([at(-TALL / 2, 0), at(-TALL / 2, TALL), at(TALL / 2, 0)])];
  }
}
