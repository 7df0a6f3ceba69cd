import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { FINDING_CODES } from '../../server/plan/finding-codes.ts';
import type { FindingCode } from '../../server/plan/finding.ts';
import { plan } from '../../server/solver/plan.ts';
import { machineCases } from './bend-finding-cases.ts';
import { makingCases } from './making-finding-cases.ts';
import { shopCases } from './shop-finding-cases.ts';
import { calm, shapes, stops, type Case } from './frame-finding-cases.ts';
import { memberStops } from './member-finding-cases.ts';
import { mended } from './mended.ts';

/** Said of a frame that nothing is wrong with: the tube's grade, the estimate, what is left open. */
const ordinary = new Set([
  ...plan(calm(shapes.hoop({ innerCrossbars: [shapes.bar(200), shapes.bar(300)] }))).findings.map(({ code }) => code),
  ...plan(calm(shapes.run(shapes.at(0, 0), shapes.at(600, 0), shapes.at(600, 600)))).findings.map(({ code }) => code),
]);

const said = (job: Job): FindingCode[] => [
  ...new Set(plan(job).findings.flatMap(({ code }) => (ordinary.has(code) ? [] : [code]))),
];

const cases: readonly Case[] = [...stops, ...memberStops, ...machineCases, ...shopCases, ...makingCases];
const named = cases.map((one) => [`${one.code}: ${one.name}`, one] as const);

describe('what is wrong is said once, at its field, with its value and limits', () => {
  it.each(named)('%s', (_, { job, code, grade, field, data, beside = [], out }) => {
    expect(said(job).sort()).toEqual([code, ...beside].sort());
    const found = plan(job).findings.filter((one) => one.code === code);
    expect(found.map((one) => [one.grade, one.field])).toEqual([[grade, field]]);
    for (const [name, wanted] of Object.entries(data)) {
      const value = found[0]!.data[name];
      if (typeof wanted === 'number') expect(value, name).toBeCloseTo(wanted, 9);
      else expect(value, name).toBe(wanted);
    }
    if (out !== undefined) expect(found[0]!.wayOut).toEqual(out);
    expect(plan(job).frame === null).toBe(grade === 'stop' && !isDrawn(code, field));
  });
});

/** Stops that a frame is drawn with, so that a person sees where. */
const DRAWN = new Set<FindingCode>([
  'members-cross',
  'member-crosses-itself',
  'angle-over-machine',
  'die-for-other-tube',
  'tube-strikes',
]);

/** A radius that was typed for one bend too: the others are drawn. */
const isDrawn = (code: FindingCode, field: string): boolean =>
  DRAWN.has(code) || (code === 'die-radius-under-tube-radius' && field.startsWith('/frame'));

const withWayOut = named.flatMap(([name, { job, code }]) =>
  plan(job).findings.flatMap((one) => (one.code === code && one.wayOut !== null ? [[name, job, one] as const] : [])),
);

describe('a way out that is offered leads out', () => {
  it.each(withWayOut)('%s', (_, job, { code, wayOut }) => {
    const after = plan(mended(job, wayOut!));
    expect(after.findings.map((one) => one.code)).not.toContain(code);
    expect(after.findings.filter(({ grade, field }) => grade === 'stop' && field === wayOut!.field)).toEqual([]);
  });

  it('wherever there is one that the program can tell', () => {
    const codes = new Set(withWayOut.map(([, , { code }]) => code));
    for (const code of [
      'leg-short-for-bend',
      'width-under-tube',
      'width-short-for-bends',
      'crown-radius-too-small',
      'crossbar-outside-legs',
      'straight-negative',
      'path-not-possible',
      'die-radius-tight',
      'tolerance-no-row',
      'die-missing',
      'die-for-other-tube',
      'scatter-over-typed',
      'bend-another-way',
      'closing-straight-missing',
      'closing-weld-near-bend',
    ] as const)
      expect(codes).toContain(code);
  });
});

it('every code that tubes, frames, bends and making can raise is raised here, or of every frame', () => {
  const folders = ['tube', 'frame', 'bending', 'making'].map(
    (name) => new URL(`../../server/solver/${name}/`, import.meta.url),
  );
  const sources = folders.flatMap((folder) =>
    readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8')),
  );
  const raised = FINDING_CODES.filter((code) => sources.some((text) => text.includes(`'${code}'`)));
  const told = new Set([...cases.map(({ code }) => code), ...ordinary]);
  expect(raised.length).toBeGreaterThan(45);
  expect(raised.filter((code) => !told.has(code))).toEqual([]);
});
