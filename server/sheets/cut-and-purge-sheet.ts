import { formatFigure } from '../language/quantity-format.ts';
import { words, wordsOf } from '../language/words.ts';
import type { Way } from '../plan/correction.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import { cautions } from './cautions.ts';
import { figuresRow } from './figures-row.ts';
import { Flow } from './flow.ts';
import { HEIGHTS } from './ink.ts';
import { addChecks, cutFaces, dressAndFit, findMarks } from './joint-steps.ts';
import type { Draft, Drafts } from './page.ts';
import { grind, hold, plugFeedVent, waitForGas, weld } from './purge-steps.ts';
import { addRebends, addTrims } from './rebend-steps.ts';
import { chosenWay, remarks, stops, tubeWords, type SheetInput } from './sheet-input.ts';
import { capital, paragraph, space, stacked } from './text-block.ts';
import { templatePages, type TemplateNames } from './template-pages.ts';

const PARTS = /^\/(cameBack|closing(?!\/way)|welding)(\/|$)/;
const STOPPING = /^\/(cameBack|closing|purge|welding)(\/|$)/;

type Named = { readonly template: WrapTemplate; readonly names: TemplateNames };

/** The wraps that the chosen way needs: both faces of each joint, or the saddle ends of a frame to be made. */
function wrapsFor({ plan }: SheetInput, way: Way | undefined): Named[] {
  if (way !== undefined && way.joints.length > 0) {
    return way.joints.flatMap((joint) =>
      (['A', 'B'] as const).flatMap((side): Named[] => {
        const { template } = side === 'A' ? joint.faceA : joint.faceB;
        if (template === null) return [];
        const { number, member } = joint;
        const title = words('sheet.template-joint', { number, side, member });
        const piece = words(side === 'A' ? 'sheet.template-piece-a' : 'sheet.template-piece-b', { member });
        return [{ template, names: { title, piece } }];
      }),
    );
  }
  if (way !== undefined && way.key !== 'new-frame') return [];
  return (plan.frame?.members ?? []).flatMap((member) =>
    member.templates.map((template): Named => ({
      template,
      names: {
        title: words('sheet.template-end', {
          member: member.name,
          end:
            template.place === 'start' || template.place === 'finish'
              ? wordsOf('choice.memberEnd', template.place)
              : template.place,
        }),
        piece: words('sheet.template-piece-end', { member: member.name }),
      },
    })),
  );
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
    (way === undefined || (way.rebends.length === 0 && way.trims.length === 0))
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
        ...(plan.purge === null ? [] : [{ name: words('sheet.chambers'), value: String(plan.purge.chambers.length) }]),
        { name: words('sheet.wraps'), value: String(wraps.length) },
      ],
      flow.width,
    ),
  );
  for (const block of stops(input, STOPPING, flow.width)) flow.add(block);
  let number = 0;
  const step = (): number => (number += 1);
  if (way !== undefined) {
    if (way.rebends.length > 0) addRebends(flow, way, input, step());
    if (way.joints.length > 0) {
      findMarks(flow, way, input, step());
      cutFaces(flow, way, input, step());
      dressAndFit(flow, way, input, step());
    } else addChecks(flow, way, job.units);
  }
  if (plan.purge !== null && plan.purge.chambers.length > 0) {
    plugFeedVent(flow, plan.purge, input, step());
    waitForGas(flow, plan.purge, input, step());
    weld(flow, plan.purge, input, step());
    hold(flow, plan.purge, input, step());
  } else flow.add(paragraph(words('sheet.no-purge'), flow.width, { weight: 600 }));
  // the marks are measured from the ends as they are, so the ends are cut back only after the last weld
  if (way !== undefined && way.trims.length > 0) addTrims(flow, way, input, step());
  if (plan.purge !== null && plan.purge.chambers.length > 0) grind(flow, step());
  for (const block of remarks(input, PARTS, flow.width)) flow.add(block);
  flow.add(stacked([space(3), cautions(flow.width)]));
  const setting = { paper: job.print.paper, units: job.units, paperThickness: job.closing.paperThickness };
  const wrapPages: Draft[] = wraps.flatMap(({ template, names }) => templatePages(template, names, setting));
  return { ok: true, drafts: [...flow.drafts(), ...wrapPages] };
}
