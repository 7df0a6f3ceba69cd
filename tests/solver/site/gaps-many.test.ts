import { expect, it } from 'vitest';
import { landingStage } from '../../../db/demo/landing-stage.ts';
import type { Job } from '../../../server/job/job.ts';
import { frameGeometry } from '../../../server/solver/frame/expand-frame.ts';
import { gapStudies } from '../../../server/solver/site/gaps/gap-doubts.ts';
import { gapRow } from '../../../server/solver/site/gaps/gap-row.ts';
import { tubesBeside } from '../../../server/solver/site/gaps/gap-search.ts';
import { tubesOf, tubeTravel } from '../../../server/solver/site/gaps/gap-tubes.ts';
import { planGaps } from '../../../server/solver/site/gaps/plan-gaps.ts';
import { thingGap } from '../../../server/solver/site/gaps/thing-gap.ts';
import { EXACT, type SiteSource } from '../../../server/solver/site/laid-site.ts';
import { laySite } from '../../../server/solver/site/lay-site.ts';
import { siteDoubts } from '../../../server/solver/site/site-doubts.ts';
import type { SiteStudy } from '../../../server/solver/site/site-study.ts';
import { variedSites } from '../../../server/solver/site/varied-sites.ts';
import { resolveGrade } from '../../../server/solver/tube/grades.ts';

const stage = landingStage();
const at = (x: number, y: number, z: number) => ({ x, y, z });
const axis = { by: 'axes', vector: at(0.3, 1, 0.1) } as const;

/** The stage of the example with more things that swing, some of them into its tubes. */
function study(): SiteStudy {
  const more = Array.from({ length: 5 }, (_, index): Job['site']['things'][number] => ({
    name: `arm ${String(index)}`,
    shape: {
      shape: 'cylinder',
      at: at(-300 - 50 * index, -800 + 400 * index, 100),
      axis,
      diameter: 40,
      ends: { from: -200, to: 200 },
    },
    clearance: 15,
    swing: { about: at(-150, -800 + 400 * index, 0), axis: { by: 'axes', vector: at(0.2, 1, 0) }, from: -20, to: 70 },
  }));
  const site = { ...stage.site, things: [...stage.site.things, ...more] };
  const { geometry } = frameGeometry(stage.frame, {
    outsideDiameter: stage.tube.outsideDiameter,
    cornerRadius: 115,
    root: '/frame',
    closingStraight: () => null,
  });
  if (geometry === null) throw new Error('the frame of a test is not drawn');
  const source: SiteSource = {
    site,
    wanted: geometry,
    made: geometry.members.map(({ name, closed, centreline }) => ({ name, closed, centreline })),
    tube: stage.tube,
    grade: resolveGrade(stage.tube.grade),
    gap: 0,
    shrinkage: 0.5,
    paperThickness: 0.1,
    templateStations: 16,
  };
  const exact = laySite(source, EXACT);
  const { varied } = variedSites((off) => laySite(source, off, exact), siteDoubts(source), exact);
  return { source, laid: exact.laid, varied };
}

const whole = study();

it('gaps that are not sought to the end are told on the safe side, with what is open', () => {
  const tubes = tubesOf(whole);
  const open = planGaps(whole).gaps.map(({ field, rows }) => {
    const thing = whole.laid.things.find((one) => one?.field === field)!;
    return rows.map(({ name, gap }) => {
      const tube = tubes.find((one) => one.name === name)!;
      const line = tube.lineIn(whole.laid)!;
      const found = thingGap(line, thing, tubeTravel(tube, whole, whole.laid))!;
      const [least, most] = [found.atLeast, found.distance].map((distance) => distance - tube.outsideDiameter / 2);
      expect(gap.value).toBeLessThanOrEqual(most! + 0.01);
      expect(gap.value + (gap.band?.plusMinus ?? 0)).toBeGreaterThanOrEqual(least! - 0.01);
      return gap.band?.from.includes('gap-search') === true;
    });
  });
  expect(open.flat().filter(Boolean).length).toBeGreaterThan(2);
  // the nearest one is sought to the end where it is not inside
  for (const [index, { rows }] of planGaps(whole).gaps.entries())
    if (rows[0]!.gap.value > 0) expect(open[index]![0]).toBe(false);
});

it('a band is the same whether it asks all doubtful values or those alone that move the thing or the tube', () => {
  const studies = gapStudies(whole);
  for (const [index, thing] of whole.laid.things.entries()) {
    if (thing === null || thing.clearance === null) continue;
    for (const beside of tubesBeside(whole, thing, tubesOf(whole), thing.clearance)) {
      const few = studies(index, beside.tube);
      expect(gapRow(few, index, beside)!.row.gap.band).toEqual(gapRow(whole, index, beside)!.row.gap.band);
      expect(few.varied.length).toBeLessThan(whole.varied.length);
      expect(few.varied.length).toBeGreaterThan(2);
    }
  }
});
