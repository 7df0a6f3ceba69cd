import { formatClosely } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Joint } from '../plan/joint.ts';
import type { Figure } from '../plan/figure.ts';
import type { WeldMovement } from '../plan/welding.ts';
import type { Flow } from './flow.ts';
import { widthOf } from './fonts.ts';
import { HEIGHTS } from './ink.ts';
import { SQUARE } from './joint-slice.ts';
import type { SheetInput } from './sheet-input.ts';
import { tick } from './sign.ts';
import { stepHead } from './step.ts';
import { table, type Cell } from './table.ts';
import { beside, paragraph, space, stacked } from './text-block.ts';

/** Room for the box to tick beside the sentence [mm]. */
const TICK = 44;

type Job = SheetInput['job'];

/** Step: dress and fit each joint, tack it, and what to measure before the weld. */
export function dressAndFit(flow: Flow, way: Way, { job, plan }: SheetInput, number: number): void {
  const settled = plan.welding?.shrinkage.value ?? job.closing.shrinkage;
  const shrinkage = settled === null ? '—' : formatClosely(Number(settled.toFixed(2)), job.units);
  flow.addTable(
    table(
      [
        { head: words('sheet.joint'), align: 'left' },
        { head: words('sheet.gap'), align: 'right' },
        { head: words('sheet.hi-lo-expected'), align: 'right' },
        { head: words('sheet.hi-lo-grade'), align: 'left' },
        { head: words('sheet.largest-kink'), align: 'right' },
        { head: words('sheet.twist'), align: 'left' },
        { head: words('sheet.shrinkage'), align: 'right' },
      ],
      way.joints.map((joint): Cell[] => [
        { text: String(joint.number), weight: 600 },
        formatClosely(job.closing.gap, job.units),
        { text: formatClosely(joint.hiLo.value, job.units), weight: 600 },
        wordsOf('hiLo', joint.hiLoGrade),
        formatFigure(joint.kink, job.units),
        twistWords(joint, job),
        shrinkage,
      ]),
      { width: flow.width },
    ),
    [stepHead(number, words('sheet.step-fit'), flow.width)],
  );
  addChecks(flow, way, { job, plan });
}

/** Which way the far piece is turned, looking along the tube from the datum end. */
function twistWords({ twist }: Joint, { units }: Job): string {
  if (Math.abs(twist.value) < SQUARE) return words('sheet.no-twist');
  const angle = formatFigure({ ...twist, value: Math.abs(twist.value) }, units);
  return twist.value > 0 ? words('sheet.twist-clockwise', { angle }) : words('sheet.twist-anticlockwise', { angle });
}

/** A size before the welds have moved it: what it is to become less what they do to it. */
function tacked({ key, index, cameBack }: Way['after'][number], moved: WeldMovement['checks']): Figure {
  const one = moved.find((check) => check.key === key && check.index === index);
  return one === undefined ? cameBack : { ...cameBack, value: cameBack.value - one.shrinkage.value - one.given.value };
}

/** Sizes to be met when every joint is tacked, diagonals among them, with room to write what was found. */
export function addChecks(flow: Flow, way: Way, { job, plan }: Pick<SheetInput, 'job' | 'plan'>): void {
  if (way.after.length === 0) return;
  const { units } = job;
  const moved = way.joints.length > 0 ? (plan.welding?.movement?.checks ?? []) : [];
  const show = (figure: Figure): string => formatFigure(figure, units);
  const told = flow.width - TICK;
  const said = words(way.joints.length > 0 ? 'sheet.check-tacked' : 'sheet.check-then');
  const trimmed = way.trims.length > 0 ? [paragraph(words('sheet.after-trim'), told, { height: HEIGHTS.small })] : [];
  flow.addTable(
    table(
      [
        { head: words('sheet.check'), align: 'left' },
        { head: words('sheet.measured'), align: 'left' },
        ...(moved.length > 0 ? [{ head: words('sheet.when-tacked'), align: 'right' as const }] : []),
        { head: words('sheet.found'), align: 'middle' },
        { head: words(moved.length > 0 ? 'sheet.when-welded' : 'sheet.after'), align: 'right' },
        { head: words('sheet.wanted'), align: 'right' },
      ],
      way.after.map((one): Cell[] => [
        wordsOf('check', one.key, { index: one.index }),
        wordsOf('choice.reference', one.reference),
        ...(moved.length > 0 ? [{ text: show(tacked(one, moved)), weight: 600 as const }] : []),
        '..........................',
        { text: show(one.cameBack), weight: moved.length > 0 ? 400 : 600 },
        show(one.wanted),
      ]),
      { width: flow.width },
    ),
    [
      space(2),
      beside([
        { left: 0, block: stacked([paragraph(said, told, { weight: 600 }), ...trimmed]) },
        {
          left: told + TICK - widthOf(words('sheet.checked'), HEIGHTS.text, 400) - 7,
          block: tick(words('sheet.checked')),
        },
      ]),
    ],
  );
  flow.add(space(2));
}
