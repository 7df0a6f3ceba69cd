import { words } from '../language/words.ts';
import type { CheckDimension, FramePlan, MemberPlan } from '../plan/frame.ts';
import { addFrameChecks, addReadingCheck } from './after-bending.ts';
import { bendRows } from './bend-rows.ts';
import { bendTable } from './bend-table.ts';
import { cautionFrame } from './cautions.ts';
import type { Flow } from './flow.ts';
import { addViews, frameSelection } from './frame-views.ts';
import { HEIGHTS } from './ink.ts';
import { makingNotes } from './making-notes.ts';
import { markStep } from './mark-step.ts';
import { mirroredBanner, sawStep } from './saw-step.ts';
import { stops, type SheetInput } from './sheet-input.ts';
import { firstAngle, springbackNotes } from './springback-notes.ts';
import { stepHead } from './step.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** Most of a page's height that the views of one member take, and the least that they are squeezed into [mm]. */
const VIEWS = {
  sized: { most: 95, least: 75 },
  flat: { most: 70, least: 48 },
  inSpace: { most: 118, least: 85 },
} as const;

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
  flow.add(
    paragraph(words('sheet.member-named', { member: member.name }), width, { height: HEIGHTS.title, weight: 600 }),
  );
  flow.add(stacked(mirroredBanner(job, width)));
  if (alone) for (const block of stops(input, BEND_PARTS, width)) flow.add(block);
  flow.add(stacked([stepHead(1, words('sheet.step-saw'), width), sawStep(member, job, width)]));
  flow.addTable({ head: stepHead(2, words('sheet.step-mark'), width), rows: markStep(member, job, width) });
  flow.addTable(bendRows(member.bends, job, width), [
    stepHead(3, words('sheet.step-bend'), width),
    paragraph(words('sheet.bend-caution-short'), width, { weight: 600 }),
  ]);
  flow.add(rowWords(job.machine.rotationSign, member, width));
  for (const block of firstAngle(member, plan.springback, job, width)) flow.add(block);
  const checks: readonly CheckDimension[] = alone ? frame.checks : [];
  if (checks.length > 0) addFrameChecks(flow, checks, job, [stepHead(4, words('sheet.step-after'), width)]);
  if (alone && frame.readingCheck !== null) addReadingCheck(flow, frame.readingCheck, job);
  flow.add(stacked(makingNotes(member, job, width)));
  if (plan.springback !== null) flow.add(springbackNotes(plan.springback, job, width));
  flow.addTable(bendTable(member.bends, job.units, width), [
    paragraph(words('sheet.more-of-bends'), width, { height: HEIGHTS.head, weight: 600 }),
  ]);
  flow.add(space(3));
  const sized = alone && frame.planar;
  const { most, least } = sized ? VIEWS.sized : frame.planar ? VIEWS.flat : VIEWS.inSpace;
  const what = frameSelection(frame, job, alone ? null : member.name, sized);
  const height = flow.left >= least ? Math.min(most, flow.left) : most;
  addViews(flow, plan.views, what, { paper: job.print.paper, height, sized });
  if (notes.length > 0) flow.addTogether([space(1), ...notes, space(2)]);
  flow.add(bendCautions(width));
}

/** How the rows are read: the clock, and what the check is taken from. */
function rowWords(sign: 1 | -1, member: MemberPlan, width: number): Block {
  const turned = member.bends.some(({ rotation }) => rotation.value !== 0);
  const said = [
    ...(turned ? [words('sheet.clock'), words(sign === 1 ? 'sheet.clock-sign-right' : 'sheet.clock-sign-left')] : []),
    words('sheet.check-from'),
  ];
  return stacked([space(1), paragraph(said.join(' '), width), space(3)]);
}

const bendCautions = (width: number): Block =>
  cautionFrame(
    CAUTIONS.map((key) => ({ text: words(key), bold: key === 'sheet.bend-caution-1' })),
    { width, height: HEIGHTS.text },
  );
