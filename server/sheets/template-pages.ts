import type { Units } from '../job/job.ts';
import { INCH, fixed, formatClosely, formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import { checkBars } from './check-bars.ts';
import { HEIGHTS, moved, type Item } from './ink.ts';
import type { Draft } from './page.ts';
import { contentOf, type Paper, type Turn } from './paper.ts';
import { table, tableBlock, type Cell } from './table.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';
import { tilesAlong } from './tiles.ts';
import { wrapTiles } from './wrap-drawing.ts';
import type { LegWrap } from './wrap-names.ts';
import { wrapSize } from './wrap-size.ts';

/** Height that the names and the check bars take above the wrap [mm]. */
const HEAD = 44;

/** What a wrap is called and how it is used. */
export type TemplateNames = {
  /** 'Joint 1, face A', or the end of a member. */
  readonly title: string;
  /** Which piece it is wrapped on. */
  readonly piece: string;
  /** Where its ring lies: on the member, or on a new piece between its two ends. */
  readonly ring?: 'member' | 'new-piece';
  /** The leg and its end: the ring lies on the sawn end, the left edge on the line scribed along the tube. */
  readonly leg?: LegWrap;
};

type Setting = { readonly paper: Paper; readonly units: Units; readonly paperThickness: number };

/** The way of turning the page that needs fewest pages; upright where both need the same. */
function turnFor(template: WrapTemplate, paper: Paper): Turn {
  const size = wrapSize(template);
  const count = (turn: Turn): number => {
    const area = contentOf(paper, turn);
    return tilesAlong(size.width, area.width) * tilesAlong(size.height, area.height - HEAD);
  };
  return count('across') < count('upright') ? 'across' : 'upright';
}

const unitOf = (units: Units): string => (units.length === 'mm' ? 'mm' : 'in');

/** An ordinate: hundredths of a millimetre, or thousandths of an inch; a fraction of one is too coarse for a cut. */
const ordinate = (mm: number, units: Units): string => (units.length === 'mm' ? fixed(mm, 2) : fixed(mm / INCH, 3));

/** Where the ring lies, from the end that a tape can be hooked on. */
function ringWords({ ringStation }: WrapTemplate, { ring, leg }: TemplateNames, units: Units): string {
  if (leg !== undefined) return words('sheet.ring-leg');
  const distance = formatLength(ringStation, units);
  return words(ring === 'new-piece' ? 'sheet.ring-new' : 'sheet.ring-at', { distance });
}

/** What identifies and checks a wrap; stands on every page of it. */
function head(
  template: WrapTemplate,
  names: TemplateNames,
  tile: { number: number; of: number },
  width: number,
  setting: Setting,
): Block {
  const part = tile.of > 1 ? `, ${words('sheet.tile', { tile: tile.number, of: tile.of })}` : '';
  const ring = ringWords(template, names, setting.units);
  const length = words('sheet.wrap-length', {
    length: `${ordinate(template.wrapLength, setting.units)} ${unitOf(setting.units)}`,
    paper: formatClosely(setting.paperThickness, setting.units),
  });
  const join = tile.of > 1 ? ` ${words('sheet.tile-join')}` : '';
  return stacked([
    paragraph(`${names.title}${part}`, width, { height: HEIGHTS.title, weight: 600 }),
    paragraph(words('sheet.print-true'), width, { weight: 600 }),
    paragraph(`${names.piece} ${length} ${ring}${join}`, width, { height: HEIGHTS.small }),
    space(1.5),
    checkBars(),
    space(2),
  ]);
}

type Station = WrapTemplate['stations'][number];

/** What the table of a wrap says of a station: both surfaces and the line, both lines of a wedge, or where a hole is. */
function columnsOf(
  { kind }: WrapTemplate,
  leg: LegWrap | undefined,
): { head: string; value: (station: Station) => number; bold: boolean }[] {
  const girth = { head: words('sheet.girth'), value: (one: Station) => one.girth, bold: false };
  if (kind === 'hole') {
    return [
      { ...girth, bold: true },
      { head: words('sheet.along-tube'), value: (one) => one.cut, bold: true },
    ];
  }
  if (kind === 'wedge' || kind === 'dart') {
    return [
      girth,
      { head: words('sheet.cut-a'), value: (one) => one.cut, bold: true },
      { head: words('sheet.cut-b'), value: (one) => one.second ?? one.cut, bold: true },
    ];
  }
  return [
    girth,
    { head: words('sheet.outer'), value: (one) => one.outer, bold: false },
    { head: words('sheet.inner'), value: (one) => one.inner, bold: false },
    { head: words(leg === undefined ? 'sheet.cut-to' : 'sheet.cut-curve'), value: (one) => one.cut, bold: true },
  ];
}

/** The ordinates in two tables beside one another: a tape beats a printer. */
function ordinates(template: WrapTemplate, { leg }: TemplateNames, width: number, units: Units): Block {
  const unit = unitOf(units);
  const half = Math.ceil(template.stations.length / 2);
  const columns = columnsOf(template, leg);
  const angle = template.kind === 'hole' ? words('sheet.angle-branch') : words('sheet.angle');
  const part = (from: number): Block =>
    tableBlock(
      table(
        [
          { head: words('sheet.station'), align: 'right' },
          { head: `${angle} °`, align: 'right' },
          ...columns.map(({ head: name }) => ({ head: `${name} ${unit}`, align: 'right' as const })),
        ],
        template.stations.slice(from, from + half).map((station, index) => [
          String(from + index + 1),
          fixed(station.angle, 1),
          ...columns.map(({ value, bold }): Cell => ({
            text: ordinate(value(station), units),
            weight: bold ? 600 : 400,
          })),
        ]),
        { width: (width - 8) / 2, height: HEIGHTS.small },
      ),
    );
  return stacked([
    paragraph(words(leg === undefined ? 'sheet.ordinates' : `sheet.ordinates-${leg.end}`), width, {
      height: HEIGHTS.small,
      weight: 600,
    }),
    beside([
      { left: 0, block: part(0) },
      { left: (width + 8) / 2, block: part(half) },
    ]),
  ]);
}

/** The pages of one wrap: nothing else on them but what identifies and checks it. */
export function templatePages(template: WrapTemplate, names: TemplateNames, setting: Setting): Draft[] {
  const turn = turnFor(template, setting.paper);
  const area = contentOf(setting.paper, turn);
  const tiles = wrapTiles(template, { width: area.width, height: area.height - HEAD }, names.leg);
  const numbers = ordinates(template, names, area.width, setting.units);
  const pages = tiles.map(({ tile, items }, index) => {
    const top = head(template, names, { number: index + 1, of: tiles.length }, area.width, setting);
    const left = Math.max(0, (area.width - tile.width) / 2);
    const placed: Item[] = [...top.items, ...items.map((item) => moved(item, [tiles.length > 1 ? 0 : left, HEAD]))];
    return { placed, used: HEAD + tile.height + 3 };
  });
  const last = pages.at(-1);
  if (last !== undefined && last.used + numbers.height <= area.height) {
    last.placed.push(...numbers.items.map((item) => moved(item, [0, last.used])));
  } else {
    const title = paragraph(names.title, area.width, { height: HEIGHTS.title, weight: 600 });
    pages.push({ placed: [...stacked([title, numbers]).items], used: 0 });
  }
  return pages.map(({ placed }) => ({
    turn,
    scale: '1:1',
    items: placed.map((item) => moved(item, [area.left, area.top])),
  }));
}
