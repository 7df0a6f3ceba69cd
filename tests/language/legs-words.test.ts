import { expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { legsWords } from '../../server/language/legs-words.ts';
import { plan } from '../../server/solver/plan.ts';

it("what the legs take stands below ways whose welds and gas are the frame's alone", () => {
  const job = landingStage();
  const { quote, correction } = plan(job);
  const { legs } = quote!;
  expect(legs!.welds.value).toBe(4);
  expect(legs!.purgeGas.value).toBeGreaterThan(10);
  const left = correction!.ways.find(({ key }) => key === 'leave')!;
  expect([left.welds.value, left.minutes!.value > 0]).toEqual([0, true]);
  expect(legsWords(legs, job.units)).toMatch(/with the legs \(4 welds, \d+\.\d+ L of purge gas\)/);
  expect(plan({ ...job, site: { ...job.site, legs: [] } }).quote!.legs).toBeNull();
  expect(legsWords(null, job.units)).toBe('');
  const one = { ...legs!, welds: { ...legs!.welds, value: 1 } };
  expect(legsWords(one, job.units)).toContain('(1 weld,');
  expect(legsWords({ ...one, welds: { ...one.welds, value: 0 } }, job.units)).not.toContain('(');
});
