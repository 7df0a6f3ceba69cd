import type { Job } from '../job/job.ts';
import { formatLength } from '../language/length-format.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { CheckDimension, MemberPlan } from '../plan/frame.ts';
import type { View } from '../plan/view.ts';
import { bendTable } from './bend-table.ts';
import { dimensionWords } from './dimension-words.ts';
import { figuresRow } from './figures-row.ts';
import { Flow } from './flow.ts';
import { HEIGHTS, STROKES } from './ink.ts';
import type { Drafts } from './page.ts';
import { picture, scaleFor, type Selection } from './picture.ts';
import { remarks, stops, tubeWords, type SheetInput } from './sheet-input.ts';
import { straightTube, type Stretch, type TubeMark } from './straight-tube.ts';
import { table, tableHeight, type Table } from './table.ts';
import { paragraph, space, stacked } from './text-block.ts';

const PARTS = /^\/(tube|machine|frame)(\/|$)/;

/** Most of a page's height that a picture takes [mm]. */
const LARGEST = 170;

/** The frame as wanted, what to check it by, and for each member its marks and bend table. */
export function bendSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  const bent = plan.frame.members.filter((member) => member.bends.length > 0);
  const first = new Flow(job.print.paper, 'upright');
  first.add(paragraph(words('sheet.frame-as-wanted'), first.width, { height: HEIGHTS.title, weight: 600 }));
  first.add(
    figuresRow(
      [
        { name: words('sheet.tube'), value: tubeWords(job) },
        { name: words('sheet.mass'), value: formatFigure(plan.frame.mass, job.units) },
        { name: words('sheet.tube-length'), value: formatFigure(plan.frame.tubeLength, job.units) },
      ],
      first.width,
    ),
  );
  for (const block of stops(input, PARTS, first.width)) first.add(block);
  const { members, checks } = plan.frame;
  const lists = [memberList(input, members, first.width)];
  if (checks.length > 0) lists.push(checkList(job, checks, first.width));
  const told = remarks(input, PARTS, first.width);
  const below = stacked(told).height + lists.reduce((sum, list) => sum + tableHeight(list) + 3, 1);
  const views = plan.views.filter(({ key }) => key !== 'pictorial' && (plan.frame?.planar === false || key === 'face'));
  for (const [index, view] of views.entries()) {
    const what = selection(input, null);
    const tight = { width: first.width, height: first.left - below };
    const wide = { width: first.width, height: Math.min(first.left, LARGEST) };
    // the tables go to the next page where keeping them here would make the picture smaller
    const same = scaleFor(view, what, tight).factor === scaleFor(view, what, wide).factor;
    addPicture(first, view, what, index === 0 && same ? tight.height : wide.height);
  }
  for (const list of lists) first.addTable(list, [space(3)]);
  // notes that would need a page of their own go below the last bend table
  const here = bent.length === 0 || stacked(told).height + 1 <= first.left;
  if (here && told.length > 0) first.addTogether([space(1), ...told]);

  const each = new Flow(job.print.paper, 'across');
  for (const [index, member] of bent.entries()) {
    if (index > 0) each.newPage();
    addMember(each, member, input, bent.length > 1 ? views[0] : undefined);
  }
  if (!here) each.addTogether([space(2), ...remarks(input, PARTS, each.width)]);
  return { ok: true, drafts: [...first.drafts(), ...each.drafts()] };
}

const selection = ({ job }: SheetInput, member: string | null): Selection => ({
  layers: ['wanted'],
  dimensions: ({ layer }) => layer === 'wanted',
  marks: ({ layer, kind }) => layer === 'wanted' && (kind === 'end' || kind === 'bend'),
  member,
  say: dimensionWords(job.units),
});

function addPicture(flow: Flow, view: View, what: Selection, height: number): void {
  const drawn = picture(view, what, { width: flow.width, height: height - 5 });
  if (drawn.items.length === 0) return;
  const caption = words('sheet.view-at-scale', { view: wordsOf('view', view.key), scale: drawn.scale.text });
  flow.add(stacked([paragraph(caption, flow.width, { height: HEIGHTS.small }), drawn]));
}

/** Every member with its length to saw and its ends. */
function memberList({ job }: SheetInput, members: readonly MemberPlan[], width: number): Table {
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
      { text: formatFigure(member.cutLength, job.units), weight: 600 },
      formatFigure(member.mass, job.units),
      end(member.start),
      end(member.finish),
    ]),
    { width },
  );
}

function checkList(job: Job, checks: readonly CheckDimension[], width: number): Table {
  return table(
    [
      { head: words('sheet.check'), align: 'left' },
      { head: wordsOf('choice.reference', 'outside'), align: 'right' },
      { head: wordsOf('choice.reference', 'centre'), align: 'right' },
      { head: wordsOf('choice.reference', 'inside'), align: 'right' },
    ],
    checks.map((check) => [
      wordsOf('check', check.key, { index: check.index }),
      { text: formatFigure(check.outside, job.units), weight: 600 },
      formatFigure(check.centre, job.units),
      formatFigure(check.inside, job.units),
    ]),
    { width },
  );
}

function addMember(flow: Flow, member: MemberPlan, input: SheetInput, view: View | undefined): void {
  const { plan, job } = input;
  flow.add(
    paragraph(words('sheet.member-named', { member: member.name }), flow.width, { height: HEIGHTS.title, weight: 600 }),
  );
  flow.add(
    figuresRow(
      [{ name: words('sheet.cut-length'), value: formatFigure(member.cutLength, job.units) }],
      flow.width,
      HEIGHTS.big,
    ),
  );
  flow.add(
    figuresRow(
      [
        { name: words('sheet.tube'), value: tubeWords(job) },
        { name: words('sheet.mass'), value: formatFigure(member.mass, job.units) },
        { name: words('sheet.last-straight'), value: formatFigure(member.lastStraight, job.units) },
        {
          name: words('sheet.machine'),
          value: words('sheet.machine-die', {
            machine: job.machine.name === '' ? words('sheet.machine-unnamed') : job.machine.name,
            die: formatLength(job.machine.dies[job.machine.die]?.radius ?? 0, job.units),
          }),
        },
      ],
      flow.width,
      HEIGHTS.text,
    ),
  );
  const marks = straightTube(markedTube(member, input), flow.width);
  flow.add(
    stacked([
      paragraph(words('sheet.marks', { scale: marks.scale.text }), flow.width, { height: HEIGHTS.small }),
      marks.block,
    ]),
  );
  flow.addTable(bendTable(member.bends, job.units, flow.width));
  if (plan.springback !== null) {
    const { method, shareAt90, bendTo90 } = plan.springback;
    const text = words('sheet.springback', {
      method: wordsOf('method', method),
      share: (100 * shareAt90.value).toFixed(1),
      angle: formatFigure(bendTo90, job.units),
    });
    flow.add(stacked([space(2), paragraph(text, flow.width)]));
  }
  const rotation = words(job.machine.rotationSign === 1 ? 'sheet.rotation-right' : 'sheet.rotation-left');
  if (member.bends.length > 1) flow.add(paragraph(rotation, flow.width, { height: HEIGHTS.small }));
  if (view !== undefined && flow.left > 60) addPicture(flow, view, selection(input, member.name), flow.left);
}

/** The member's tube before bending, with the start, middle and end of each bend from the datum end. */
function markedTube(member: MemberPlan, { job }: SheetInput): Parameters<typeof straightTube>[0] {
  const stretches: Stretch[] = [];
  const marks: TubeMark[] = [];
  let reached = 0;
  const stretch = (to: number, breakable: boolean, caption = ''): void => {
    stretches.push({ length: Math.max(0, to - reached), breakable, hatched: false, caption });
    reached = Math.max(reached, to);
  };
  const say = (key: 'sheet.mark-start' | 'sheet.mark-middle' | 'sheet.mark-end', bend: number, at: number): string =>
    words(key, { bend, distance: formatLength(at, job.units) });
  for (const bend of member.bends) {
    const [start, middle, end] = [bend.startMark.value, bend.middleMark.value, bend.endMark.value];
    stretch(start, true);
    stretch(middle, bend.made === 'rolled');
    stretch(end, bend.made === 'rolled');
    marks.push(
      { station: start, label: say('sheet.mark-start', bend.number, start), stroke: STROKES.narrow },
      { station: middle, label: say('sheet.mark-middle', bend.number, middle), stroke: STROKES.centreline },
      { station: end, label: say('sheet.mark-end', bend.number, end), stroke: STROKES.hidden },
    );
  }
  stretch(member.cutLength.value, true);
  marks.unshift({ station: 0, label: words('sheet.datum-end'), stroke: STROKES.edge });
  marks.push({
    station: reached,
    label: words('sheet.cut-at', { distance: formatLength(member.cutLength.value, job.units) }),
    stroke: STROKES.edge,
  });
  return { diameter: job.tube.outsideDiameter, stretches, marks };
}
