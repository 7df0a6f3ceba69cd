import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Job } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import { lastFew, type Memory } from '../../server/solver/memory.ts';
import { plan } from '../../server/solver/plan.ts';
import { oddJobs } from './odd-jobs.ts';
import { firstDifference } from './plans-compared.ts';

/** What a person can type that has nothing to do with the bends, and one thing that has. */
const EDITS: readonly ((job: Job) => Job)[] = [
  (job) => ({ ...job, purge: { ...job.purge, prePurgeFlow: 7, targetOxygen: 200 } }),
  (job) => ({ ...job, welding: { ...job.welding, butt: { ...job.welding.butt, travelSpeed: 1.2 } } }),
  (job) => ({ ...job, rates: { ...job.rates, waste: { value: 9, since: '', example: false } } }),
  (job) => ({ ...job, closing: { ...job.closing, way: 'new-frame', daysAtBender: 4 } }),
  (job) => ({ ...job, closing: { ...job.closing, shrinkage: null } }),
  (job) => ({ ...job, site: { ...job.site, load: 700 } }),
  (job) => ({ ...job, tube: { ...job.tube, wall: job.tube.wall * 1.01 } }),
];

function frozen<Thing>(thing: Thing): Thing {
  if (typeof thing !== 'object' || thing === null || Object.isFrozen(thing)) return thing;
  Object.freeze(thing);
  for (const part of Object.values(thing)) frozen(part);
  return thing;
}

/** Remembers everything, frozen, and counts what it had to have made. */
function counted<Thing>() {
  const kept = new Map<string, Thing>();
  let made = 0;
  const recall = (key: string, make: () => Thing): Thing => {
    const found = kept.get(key);
    if (found !== undefined) return found;
    made += 1;
    const fresh = frozen(make());
    kept.set(key, fresh);
    return fresh;
  };
  return { recall, made: () => made };
}

const taken = (document: unknown): Job | null => {
  const parsed = parseJob(document);
  return parsed.ok ? parsed.job : null;
};

describe('a plan that uses again what an earlier one found', () => {
  it('is the plan made from the start, whatever was planned before', () => {
    const memory = lastFew(2);
    fc.assert(
      fc.property(oddJobs, fc.shuffledSubarray([...EDITS], { minLength: 2, maxLength: 3 }), (document, edits) => {
        const job = taken(document);
        if (job === null) return;
        for (const edited of [job, ...edits.map((edit) => edit(job))])
          expect(firstDifference(plan(edited, memory), plan(edited), 0)).toBeUndefined();
      }),
      { numRuns: 25 },
    );
  });

  it('makes bends and site once where only gas, torch and money change, and changes nothing of what it was given', () => {
    const bends = counted<ReturnType<Memory['bentFrame']>>();
    const sites = counted<ReturnType<Memory['site']>>();
    const counting: Memory = { bentFrame: bends.recall, site: sites.recall };
    const demo = landingStage();
    for (const edit of EDITS.slice(0, 3)) plan(edit(demo), counting);
    expect([bends.made(), sites.made()]).toEqual([1, 1]);
    plan({ ...demo, site: { ...demo.site, load: 700 } }, counting);
    expect([bends.made(), sites.made()]).toEqual([1, 2]);
    plan({ ...demo, tube: { ...demo.tube, wall: 1.5 } }, counting);
    expect([bends.made(), sites.made()]).toEqual([2, 3]);
  });

  it('forgets what was asked for longest ago', () => {
    const memory = lastFew(2);
    const [one, two, three] = [900, 910, 920].map((value) => JSON.stringify({ value }));
    const asked: string[] = [];
    const nothing: ReturnType<Memory['bentFrame']> = { tube: null, springback: null, wanted: null, findings: [] };
    for (const key of [one, two, one, three, one, two])
      memory.bentFrame(key ?? '', () => {
        asked.push(key ?? '');
        return nothing;
      });
    expect(asked).toEqual([one, two, three, two]);
  });
});
