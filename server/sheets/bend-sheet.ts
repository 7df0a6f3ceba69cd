import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { FramePlan, MemberPlan } from '../plan/frame.ts';
import { addTold, frameChecks, readingCheck } from './after-bending.ts';
import { figuresRow } from './figures-row.ts';
import { Flow } from './flow.ts';
import { captioned, frameSelection, viewsInSpace } from './frame-views.ts';
import { HEIGHTS } from './ink.ts';
import { lastCameBack } from './last-came-back.ts';
import { BEND_PARTS, addMember } from './member-pages.ts';
import type { Drafts } from './page.ts';
import { titleLine } from './saw-step.ts';
import { remarks, stops, tubeWords, type SheetInput } from './sheet-input.ts';
import { table, type Table } from './table.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';

/** Most of a page's height that the frame's own picture takes, and all views together of one in space [mm]. */
const LARGEST = 125;
const ALL_VIEWS = 130;

/** What a bender follows: the whole frame where it is more than one bent tube, then each bent member on pages of its own. */
export function bendSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  const { members } = plan.frame;
  const bent = members.filter((member) => member.bends.length > 0);
  const flow = new Flow(job.print.paper, 'upright');
  const whole = members.length > 1 || bent.length === 0;
  const left = whole ? addFrame(flow, plan.frame, input) : remarks(input, BEND_PARTS, flow.width);
  for (const member of bent) {
    if (whole) flow.begin(member.name);
    addMember(flow, member, input, { frame: plan.frame, notes: member === bent.at(-1) ? left : [] });
  }
  return { ok: true, drafts: flow.drafts() };
}

/**
 * The whole frame: its picture, its members with what is sawn, and what it is checked by once it is together.
 *
 * @returns notes that would have needed a page of their own, for the last page of all
 */
function addFrame(flow: Flow, frame: FramePlan, input: SheetInput): Block[] {
  const { plan, job } = input;
  const { width } = flow;
  flow.add(titleLine(words('sheet.frame-as-wanted'), job, width));
  flow.add(
    figuresRow(
      [
        { name: words('sheet.tube'), value: tubeWords(job) },
        { name: words('sheet.mass'), value: formatFigure(frame.mass, job.units) },
        { name: words('sheet.tube-length'), value: formatFigure(frame.tubeLength, job.units) },
      ],
      width,
    ),
  );
  for (const block of stops(input, BEND_PARTS, width)) flow.add(block);
  const last = lastCameBack(input, width);
  if (last !== null) flow.add(last);
  const what = frameSelection(job, null, frame.planar);
  if (frame.planar) {
    const view = plan.views.find(({ key }) => key === 'face');
    if (view !== undefined) flow.add(captioned(view, what, { width, height: Math.min(LARGEST, flow.left) }));
  } else flow.add(viewsInSpace(plan.views, what, { paper: job.print.paper, width, height: ALL_VIEWS }));
  flow.addTable(memberList(job, frame.members, width), [space(2)]);
  flow.add(space(3));
  const head = paragraph(words('sheet.step-after'), width, { height: HEIGHTS.head, weight: 600 });
  if (frame.checks.length > 0) addTold(flow, frameChecks(frame.checks, job, width, [head]));
  const reading = readingCheck(frame.readingCheck, job, width);
  if (reading !== null) addTold(flow, reading);
  const told = remarks(input, BEND_PARTS, width);
  const bent = frame.members.some(({ bends }) => bends.length > 0);
  if (bent && stacked(told).height + 1 > flow.left) return told;
  if (told.length > 0) flow.addTogether([space(1), ...told]);
  return [];
}

/** Every member with its length to saw and its ends. */
function memberList({ units }: Job, members: readonly MemberPlan[], width: number): Table {
  const end = (one: MemberPlan['start']): string =>
    one.onto === null ? wordsOf('choice.end', one.kind) : words('sheet.saddle-on', { member: one.onto });
  return table(
    [
      { head: words('sheet.member'), align: 'left' },
      { head: words('sheet.bends'), align: 'right' },
      { head: words('sheet.cut-length'), align: 'right' },
      { head: words('sheet.mass'), align: 'right' },
      { head: words('sheet.start'), align: 'left' },
      { head: words('sheet.finish'), align: 'left' },
    ],
    members.map((member) => [
      { text: member.name, weight: 600 },
      String(member.bends.length),
      { text: formatFigure(member.cutLength, units), weight: 600 },
      formatFigure(member.mass, units),
      end(member.start),
      end(member.finish),
    ]),
    { width },
  );
}
