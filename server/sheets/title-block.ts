import { words } from '../language/words.ts';
import {
  COLOURS,
  HEIGHTS,
  STROKES,
  WIDTHS,
  box,
  corners,
  line,
  shape,
  write,
  type Item,
  type Rectangle,
  type Spot,
} from './ink.ts';
import type { Draft, Page } from './page.ts';
import { borderOf, sizeOf, titleBlockOf, type Paper } from './paper.ts';
import { fitted, lineHeight, wrap } from './text-block.ts';

/** What the title block says about a document. */
export type TitleFacts = {
  readonly paper: Paper;
  readonly title: string;
  readonly customer: string;
  readonly drawingNumber: string;
  readonly sheetName: string;
  readonly revision: string;
  readonly date: string;
  readonly invented: boolean;
  /** What the sheet was computed from. */
  readonly from: string;
};

const INSET = 1.2;

/** A cell with a small label above its value. */
function cell(area: Rectangle, label: string, value: string, height: number = HEIGHTS.text): Item[] {
  const inner = area.width - 2 * INSET;
  const text = fitted(value, inner, { height, weight: 600 });
  const name = fitted(label, inner, { height: HEIGHTS.small, weight: 400 }, 1.4);
  return [
    box('border', area, STROKES.thin),
    write([area.left + INSET, area.top + 3.2], name.text, { height: name.height, colour: COLOURS.grey }),
    ...(text.text === ''
      ? []
      : [write([area.left + INSET, area.top + area.height - 2.2], text.text, { height: text.height, weight: 600 })]),
  ];
}

function circle([x, y]: Spot, radius: number): Spot[] {
  return Array.from({ length: 48 }, (_, index) => {
    const angle = (2 * Math.PI * index) / 48;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
  });
}

/** Symbol of ISO 5456-2: the view from the left of a cut cone stands right in first angle, left in third angle. */
function projectionSymbol(area: Rectangle, angle: 'first' | 'third'): Item[] {
  const middle = area.top + area.height / 2;
  const [cone, rings] =
    angle === 'first' ? [area.left + 2.5, area.left + 14] : [area.left + area.width - 10.5, area.left + 6];
  const how = { stroke: STROKES.narrow, fill: null };
  return [
    box('border', area, STROKES.thin),
    shape(
      'mark',
      [
        [cone, middle - 1.5],
        [cone + 7, middle - 3],
        [cone + 7, middle + 3],
        [cone, middle + 1.5],
      ],
      how,
    ),
    shape('mark', circle([rings, middle], 3), how),
    shape('mark', circle([rings, middle], 1.5), how),
    line(
      'centreline',
      [
        [area.left + 1.5, middle],
        [area.left + area.width - 1.5, middle],
      ],
      STROKES.centreline,
    ),
    line(
      'centreline',
      [
        [rings, middle - 4],
        [rings, middle + 4],
      ],
      STROKES.centreline,
    ),
  ];
}

function titleBlock(facts: TitleFacts, draft: Draft, count: { readonly sheet: number; readonly of: number }): Item[] {
  const block = titleBlockOf(facts.paper, draft.turn);
  const row = block.height / 3;
  const at = (left: number, top: number, width: number): Rectangle => ({
    left: block.left + left,
    top: block.top + top * row,
    width,
    height: row,
  });
  const small = { height: HEIGHTS.small, weight: 400 } as const;
  const from = wrap(facts.from, 96 - 2 * INSET, small).slice(0, 3);
  const markWidth = facts.invented ? 40 : 0;
  return [
    ...cell(at(0, 0, 110 - markWidth), words('sheet.title'), facts.title, HEIGHTS.head),
    ...(facts.invented
      ? [
          shape('border', corners(at(110 - markWidth, 0, markWidth)), { stroke: STROKES.edge, fill: null }),
          write([block.left + 110 - markWidth / 2, block.top + row / 2 + 1.2], words('sheet.invented'), {
            height: HEIGHTS.text,
            weight: 600,
            align: 'middle',
          }),
        ]
      : []),
    ...cell(
      at(110, 0, 70),
      words('sheet.document'),
      draft.about === undefined ? facts.sheetName : `${facts.sheetName}: ${draft.about}`,
      HEIGHTS.head,
    ),
    ...cell(at(0, 1, 66), words('sheet.customer'), facts.customer),
    ...cell(at(66, 1, 44), words('sheet.drawing-number'), facts.drawingNumber),
    ...cell(at(110, 1, 20), words('sheet.revision'), facts.revision),
    ...cell(at(130, 1, 28), words('sheet.date'), facts.date),
    ...cell(at(158, 1, 22), words('sheet.sheet'), words('sheet.sheet-of', { sheet: count.sheet, of: count.of })),
    box('border', at(0, 2, 96), STROKES.thin),
    ...from.map((text, index) =>
      write([block.left + INSET, block.top + 2 * row + 2.7 + 0.88 * lineHeight(small.height) * index], text, small),
    ),
    ...cell(at(96, 2, 24), words('sheet.scale'), draft.scale === '' ? '—' : draft.scale),
    ...cell(at(120, 2, 40), words('sheet.approved'), ''),
    ...projectionSymbol(at(160, 2, 20), facts.paper === 'letter' ? 'third' : 'first'),
    box('border', block, STROKES.edge),
  ];
}

/** Border of ISO 5457 with its centring marks. */
function border(paper: Paper, turn: Draft['turn']): Item[] {
  const area = borderOf(paper, turn);
  const size = sizeOf(paper, turn);
  const mark = { ...STROKES.edge, width: 0.7 };
  const right = area.left + area.width;
  const bottom = area.top + area.height;
  return [
    box('border', area, { ...STROKES.edge, width: WIDTHS.wide }),
    line(
      'border',
      [
        [size.width / 2, area.top - 5],
        [size.width / 2, area.top],
      ],
      mark,
    ),
    line(
      'border',
      [
        [size.width / 2, bottom],
        [size.width / 2, bottom + 5],
      ],
      mark,
    ),
    line(
      'border',
      [
        [area.left - 5, size.height / 2],
        [area.left, size.height / 2],
      ],
      mark,
    ),
    line(
      'border',
      [
        [right, size.height / 2],
        [right + 5, size.height / 2],
      ],
      mark,
    ),
  ];
}

/** Puts the border and the title block, with sheet n of m, on every draft. */
export function finished(drafts: readonly Draft[], facts: TitleFacts): Page[] {
  return drafts.map((draft, index) => ({
    ...sizeOf(facts.paper, draft.turn),
    items: [
      ...border(facts.paper, draft.turn),
      ...titleBlock(facts, draft, { sheet: index + 1, of: drafts.length }),
      ...draft.items,
    ],
  }));
}
