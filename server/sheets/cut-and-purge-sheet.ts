import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { Finding } from '../plan/finding.ts';
import { cautions } from './cautions.ts';
import { figuresRow } from './figures-row.ts';
import { addFinish } from './finish-block.ts';
import { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { cutFaces } from './joint-cuts.ts';
import { addChecks, dressAndFit } from './joint-fit.ts';
import { findMarks } from './joint-marks.ts';
import { letInPieces } from './let-in-steps.ts';
import { orderOfWork } from './order-of-work.ts';
import type { Draft, Drafts } from './page.ts';
import { addPacking, addRebends, addTrims } from './rebend-steps.ts';
import { FINISH_PARTS, WELDING_PARTS, isCommon, setUpsOf } from './set-up.ts';
import { setUpPage, setUpTitle } from './set-up-page.ts';
import { chosenWay, finely, notes, stops, tubeWords, type SheetInput } from './sheet-input.ts';
import { stepHead } from './step.ts';
import { capital, paragraph, space, stacked } from './text-block.ts';
import { templatePages } from './template-pages.ts';
import { addOrder } from './weld-order.ts';
import { wrapsFor } from './wraps-for.ts';

const PARTS = /^\/(cameBack|closing(?!\/way))(\/|$)/;
const STOPPING = /^\/(cameBack|closing|purge|welding)(\/|$)/;

/** Whether the plan has bends turned again only after the joints are cut and closed. */
function bendsAfterCutting({ steps, joints }: Way): boolean {
  const bend = steps.findIndex(({ key }) => /^(step\.)?(rebend|re-roll)/.test(key));
  const cut = steps.findIndex(({ joint }) => joint > 0);
  return joints.length > 0 && (bend === -1 || bend > cut);
}

/** What comes before the gas: the order of it all, bends, marks, cuts, new pieces and the fit. */
function addCutting(flow: Flow, way: Way, input: SheetInput, step: () => number): void {
  orderOfWork(flow, way, input);
  if (way.rebends.length > 0 && !bendsAfterCutting(way)) addRebends(flow, way, input, step());
  if (way.joints.length > 0) {
    findMarks(flow, way, input, step());
    cutFaces(flow, way, input, step());
    if (way.joints.some(({ letIn }) => letIn !== null)) letInPieces(flow, way, input, step());
    dressAndFit(flow, way, input, step());
  } else if (way.trims.length > 0) addTrims(flow, way, input, step());
}

/** The order of the welds and what to beware of, then a page for each set-up, the same that hangs where it is welded. */
function addWelding(flow: Flow, input: SheetInput, step: () => number): void {
  const { purge, welding } = input.plan;
  if (welding !== null && welding.welds.length > 0) {
    addOrder(flow, welding, input, [stepHead(step(), words('sheet.order-of-welding'), flow.width)]);
  }
  flow.addKept();
  const setUps = setUpsOf(input);
  if (purge === null || setUps.length === 0) {
    flow.add(paragraph(words('sheet.no-purge'), flow.width, { weight: 600 }));
    return;
  }
  for (const setUp of setUps) {
    setUpPage(flow, setUp, purge, input, stepHead(step(), setUpTitle(setUp, setUps.length), flow.width));
  }
  flow.begin('');
}

/** Cautions and notes that stand on no set-up's page. */
const isTold = (finding: Finding): boolean =>
  finding.grade !== 'stop' &&
  (PARTS.test(finding.field) || FINISH_PARTS.test(finding.field) || WELDING_PARTS.test(finding.field)) &&
  isCommon(finding);

/** What comes after the last weld. */
function addFinishing(flow: Flow, way: Way, input: SheetInput, step: () => number): void {
  if (way.joints.length === 0) {
    addChecks(flow, way, input);
    return;
  }
  if (way.rebends.length > 0 && bendsAfterCutting(way)) addRebends(flow, way, input, step());
  // the marks are measured from the ends as they are, so the ends are cut back only after the last weld
  if (way.trims.length > 0) addTrims(flow, way, input, step());
}

/** The steps in the order of work, the cautions, then every wrap on its own pages. */
export function cutAndPurgeSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  const way = chosenWay(plan);
  const wraps = wrapsFor(input, way);
  if (
    wraps.length === 0 &&
    plan.purge === null &&
    (way === undefined || way.joints.length + way.rebends.length + way.trims.length + way.packing.length === 0)
  ) {
    return { ok: false, reason: 'nothing-to-cut-or-purge' };
  }
  const flow = new Flow(job.print.paper, 'upright');
  const title = way === undefined ? words('sheet.frame-as-wanted') : capital(wordsOf('way', way.key));
  flow.add(paragraph(title, flow.width, { height: HEIGHTS.title, weight: 600 }));
  flow.add(
    figuresRow(
      [
        { name: words('sheet.tube'), value: tubeWords(job) },
        ...(way === undefined ? [] : [{ name: words('sheet.welds'), value: formatFigure(way.welds, job.units) }]),
        ...(plan.purge === null ? [] : [{ name: words('sheet.set-ups'), value: String(plan.purge.setups.length) }]),
        { name: words('sheet.wraps'), value: String(wraps.length) },
      ],
      flow.width,
    ),
  );
  for (const block of stops(input, STOPPING, flow.width)) flow.add(block);
  flow.keep(stacked([space(1), cautions(flow.width)]));
  let number = 0;
  const step = (): number => (number += 1);
  if (way !== undefined) addCutting(flow, way, finely(input), step);
  addWelding(flow, input, step);
  if (way !== undefined) addFinishing(flow, way, input, step);
  if (plan.finish !== null) {
    const head = stepHead(step(), words('sheet.step-grind'), flow.width);
    addFinish(flow, plan.finish, input, [head]);
  }
  if (way !== undefined && way.packing.length > 0) addPacking(flow, way, input, step());
  for (const block of notes(input, isTold, flow.width)) flow.add(block);
  const setting = { paper: job.print.paper, units: job.units, paperThickness: job.closing.paperThickness };
  const wrapPages: Draft[] = wraps.flatMap(({ template, names }) => templatePages(template, names, setting));
  return { ok: true, drafts: [...flow.drafts(), ...wrapPages] };
}
