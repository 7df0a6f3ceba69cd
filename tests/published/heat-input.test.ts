/** Heat input: EN 1011-1 and ISO/TR 18491. Currents, electrodes and gas to begin with: tables and common practice. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { electrodeFor, electrodeRange } from '../../server/solver/welding/electrodes.ts';
import { arcEnergy, heatInput } from '../../server/solver/welding/heat.ts';
import { FILLET_RUNS, HANDBOOK_RUNS, MAKER_RUNS, tableCurrent } from '../../server/solver/welding/run-tables.ts';
import { startRuns, startTravel, weldSetting } from '../../server/solver/welding/settings.ts';
import { startCurrent } from '../../server/solver/welding/start-current.ts';
import { fusedArea } from '../../server/solver/welding/weld-section.ts';
import { jobWith, settings, welded } from '../solver/welding-frames.ts';

describe('65 A, 10.5 V, 2 mm/s', () => {
  const arc = { current: 65, voltage: 10.5, travelSpeed: 2 };
  it('is 0.341 kJ/mm of arc energy and 0.205 of heat input', () => {
    expect((arcEnergy(arc) / 1000).toFixed(3)).toBe('0.341');
    expect((heatInput(arc) / 1000).toFixed(3)).toBe('0.205');
  });
  it('as the plan says it', () => {
    const { welding, works } = welded(jobWith({ welding: settings('butt', arc) }));
    const procedure = welding.procedures[0]!;
    expect(procedure.arcEnergy.value.toFixed(3)).toBe('0.341');
    expect(procedure.heatInput.value.toFixed(3)).toBe('0.205');
    expect(procedure.heatInput.band).toBeNull();
    expect(works[0]!.heat / 1000).toBeCloseTo(procedure.heatInput.value, 12);
  });
});

describe('tables of one run', () => {
  it.each([
    [HANDBOOK_RUNS, '0.8 20–50, 1 50–80, 1.5 65–105, 2.4 85–125, 3.2 100–135'],
    [MAKER_RUNS, '0.5 10–15, 1 30–40, 1.5 60–100, 2.5 100–120, 3 120–140'],
    [FILLET_RUNS, '1.6 50–70, 3.2 85–105'],
  ])('are as printed: %#', (rows, printed) => {
    expect(rows.map(({ wall, low, high }) => `${String(wall)} ${String(low)}–${String(high)}`).join(', ')).toBe(
      printed,
    );
    for (const { wall, low, high } of rows) expect(tableCurrent(rows, wall)).toEqual({ low, high, beyond: false });
  });
  it('are read halfway between two rows, held above the last and in proportion below the first', () => {
    expect(tableCurrent(FILLET_RUNS, 2.4)).toEqual({ low: 67.5, high: 87.5, beyond: false });
    expect(tableCurrent(FILLET_RUNS, 8)).toEqual({ low: 85, high: 105, beyond: true });
    expect(tableCurrent(FILLET_RUNS, 0.8)).toEqual({ low: 25, high: 35, beyond: true });
    expect(tableCurrent(HANDBOOK_RUNS, 1.95).low).toBeCloseTo(75, 12);
  });
});

describe('current to begin with', () => {
  it('of a closed butt without filler is 30 to 40 A for each mm of wall', () => {
    expect(startCurrent('butt', '142', 1.65)).toMatchObject({ low: 49.5, high: 66, basis: 'rule', beyond: false });
    expect(startCurrent('butt', '142', 5)).toMatchObject({ low: 90, high: 120, beyond: true });
  });
  const middle = ({ low, high }: { low: number; high: number }) => (low + high) / 2;
  it.each([0.8, 1, 1.2, 1.5, 1.65, 2, 2.5, 3])('of a butt with filler on %d mm is 25 to 44 A for each mm', (wall) => {
    const start = startCurrent('butt', '141', wall);
    expect(start.basis).toBe('runs');
    // 25 to 40 in use, and 39 for flush butts; a tenth more where the middles of the tables pull up
    expect(start.low / wall).toBeGreaterThanOrEqual(25);
    expect(middle(start) / wall).toBeLessThan(44);
    expect(start.high).toBeLessThanOrEqual(
      Math.max(...[HANDBOOK_RUNS, MAKER_RUNS].map((rows) => tableCurrent(rows, wall).high)),
    );
  });
  it.each([
    [0.5, 15, 20],
    [0.8, 24, 32],
    [1, 30, 50],
    [1.5, 45, 82.5],
  ])(
    'of a butt with filler on %d mm is %d to %d A: 30 A for each mm, to the middles of both tables',
    (wall, low, high) => {
      const start = startCurrent('butt', '141', wall);
      expect(start.low).toBeCloseTo(low, 10);
      expect(start.high).toBeCloseTo(high, 10);
    },
  );
  it('with filler is never under the one without, nor falls as the wall grows', () => {
    const walls = fc.double({ min: 0.1, max: 12, noNaN: true });
    fc.assert(
      fc.property(walls, fc.double({ min: 0, max: 3, noNaN: true }), (wall, more) => {
        const [fed, alone] = [startCurrent('butt', '141', wall), startCurrent('butt', '142', wall)];
        expect(fed.low).toBeGreaterThanOrEqual(alone.low - 1e-9);
        expect(fed.high).toBeGreaterThanOrEqual(alone.high - 1e-9);
        const thicker = startCurrent('butt', '141', wall + more);
        expect(thicker.low).toBeGreaterThanOrEqual(fed.low - 1e-9);
        expect(thicker.high).toBeGreaterThanOrEqual(fed.high - 1e-9);
      }),
    );
  });
  it('melts what is fed and fused, at 10 J for each mm³ of steel, by more than half again', () => {
    const walls = fc.double({ min: 0.3, max: 3, noNaN: true });
    fc.assert(
      fc.property(walls, fc.double({ min: 0, max: 1, noNaN: true }), (wall, share) => {
        const gap = share * Math.min(1, wall);
        const job = jobWith({ tube: { wall }, welding: settings('butt', { process: '141' }) });
        const { preparation, heat, area } = weldSetting('butt', { ...job, gap });
        const fused = fusedArea({ wall, gap, preparation, groove: job.welding.groove });
        expect(heat).toBeGreaterThan(1.5 * 10 * (area + fused));
      }),
    );
  });
  it('of a pad on a thick plate ends where the table has the mean of both, and at its last row', () => {
    const [alone, on3, on12] = [0, 3.1, 12].map((plate) => startCurrent('pad', '141', 1.6, plate));
    expect(alone).toMatchObject({ low: 50, high: 70 });
    expect(on3!.low).toBe(50);
    expect(on3!.high).toBeCloseTo(70 + (35 * 0.75) / 1.6, 10);
    expect(on12).toMatchObject({ low: 50, high: 105, most: startCurrent('butt', '141', 1.6).most });
    // on thin tube a plate counts as three walls: the mean is two
    for (const plate of [2.4, 6, 50]) expect(startCurrent('pad', '141', 0.8, plate).high).toBeCloseTo(70, 10);
    expect(startCurrent('pad', '141', 4, 1)).toEqual(startCurrent('pad', '141', 4));
  });
  it('of a fillet is the gas supplier’s', () => {
    for (const form of ['saddle', 'pad'] as const)
      expect(startCurrent(form, '141', 1.6)).toMatchObject({ low: 50, high: 70, basis: 'fillet' });
  });
});

describe('electrodes', () => {
  it.each([
    [1, 15, 80],
    [1.6, 70, 150],
    [2.4, 150, 250],
    [3.2, 250, 400],
  ])('of %d mm carry %d to %d A as AWS A5.12 has it, or a manual’s more', (diameter, low, high) => {
    const range = electrodeRange(diameter);
    expect(range.low).toBeLessThanOrEqual(low);
    expect(range.high).toBeGreaterThanOrEqual(high);
  });
  it.each([
    [1, 25, 85],
    [1.6, 50, 160],
    [2.4, 160, 250],
    [3.2, 250, 400],
  ])('of %d mm carry %d to %d A as that manual has it', (diameter, low, high) => {
    const range = electrodeRange(diameter);
    expect(range.low).toBeLessThanOrEqual(low);
    expect(range.high).toBe(high);
  });
  it.each([
    [0.8, 1],
    [1, 1.6],
    [1.5, 1.6],
    [2.4, 1.6],
    [3.2, 1.6],
  ])('for the run on %d mm is the %d mm that the handbook prints', (wall, diameter) => {
    const { low, high } = tableCurrent(HANDBOOK_RUNS, wall);
    expect(electrodeFor((low + high) / 2)).toBe(diameter);
  });
});

describe('arc and gas', () => {
  const procedureOf = (wall: number) => welded(jobWith({ tube: { wall } })).welding.procedures[0]!;
  it('9 to 12 V', () => {
    const { value, band } = procedureOf(1.65).voltage;
    expect([value - band!.plusMinus, value + band!.plusMinus]).toEqual([9, 12]);
  });
  it('1 to 2.5 mm/s by hand on 1 to 2 mm', () => {
    expect([0.5, 1, 1.5, 2, 6].map(startTravel)).toEqual([2.5, 2.5, 2, 1.5, 1.5]);
    const { value, band } = procedureOf(2).travelSpeed;
    expect(value - band!.plusMinus).toBe(1);
  });
  it.each([0.8, 1.65, 2, 3, 5])('cup of 8 to 12 mm, 6 to 10 L/min, about 1 L/min for each mm: wall %d', (wall) => {
    const { cup, torchFlow } = procedureOf(wall);
    expect(cup.value.toFixed(0)).toMatch(/^(8|9|10|11|12|13)$/);
    expect(torchFlow.value).toBeGreaterThanOrEqual(6);
    expect(torchFlow.value).toBe(Math.min(10, cup.value));
  });
  it.each([
    [40, 5],
    [50, 5],
    [65, 6.5],
    [120, 12],
  ])('post-flow of %d A: 1 s for 10 A and at least 5 s: %d s', (current, seconds) => {
    const { welding } = welded(jobWith({ welding: settings('butt', { current }) }));
    expect(welding.procedures[0]!.postFlow.value).toBeCloseTo(seconds, 12);
  });
  it('150 °C between runs', () => {
    expect(procedureOf(1.65).interpass.value).toBe(150);
    const duplex = welded(jobWith({ tube: { grade: { from: 'catalogue', key: '2205' } } }));
    expect(duplex.welding.procedures[0]!.interpass.value).toBe(150);
  });
  it('one run up to 3 mm', () => {
    expect([startRuns(1, 3), startRuns(3, 12), startRuns(3.1, 4), startRuns(4, 13.2), startRuns(6, 29)]).toEqual([
      1, 1, 2, 2, 3,
    ]);
  });
});
