import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Joint, LetInPiece } from '../plan/joint.ts';
import type { Figure } from '../plan/figure.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS, STROKES, line, write, type Item, type Spot } from './ink.ts';
import { SQUARE, generatorWords, sliceOf } from './joint-slice.ts';
import { largestScale } from './scale.ts';
import type { SheetInput } from './sheet-input.ts';
import { stepHead } from './step.ts';
import { breakAt } from './straight-tube.ts';
import { table, type Cell } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** What is drawn of the old tube, the air at each face, and a new piece at the longest before it is broken [mm]. */
const OLD = 22;
const AIR = 3;
const LONGEST = 90;
const TALLEST = 18;
const TOP = 8;

type WithPiece = Joint & { readonly letIn: LetInPiece };

const withPieces = ({ joints }: Way): WithPiece[] =>
  joints.flatMap((joint) => (joint.letIn === null ? [] : [{ ...joint, letIn: joint.letIn }]));

/** Step: the new tube that stands between two faces, as a cut list of its own, each piece drawn between its neighbours. */
export function letInPieces(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  const joints = withPieces(way);
  if (joints.length === 0) return;
  const show = (figure: Figure | null): string => (figure === null ? '—' : formatFigure(figure, job.units));
  const tilt = (figure: Figure): string => (figure.value < SQUARE ? words('sheet.square') : show(figure));
  flow.addTable(
    table(
      [
        { head: words('sheet.joint'), align: 'left' },
        { head: words('sheet.member'), align: 'left' },
        { head: words('sheet.saw-off'), align: 'right' },
        { head: words('sheet.finished-length'), align: 'right' },
        { head: words('sheet.new-radius'), align: 'right' },
        { head: words('sheet.new-angle'), align: 'right' },
        { head: words('sheet.end-a'), align: 'right' },
        { head: words('sheet.end-b'), align: 'right' },
      ],
      joints.map(({ number: joint, member, letIn }): Cell[] => [
        { text: String(joint), weight: 600 },
        member,
        { text: show(letIn.cutLength), weight: 600 },
        { text: show(letIn.length), weight: 600 },
        letIn.radius === null ? words('sheet.straight') : show(letIn.radius),
        show(letIn.angle),
        tilt(letIn.tiltA),
        tilt(letIn.tiltB),
      ]),
      { width: flow.width },
    ),
    [stepHead(number, words('sheet.step-let-in'), flow.width)],
  );
  flow.add(stacked([space(1), paragraph(words('sheet.let-in-how'), flow.width, { height: HEIGHTS.small }), space(1)]));
  for (const joint of joints) flow.add(pieceBetween(joint, job, flow.width));
  flow.add(space(2));
}

/** A new piece laid straight between the two old ones, each face as far off square as it is cut. */
function pieceBetween(joint: WithPiece, { tube, units }: Job, width: number): Block {
  const { letIn } = joint;
  const diameter = tube.outsideDiameter;
  const scale = largestScale((factor) => diameter * factor <= TALLEST);
  const across = diameter * scale.factor;
  const length = Math.min(letIn.length.value * scale.factor, LONGEST);
  const [top, bottom] = [TOP, TOP + across];
  const left = (width - length) / 2;
  const right = left + length;
  const slice = sliceOf(joint);
  // the new piece closes on the old faces: it is longest where they are shortest
  const a = ((slice.a.lower - slice.a.upper) / 2) * scale.factor;
  const b = ((slice.b.upper - slice.b.lower) / 2) * scale.factor;
  const side = { height: HEIGHTS.small, align: 'middle' } as const;
  const run = (points: readonly Spot[], stroke = STROKES.edge): Item => line('edge', points, stroke);
  const text = words('sheet.let-in-length', { length: formatFigure(letIn.length, units) });
  const items: Item[] = [
    run([
      [left - AIR - OLD, top],
      [left - AIR - a, top],
      [left - AIR + a, bottom],
      [left - AIR - OLD, bottom],
    ]),
    run([
      [right + AIR + OLD, top],
      [right + AIR + b, top],
      [right + AIR - b, bottom],
      [right + AIR + OLD, bottom],
    ]),
    run([
      [left - a, top],
      [right + b, top],
      [right - b, bottom],
      [left + a, bottom],
      [left - a, top],
    ]),
    ...(letIn.length.value * scale.factor > length + 1e-6 ? breakAt((left + right) / 2, top, bottom) : []),
    write([left - AIR - OLD, top - 1.5], words('sheet.piece-a'), { weight: 600 }),
    write([right + AIR + OLD, top - 1.5], words('sheet.piece-b'), { weight: 600, align: 'right' }),
    write([width / 2, top - 1.5], generatorWords(slice.upper), side),
    write([width / 2, bottom + 3.2], generatorWords(slice.upper + 180), side),
    write([width / 2, bottom + 7.5], text, { align: 'middle', weight: 600 }),
    write([0, top + across / 2 + 1], words('sheet.joint-number', { number: joint.number }), { weight: 600 }),
  ];
  return { height: bottom + 11, items, scales: [scale.text] };
}
