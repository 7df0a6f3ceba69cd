import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { gapGrade } from '../language/site-rules.ts';
import { words } from '../language/words.ts';
import type { GapPlan, GapRow } from '../plan/gap.ts';
import { withBand } from './site-words.ts';
import { table, type Cell, type Table } from './table.ts';

/** Least room between each thing and each tube, where that is, and how far round the swing. */
export function gapTable(gaps: readonly GapPlan[], job: Job, width: number): Table {
  const { units } = job;
  return table(
    [
      { head: words('sheet.gap-thing'), align: 'left' },
      { head: words('sheet.gap-tube'), align: 'left' },
      { head: words('sheet.gap-least'), align: 'right' },
      { head: words('sheet.gap-asked'), align: 'right' },
      { head: words('sheet.gap-where'), align: 'right' },
      { head: words('sheet.gap-swing'), align: 'left' },
    ],
    gaps.flatMap((gap): Cell[][] => [
      ...gap.rows.map((row, index): Cell[] => [
        index === 0 ? { text: gap.thing, weight: 600 } : '',
        row.name,
        { text: gapWords(row, gap, job), weight: gapGrade(row.gap, gap.clearance) === 'enough' ? 400 : 600 },
        index === 0 ? formatFigure(gap.clearance, units) : '',
        whereWords(row, job),
        swingWords(row, job),
      ]),
      ...ellipseRow(gap, job),
    ]),
    { width, height: 2.1 },
  );
}

/** The gap, and that it is none or less than is asked for. */
function gapWords({ gap }: GapRow, { clearance }: GapPlan, job: Job): string {
  const said = withBand(gap, job);
  const grade = gapGrade(gap, clearance);
  return grade === 'enough' ? said : words(`sheet.gap-${grade}`, { gap: said });
}

const whereWords = ({ of, station }: GapRow, { units }: Job): string =>
  words(of === 'leg' ? 'sheet.from-its-foot' : 'sheet.from-its-datum', { distance: formatFigure(station, units) });

function swingWords({ thingSwing, frameSwing }: GapRow, { units }: Job): string {
  const said = [
    ...(thingSwing === null ? [] : [words('sheet.swing-thing', { angle: formatFigure(thingSwing, units) })]),
    ...(frameSwing === null ? [] : [words('sheet.swing-frame', { angle: formatFigure(frameSwing, units) })]),
  ];
  return said.length === 0 ? '—' : said.join(', ');
}

function ellipseRow({ ellipse, keptClear }: GapPlan, { units }: Job): Cell[][] {
  const said = [
    ...(ellipse === null
      ? []
      : [
          words('sheet.gap-ellipse', {
            long: formatFigure(ellipse.long, units),
            short: formatFigure(ellipse.short, units),
            tilt: formatFigure(ellipse.tilt, units),
          }),
        ]),
    ...(keptClear ? [words('sheet.gap-kept-clear')] : []),
  ];
  return said.length === 0 ? [] : [['', { text: said.join(' '), weight: 400, span: true }]];
}
