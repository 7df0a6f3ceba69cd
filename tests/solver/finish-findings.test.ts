import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { CLEANINGS, TREATMENTS, type Finish } from '../../server/job/finish.ts';
import type { Grade } from '../../server/job/tube.ts';
import { findingsFinish } from '../../server/language/en/findings-finish.ts';
import { FINDING_CODES } from '../../server/plan/finding-codes.ts';
import type { FindingCode, FindingGrade } from '../../server/plan/finding.ts';
import { planFinish } from '../../server/solver/finish/plan-finish.ts';
import { weldSite } from './made-up-welds.ts';

const { finish: USUAL, tube, welding } = newJob('hoop');
const WELDS = [weldSite('1', 'butt'), weldSite('S1', 'saddle'), weldSite('P1', 'pad')].map((site) => ({ site }));

type Work = Parameters<typeof planFinish>[0];
const planned = (finish: Partial<Finish> = {}, more: Partial<Work> = {}) =>
  planFinish({ finish: { ...USUAL, ...finish }, welds: WELDS, symbols: welding.symbols, tube, ...more });

const [BUTT, ...CORNERS] = WELDS;

type Case = readonly [
  code: FindingCode,
  grade: FindingGrade,
  field: string,
  finish: Partial<Finish>,
  data: Record<string, number | string>,
  out: string | null,
];
const cases: readonly Case[] = [
  ['finish-too-coarse-for-sea', 'caution', 'surface', { surface: 'brushed' }, { value: 1, high: 0.5 }, 'satin'],
  ['dichromate-bath', 'caution', 'cleaning', { cleaning: 'nitric-1' }, {}, 'citric-3'],
  ['pickle-dangerous', 'caution', 'cleaning', { cleaning: 'pickle-paste' }, {}, 'citric-3'],
  ['pickle-dangerous', 'caution', 'cleaning', { cleaning: 'pickle-bath' }, {}, 'citric-3'],
  [
    'pickle-dangerous',
    'caution',
    'cleaning',
    { cleaning: 'pickle-bath', treatment: 'none', surface: 'as-delivered' },
    {},
    null,
  ],
  ...(['none', 'colour', 'ripple'] as const).map((treatment): Case => [
    'treatment-below-surface',
    'note',
    'treatment',
    { treatment, surface: 'mirror' },
    { surface: 'mirror' },
    'flush',
  ]),
];

describe('what is wrong is said once, at its field, and its way out leads out', () => {
  it.each(cases)('%s, %s at %s: %j', (code, grade, field, typed, data, value) => {
    const pointer = `/finish/${field}`;
    const wayOut = value === null ? null : { field: pointer, value };
    expect(planned(typed).findings).toEqual([{ code, grade, field: pointer, data, wayOut }]);
    if (value !== null) expect(planned({ ...typed, [field]: value }).findings).toEqual([]);
  });
  it.each([
    {},
    { surface: 'brushed', nearSea: false },
    { surface: 'mirror' },
    { treatment: 'pit-free', surface: 'mirror' },
    { treatment: 'none', surface: 'as-delivered' },
    { cleaning: 'nitric-4' },
    { cleaning: 'none' },
  ] as const)('nothing of %j', (typed) => {
    expect(planned(typed).findings).toEqual([]);
  });
  it('a bead in a corner stays whatever is chosen, and is not told to be ground flush', () => {
    expect(planned({ treatment: 'ripple', surface: 'mirror' }, { welds: CORNERS }).findings).toEqual([]);
  });
  describe('acid beside a sleeve', () => {
    const beside = (cleaning: Finish['cleaning'], more: Partial<Work> = {}) =>
      planned({ cleaning, treatment: 'flush' }, { backing: 'sleeve', ...more }).findings;
    it.each(CLEANINGS)('%s', (cleaning) => {
      const said = beside(cleaning).filter(({ code }) => code === 'acid-in-sleeve');
      const wayOut = { field: '/welding/backing', value: 'purge' };
      const whole = { code: 'acid-in-sleeve', grade: 'caution', field: '/finish/cleaning', data: {}, wayOut };
      expect(said).toEqual(cleaning === 'none' ? [] : [whole]);
    });
    it('is not said where no sleeve is: backed by gas alone, or no weld round a tube', () => {
      expect(beside('citric-3', { backing: 'purge' })).toEqual([]);
      expect(beside('citric-3', { welds: CORNERS })).toEqual([]);
    });
  });
  it('has words for each and for no other', () => {
    const from = FINDING_CODES.indexOf('finish-too-coarse-for-sea');
    const own = FINDING_CODES.slice(from, FINDING_CODES.indexOf('level-not-read'));
    expect(Object.keys(findingsFinish).sort()).toEqual([...own].sort());
  });
});

describe('notes', () => {
  const notes = (finish: Partial<Finish>, more: Partial<Work> = {}) => planned(finish, more).finish!.notes;
  const of = (key: '304L' | '316L' | '2205'): Grade => ({ from: 'catalogue', key });
  it('keep carbon steel and chlorides away, whatever is chosen', () => {
    for (const treatment of TREATMENTS)
      expect(notes({ treatment, cleaning: 'none', nearSea: false })).toEqual(
        expect.arrayContaining(['own-abrasives', 'stainless-brushes', 'no-carbon-steel', 'no-chlorides', 'find-iron']),
      );
  });
  it('ask for 316 near the sea where the tube is not', () => {
    const has = (grade: Grade, nearSea = true) =>
      notes({ nearSea }, { tube: { ...tube, grade } }).includes('sea-grade');
    expect([has(of('304L')), has(of('316L')), has(of('2205')), has(of('304L'), false)]).toEqual([
      true,
      false,
      false,
      false,
    ]);
    const own = { from: 'own', name: '1.4539' } as Grade;
    expect(has(own)).toBe(true);
    for (const key of ['sea-smooth', 'sea-grain', 'sea-rinse']) {
      expect(notes({ nearSea: true })).toContain(key);
      expect(notes({ nearSea: false })).not.toContain(key);
    }
  });
  it('say how a symbol says ground', () => {
    const symbols = (one: Work['symbols'], treatment: Finish['treatment'] = 'flush') =>
      notes({ treatment }, { symbols: one }).filter((key) => key.startsWith('symbol'));
    expect(symbols('iso-2553')).toEqual(['symbol-iso-tail']);
    expect(symbols('aws-a2-4')).toEqual(['symbol-aws-letter']);
    expect(symbols('iso-2553', 'ripple')).toEqual([]);
    expect(notes({}, { welds: CORNERS }).filter((key) => key.startsWith('symbol'))).toEqual([]);
  });
  it('say that a bead in a corner stays where others are ground flush', () => {
    expect(notes({ treatment: 'flush' })).toContain('corner-stays');
    expect(notes({ treatment: 'ripple' })).not.toContain('corner-stays');
    expect(notes({ treatment: 'flush' }, { welds: [BUTT!] })).not.toContain('corner-stays');
  });
  it('warn of acid in a hollow frame with every bath, and of closed tubes where they go into one', () => {
    for (const cleaning of CLEANINGS) {
      expect(notes({ cleaning }).includes('hollow')).toBe(cleaning !== 'none');
      expect(notes({ cleaning }).includes('closed-tube')).toBe(cleaning !== 'none' && cleaning !== 'pickle-paste');
    }
  });
  it('warn of the bath that is chosen', () => {
    expect(notes({ cleaning: 'nitric-1' })).toContain('chromium-six');
    expect(notes({ cleaning: 'nitric-2' })).not.toContain('chromium-six');
    expect(notes({ cleaning: 'pickle-bath' })).toContain('pickle-trained');
    expect(notes({ cleaning: 'citric-1', treatment: 'none' })).toContain('colour-first');
    expect(notes({ cleaning: 'citric-1', treatment: 'colour' })).not.toContain('colour-first');
    expect(notes({ cleaning: 'pickle-bath', treatment: 'none' })).not.toContain('colour-first');
    expect(notes({ cleaning: 'none' })).not.toContain('grease-first');
  });
});
