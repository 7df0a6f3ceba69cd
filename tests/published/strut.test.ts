/** Euler's load of three tubes, and the reduced load of a stainless one with γ left out. */
import { describe, expect, it } from 'vitest';
import { bucklingFactor, eulerLoad, reducedStrut } from '../../server/solver/site/strength/strut.ts';
import { sectionProperties } from '../../server/solver/tube/section.ts';

const tube = (outsideDiameter: number, bore: number) =>
  sectionProperties({ outsideDiameter, wall: (outsideDiameter - bore) / 2 });

describe('Euler', () => {
  it('Hibbeler, Ex. 13.1: radii 75 and 70 mm, 7.2 m pinned carry 228.2 kN, at 100 MPa', () => {
    const { secondMoment, area } = tube(150, 140);
    const load = eulerLoad({ elasticModulus: 200_000, secondMoment, bucklingLength: 7200 });
    expect((load / 1000).toFixed(1)).toBe('228.2');
    expect((load / area).toFixed(0)).toBe('100');
  });

  it.each([
    ['pinned at both ends', 1, '62.2'],
    ['fixed and free', 2, '15.6'],
    ['fixed and pinned', 0.6992, '127'],
    ['fixed at both ends', 0.5, '249'],
  ])('Gere, 7th ed., 11.4-2: 40 and 36 mm, 1.2 m, %s', (_, factor, printed) => {
    const { secondMoment } = tube(40, 36);
    const load = eulerLoad({ elasticModulus: 210_000, secondMoment, bucklingLength: factor * 1200 }) / 1000;
    expect(load.toFixed(printed.includes('.') ? 1 : 0)).toBe(printed);
  });
});

describe('EN 1993-1-4, 25.4 × 1.65, 205 MPa, 200 GPa, pinned, γ 1', () => {
  it.each([
    [0.5, '68.9', '22.0'],
    [1, '17.2', '11.5'],
    [1.5, '7.65', '6.0'],
  ])('%d m', (metres, critical, carries) => {
    const { secondMoment, area } = sectionProperties({ outsideDiameter: 25.4, wall: 1.65 });
    const euler = eulerLoad({ elasticModulus: 200_000, secondMoment, bucklingLength: metres * 1000 });
    expect((euler / 1000).toFixed(critical.split('.')[1]!.length)).toBe(critical);
    const { load } = reducedStrut({ area, proofStress: 205, euler, safety: 1 });
    expect((load / 1000).toFixed(1)).toBe(carries);
  });
});

describe('AISC 360, commentary, table C-A-7.1', () => {
  it.each([
    ['fixed', 'fixed', false, 0.65, 0.5],
    ['fixed', 'pinned', false, 0.8, 0.7],
    ['pinned', 'fixed', false, 0.8, 0.7],
    ['pinned', 'pinned', false, 1, 1],
    ['fixed', 'fixed', true, 1.2, 1],
    ['fixed', 'pinned', true, 2.1, 2],
    ['pinned', 'fixed', true, 2, 2],
  ] as const)('foot %s, head %s, sways %s: %d for design, %d in theory', (foot, head, sways, design, theory) => {
    expect(bucklingFactor({ foot, head, sways })).toEqual({ design, theory, sways });
  });

  it('has no value for a leg that is pinned at both ends and sways: that of one that is held', () => {
    expect(bucklingFactor({ foot: 'pinned', head: 'pinned', sways: true })).toEqual({
      design: 1,
      theory: 1,
      sways: false,
    });
  });
});
