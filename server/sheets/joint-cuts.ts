import type { Job } from '../job/job.ts';
import { formatClosely } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Joint } from '../plan/joint.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { jointPicture } from './joint-picture.ts';
import { SQUARE, generatorWords, longSideWords, scrapLongAt } from './joint-slice.ts';
import type { SheetInput } from './sheet-input.ts';
import { stepHead } from './step.ts';
import { table, tableBlock } from './table.ts';
import { beside, capital, paragraph, space, stacked, type Block } from './text-block.ts';
import { isWorthPrinting } from './wraps-for.ts';

/** Width of a joint's picture, and air beside it [mm]. */
const PICTURE = 82;
const AIR = 4;

/** Step: what the saw is set to at each face, which piece is which, what falls out; a picture of each joint to scale. */
export function cutFaces(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  let head: Block[] = [
    stepHead(number, words('sheet.step-cut'), flow.width),
    paragraph(words('sheet.pieces-named'), flow.width, { weight: 600 }),
    space(1.5),
  ];
  for (const joint of way.joints) {
    const drawn = jointPicture(joint, job, PICTURE);
    const title = words('sheet.joint-on', {
      number: joint.number,
      member: joint.member,
      on: wordsOf('on', joint.on),
      kind: wordsOf('jointKind', joint.kind),
      scale: drawn.scale.text,
    });
    flow.add(
      stacked([
        ...head,
        paragraph(title, flow.width, { weight: 600 }),
        beside([
          { left: 0, block: drawn.block },
          { left: PICTURE + AIR, block: settings(joint, job, flow.width - PICTURE - AIR) },
        ]),
        space(2),
      ]),
    );
    head = [];
  }
  flow.add(stacked([paragraph(words('sheet.saw-sentence'), flow.width, { height: HEIGHTS.small }), space(2)]));
}

function settings(joint: Joint, job: Job, width: number): Block {
  const faces = ([['A', joint.faceA] as const, ['B', joint.faceB] as const] as const).map(([side, face]) => [
    { text: side, weight: 600 as const },
    {
      text: face.saw.offSquare.value < SQUARE ? words('sheet.square') : formatFigure(face.saw.offSquare, job.units),
      weight: 600 as const,
    },
    { text: longSideWords(face), weight: 600 as const },
  ]);
  const numbers = table(
    [
      { head: words('sheet.piece'), align: 'left' },
      { head: words('sheet.saw-angle'), align: 'right' },
      { head: words('sheet.longest-at'), align: 'left' },
    ],
    faces,
    { width },
  );
  const said = [
    ...(unwrapped(joint) ? [words('sheet.no-wrap')] : []),
    ...(joint.kind === 'dart' ? [dartWords(joint, job)] : []),
    words('sheet.removed', { length: formatFigure(joint.removed, job.units) }),
    scrapWords(joint, job),
    words('sheet.kink', { angle: formatFigure(joint.kink, job.units) }),
    ...(joint.letIn === null
      ? []
      : [words('sheet.let-in-follows', { length: formatFigure(joint.letIn.length, job.units) })]),
  ];
  return stacked([
    tableBlock(numbers),
    space(1.5),
    ...said.map((sentence) => paragraph(sentence, width, { height: HEIGHTS.small })),
  ]);
}

/** Whether a face of the joint is so nearly a ring that no wrap is printed for it. */
const unwrapped = ({ faceA, faceB }: Joint): boolean =>
  [faceA, faceB].some(({ template }) => template !== null && !isWorthPrinting(template));

/** The long and the short side of what falls out between two saw cuts, and where each is. */
function scrapWords(joint: Joint, { closing, units }: Job): string {
  const kerf = formatClosely(closing.kerf, units);
  const { scrap, scrapShort } = joint;
  const long = formatFigure(scrap, units);
  if (scrap.value <= 0) return words('sheet.scrap-none', { kerf });
  if (long === formatFigure(scrapShort, units)) return words('sheet.scrap-between', { kerf, length: long });
  const widest = scrapLongAt(joint);
  const places = { at: generatorWords(widest), shortAt: generatorWords(widest + 180) };
  return scrapShort.value > 0
    ? words('sheet.scrap-leaning', { kerf, long, short: formatFigure(scrapShort, units), ...places })
    : words('sheet.scrap-to-nothing', { kerf, long, ...places });
}

function dartWords(joint: Joint, { tube, units }: Job): string {
  const widest = scrapLongAt(joint);
  return capital(
    words('sheet.dart-how', {
      from: generatorWords(widest),
      hinge: generatorWords(widest + 180),
      wall: formatClosely(tube.wall, units),
      angle: formatFigure(joint.kink, units),
    }),
  );
}
