import type { Finding } from '../../../plan/finding.ts';
import type { GapPlan } from '../../../plan/gap.ts';
import { figure, input } from '../../figure.ts';
import type { LaidThing } from '../laid-site.ts';
import type { SiteStudy } from '../site-study.ts';
import { gapStudies, type GapStudies } from './gap-doubts.ts';
import { gapEllipse } from './gap-ellipse.ts';
import { gapFinding } from './gap-finding.ts';
import { gapRow } from './gap-row.ts';
import { tubesBeside } from './gap-search.ts';
import { standsOn, tubesOf, type GapTube } from './gap-tubes.ts';
import { legCrossings } from './leg-crossings.ts';

/**
 * For every thing that asks for room: the least gap to each tube of the frame as it will be made and to each leg, over
 * all that the thing and the frame swing through. A leg is no obstacle to what it stands on. And which legs run into tubes
 * or into each other.
 */
export function planGaps(study: SiteStudy): { gaps: GapPlan[]; findings: Finding[] } {
  const tubes = tubesOf(study);
  const studies = gapStudies(study);
  const planned = study.laid.things.flatMap((thing, index) => {
    const asks = thing?.clearance ?? null;
    return thing === null || asks === null
      ? []
      : [gapsOf({ ...thing, clearance: asks }, index, { study, studies, tubes })];
  });
  return {
    gaps: planned.map(({ gaps }) => gaps),
    findings: [...planned.flatMap(({ said }) => said ?? []), ...legCrossings(study)],
  };
}

type AsksForRoom = LaidThing & { readonly clearance: number };

function gapsOf(
  thing: AsksForRoom,
  index: number,
  {
    study,
    studies,
    tubes,
  }: { readonly study: SiteStudy; readonly studies: GapStudies; readonly tubes: readonly GapTube[] },
): { readonly gaps: GapPlan; readonly said: Finding | null } {
  const { name, field, clearance } = thing;
  const beside = tubesBeside(
    study,
    thing,
    tubes.filter((tube) => !standsOn(tube, thing, study)),
    clearance,
  );
  const found = beside
    .flatMap((one) => gapRow(studies(index, one.tube), index, one) ?? [])
    .sort((a, b) => a.row.gap.value - b.row.gap.value);
  return {
    gaps: {
      thing: name,
      field,
      clearance: figure(clearance, 'mm', 'c', [input('c', 'clearance', clearance, 'mm')], ['typed']),
      rows: found.map(({ row }) => row),
      ellipse: gapEllipse(study, index),
      keptClear: true,
    },
    said: gapFinding(found[0], thing, study),
  };
}
