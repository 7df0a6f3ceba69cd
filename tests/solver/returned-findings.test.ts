import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import type { Finding, FindingCode, FindingGrade } from '../../server/plan/finding.ts';
import { describeFinding } from '../../server/language/finding-words.ts';
import { saidWords } from '../../server/language/said-words.ts';
import { newJob } from '../../server/job/default-job.ts';
import {
  came,
  drawn,
  everyPiece,
  everySize,
  fitted,
  hoop,
  place,
  readOn,
  ring,
  run,
  sized,
} from '../properties/returned-frames.ts';

const wanted = drawn(hoop());
const { units } = newJob('hoop');
const none = { value: 100, accuracy: null };
const distance = (change: Partial<Extract<Reading, { reading: 'distance' }>>): Reading => ({
  reading: 'distance',
  from: place('hoop', 'start'),
  to: place('hoop', 'finish'),
  reference: 'outside',
  ...none,
  ...change,
});
const rubbish = readOn(wanted, wanted, everySize(wanted)).map((one, index) =>
  one.reading === 'size' ? { ...one, value: one.value! * (1 + 0.1 * ((index * 7) % 5)) } : one,
);
const stated = (key: string, value: number): Reading => sized(key, 0, value);

type Case = readonly [name: string, reading: Reading[], code: FindingCode, grade: FindingGrade, field: string];

const cases: readonly Case[] = [
  ['nothing measured', [], 'readings-none', 'note', ''],
  ['a size without a value', [sized('left-leg', 0, null)], 'readings-none', 'note', ''],
  ['a size that the frame has not', [sized('height', 0)], 'reading-no-such-size', 'caution', '/0/check'],
  ['a size with another number', [sized('diagonal', 3)], 'reading-no-such-size', 'caution', '/0/check'],
  [
    'a distance from a member that is not there',
    [distance({ from: place('gone', 'start') })],
    'reading-no-such-place',
    'caution',
    '/0/from',
  ],
  [
    'a distance to a bend that is not there',
    [distance({ to: place('hoop', 'corner', 3) })],
    'reading-no-such-place',
    'caution',
    '/0/to',
  ],
  [
    'a place further along than the tube',
    [distance({ to: place('hoop', 'along', 1, 9000) })],
    'reading-no-such-place',
    'caution',
    '/0/to',
  ],
  [
    'a line along the tube over the outside',
    [distance({ to: place('hoop', 'along', 1, 300) })],
    'reading-along-tube',
    'caution',
    '/0/reference',
  ],
  [
    'the length of an arc',
    [{ reading: 'piece', what: 'length', member: 'hoop', piece: 2, ...none }],
    'reading-no-such-place',
    'caution',
    '/0/piece',
  ],
  [
    'the radius of a straight',
    [{ reading: 'piece', what: 'radius', member: 'hoop', piece: 1, ...none }],
    'reading-no-such-place',
    'caution',
    '/0/piece',
  ],
  [
    'a piece too many',
    [{ reading: 'turn', what: 'angle', member: 'hoop', piece: 40, ...none }],
    'reading-no-such-place',
    'caution',
    '/0/piece',
  ],
  [
    'a piece of a member that is not there',
    [{ reading: 'turn', what: 'angle', member: 'gone', piece: 1, ...none }],
    'reading-no-such-place',
    'caution',
    '/0/member',
  ],
  [
    'the rotation of the first bend',
    [{ reading: 'turn', what: 'rotation', member: 'hoop', piece: 2, ...none }],
    'reading-no-such-place',
    'caution',
    '/0/what',
  ],
  [
    'a bevel at a bend that is not there',
    [{ reading: 'bevel', from: place('hoop', 'bend-start', 9), to: place('hoop', 'start'), value: 90, accuracy: null }],
    'reading-no-such-place',
    'caution',
    '/0/from',
  ],
  [
    'a bevel to nowhere',
    [{ reading: 'bevel', from: place('hoop', 'start'), to: place('hoop', 'middle', 77), value: 90, accuracy: null }],
    'reading-no-such-place',
    'caution',
    '/0/to',
  ],
  [
    'a level on nothing',
    [{ reading: 'level', at: place('gone', 'start'), value: 0, accuracy: null }],
    'reading-no-such-place',
    'caution',
    '/0/at',
  ],
  [
    'a point on nothing',
    [{ reading: 'point', at: place('hoop', 'bend-end', 8), x: 0, y: 0, z: 0, accuracy: null }],
    'reading-no-such-place',
    'caution',
    '/0/at',
  ],
  ['sizes that no frame has', rubbish, 'readings-contradict', 'stop', '/'],
];

const ofCode = (findings: readonly Finding[], code: FindingCode) => findings.filter((one) => one.code === code);

describe('readings that cannot be used are said at their field, and nothing is thrown', () => {
  it.each(cases)('%s', (_, readings, code, grade, field) => {
    const { findings } = fitted(wanted, came(readings));
    const [found, ...more] = ofCode(findings, code);
    expect(more).toEqual([]);
    expect(found!.grade).toBe(grade);
    if (field === '/') expect(found!.field).toMatch(/^\/cameBack\/readings\/\d+\/value$/);
    else expect(found!.field).toBe(`/cameBack/readings${field}`);
    expect(describeFinding(found!, units)).not.toMatch(/[[\]{}]|undefined/);
  });

  it('the others are fitted all the same', () => {
    const good = readOn(wanted, wanted, [sized('left-leg', 0)]);
    const { returned, fit, findings } = fitted(wanted, came([sized('height', 0), ...good]));
    expect(findings.map(({ code }) => code)).toEqual(['reading-no-such-size']);
    expect(fit.readings.map(({ field }) => field)).toEqual(['/cameBack/readings/1']);
    expect(returned).not.toBeNull();
  });

  it('two cautious readings that do not agree are a caution', () => {
    const apart = [stated('left-leg', 600), stated('left-leg', 606)];
    const { findings, fit } = fitted(wanted, came(apart));
    expect(findings.map(({ code, grade }) => [code, grade])).toEqual([['readings-contradict', 'caution']]);
    expect(findings[0]!.data['value']).toBeCloseTo(3, 1);
    expect(fit.doubt).toEqual({ key: 'doubt.readings-disagree', data: { misfit: 3 } });
  });

  it('a diagonal longer than the two sides beside it', () => {
    const frame = drawn(ring);
    const read = readOn(frame, frame, everySize(frame)).map((one) =>
      one.reading === 'size' && one.check === 'diagonal' ? { ...one, value: 1700 } : one,
    );
    const { findings } = fitted(frame, came(read));
    expect(findings.map(({ code, grade }) => [code, grade])).toEqual([['readings-contradict', 'stop']]);
  });

  it('a leg too short for its bend has a straight of less than nothing', () => {
    const { findings, returned } = fitted(wanted, came([stated('left-leg', 60)]));
    expect(returned).toBeNull();
    const [found] = ofCode(findings, 'readings-piece-negative');
    expect(found).toMatchObject({
      grade: 'stop',
      field: '/cameBack/readings',
      data: { member: 'hoop', piece: 1, low: 0 },
    });
    expect(found!.data['value']).toBeLessThan(-10);
    expect(describeFinding(found!, units)).toContain('shorter than nothing');
  });

  it('an angle that disagrees is said in degrees', () => {
    const frame = drawn(run);
    const pieces = everyPiece(frame);
    const readings = readOn(frame, frame, [...pieces, ...pieces, ...pieces]);
    const bad = readings.findIndex((one) => one.reading === 'turn' && one.what === 'angle');
    const measured = readings.map((one, index) =>
      index === bad && one.reading === 'turn' ? { ...one, value: one.value! + 4 } : one,
    );
    const { findings, fit } = fitted(frame, came(measured));
    const field = `/cameBack/readings/${String(bad)}/value`;
    expect(findings.map((one) => [one.code, one.grade, one.field])).toEqual([
      ['reading-angle-disagrees', 'caution', field],
    ]);
    expect(findings[0]!.wayOut!.value).toBeNull();
    expect(findings[0]!.data['high']).toBeCloseTo(90, 2);
    expect(fit.doubt).toEqual({ key: 'doubt.angle-disagrees', data: { off: 4 } });
    expect(saidWords(fit.doubt!, units)).toMatch(/^One angle stands 4/);
  });

  it('every kind of reading has a name in words', () => {
    const frame = drawn(run);
    const point: Reading = { reading: 'point', at: place('run', 'corner', 2), x: 1, y: 2, z: 3, accuracy: null };
    const level: Reading = { reading: 'level', at: place('run', 'along', 1, 120), value: 0, accuracy: null };
    const bevel: Reading = {
      reading: 'bevel',
      from: place('run', 'start'),
      to: place('run', 'finish'),
      value: 90,
      accuracy: null,
    };
    const across = distance({ from: place('run', 'start'), to: place('run', 'middle', 3), reference: 'centre' });
    const { solved } = fitted(frame, came([...everySize(frame), ...everyPiece(frame), point, level, bevel, across]));
    const said = solved.readings.map(({ name }) => saidWords(name, units));
    expect(said).toContain('x of run, corner 2');
    expect(said.find((one) => one.startsWith('slope at run, place'))).toMatch(/120/);
    expect(said).toContain('angle between run, start and run, finish');
    expect(said).toContain('run, start to run, middle of piece 3');
    for (const one of said) expect(one).not.toMatch(/[[\]{}]|undefined/);
  });
});
