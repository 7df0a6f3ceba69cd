import { formatBand, formatFigure, formatMoney, formatQuantity } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { CorrectionPlan, Way } from '../plan/correction.ts';
import type { Figure } from '../plan/figure.ts';
import { Flow } from './flow.ts';
import { HEIGHTS, STROKES, line, write } from './ink.ts';
import type { Drafts } from './page.ts';
import { picture } from './picture.ts';
import type { SheetInput } from './sheet-input.ts';
import { signatureLine } from './sign.ts';
import { table, tableBlock, tableHeight, type Cell, type Table } from './table.ts';
import { beside, capital, lineHeight, paragraph, space, stacked, type Block } from './text-block.ts';

/** Width of the words beside the picture [mm]. */
const ASIDE = 92;

/** The ways side by side with the same columns, the frame as it came back over the wanted one, and a line to sign. */
export function comparisonSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (plan.correction === null) return { ok: false, reason: 'nothing-came-back' };
  const flow = new Flow(job.print.paper, 'across');
  flow.add(stacked([tableBlock(waysTable(input, plan.correction, flow.width)), space(2)]));
  const view = plan.views.find(({ key }) => key === 'face') ?? plan.views[0];
  const room = { width: flow.width - ASIDE - 4, height: flow.left };
  const drawn =
    view === undefined
      ? undefined
      : picture(
          view,
          {
            layers: ['wanted', 'came-back'],
            dimensions: () => false,
            marks: () => false,
            member: null,
            say: () => '',
          },
          room,
        );
  flow.add(
    beside([
      { left: 0, block: drawn ?? space(0) },
      { left: room.width + 4, block: aside(input, plan.correction, room.height) },
    ]),
  );
  return { ok: true, drafts: flow.drafts() };
}

function waysTable({ job, plan }: SheetInput, { ways, recommended, chosen }: CorrectionPlan, width: number): Table {
  const show = (figure: Figure): string => formatFigure(figure, job.units);
  const withBand = (figure: Figure): string =>
    figure.band === null ? show(figure) : `${show(figure)} ${formatBand(figure.band, figure.unit, job.units)}`;
  const currency = plan.quote?.currency ?? job.rates.currency;
  const digits = plan.quote?.minorDigits ?? job.rates.minorDigits;
  const money = ({ cost, costAtLeast }: Way): string => {
    const amount = formatMoney((cost ?? costAtLeast).value, currency, digits);
    if (cost !== null) return amount;
    return costAtLeast.value > 0 ? words('sheet.cost-from', { amount }) : words('sheet.rate-missing');
  };
  const name = (way: Way): string => {
    const marks = [
      way.key === recommended ? words('sheet.recommended') : '',
      way.key === chosen && chosen !== recommended ? words('sheet.chosen') : '',
      way.possible ? '' : words('sheet.not-possible'),
    ].filter((mark) => mark !== '');
    return marks.length === 0 ? wordsOf('way', way.key) : `${wordsOf('way', way.key)} (${marks.join(', ')})`;
  };
  return table(
    [
      { head: words('sheet.way'), align: 'left' },
      { head: words('sheet.feet-off'), align: 'right' },
      { head: words('sheet.corners-off'), align: 'right' },
      { head: words('sheet.toe'), align: 'right' },
      { head: words('sheet.largest-kink'), align: 'right' },
      { head: words('sheet.largest-hi-lo'), align: 'right' },
      { head: words('sheet.welds'), align: 'right' },
      { head: words('sheet.set-ups'), align: 'right' },
      { head: words('sheet.gas'), align: 'right' },
      { head: words('sheet.minutes'), align: 'right' },
      { head: words('sheet.cost'), align: 'right' },
    ],
    ways.map((way): Cell[] => {
      const weight = way.key === recommended ? 600 : 400;
      const bold = (text: string): Cell => ({ text, weight });
      return [
        bold(name(way)),
        ...[way.footMisfit, way.cornerMisfit].map((figure) => bold(withBand(figure))),
        ...[way.toe, way.largestKink, way.largestHiLo, way.welds, way.purgeSetups, way.purgeGas].map((figure) =>
          bold(show(figure)),
        ),
        way.minutes === null ? words('sheet.time-missing') : bold(show(way.minutes)),
        bold(money(way)),
      ];
    }),
    { width, height: 2.1 },
  );
}

/** The reason, what the lines mean, the largest differences, and where to sign. */
function aside({ job, plan }: SheetInput, correction: CorrectionPlan, height: number): Block {
  const { reason, recommended, differences } = correction;
  const data = Object.fromEntries(
    Object.entries(reason.data).map(([name, value]) => {
      if (typeof value === 'string') return [name, value];
      const unit = name === 'welds' ? 'count' : name === 'kink' ? 'deg' : 'mm';
      return [name, formatQuantity(value, unit, job.units)];
    }),
  );
  const title = recommended === null ? words('sheet.none-recommended') : capital(wordsOf('way', recommended));
  const sizes = table(
    [
      { head: words('sheet.check'), align: 'left' },
      { head: words('sheet.wanted'), align: 'right' },
      { head: words('sheet.came-back'), align: 'right' },
      { head: words('sheet.difference'), align: 'right' },
    ],
    differences.map((one): Cell[] => [
      wordsOf('check', one.key, { index: one.index }),
      formatFigure(one.wanted, job.units),
      formatFigure(one.cameBack, job.units),
      { text: formatFigure(one.difference, job.units), weight: 600 },
    ]),
    { width: ASIDE, height: 2 },
  );
  const open =
    plan.quote !== null && plan.quote.open.length > 0
      ? [paragraph(words('sheet.money-partial'), ASIDE, { height: HEIGHTS.small })]
      : [];
  const above = stacked([
    paragraph(title, ASIDE, { height: HEIGHTS.text, weight: 600 }),
    paragraph(wordsOf('reason', reason.key.replace(/^reason\./, ''), data), ASIDE, { height: HEIGHTS.small }),
    ...open,
    space(1.5),
  ]);
  const below = stacked([space(1), legend(), signatureLine([words('sheet.agreed-by'), words('sheet.date')], ASIDE)]);
  return stacked([above, ...rowsThatFit(sizes, height - above.height - below.height), below]);
}

/** As many rows as a height holds; where some are left out it is said how many. */
function rowsThatFit(list: Table, height: number): Block[] {
  if (tableHeight(list) <= height) return [tableBlock(list)];
  const said = lineHeight(HEIGHTS.small);
  let used = list.head.height + said;
  const rows = list.rows.filter((row) => (used += row.height) <= height);
  const count = list.rows.length - rows.length;
  const more = paragraph(words('sheet.more-sizes', { count }), ASIDE, { height: HEIGHTS.small });
  return [tableBlock({ head: list.head, rows }), more];
}

const legend = (): Block => ({
  height: 6,
  items: [
    line(
      'mark',
      [
        [0, 3],
        [12, 3],
      ],
      STROKES.edge,
    ),
    write([14, 3.9], wordsOf('layer', 'wanted'), { height: HEIGHTS.small }),
    line(
      'mark',
      [
        [42, 3],
        [54, 3],
      ],
      STROKES.cameBack,
    ),
    write([56, 3.9], wordsOf('layer', 'came-back'), { height: HEIGHTS.small }),
  ],
});
