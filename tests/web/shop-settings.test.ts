import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import { KEPT_SCHEMAS, type Kept, type KeptSettings } from '../../server/job/kept.ts';
import { problemsOf } from '../../server/job/validate.ts';
import type { WeldForm } from '../../server/job/welding.ts';
import {
  fittingSettings,
  gradeText,
  SETTING_DIFFERENCES,
  settingsOf,
  withSettings,
} from '../../web/state/fitting-settings.ts';
import { differingFields } from '../../web/state/kept.ts';
import { ShopKeeper, type ShopSource } from '../../web/state/shop.svelte.ts';
import { withText } from '../../web/state/typed-text.ts';

const job = newJob('hoop');
const FORMS: readonly WeldForm[] = ['butt', 'saddle', 'pad'];

const kept = (name: string, given: Partial<KeptSettings> = {}): Kept<'settings'> => ({
  id: name,
  revision: 1,
  savedAt: 'then',
  document: { ...settingsOf(job, 'butt', name), ...given },
});

describe('weld settings that the shop has proved', () => {
  it('come in the order in which they fit: form, then wall, then diameter, then grade', () => {
    const list = [
      kept('other grade', { grade: '2205' }),
      kept('other form', { form: 'saddle' }),
      kept('other wall', { wall: 2 }),
      kept('nothing alike', { form: 'pad', wall: 5, outsideDiameter: 100, grade: 'x' }),
      kept('the same'),
      kept('other diameter', { outsideDiameter: 60.3 }),
    ];
    const offered = fittingSettings(list, job, 'butt');
    expect(offered.map(({ kept: { id }, differs }) => [id, ...differs])).toEqual([
      ['the same'],
      ['other grade', 'grade'],
      ['other diameter', 'outsideDiameter'],
      ['other wall', 'wall'],
      ['other form', 'form'],
      ['nothing alike', 'form', 'wall', 'outsideDiameter', 'grade'],
    ]);
    expect(fittingSettings(list, job, 'saddle')[0]).toMatchObject({ kept: { id: 'other form' }, differs: [] });
    expect(fittingSettings([], job, 'butt')).toEqual([]);
  });

  it('are for the same wall and diameter within a tenth, the nearest wall first, then by name as a person sorts', () => {
    const list = [
      kept('piece 10', { wall: 1.8 }),
      kept('piece 9', { wall: 1.8 }),
      kept('thin', { wall: 1.49 }),
      kept('near', { wall: 1.6, outsideDiameter: 40 }),
      kept('over', { wall: 1.65 * 1.12 }),
    ];
    const offered = fittingSettings(list, job, 'butt').map(({ kept: { id }, differs }) => [id, ...differs]);
    expect(offered).toEqual([['near'], ['piece 9'], ['piece 10'], ['thin'], ['over', 'wall']]);
  });

  it('know their grade by its name, whatever its capitals and spaces', () => {
    const own = { ...job.tube.grade, from: 'own' as const, name: 'Coil 7' } as Job['tube']['grade'];
    const coiled = { ...job, tube: { ...job.tube, grade: own } };
    expect([gradeText(own), gradeText(job.tube.grade)]).toEqual(['Coil 7', '316L']);
    expect(fittingSettings([kept('a', { grade: ' coil 7' })], coiled, 'butt')[0]!.differs).toEqual([]);
    expect(fittingSettings([kept('a')], coiled, 'butt')[0]!.differs).toEqual(['grade']);
  });

  it('are all offered, and never one that fits worse before one that fits better', () => {
    const one = fc.record({
      form: fc.constantFrom(...FORMS),
      wall: fc.constantFrom(1.2, 1.65, 1.7, 3),
      outsideDiameter: fc.constantFrom(25.4, 38.1, 40),
      grade: fc.constantFrom('316L', '304'),
    });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 12 }), fc.constantFrom(...FORMS), (given, form) => {
        const list = given.map((each, index) => kept(String(index), each));
        const offered = fittingSettings(list, job, form);
        expect(new Set(offered.map(({ kept: { id } }) => id))).toEqual(new Set(list.map(({ id }) => id)));
        const marks = offered.map(({ differs }) =>
          SETTING_DIFFERENCES.map((difference) => (differs.includes(difference) ? '1' : '0')).join(''),
        );
        expect(marks).toEqual(marks.toSorted());
        for (const { kept: each, differs } of offered)
          expect(differs.includes('form')).toBe(each.document.form !== form);
      }),
    );
  });
});

describe('settings of a job', () => {
  it('are kept with the weld and the tube that they are for', () => {
    const proved = { ...job.welding.saddle, provedOn: 'test piece 4', current: 55 };
    const document = settingsOf({ ...job, welding: { ...job.welding, saddle: proved } }, 'saddle', 'rail saddle');
    expect(document).toEqual({
      name: 'rail saddle',
      form: 'saddle',
      outsideDiameter: 38.1,
      wall: 1.65,
      grade: '316L',
      settings: proved,
    });
    expect(problemsOf(KEPT_SCHEMAS.settings, document)).toEqual([]);
  });

  it('are taken from the shop whole, and what was typed there no longer holds', () => {
    const typed = withText(job, '/welding/butt/current', '48 ', { kind: 'number', mayBeEmpty: true });
    const next = withSettings(typed, 'butt', { settings: { ...job.welding.butt, provedOn: 'p 4', current: 55 } });
    expect(next.welding).toEqual({ ...job.welding, butt: { ...job.welding.butt, provedOn: 'p 4', current: 55 } });
    expect([typed.asTyped, next.asTyped]).toEqual([{ '/welding/butt/current': '48 ' }, {}]);
    expect(problemsOf(Job, next)).toEqual([]);
  });

  it('say in which fields of the job they differ from what is kept', () => {
    const ours = settingsOf(job, 'pad', 'ours');
    const mine = { ...ours, name: 'mine', wall: 2, grade: '304', settings: { ...ours.settings, current: 70 } };
    expect(differingFields('settings', ours, mine)).toEqual(['/tube/wall', '/tube/grade', '/welding/pad/current']);
    expect(differingFields('settings', { ...ours, form: 'butt' }, ours)).toEqual(['/welding/pad']);
    expect(differingFields('settings', ours, { ...ours, name: 'x' })).toEqual([]);
  });
});

it('the lists of the shop are read with the settings among them, and those are asked for by their own kind', async () => {
  const asked: unknown[][] = [];
  const source = {
    shop: async () => ({
      kind: 'done',
      body: { machines: [], sizes: [], grades: [], settings: [kept('b 10'), kept('b 2')], rates: [] },
    }),
    keep: async (...given: unknown[]) => {
      asked.push(given);
      return { kind: 'done', body: kept('a 1') };
    },
  } as unknown as ShopSource;
  const shop = new ShopKeeper(source);
  await shop.load();
  expect(shop.settings.kept.map(({ id }) => id)).toEqual(['b 2', 'b 10']);
  expect(await shop.settings.keep(settingsOf(job, 'butt', 'a 1'))).toBe(true);
  expect(asked).toEqual([['settings', settingsOf(job, 'butt', 'a 1')]]);
  expect(shop.settings.kept.map(({ id }) => id)).toEqual(['a 1', 'b 2', 'b 10']);
});
