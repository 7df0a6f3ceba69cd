import type { Units } from '../job/job.ts';
import { fixed, formatClosely, formatLength } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import { checkBars } from './check-bars.ts';
import { HEIGHTS, moved, type Item } from './ink.ts';
import type { Draft } from './page.ts';
import { contentOf, type Paper, type Turn } from './paper.ts';
import { table, tableBlock } from './table.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';
import { tilesAlong } from './tiles.ts';
import { wrapSize, wrapTiles } from './wrap-drawing.ts';

/** By definition of the inch. Ordinates in inches are decimal: a fraction is too coarse for a cut. */
const MM_PER_INCH = 25.4;

/** Height that the names and the check bars take above the wrap [mm]. */
const HEAD = 44;

/** What a wrap is called and how it is used. */
export type TemplateNames = {
  /** 'Joint 1, face A', or the end of a member. */
  readonly title: string;
  /** Which piece it is wrapped on. */
  readonly piece: string;
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

/** An ordinate: hundredths of a millimetre, or thousandths of an inch. */
const ordinate = (mm: number, units: Units): string =>
  units.length === 'mm' ? fixed(mm, 2) : fixed(mm / MM_PER_INCH, 3);

/** What identifies and checks a wrap; stands on every page of it. */
function head(
  template: WrapTemplate,
  names: TemplateNames,
  tile: { number: number; of: number },
  width: number,
  setting: Setting,
): Block {
  const part = tile.of > 1 ? `, ${words('sheet.tile', { tile: tile.number, of: tile.of })}` : '';
  const ring = words('sheet.ring-at', { distance: formatLength(template.ringStation, setting.units) });
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

/** The ordinates in two tables beside one another: a tape beats a printer. */
function ordinates(template: WrapTemplate, width: number, units: Units): Block {
  const unit = unitOf(units);
  const show = (value: number): string => ordinate(value, units);
  const half = Math.ceil(template.stations.length / 2);
  const part = (from: number): Block =>
    tableBlock(
      table(
        [
          { head: words('sheet.station'), align: 'right' },
          { head: `${words('sheet.angle')} °`, align: 'right' },
          { head: `${words('sheet.girth')} ${unit}`, align: 'right' },
          { head: `${words('sheet.outer')} ${unit}`, align: 'right' },
          { head: `${words('sheet.inner')} ${unit}`, align: 'right' },
          { head: `${words('sheet.cut-to')} ${unit}`, align: 'right' },
        ],
        template.stations
          .slice(from, from + half)
          .map((station, index) => [
            String(from + index + 1),
            fixed(station.angle, 1),
            show(station.girth),
            show(station.outer),
            show(station.inner),
            { text: show(station.cut), weight: 600 },
          ]),
        { width: (width - 8) / 2, height: HEIGHTS.small },
      ),
    );
  return stacked([
    paragraph(words('sheet.ordinates'), width, { height: HEIGHTS.small, weight: 600 }),
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
  const tiles = wrapTiles(template, { width: area.width, height: area.height - HEAD });
  const numbers = ordinates(template, area.width, setting.units);
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
