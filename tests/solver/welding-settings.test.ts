import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { WeldSettings } from '../../server/job/welding.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { Procedure } from '../../server/plan/welding.ts';
import { SOURCES } from '../../server/solver/sources.ts';
import { FORMS, weldSetting } from '../../server/solver/welding/settings.ts';
import { BRANCH, jobWith, MAIN, ownGrade, padAt, SADDLE, settings, spliceAt, welded } from './welding-frames.ts';

const ALL = { members: [MAIN, BRANCH], places: [spliceAt(1500), SADDLE] };
const withPad = { fixing: [padAt('start', { hole: 8 })] };
const figuresOf = (procedure: Procedure): Figure[] =>
  Object.values(procedure).filter((value): value is Figure => typeof value === 'object' && value !== null);

describe('settings', () => {
  it('are there for each form that occurs, in turn, and for no other', () => {
    const forms = (work: Parameters<typeof welded>[1], more = {}) =>
      welded(jobWith({ more }), work).welding.procedures.map(({ form }) => form);
    expect(forms(ALL, withPad)).toEqual(['butt', 'saddle', 'pad']);
    expect(forms({ ...ALL, places: [SADDLE] })).toEqual(['saddle']);
    expect(forms({ ...ALL, places: [] })).toEqual([]);
  });

  const typed: Omit<WeldSettings, 'provedOn' | 'process' | 'filler'> = {
    current: 71,
    voltage: 11.5,
    travelSpeed: 1.7,
    electrode: 2.4,
    cup: 12,
    preFlow: 3,
    torchFlow: 9,
    postFlow: 20,
    fillerDiameter: 2,
    runs: 3,
    interpass: 90,
  };
  it.each(FORMS)('of a %s are what is typed, every one of them', (form) => {
    const welding = settings(form, { ...typed, provedOn: 'piece 7', process: '141', filler: 'ER316LSi' });
    const made = welded(jobWith({ welding, more: withPad }), ALL).welding.procedures.find((one) => one.form === form)!;
    expect(made).toMatchObject({ proved: 'piece 7', process: '141', filler: 'ER316LSi' });
    for (const [name, value] of Object.entries(typed)) {
      const figure = made[name as keyof typeof typed]!;
      expect([figure.value, figure.working.sources, figure.band], name).toEqual([value, ['typed'], null]);
    }
    // one form's settings are no other's
    const others = welded(jobWith({ welding, more: withPad }), ALL).welding.procedures.filter(
      (one) => one.form !== form,
    );
    for (const other of others) expect(other.current.value).not.toBe(71);
  });

  it.each([
    [0.4, 0],
    [1.65, 0],
    [1.65, 0.5],
    [3.5, 2],
    [12, 2],
  ])('rest on sources, and none on what was typed where nothing was: wall %d, gap %d', (wall, gap) => {
    const { welding } = welded(jobWith({ tube: { wall }, closing: { gap }, more: withPad }), ALL);
    for (const procedure of welding.procedures) {
      for (const { value, unit, working } of figuresOf(procedure)) {
        expect(Number.isFinite(value)).toBe(true);
        expect(unit).not.toBe('');
        for (const source of working.sources) expect(Object.keys(SOURCES)).toContain(source);
        expect(working.sources).not.toContain('typed');
      }
      expect(procedure.currentLow.value).toBeLessThan(procedure.currentHigh.value);
      expect(procedure.current.value).toBeCloseTo((procedure.currentLow.value + procedure.currentHigh.value) / 2, 10);
      // a wall that the tables do not have is said to be one
      const beyond = procedure.current.band!.from.includes('wall-beyond-the-tables');
      for (const end of [procedure.currentLow, procedure.currentHigh]) expect(end.band !== null).toBe(beyond);
      expect(beyond).toBe(procedure.form === 'butt' ? wall > 3.2 || (gap > 0 && wall < 0.5) : wall < 1.6 || wall > 3.2);
    }
  });
});

describe('process', () => {
  const process = (wall: number, gap: number, grade: '316L' | '2205' = '316L') =>
    welded(jobWith({ tube: { wall, grade: { from: 'catalogue', key: grade } }, closing: { gap } })).welding
      .procedures[0]!.process;
  it('is without filler for a tight thin butt that is no duplex, and else with it', () => {
    expect([process(1.65, 0), process(2, 0)]).toEqual(['142', '142']);
    expect([process(2.1, 0), process(1.65, 0.2), process(1.65, 0, '2205'), process(4, 2)]).toEqual([
      '141',
      '141',
      '141',
      '141',
    ]);
  });
  it('without filler has none, and takes none', () => {
    const { welding, works } = welded(
      jobWith({ welding: settings('butt', { filler: 'ER316L', fillerDiameter: 2.4 }) }),
    );
    expect(welding.procedures[0]).toMatchObject({ process: '142', filler: '', fillerDiameter: null, leg: null });
    expect(welding.procedures[0]!.area.value).toBe(0);
    expect([works[0]!.fillerMass, works[0]!.fillerLength]).toEqual([0, 0]);
  });
  it('with filler takes that of its grade, which of a grade of the shop is not known', () => {
    const filler = (grade: Parameters<typeof jobWith>[0]['tube']) =>
      welded(jobWith({ tube: grade!, closing: { gap: 0.5 } })).welding.procedures[0]!.filler;
    expect(filler({})).toBe('ER316L (W 19 12 3 L)');
    expect(filler({ grade: ownGrade })).toBe('');
  });
});

describe('the more, the more', () => {
  const current = fc.double({ min: 10, max: 300, noNaN: true });
  const more = fc.double({ min: 1.001, max: 1.9, noNaN: true });
  it('current makes heat in proportion, and travel takes it away', () => {
    const heat = (amperes: number, travelSpeed: number) =>
      weldSetting('butt', { ...jobWith({ welding: settings('butt', { current: amperes, travelSpeed }) }), gap: 0 })
        .heat;
    fc.assert(
      fc.property(current, fc.double({ min: 0.5, max: 5, noNaN: true }), more, (amperes, travel, factor) => {
        expect(heat(amperes * factor, travel) / heat(amperes, travel)).toBeCloseTo(factor, 9);
        expect(heat(amperes, travel * factor) / heat(amperes, travel)).toBeCloseTo(1 / factor, 9);
      }),
    );
  });
  it('wall and gap never take less filler, current or time on a larger tube', () => {
    const wall = fc.double({ min: 0.3, max: 15, noNaN: true });
    const gap = fc.double({ min: 0, max: 5, noNaN: true });
    const fed = settings('butt', { process: '141' });
    const of = (thick: number, open: number) =>
      weldSetting('butt', { ...jobWith({ tube: { wall: thick }, welding: fed }), gap: open });
    fc.assert(
      fc.property(wall, gap, more, (thick, open, factor) => {
        const [one, thicker, wider] = [of(thick, open), of(thick * factor, open), of(thick, open + 0.1)];
        expect(thicker.area).toBeGreaterThanOrEqual(one.area);
        expect(wider.area).toBeGreaterThan(one.area);
        expect(thicker.current).toBeGreaterThanOrEqual(one.current - 1e-9);
        expect(thicker.runs).toBeGreaterThanOrEqual(one.runs);
        expect(thicker.travelSpeed).toBeLessThanOrEqual(one.travelSpeed);
      }),
    );
  });
  it('amperes ask for a thicker electrode and a longer post-flow', () => {
    const of = (amperes: number) =>
      weldSetting('pad', { ...jobWith({ welding: settings('pad', { current: amperes }) }), gap: 0 });
    fc.assert(
      fc.property(current, more, (amperes, factor) => {
        expect(of(amperes * factor).electrode).toBeGreaterThanOrEqual(of(amperes).electrode);
        expect(of(amperes * factor).postFlow).toBeGreaterThanOrEqual(of(amperes).postFlow);
      }),
    );
  });
});
