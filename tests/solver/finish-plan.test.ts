import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { CLEANINGS, SURFACES, TREATMENTS, type Finish } from '../../server/job/finish.ts';
import { STEP_WELDS } from '../../server/plan/finish.ts';
import { finishWords } from '../../server/language/en/finish.ts';
import { planFinish } from '../../server/solver/finish/plan-finish.ts';
import { THIN_BEAD } from '../../server/solver/welding/weld-section.ts';
import { faultsOf } from './figures-in.ts';
import { weldSite } from './made-up-welds.ts';

const { finish: USUAL, tube, welding } = newJob('hoop');
const WELDS = [weldSite('1', 'butt'), weldSite('S1', 'saddle'), weldSite('P1', 'pad')].map((site) => ({ site }));

type Work = Parameters<typeof planFinish>[0];
const planned = (finish: Partial<Finish> = {}, more: Partial<Work> = {}) =>
  planFinish({ finish: { ...USUAL, ...finish }, welds: WELDS, symbols: welding.symbols, tube, ...more });
const minutes = (finish: Partial<Finish>) =>
  planned(finish).finish!.minutes.map(({ weld, flush, surface }) => [weld, flush.value, surface.value]);

const [BUTT, ...CORNERS] = WELDS;

it('there is none where nothing is welded', () => {
  expect(planned({ cleaning: 'nitric-1' }, { welds: [] })).toEqual({ finish: null, findings: [] });
});

describe('a satin finish, ground flush', () => {
  const plan = planned().finish!;
  it('is named and has a roughness to aim at', () => {
    expect([plan.designation, plan.american]).toEqual(['1K/2K', 'No. 4']);
    expect(plan.roughness).toMatchObject({ value: 0.4, unit: 'um', band: { plusMinus: 0.1 } });
  });
  it('takes the cap of the bead down to 0.1 to 0.2 mm first', () => {
    expect(plan.reinforcement?.value).toBe(THIN_BEAD.cap.height);
    expect(plan.leftProud?.value).toBeCloseTo(0.15, 12);
    expect(plan.leftProud?.band?.plusMinus).toBeCloseTo(0.05, 12);
  });
  it('has its bath', () => {
    expect(plan.cleaning).toMatchObject({ key: 'citric-3', timeLeast: { value: 20, unit: 'min' }, timeMost: null });
  });
});

describe('the bead', () => {
  it.each([
    ['none', null, null],
    ['colour', null, null],
    ['ripple', 0.5, null],
    ['flush', 0.5, 0.15],
    ['pit-free', 0.5, 0.15],
  ] as const)('%s: %s mm over the wall, knocked down to %s', (treatment, cap, left) => {
    const plan = planned({ treatment }).finish!;
    expect(plan.reinforcement?.value ?? null).toBe(cap);
    expect(plan.leftProud === null ? null : Number(plan.leftProud.value.toFixed(2))).toBe(left);
  });
  it('stands proud of nothing in the corner of a saddle or a pad', () => {
    const plan = planned({}, { welds: CORNERS }).finish!;
    expect([plan.reinforcement, plan.leftProud]).toEqual([null, null]);
  });
});

describe('steps', () => {
  const kinds = (welds: typeof WELDS) => [...new Set(planned({}, { welds }).finish!.steps.map((one) => one.welds))];
  it('say which welds they are for where both kinds are, in words', () => {
    expect(kinds(WELDS)).toEqual(['butts', 'corners']);
    expect([kinds([BUTT!]), kinds(CORNERS)]).toEqual([['all'], ['all']]);
    for (const key of STEP_WELDS) expect(finishWords).toHaveProperty([`finish.welds.${key}`]);
  });
});

describe('minutes', () => {
  it('are the middle of what practice says, blending twice for a saddle, and add up with their bands', () => {
    expect(minutes({})).toEqual([
      ['1', 4.5, 9],
      ['S1', 0, 18],
      ['P1', 0, 9],
    ]);
    const { total } = planned().finish!;
    // one is ground flush, 4.5 ± 1.5, and four times a butt is blended, 9 ± 3
    expect(total).toMatchObject({ value: 40.5, band: { plusMinus: 13.5 } });
  });
  it('are the shop’s own where typed, without a band', () => {
    const own = { minutes: { flush: 5, surface: 8, saddleTimes: 1.5 } };
    expect(minutes(own)).toEqual([
      ['1', 5, 8],
      ['S1', 0, 12],
      ['P1', 0, 8],
    ]);
    const { total } = planned(own).finish!;
    expect(total).toMatchObject({ value: 33, band: null, working: { sources: ['typed'] } });
  });
  it('of one kind typed leave the other to practice', () => {
    const { total } = planned({ minutes: { flush: 0, surface: null, saddleTimes: null } }).finish!;
    expect(total).toMatchObject({ value: 36, band: { plusMinus: 12 } });
  });
  it('for grinding flush are none where the bead stays, and none at all where the weld is left alone', () => {
    for (const treatment of ['colour', 'ripple'] as const)
      expect(minutes({ treatment }).map(([, flush, surface]) => [flush, surface])).toEqual([
        [0, 9],
        [0, 18],
        [0, 9],
      ]);
    const own = { flush: 5, surface: 8, saddleTimes: 2 };
    expect(planned({ treatment: 'none', minutes: own }).finish?.total).toMatchObject({ value: 0, band: null });
  });
  it('are more the finer the surface', () => {
    const totals = SURFACES.map((surface) => planned({ surface }).finish!.total.value);
    expect([...totals].sort((a, b) => a - b)).toEqual(totals);
    expect(new Set(totals).size).toBe(SURFACES.length);
  });
});

const typedMinutes = fc.option(fc.double({ min: 0, max: 1000, noNaN: true }));
const finishes = fc.record<Finish>({
  treatment: fc.constantFrom(...TREATMENTS),
  surface: fc.constantFrom(...SURFACES),
  minutes: fc.record({
    flush: typedMinutes,
    surface: typedMinutes,
    saddleTimes: fc.option(fc.double({ min: 1, max: 10, noNaN: true })),
  }),
  cleaning: fc.constantFrom(...CLEANINGS),
  nearSea: fc.boolean(),
});

it('is made of everything that can be chosen, in numbers and with words', () => {
  const counted = fc.array(fc.constantFrom('butt', 'saddle', 'pad'), { minLength: 1, maxLength: 40 });
  fc.assert(
    fc.property(finishes, counted, (finish, forms) => {
      const welds = forms.map((form, index) => ({ site: weldSite(String(index + 1), form) }));
      const { finish: plan, findings } = planned(finish, { welds });
      expect(faultsOf(plan)).toEqual([]);
      expect(plan?.minutes.map(({ weld }) => weld)).toEqual(welds.map(({ site }) => site.name));
      const sum = plan!.minutes.reduce((total, { flush, surface }) => total + flush.value + surface.value, 0);
      expect(plan?.total.value).toBeCloseTo(sum, 6);
      for (const key of plan!.notes) expect(finishWords).toHaveProperty([`finish.note.${key}`]);
      expect(new Set(plan!.notes).size).toBe(plan!.notes.length);
      expect(findings.every(({ grade }) => grade !== 'stop')).toBe(true);
    }),
    { numRuns: 300 },
  );
  for (const key of TREATMENTS) expect(finishWords).toHaveProperty([`finish.treatment.${key}`]);
  for (const key of SURFACES) expect(finishWords).toHaveProperty([`finish.surface.${key}`]);
  for (const key of CLEANINGS) {
    expect(finishWords).toHaveProperty([`finish.cleaning.${key}`]);
    if (key !== 'none') expect(finishWords).toHaveProperty([`finish.bath.${key}`]);
  }
});
