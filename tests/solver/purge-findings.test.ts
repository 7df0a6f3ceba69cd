import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import { FINDING_CODES } from '../../server/plan/finding-codes.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { passingCases, type PurgeCase } from './purge-finding-cases.ts';
import { flowCases } from './purge-flow-finding-cases.ts';
import { purged } from './purge-frames.ts';
import { mended } from './mended.ts';

const purgeCases: readonly PurgeCase[] = [...passingCases, ...flowCases];

const said = ({ job, cuts = [], cutsOnly = false }: PurgeCase, changed: Job = job): Finding[] =>
  purged(changed, cuts, cutsOnly).findings;

/** What a pointer leads to in a job; undefined where it leads nowhere. */
const at = (job: Job, pointer: string): unknown =>
  pointer
    .slice(1)
    .split('/')
    .reduce<unknown>((value, name) => (value as Record<string, unknown> | null)?.[name], job);

const named = purgeCases.map((one) => [`${one.code}: ${one.name}`, one] as const);

describe('what a purge has to tell', () => {
  it.each(named)('%s', (_, one) => {
    const found = said(one).filter(({ code }) => code === one.code);
    expect(found.length).toBeGreaterThan(0);
    for (const { grade, field } of found) {
      expect([grade, field]).toEqual([one.grade, one.field]);
      expect(at(one.job, field)).toBeDefined();
    }
    for (const [name, wanted] of Object.entries(one.data ?? {})) {
      const value = found[0]!.data[name];
      if (typeof wanted === 'number') expect(Math.abs(Number(value) - wanted), name).toBeLessThan(0.05);
      else expect(value, name).toBe(wanted);
    }
    if (one.out !== undefined) expect(found[0]!.wayOut).toEqual(one.out);
  });

  it.each(named.filter(([, one]) => said(one).some(({ code, wayOut }) => code === one.code && wayOut !== null)))(
    'the way out leads out: %s',
    (_, one) => {
      const found = said(one).find(({ code }) => code === one.code)!;
      const [before, after] = [said(one), said(one, mended(one.job, found.wayOut!))];
      expect(after.filter(({ code, grade }) => code === one.code && grade === one.grade)).toEqual([]);
      // nothing as bad takes its place
      const stops = (all: readonly Finding[]) =>
        new Set(all.flatMap(({ code, grade }) => (grade === 'stop' ? code : [])));
      expect([...stops(after)].filter((code) => !stops(before).has(code))).toEqual([]);
    },
  );

  it('every code is raised here', () => {
    const folder = new URL('../../server/solver/purge/', import.meta.url);
    const sources = readdirSync(folder)
      .filter((name) => !/^(room|bottle)/.test(name))
      .map((name) => readFileSync(new URL(name, folder), 'utf8'));
    const raised = FINDING_CODES.filter((code) => sources.some((text) => text.includes(`'${code}'`)));
    const told = new Set(purgeCases.map(({ code }) => code));
    expect(raised.length).toBeGreaterThan(25);
    expect(raised.filter((code) => !told.has(code))).toEqual([]);
  });
});
