import { words } from '../language/words.ts';
import { addFinish } from './finish-block.ts';
import { Flow } from './flow.ts';
import { addExtents, addMeters, addSleeve, addSupply } from './gas-supply.ts';
import { HEIGHTS } from './ink.ts';
import type { Drafts } from './page.ts';
import { FINISH_PARTS, isCommon, setUpsOf, WELDING_PARTS } from './set-up.ts';
import { setUpPage, setUpTitle, stopFrame } from './set-up-page.ts';
import { findingBlocks, type SheetInput } from './sheet-input.ts';
import { paragraph, space, stacked, type Block } from './text-block.ts';
import { addOrder } from './weld-order.ts';
import { weldSigns } from './weld-signs.ts';
import { weldTable } from './weld-table.ts';

/** A page for each set-up, to be taped up where it is welded; then what holds for all of them. */
export function weldAndPurgeSheet(input: SheetInput): Drafts {
  const { plan, job } = input;
  const { welding, purge, finish } = plan;
  if (plan.frame === null) return { ok: false, reason: 'frame-not-possible' };
  if (welding === null || welding.welds.length === 0) return { ok: false, reason: 'nothing-to-weld' };
  const flow = new Flow(job.print.paper, 'upright');
  const title = (text: string): Block => paragraph(text, flow.width, { height: HEIGHTS.title, weight: 600 });
  const head = (text: string): Block =>
    stacked([space(1), paragraph(text, flow.width, { height: HEIGHTS.head, weight: 600 })]);
  const setUps = setUpsOf(input);
  if (purge !== null)
    for (const setUp of setUps) setUpPage(flow, setUp, purge, input, title(setUpTitle(setUp, setUps.length)));
  flow.begin(words('sheet.for-all'));
  flow.add(title(words('sheet.for-all-title')));
  const common = plan.findings.filter((one) => WELDING_PARTS.test(one.field) && isCommon(one));
  const stops = common.filter(({ grade }) => grade === 'stop');
  for (const block of stopFrame(stops, input, flow.width)) flow.add(block);
  const lone = welding.welds.filter(({ name }) => !setUps.some(({ welds }) => welds.some((one) => one.name === name)));
  if (lone.length > 0) {
    flow.addTable(weldTable(lone, input, flow.width), [head(words('sheet.welds-without-gas'))]);
    flow.add(stacked([space(2), weldSigns(lone, input, flow.width), space(2)]));
  }
  addOrder(flow, welding, input, [head(words('sheet.order-of-welding'))]);
  if (welding.sleeve !== null) addSleeve(flow, welding.sleeve, input);
  if (purge !== null) {
    addSupply(flow, purge, input);
    addExtents(flow, purge.extents, input);
    addMeters(flow, purge.meters, input);
  }
  if (finish !== null) addFinish(flow, finish, input, [head(words('sheet.step-grind'))]);
  const rest = [...common, ...plan.findings.filter(({ field }) => FINISH_PARTS.test(field))];
  const told = findingBlocks(
    rest.filter(({ grade }) => grade !== 'stop'),
    job,
    flow.width,
  );
  if (told.length > 0) flow.addTogether([paragraph(words('sheet.notes'), flow.width, { weight: 600 }), ...told]);
  return { ok: true, drafts: flow.drafts() };
}
