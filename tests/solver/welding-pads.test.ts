import { expect, it } from 'vitest';
import { BRANCH, jobWith, MAIN, padAt, SADDLE, spliceAt, welded } from './welding-frames.ts';

const ALL = { members: [MAIN, BRANCH], places: [spliceAt(1500), SADDLE] };

it('a thick plate asks for more current, and none that is thin for less', () => {
  const current = (thickness: number) => {
    const { welding } = welded(jobWith({ more: { fixing: [padAt('start', { hole: 8, thickness })] } }), ALL);
    return welding.procedures.find(({ form }) => form === 'pad')!;
  };
  const [thin, mid, thick] = [1, 2.5, 10].map(current);
  const alone = welded(jobWith({}), { ...ALL, places: [SADDLE] }).welding.procedures[0]!;
  expect(thin!.currentHigh.value).toBe(alone.currentHigh.value);
  expect(mid!.currentHigh.value).toBeGreaterThan(thin!.currentHigh.value);
  expect(thick!.currentHigh.value).toBe(105);
  for (const one of [thin, mid, thick]) expect(one!.currentLow.value).toBe(alone.currentLow.value);
  expect(thick!.current.value).toBeGreaterThan(mid!.current.value);
});

it('the thickest of several plates counts, and the work is reckoned with it', () => {
  const fixing = [padAt('start', { hole: 8, thickness: 3 }), padAt('finish', { hole: 8, thickness: 8 })];
  const { welding, works } = welded(jobWith({ more: { fixing } }), { places: [] });
  expect(welding.procedures[0]!.currentHigh.value).toBe(105);
  for (const { heat } of works) expect(heat / 1000).toBeCloseTo(welding.procedures[0]!.heatInput.value, 12);
});
