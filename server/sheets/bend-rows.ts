import type { Job } from '../job/job.ts';
import { formatLength, lengthParts } from '../language/length-format.ts';
import { figureParts, formatBand, formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { BendRow } from '../plan/bending.ts';
import type { Figure } from '../plan/figure.ts';
import { clock, clockSize, isTurned } from './clock.ts';
import { widthOf } from './fonts.ts';
import { HEIGHTS, STROKES, box, line, moved, write, type Item, type Spot, type Stroke } from './ink.ts';
import type { Table } from './table.ts';
import { fitted, wrap } from './text-block.ts';

/** Radius of a row's clock [mm], and the height of a row round it. */
const CLOCK = 5.5;
const ROW = clockSize(CLOCK) + 1.2;

/** Baselines of a row's large number and of the small words under it. */
const LARGE = 0.555 * ROW;
const UNDER = ROW - 2.2;

/** Width of the box round a bend's number [mm]. */
const BOX = 9.4;

/** Columns as shares of the width; the clock's own stands between the mark and the turn. */
const COLUMNS = { number: 0, mark: 0.066, clock: 0.304, turn: 0.415, angle: 0.59, check: 0.763, tick: 0.957 } as const;
type Column = keyof typeof COLUMNS;

/** A number with its unit small beside it, the number no lower than 5 mm unless it would run into its neighbour. */
function large(at: Spot, parts: { number: string; unit: string }, size: { height: number; room: number }): Item[] {
  const unit = widthOf(parts.unit, HEIGHTS.text, 400);
  const room = size.room - (unit === 0 ? 0 : unit + 1);
  const text = fitted(parts.number, room, { height: size.height, weight: 600 }, Math.min(HEIGHTS.head, size.height));
  const number = write(at, text.text, { height: text.height, weight: 600 });
  return unit === 0 ? [number] : [number, write([at[0] + number.width + 1, at[1]], parts.unit, {})];
}

/** The bends in the order of work, in letters that are read from the machine; the head is said again on each page. */
export function bendRows(bends: readonly BendRow[], job: Job, width: number): Table {
  const left = (column: Column): number => COLUMNS[column] * width;
  const roomOf = (column: Column, next: Column): number => left(next) - left(column) - 2;
  const heads: readonly [Column, string, number][] = [
    ['number', words('sheet.bend-number'), roomOf('number', 'mark')],
    ['mark', words('sheet.start-mark'), roomOf('mark', 'clock')],
    ['turn', words('sheet.rotation'), roomOf('turn', 'angle')],
    ['angle', words('sheet.bend-to'), roomOf('angle', 'check')],
    ['check', words('sheet.check-outside'), roomOf('check', 'tick')],
  ];
  const small = { height: HEIGHTS.text, weight: 400 } as const;
  const lines = heads.map(([column, text, room]) => ({ column, said: wrap(text, room, small) }));
  const most = Math.max(...lines.map(({ said }) => said.length));
  const height = most * 3.6 + 2;
  return {
    head: {
      height,
      items: [
        ...lines.flatMap(({ column, said }) =>
          said.map((text, index) => write([left(column), height - 1.8 - 3.6 * (said.length - 1 - index)], text, small)),
        ),
        write([width, height - 1.8], words('sheet.ticked'), { ...small, align: 'right' }),
        rule(height, width, STROKES.edge),
      ],
    },
    rows: bends.map((bend) => {
      const ofDie = bend.dieRadius.value === job.machine.dies[job.machine.die]?.radius;
      return {
        height: ROW,
        items: [
          ...numberItems(bend, left('number')),
          ...markItems(bend, job, left('mark'), roomOf('mark', 'clock')),
          ...turnItems(bend, job, { clock: left('clock'), turn: left('turn') }, roomOf('turn', 'angle')),
          ...angleItems(bend, job, left('angle'), roomOf('angle', 'check'), ofDie),
          ...checkItems(bend.check, job, left('check'), roomOf('check', 'tick')),
          box('frame', { left: left('tick'), top: ROW / 2 - 3.5, width: 7, height: 7 }, STROKES.narrow),
          rule(ROW, width, STROKES.thin),
        ],
      };
    }),
  };
}

const rule = (y: number, width: number, stroke: Stroke): Item =>
  line(
    'table',
    [
      [0, y],
      [width, y],
    ],
    stroke,
  );

const under = (left: number, text: string, room: number): Item => {
  const said = fitted(text, room, { height: HEIGHTS.text, weight: 400 });
  return write([left, UNDER], said.text, { height: said.height });
};

/** The bend's number in a box of its own, so that it is never read on into its mark. */
function numberItems({ number }: BendRow, left: number): Item[] {
  const text = String(number);
  const height = text.length > 1 ? HEIGHTS.title : HEIGHTS.big;
  const said = fitted(text, BOX - 0.6, { height, weight: 600 });
  return [
    box('frame', { left, top: (ROW - 12.4) / 2, width: BOX, height: 12.4 }, STROKES.narrow),
    write([left + BOX / 2, ROW / 2 + said.height / 2], said.text, {
      height: said.height,
      weight: 600,
      align: 'middle',
    }),
  ];
}

function markItems(bend: BendRow, { units }: Job, left: number, room: number): Item[] {
  const other =
    bend.made === 'rolled'
      ? words('sheet.end-at', { distance: formatLength(bend.endMark.value, units) })
      : words('sheet.middle-at', { distance: formatLength(bend.middleMark.value, units) });
  return [
    ...large([left, LARGE], lengthParts(bend.startMark.value, units), { height: HEIGHTS.big, room }),
    under(
      left,
      bend.startMark.band === null ? other : `${other}, ${formatBand(bend.startMark.band, 'mm', units)}`,
      room,
    ),
  ];
}

function turnItems(bend: BendRow, job: Job, left: { clock: number; turn: number }, room: number): Item[] {
  const picture = clock(bend.rotation.value, job.machine.rotationSign, CLOCK);
  const degrees = figureParts(bend.rotation, job.units);
  const round = lengthParts(Math.abs(bend.rotationRound.value), job.units);
  const drawn = picture.items.map((item) => moved(item, [left.clock, (ROW - picture.height) / 2]));
  if (isTurned(bend.rotation.value))
    return [
      ...drawn,
      ...large([left.turn, 0.46 * ROW], degrees, { height: HEIGHTS.title, room }),
      ...large([left.turn, ROW - 2.2], round, { height: HEIGHTS.title, room }),
    ];
  return [...drawn, write([left.turn, LARGE], words('sheet.no-turn'), { height: HEIGHTS.head })];
}

function angleItems(bend: BendRow, { units }: Job, left: number, room: number, ofDie: boolean): Item[] {
  const rolled = bend.made === 'rolled';
  const after = rolled
    ? `${words('sheet.roll-to')} R ${formatFigure(bend.radiusAfterRelease, units)}`
    : ofDie
      ? words('sheet.wanted-after', { angle: formatFigure(bend.angle, units) })
      : words('sheet.other-die', { radius: formatFigure(bend.dieRadius, units) });
  return [
    ...large([left, LARGE], figureParts(bend.angleToBendTo, units), { height: HEIGHTS.big, room }),
    under(left, after, room),
  ];
}

function checkItems(check: Figure | null, { units }: Job, left: number, room: number): Item[] {
  if (check === null) return [write([left, LARGE], '—', { height: HEIGHTS.title })];
  const number = large([left, LARGE], figureParts(check, units), { height: HEIGHTS.title, room });
  return check.band === null ? number : [...number, under(left, formatBand(check.band, check.unit, units), room)];
}
