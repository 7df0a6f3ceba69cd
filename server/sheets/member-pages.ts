import type { Job } from '../job/job.ts';
import { words } from '../language/words.ts';
import type { FramePlan, MemberPlan } from '../plan/frame.ts';
import { addTold, frameChecks, heightOf, readingCheck } from './after-bending.ts';
import { bendRows } from './bend-rows.ts';
import { bendTable } from './bend-table.ts';
import { cautionFrame } from './cautions.ts';
import { isTurned } from './clock.ts';
import type { Flow } from './flow.ts';
import { captioned, frameSelection, viewsInSpace } from './frame-views.ts';
import { HEIGHTS } from './ink.ts';
import { lastCameBack } from './last-came-back.ts';
import { makingNotes } from './making-notes.ts';
import { markStep } from './mark-step.ts';
import { sawStep, titleLine } from './saw-step.ts';
import { stops, type SheetInput } from './sheet-input.ts';
import { firstAngle, springbackNotes } from './springback-notes.ts';
import { stepHead } from './step.ts';
import { tableHeight } from './table.ts';
import { beside, paragraph, space, stacked, type Block } from './text-block.ts';

/** Heights of pictures, and width of those that stand beside words [mm]. */
const SIZED = 95;
const SMALL = 40;
const ASIDE = 58;
/** Room for the views of a frame in space, least first: more is taken only where it makes them larger. */
const IN_SPACE = [64, 76, 90, 104, 118, 134, 150, 170, 190] as const;

const CAUTIONS = [
  'sheet.bend-caution-1',
  'sheet.bend-caution-2',
  'sheet.bend-caution-3',
  'sheet.bend-caution-4',
] as const;

/** Fields whose findings stand on a bend sheet. */
export const BEND_PARTS = /^\/(tube|machine|frame|bending)(\/|$)/;

/** One member from the bar to the check after bending, in the order of work. */
export function addMember(
  flow: Flow,
  member: MemberPlan,
  input: SheetInput,
  { frame, notes }: { readonly frame: FramePlan; readonly notes: readonly Block[] },
): void {
  const { plan, job } = input;
  const alone = frame.members.length === 1;
  const { width } = flow;
  flow.add(titleLine(words('sheet.member-named', { member: member.name }), job, width));
  if (member.making.ways[0]?.possible === false)
    flow.add(paragraph(words('sheet.not-possible-here'), width, { height: HEIGHTS.head, weight: 600 }));
  if (alone) for (const block of stops(input, BEND_PARTS, width)) flow.add(block);
  const last = alone ? lastCameBack(input, width) : null;
  if (last !== null) flow.add(last);
  flow.add(stacked([stepHead(1, words('sheet.step-saw'), width), sawStep(member, job, width)]));
  flow.addTable({ head: stepHead(2, words('sheet.step-mark'), width), rows: markStep(member, job, width) });
  flow.addTable(bendRows(member.bends, job, width), [
    stepHead(3, words('sheet.step-bend'), width),
    paragraph(words('sheet.bend-caution-short'), width, { weight: 600 }),
    ...clockWords(job, member, width),
  ]);
  flow.add(rowWords(job, width));
  pour(flow, [
    ...firstAngle(member, plan.springback, job, width).map((block) => whole(flow, block)),
    whole(flow, bendCautions(width)),
    whole(flow, throughMachine(member, input, frame, width)),
    moreOfBends(flow, member, job),
    ...(alone ? afterBending(flow, frame, input) : []),
    ...(frame.planar ? [] : [whole(flow, inSpace(member, input, frame, width))]),
    ...(notes.length === 0
      ? []
      : [{ height: stacked(notes).height + 1, add: () => flow.addTogether([space(1), ...notes, space(2)]) }]),
  ]);
}

/** Something to put on a page, with the height that it takes whole [mm]. */
type Chunk = { readonly height: number; readonly add: () => void };

const whole = (flow: Flow, block: Block): Chunk => ({ height: block.height, add: () => flow.add(block) });

/** Puts chunks on pages in their order, but fills what is left of a page with the next one that fits there. */
function pour(flow: Flow, chunks: readonly Chunk[]): void {
  const waiting = [...chunks];
  while (waiting.length > 0) {
    const fitting = waiting.findIndex(({ height }) => height <= flow.left);
    const [next] = waiting.splice(Math.max(0, fitting), 1);
    next?.add();
  }
}

const moreOfBends = (flow: Flow, member: MemberPlan, job: Job): Chunk => {
  const list = bendTable(member.bends, job.units, flow.width);
  const head = paragraph(words('sheet.more-of-bends'), flow.width, { height: HEIGHTS.head, weight: 600 });
  return {
    height: head.height + tableHeight(list),
    add: () => {
      flow.addTable(list, [head]);
      flow.add(space(3));
    },
  };
};

/** The views of a frame that is not flat, with the member drawn wide. */
function inSpace(member: MemberPlan, { plan, job }: SheetInput, frame: FramePlan, width: number): Block {
  const what = frameSelection(job, frame.members.length === 1 ? null : member.name, false);
  const drawn = IN_SPACE.map((height) => viewsInSpace(plan.views, what, { paper: job.print.paper, width, height }));
  const scales = (block: Block | undefined): string => JSON.stringify(block?.scales);
  return drawn.find((block) => scales(block) === scales(drawn.at(-1))) ?? space(0);
}

/** What a frame of one member is checked by, under its face with the sizes on it, and its reading check. */
function afterBending(flow: Flow, frame: FramePlan, { plan, job }: SheetInput): Chunk[] {
  const { width } = flow;
  const face = frame.planar ? plan.views.find(({ key }) => key === 'face') : undefined;
  const head = stepHead(4, words('sheet.step-after'), width);
  const before =
    face === undefined ? [head] : [head, captioned(face, frameSelection(job, null, true), { width, height: SIZED })];
  const checks = frameChecks(frame.checks, job, width, before);
  const reading = readingCheck(frame.readingCheck, job, width);
  return [checks, ...(reading === null ? [] : [reading])].map((told) => ({
    height: heightOf(told),
    add: () => addTold(flow, told),
  }));
}

/** Way through the machine and springback, of a flat frame beside small pictures of it with the member drawn wide. */
function throughMachine(member: MemberPlan, { plan, job }: SheetInput, frame: FramePlan, width: number): Block {
  const alone = frame.members.length === 1;
  const keys = !frame.planar ? [] : alone ? ['pictorial'] : ['face', 'pictorial'];
  const what = frameSelection(job, alone ? null : member.name, false);
  const pictures = plan.views
    .filter(({ key }) => keys.includes(key))
    .map((view) => captioned(view, what, { width: ASIDE, height: SMALL }));
  const room = pictures.length === 0 ? width : width - ASIDE - 4;
  const told = stacked([
    ...makingNotes(member, job, room),
    ...(plan.springback === null ? [] : [springbackNotes(plan.springback, job, room)]),
  ]);
  return beside([
    { left: 0, block: told },
    { left: room + 4, block: stacked(pictures) },
  ]);
}

/** How the clocks of the rows are read; nothing where the tube is never turned. */
function clockWords({ machine }: Job, { bends }: MemberPlan, width: number): Block[] {
  if (!bends.some(({ rotation }) => isTurned(rotation.value))) return [];
  const sign = words(machine.rotationSign === 1 ? 'sheet.clock-sign-right' : 'sheet.clock-sign-left');
  return [paragraph(`${words('sheet.clock')} ${sign}`, width)];
}

/** What the checks of the rows are taken from. */
const rowWords = ({ bending }: Job, width: number): Block => {
  const mirrored = bending.hand === 'mirrored' ? [paragraph(words('sheet.mirrored-words'), width)] : [];
  return stacked([space(1), paragraph(words('sheet.check-from'), width), ...mirrored, space(3)]);
};

const bendCautions = (width: number): Block =>
  cautionFrame(
    CAUTIONS.map((key) => ({ text: words(key), bold: key === 'sheet.bend-caution-1' })),
    { width, height: HEIGHTS.text },
  );
