import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Figure } from '../../server/plan/figure.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { plan } from '../../server/solver/plan.ts';
import type { Page } from '../../server/sheets/page.ts';
import { SHEET_NAMES, layoutSheet, type SheetName } from '../../server/sheets/render-sheet.ts';
import { makeJob, makePlan } from './fixture.ts';
import { covered, crossed, outside } from './layout-faults.ts';

/** The job that a new database opens with, planned by the solver. */
const demo = landingStage();
const demoPlan = plan(demo);

type Case = { name: SheetName; paper: 'a4' | 'letter'; unit: 'mm' | 'inch'; diameter: number | 'demo' };

function pagesOf({ name, diameter, paper, unit }: Case): readonly Page[] {
  const job = diameter === 'demo' ? { ...demo, print: { ...demo.print, paper } } : makeJob(diameter, paper);
  const sheet = layoutSheet(name, {
    plan: diameter === 'demo' ? demoPlan : makePlan(diameter),
    job: { ...job, units: { ...job.units, length: unit } },
    revision: { number: 3, date: '2026-11-25T08:00:00Z' },
  });
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages;
}

const cases: Case[] = SHEET_NAMES.flatMap((name) =>
  (['a4', 'letter'] as const).flatMap((paper) =>
    (['mm', 'inch'] as const).flatMap((unit) =>
      ([38.1, 114.3, 'demo'] as const).map((diameter) => ({ name, paper, unit, diameter })),
    ),
  ),
);

describe.each(cases)('$name on $paper in $unit, tube $diameter', (one) => {
  const pages = pagesOf(one);

  it('keeps everything on the paper', () => {
    for (const page of pages) expect(outside(page)).toEqual([]);
  });

  it('lays no text over another', () => {
    for (const page of pages) expect(covered(page)).toEqual([]);
  });

  it('lets no line pass through an upright or lying text', () => {
    for (const page of pages) expect(crossed(page)).toEqual([]);
  });
});

describe('a frame of many members, bends, joints and findings', () => {
  it.each(SHEET_NAMES)('keeps %s on its pages, no text over another', (name) => {
    const plan = crowded();
    const sheet = layoutSheet(name, { plan, job: makeJob(), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    for (const page of sheet.pages) {
      expect(outside(page)).toEqual([]);
      expect(covered(page)).toEqual([]);
    }
  });
});

/** From one round of bends to the next [mm]. */
const FURTHER = 1600;

const further = (figure: Figure, by: number): Figure => ({ ...figure, value: figure.value + by });

/** The made-up plan with twenty times as much of everything. */
function crowded(): Plan {
  const plan = makePlan();
  const times = <T>(list: readonly T[], change: (one: T, index: number) => T): T[] =>
    Array.from({ length: 20 }, (_, round) => list.map((one) => change(one, round))).flat();
  const { frame, correction } = plan;
  if (frame === null || correction === null) throw new Error('the made-up plan is whole');
  const members = times(frame.members, (member, round) => ({
    ...member,
    name: `${member.name} with a rather long name ${String(round)}`,
    cutLength: further(member.cutLength, 19 * FURTHER),
    bends: times(member.bends, (bend, along) => ({
      ...bend,
      startMark: further(bend.startMark, along * FURTHER),
      middleMark: further(bend.middleMark, along * FURTHER),
      endMark: further(bend.endMark, along * FURTHER),
    })).map((bend, index) => ({ ...bend, number: index + 1 })),
  }));
  return {
    ...plan,
    findings: times(plan.findings, (finding) => finding),
    frame: { ...frame, members, checks: times(frame.checks, (check, index) => ({ ...check, index })) },
    correction: {
      ...correction,
      members: correction.members.map((member) => ({
        ...member,
        developedLength: further(member.developedLength, 19 * 100),
      })),
      differences: times(correction.differences, (one, index) => ({ ...one, index })),
      ways: correction.ways.map((way) => ({
        ...way,
        joints: times(way.joints, (joint, along) => ({
          ...joint,
          faceA: { ...joint.faceA, station: further(joint.faceA.station, along * 100) },
          faceB: { ...joint.faceB, station: further(joint.faceB.station, along * 100) },
        })).map((joint, index) => ({ ...joint, number: index + 1 })),
        after: times(way.after, (one) => one),
      })),
    },
  };
}
