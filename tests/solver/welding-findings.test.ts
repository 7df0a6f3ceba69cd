import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { findingsWelding } from '../../server/language/en/findings-welding.ts';
import { FINDING_CODES } from '../../server/plan/finding-codes.ts';
import { quiet, weldCases } from './welding-finding-cases.ts';
import { BRANCH, jobWith, MAIN, SADDLE, settings, spliceAt, welded, type Work } from './welding-frames.ts';
import { mended } from './mended.ts';

const codes = (job: Job, work?: Work) => welded(job, work).findings.map(({ code }) => code);
const named = weldCases.map((one) => [`${one.code}: ${one.name}`, one] as const);

it('nothing is said where nothing is amiss', () => {
  expect(codes(quiet)).toEqual([]);
  expect(codes(quiet, { members: [MAIN, BRANCH], places: [spliceAt(1500), SADDLE] })).toEqual([]);
  expect(codes(jobWith({}), { places: [] })).toEqual([]);
});

describe('what is amiss is said once, at its field, with its value and limits', () => {
  it.each(named)('%s', (_, { job, work, code, grade, field, data = {}, beside = [] }) => {
    expect(codes(job, work).sort()).toEqual([code, ...beside].sort());
    const found = welded(job, work).findings.find((one) => one.code === code)!;
    expect([found.grade, found.field]).toEqual([grade, field]);
    for (const [name, wanted] of Object.entries(data)) {
      if (typeof wanted === 'number') expect(found.data[name], name).toBeCloseTo(wanted, 9);
      else expect(found.data[name], name).toBe(wanted);
    }
  });
});

describe('and is gone when it is mended', () => {
  it.each(named)('%s', (_, { job, work, code, mend }) => {
    const { wayOut } = welded(job, work).findings.find((one) => one.code === code)!;
    expect(wayOut === null).toBe(mend !== undefined);
    if (mend === null) return; // what is wrong is the frame, not a setting
    const after = wayOut === null ? mend!(job) : mended(job, wayOut);
    const left = welded(after, work).findings;
    expect(left.map((one) => one.code)).not.toContain(code);
    expect(left.filter(({ grade }) => grade === 'stop')).toEqual([]);
  });
});

describe('a way out', () => {
  const wayOut = (job: Job, code: string) => welded(job).findings.find((one) => one.code === code)?.wayOut;
  it('is the nearest gap that suits', () => {
    const at = (gap: number) => wayOut(jobWith({ tube: { wall: 4 }, closing: { gap } }), 'gap-for-wall')?.value;
    expect([at(0), at(1.4), at(1.5), at(2.5), at(2.6)]).toEqual([1.5, 1.5, undefined, undefined, 2.5]);
  });
  it('is another current where no electrode carries the one that is typed', () => {
    const typed = settings('butt', { current: 2, electrode: 1 });
    const field = '/welding/butt/current';
    expect(wayOut(jobWith({ welding: typed }), 'electrode-range')).toEqual({ field, value: null });
  });
});

it('without filler a local gap of 0.2 mm closes at most, and only a butt has a gap', () => {
  const open = (wall: number, gap: number) =>
    codes(jobWith({ tube: { wall }, closing: { gap }, welding: settings('butt', { process: '142' }) })).includes(
      'autogenous-with-gap',
    );
  expect([open(1.65, 0.16), open(1.65, 0.17), open(3, 0.2), open(3, 0.21)]).toEqual([false, true, false, true]);
  const saddle = jobWith({ closing: { gap: 1 }, welding: settings('saddle', { process: '142' }) });
  expect(codes(saddle, { members: [MAIN, BRANCH], places: [SADDLE] })).toEqual(['settings-not-proved']);
});

describe('what does not concern a job is not said', () => {
  it('of butts, where there are none', () => {
    const job = jobWith({ tube: { wall: 4 }, closing: { gap: 0, shrinkage: 9 }, welding: { backing: 'sleeve' } });
    expect(codes(job, { members: [MAIN, BRANCH], places: [SADDLE] })).toEqual(['settings-not-proved']);
    expect(welded(job, { members: [MAIN, BRANCH], places: [SADDLE] }).welding.sleeve).toBeNull();
  });
  it('of forms that do not occur', () => {
    const job = jobWith({ welding: settings('pad', { current: 400, electrode: 1, process: '142' }) });
    expect(codes(job)).toEqual(['settings-not-proved']);
  });
});

it('every code of welding is raised here, and has words', () => {
  const folder = new URL('../../server/solver/welding/', import.meta.url);
  const texts = readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => readFileSync(new URL(name, folder), 'utf8'));
  const raised = FINDING_CODES.filter((code) => texts.some((text) => text.includes(`'${code}'`)));
  expect(raised.length).toBe(18);
  expect([...new Set(weldCases.map(({ code }) => code))].sort()).toEqual([...raised].sort());
  for (const code of raised) expect(findingsWelding).toHaveProperty(code);
});
