import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { fieldName } from '../language/field-name.ts';
import { words } from '../language/words.ts';
import type { StandingPlan } from '../plan/site.ts';
import { figuresRow, type Named } from './figures-row.ts';
import { withBand } from './site-words.ts';
import { table, tableBlock, type Cell } from './table.ts';
import { paragraph, stacked, type Block } from './text-block.ts';

/** How the frame stands: its slopes against level and against the structure, its height, and what it is off its points. */
export function standingBlock(standing: StandingPlan, job: Job, width: number): Block {
  const { slopes, height, turn, misfits } = standing;
  const facts: Named[] = [
    ...(height === null ? [] : [{ name: words('sheet.standing-height'), value: withBand(height, job) }]),
    ...(turn === null ? [] : [{ name: words('sheet.standing-turn'), value: withBand(turn, job) }]),
  ];
  const list = table(
    [
      { head: words('sheet.standing-along'), align: 'left' },
      { head: words('sheet.standing-to-level'), align: 'right' },
      { head: words('sheet.standing-to-structure'), align: 'right' },
    ],
    slopes.map(({ axis, field, toLevel, toStructure }): Cell[] => [
      axis === 'asked' ? fieldName(field) : words(`sheet.standing-${axis}`),
      { text: withBand(toLevel, job), weight: 600 },
      withBand(toStructure, job),
    ]),
    { width, height: 2.1 },
  );
  const off = misfits.map(({ name, misfit }) => `${name} ${formatFigure(misfit, job.units)}`).join('; ');
  return stacked([
    figuresRow(facts, width),
    ...(slopes.length === 0 ? [] : [tableBlock(list)]),
    ...(off === '' ? [] : [paragraph(words('sheet.standing-misfits', { list: off }), width)]),
  ]);
}
