import { formatClosely, formatLength } from '../language/length-format.ts';
import { formatBand, formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Joint, JointFace, Way } from '../plan/correction.ts';
import type { Figure } from '../plan/figure.ts';
import type { Flow } from './flow.ts';
import { HEIGHTS, STROKES } from './ink.ts';
import { jointPicture } from './joint-picture.ts';
import { picture } from './picture.ts';
import type { SheetInput } from './sheet-input.ts';
import { tick } from './sign.ts';
import { stepHead } from './step.ts';
import { straightTube, type Stretch, type TubeMark } from './straight-tube.ts';
import { table, tableBlock } from './table.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';

/** Step 1: every cut member laid straight with tape distances, then both faces of each joint along four generators. */
export function findMarks(flow: Flow, way: Way, input: SheetInput, number: number): void {
  const { job, plan } = input;
  const members = [...new Set(way.joints.map(({ member }) => member))];
  let head: Block[] = [stepHead(number, words('sheet.step-marks'), flow.width), jointsInFrame(flow, input)];
  for (const name of members) {
    const joints = way.joints.filter(({ member }) => member === name);
    const length = plan.correction?.members.find((member) => member.name === name)?.developedLength;
    if (length === undefined) continue;
    const drawn = straightTube(markedMember(joints, length, input), flow.width);
    const caption = words('sheet.member-straight', { member: name, scale: drawn.scale.text });
    flow.add(stacked([...head, paragraph(caption, flow.width, { height: HEIGHTS.small }), drawn.block]));
    head = [];
  }
  const rows = way.joints.flatMap((joint) =>
    (['A', 'B'] as const).map((side) => {
      const face = side === 'A' ? joint.faceA : joint.faceB;
      return [
        { text: `${String(joint.number)} ${side}`, weight: 600 as const },
        joint.member,
        ...face.generators.map(({ distance }) => ({ text: formatFigure(distance, job.units), weight: 600 as const })),
        wordsOf('measuredFrom', face.measuredFrom),
      ];
    }),
  );
  const generators = way.joints[0]?.faceA.generators ?? [];
  const marks = table(
    [
      { head: words('sheet.joint-face'), align: 'left' },
      { head: words('sheet.member'), align: 'left' },
      ...generators.map(({ key }) => ({ head: wordsOf('generator', key), align: 'right' as const })),
      { head: words('sheet.measured-from'), align: 'left' },
    ],
    rows,
    { width: flow.width },
  );
  const band = way.joints[0]?.faceA.generators[0]?.distance.band ?? null;
  const sure = band === null ? '' : ` ${words('sheet.marks-band', { band: formatBand(band, 'mm', job.units) })}`;
  flow.addTable(marks, [
    ...head,
    paragraph(`${words('sheet.along-surface')}${sure}`, flow.width, { height: HEIGHTS.small }),
  ]);
  flow.add(space(2));
}

/** A small picture that says which joint is where. */
function jointsInFrame(flow: Flow, { plan }: SheetInput): Block {
  const view = plan.views.find(({ marks }) => marks.some(({ kind }) => kind === 'joint'));
  if (view === undefined) return space(0);
  const drawn = picture(
    view,
    {
      layers: ['corrected'],
      dimensions: () => false,
      marks: ({ kind }) => kind === 'joint',
      member: null,
      say: () => '',
    },
    { width: flow.width, height: 62 },
  );
  const caption = words('sheet.joints-in-frame', { scale: drawn.scale.text });
  return stacked([paragraph(caption, flow.width, { height: HEIGHTS.small }), drawn]);
}

/** The member as it is, laid straight: stations of the two faces of each joint, the piece between them hatched. */
function markedMember(
  joints: readonly Joint[],
  length: Figure,
  { job }: SheetInput,
): Parameters<typeof straightTube>[0] {
  const stretches: Stretch[] = [];
  const marks: TubeMark[] = [{ station: 0, label: words('sheet.datum-end'), stroke: STROKES.edge }];
  let reached = 0;
  const stretch = (to: number, hatched: boolean, caption: string): void => {
    stretches.push({ length: Math.max(0, to - reached), breakable: true, hatched, caption });
    reached = Math.max(reached, to);
  };
  for (const joint of joints.toSorted((one, other) => one.faceA.station.value - other.faceA.station.value)) {
    for (const [side, face] of [
      ['A', joint.faceA],
      ['B', joint.faceB],
    ] as const) {
      stretch(
        face.station.value,
        side === 'B',
        side === 'B' ? words('sheet.joint-number', { number: joint.number }) : '',
      );
      const label = words('sheet.mark-face', {
        joint: joint.number,
        side,
        distance: formatLength(face.station.value, job.units),
      });
      marks.push({ station: face.station.value, label, stroke: STROKES.narrow });
    }
  }
  stretch(length.value, false, '');
  marks.push({ station: length.value, label: formatFigure(length, job.units), stroke: STROKES.edge });
  return { diameter: job.tube.outsideDiameter, stretches, marks };
}

/** Below this a face is square: finer than a saw is set [degrees]. */
const SQUARE = 0.005;

/** Which way a face leans, by the generator that is longest. */
function leaning(face: JointFace): string {
  if (face.tilt.value < SQUARE) return '—';
  const turn = ((face.tiltDirection % 360) + 360) % 360;
  const keys = ['outside', 'top', 'inside', 'bottom'] as const;
  const key = keys[Math.round(turn / 90) % 4] ?? 'outside';
  return wordsOf('generator', key);
}

/** Step 2: what the saw has to be set to, with a picture of each joint. */
export function cutFaces(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  let head: Block[] = [stepHead(number, words('sheet.step-cut'), flow.width)];
  for (const joint of way.joints) {
    const pictureWidth = 82;
    const drawn = jointPicture(joint, job.tube.outsideDiameter, job.units, pictureWidth);
    const numbers = tableBlock(
      table(
        [
          { head: words('sheet.face'), align: 'left' },
          { head: words('sheet.saw-angle'), align: 'right' },
          { head: words('sheet.longest-at'), align: 'left' },
        ],
        (['A', 'B'] as const).map((side) => {
          const face = side === 'A' ? joint.faceA : joint.faceB;
          return [
            { text: side, weight: 600 as const },
            {
              text: face.tilt.value < SQUARE ? words('sheet.square') : formatFigure(face.tilt, job.units),
              weight: 600 as const,
            },
            leaning(face),
          ];
        }),
        { width: flow.width - pictureWidth - 4 },
      ),
    );
    const lineWidth = flow.width - pictureWidth - 4;
    const scrap = joint.scrap.value > 0 ? formatFigure(joint.scrap, job.units) : words('sheet.nothing-falls-out');
    const text = stacked([
      numbers,
      space(1.5),
      ...[
        words('sheet.removed', { length: formatFigure(joint.removed, job.units) }),
        words('sheet.scrap-between', { length: scrap, kerf: formatClosely(job.closing.kerf, job.units) }),
        words('sheet.kink', { angle: formatFigure(joint.kink, job.units) }),
      ].map((sentence) => paragraph(sentence, lineWidth, { height: HEIGHTS.small })),
    ]);
    const title = words('sheet.joint-on', {
      number: joint.number,
      member: joint.member,
      on: wordsOf('on', joint.on),
      scale: drawn.scale.text,
    });
    flow.add(
      stacked([
        ...head,
        paragraph(title, flow.width, { weight: 600 }),
        beside([
          { left: 0, block: drawn.block },
          { left: pictureWidth + 4, block: text },
        ]),
        space(2),
      ]),
    );
    head = [];
  }
  flow.add(stacked([paragraph(words('sheet.saw-sentence'), flow.width, { height: HEIGHTS.small }), space(2)]));
}

/** Step 3: dress and fit, and what to measure before tacking. */
export function dressAndFit(flow: Flow, way: Way, { job }: SheetInput, number: number): void {
  const joints = way.joints.map((joint) => [
    { text: String(joint.number), weight: 600 as const },
    formatClosely(job.closing.gap, job.units),
    { text: formatClosely(joint.hiLo.value, job.units), weight: 600 as const },
    wordsOf('hiLo', joint.hiLoGrade),
    formatClosely(job.closing.shrinkage, job.units),
  ]);
  flow.addTable(
    table(
      [
        { head: words('sheet.joint'), align: 'left' },
        { head: words('sheet.gap'), align: 'right' },
        { head: words('sheet.hi-lo-expected'), align: 'right' },
        { head: words('sheet.hi-lo-grade'), align: 'left' },
        { head: words('sheet.shrinkage'), align: 'right' },
      ],
      joints,
      { width: flow.width },
    ),
    [stepHead(number, words('sheet.step-fit'), flow.width)],
  );
  addChecks(flow, way, job.units);
}

/** Sizes to be met before tacking, with room to write what was found. */
export function addChecks(flow: Flow, way: Way, units: SheetInput['job']['units']): void {
  if (way.after.length === 0) return;
  const rows = way.after.map((one) => [
    wordsOf('check', one.key, { index: one.index }),
    wordsOf('choice.reference', one.reference),
    formatFigure(one.wanted, units),
    { text: formatFigure(one.cameBack, units), weight: 600 as const },
    '',
  ]);
  flow.addTable(
    table(
      [
        { head: words('sheet.check'), align: 'left' },
        { head: words('sheet.measured'), align: 'left' },
        { head: words('sheet.wanted'), align: 'right' },
        { head: words('sheet.after'), align: 'right' },
        { head: words('sheet.found'), align: 'left' },
      ],
      rows,
      { width: flow.width },
    ),
    [space(2), paragraph(words('sheet.check-before-tack'), flow.width, { weight: 600 })],
  );
  const trimmed =
    way.trims.length > 0
      ? [space(1.5), paragraph(words('sheet.after-trim'), flow.width, { height: HEIGHTS.small })]
      : [];
  flow.add(stacked([...trimmed, space(1), tick(words('sheet.checked')), space(2)]));
}
