import { describe, expect, it } from 'vitest';
import type { FootEnd, Leg } from '../../../server/job/leg.ts';
import { saddleOrdinate } from '../../../server/solver/joints/saddle-cut.ts';
import type { SiteSource } from '../../../server/solver/site/laid-site.ts';
import { faultsOf } from '../figures-in.ts';
import { formulaValue } from '../formula-value.ts';
import { HINGE, hinged, legOf, planned, RADIANS, sourceOf } from './legs-made-up.ts';

const standing = { hinge: HINGE, slopes: [], height: null, swing: null };
const foot = (end: FootEnd): Leg['foot'] => ({ ...legOf().foot, end });
const WELDED: Partial<SiteSource> = { gap: 1.2, shrinkage: 0.8 };

/** One leg under the rail. */
const one = (changes: Partial<Leg>, more: Partial<SiteSource> = {}) =>
  planned(sourceOf(hinged, { legs: [legOf(changes)], standing }, more)).legs[0]!;

const RADIUS = 38.1 / 2;

/** Least way from where the axes meet to the line to cut to, 38.1 × 1.65 on 38.1, tried all round. */
const throatOf = (axisAngle: number): number => {
  const at = (generator: number, radius: number): number =>
    saddleOrdinate({ mainRadius: RADIUS, offset: 0, axisAngle, radius, generator })!;
  const round = Array.from({ length: 3600 }, (_, index) => (index * Math.PI) / 1800);
  return Math.min(...round.map((turn) => Math.max(at(turn, RADIUS), at(turn, RADIUS - 1.65))));
};

describe('what is sawn off the bar', () => {
  it('a square foot: centre length, less foot allowance, less the throat of the saddle, and what two welds pull in', () => {
    const leg = one({ foot: foot({ end: 'square', plate: 8 }) }, WELDED);
    const tilt = leg.foot.tilt.value * RADIANS;
    // where the line to cut to is nearest to the tube's axis, as far as it is from there
    const throat = throatOf(leg.head.axisAngle.value * RADIANS);
    const footAllowance = 8 / Math.cos(tilt) + RADIUS * Math.tan(tilt);
    expect(leg.cutLength.value).toBeCloseTo(leg.centreLength.value - footAllowance - throat - 2 * 1.2 + 2 * 0.8, 2);
    expect(leg.foot.takes.value).toBeCloseTo(footAllowance + 1.2, 9);
    expect(leg.foot.rise).toBeNull();
    expect(leg.head.takes.value).toBeCloseTo(throat + 1.2, 2);
    expect(leg.middleLength.value).toBeCloseTo(leg.cutLength.value, 9);
  });

  it('a mitre goes through the plate’s top on the axis, its long side beyond it by half of its rise', () => {
    const leg = one({ foot: foot({ end: 'mitre', plate: 8 }) }, WELDED);
    const tilt = Math.acos((610 - 19.05) / leg.centreLength.value);
    expect(leg.foot.tilt.value).toBeCloseTo(tilt / RADIANS, 9);
    expect(leg.foot.takes.value).toBeCloseTo(8 / Math.cos(tilt) + 1.2, 9);
    expect(leg.foot.rise!.value).toBeCloseTo(38.1 * Math.tan(tilt), 9);
    expect(leg.cutLength.value - leg.middleLength.value).toBeCloseTo(RADIUS * Math.tan(tilt), 9);
    expect(leg.longest.value).toBeLessThanOrEqual(leg.cutLength.value);
    expect(leg.shortest.value).toBeLessThan(leg.middleLength.value);
  });

  it('goes into a socket by its depth, and no weld pulls it there', () => {
    const leg = one({ foot: foot({ end: 'socket', depth: 60 }) }, WELDED);
    expect(leg.foot.takes.value).toBe(-60);
    expect(leg.cutLength.value).toBeCloseTo(leg.centreLength.value + 60 - leg.head.takes.value + 0.8, 9);
    expect(leg.templates.map(({ place }) => place)).toEqual(['finish']);
  });

  it('leaves room for a fitting at its head, which is not welded', () => {
    const leg = one({ head: { ...legOf().head, end: { end: 'eye', takes: 45 } } }, WELDED);
    expect(leg.head.takes.value).toBe(45);
    expect(leg.roll).toBeNull();
    const { rise, takes } = leg.foot;
    expect(leg.cutLength.value).toBeCloseTo(leg.centreLength.value - 45 - takes.value + rise!.value / 2 + 0.8, 9);
    expect(leg.templates.map(({ place }) => place)).toEqual(['start']);
  });

  it('leaves out the middle of an adjustment', () => {
    const adjust = { by: 'thread', adds: 55, travel: 12 } as const;
    const [with_, without] = [one({ adjust }, WELDED), one({}, WELDED)];
    expect(without.cutLength.value - with_.cutLength.value).toBeCloseTo(55, 9);
    expect(without.longest.value - with_.longest.value).toBeCloseTo(55, 9);
    expect(with_.adjust!.least.value).toBeCloseTo(with_.centreLength.value - 12, 9);
    expect(with_.adjust!.most.value).toBeCloseTo(with_.centreLength.value + 12, 9);
    expect(without.adjust).toBeNull();
  });

  it('is as long as the workings beside it say', () => {
    const adjust = { by: 'slip', adds: 30, travel: 10 } as const;
    for (const end of ['mitre', 'square'] as const) {
      const leg = one({ adjust, foot: foot({ end, plate: 6 }) }, WELDED);
      for (const figure of [leg.cutLength, leg.middleLength, leg.shortest, leg.longest, leg.head.takes, leg.mass])
        expect(
          formulaValue({ ...figure, working: { ...figure.working, formula: plain(figure.working.formula) } }),
        ).toBeCloseTo(figure.value, 9);
      expect(faultsOf(leg)).toEqual([]);
    }
  });
});

/** What stands before a formula's sign of equality is no part of it. */
const plain = (formula: string): string => formula.replace(/^l\(φ\) = /u, 'l = ');

describe('the wraps of a leg', () => {
  const leg = one({ foot: foot({ end: 'mitre', plate: 5 }) }, WELDED);
  const [start, finish] = [leg.templates[0]!, leg.templates[1]!];

  it('are a plane at the foot and a saddle at the head, both from the bar’s sawn end', () => {
    expect([start.kind, start.scrap, finish.kind, finish.scrap]).toEqual(['plane', 'start', 'saddle', 'finish']);
    expect([start.edge, finish.edge]).toEqual([0, 0]);
    // each ring lies on a sawn end, and the line to cut to touches it once, or lies back from it
    expect([start.ringStation, finish.ringStation]).toEqual([0, leg.cutLength.value]);
    for (const [wrap, sign] of [
      [start, 1],
      [finish, -1],
    ] as const) {
      const back = [...wrap.curve.map(([, ordinate]) => ordinate), ...wrap.stations.map(({ cut }) => cut)].map(
        (ordinate) => sign * ordinate,
      );
      expect(Math.min(...back)).toBeGreaterThanOrEqual(-1e-9);
      expect(Math.min(...back)).toBeLessThan(0.01);
    }
    expect(start.high).toBeCloseTo(leg.foot.rise!.value, 2);
    expect(finish.high).toBeLessThanOrEqual(1e-9);
  });

  it('of a leg in two bars lie on the ends of those, less the middle of the adjustment', () => {
    const adjusted = one(
      { foot: foot({ end: 'mitre', plate: 5 }), adjust: { by: 'slip', adds: 40, travel: 10 } },
      WELDED,
    );
    expect(adjusted.templates[1]!.ringStation).toBeCloseTo(finish.ringStation - 40, 9);
    expect(adjusted.templates[1]!.curve).toEqual(finish.curve);
  });

  it('say where the mitre is longest, round from the line, and how thick its plate is', () => {
    const longest = start.curve.reduce((best, point) => (point[1] < best[1] ? point : best));
    expect(leg.foot.longSide!.value).toBeCloseTo((360 * longest[0]) / start.wrapLength, 9);
    expect(leg.foot.plate).toBe(5);
    expect(one({ foot: foot({ end: 'square', plate: 3 }) }).foot).toMatchObject({ longSide: null, plate: 3 });
    expect(one({ foot: foot({ end: 'socket', depth: 60 }) }).foot).toMatchObject({ longSide: null, plate: 0 });
    // on a pad that faces port it comes round to port, which is a quarter turn on
    const tilted = one({ foot: { ...legOf().foot, surface: { by: 'axes', vector: { x: 0, y: 3, z: 1 } } } });
    expect(tilted.foot.longSide!.value).toBeGreaterThan(60);
    expect(tilted.foot.longSide!.value).toBeLessThan(90);
    expect(tilted.foot.longSide!.band!.plusMinus).toBeGreaterThan(0);
  });

  it('share the generator that looks up: the foot is longest and shortest where the leg leans', () => {
    // the pad is level, so that the upper generator of a leaning leg ends furthest down: its long side
    const ordinates = start.stations.map(({ cut }) => cut);
    expect(ordinates[8]).toBe(Math.max(...ordinates));
    expect(ordinates[0]).toBe(Math.min(...ordinates));
  });

  it('turned by the roll: from the long side of the foot the saddle is deepest', () => {
    const deepest = finish.curve.reduce((best, point) => (point[1] < best[1] ? point : best));
    const turn = (360 * deepest[0]) / finish.wrapLength;
    const roll = leg.roll!.value;
    // the long side lies on the line; a wrap has a point every 3 degrees
    expect(Math.abs(((turn - roll + 540) % 360) - 180)).toBeLessThan(3);
    expect(leg.rollRound!.value).toBeCloseTo((Math.PI * 38.1 * roll) / 360, 9);
    expect(leg.head.axisAngle.value).toBeCloseTo(Math.acos(40 / leg.centreLength.value) / RADIANS, 9);
  });

  it('a saddle at right angles takes the nearer side, a square one has no roll', () => {
    const straightUp = one({ foot: { ...legOf().foot, at: { x: 0, y: 380, z: -610 } } });
    expect(straightUp.head.axisAngle.value).toBeCloseTo(90, 9);
    expect(Math.abs(straightUp.roll!.value)).toBeCloseTo(90, 9);
    expect(straightUp.roll!.working.formula).toContain('180');
    const upright = one({ foot: { ...legOf().foot, at: { x: -480, y: 380, z: -610 } } });
    expect(upright.foot.tilt.value).toBeCloseTo(0, 9);
    expect(upright.roll).toBeNull();
    expect(upright.templates.map(({ place }) => place)).toEqual(['finish']);
  });
});
