import { describe, expect, it } from 'vitest';
import type { LetIn } from '../../server/solver/correction/cut-joint.ts';
import type { EndGeometry, MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { bend, joint, line, member, planned, radians } from './made-up-joints.ts';

describe('where a tape is laid', () => {
  const marksOf = (own: MemberGeometry, at: number) => planned(joint(own, at, 0, { a: 0, b: 0 })).joint.faceA;
  const bent = member([line(900), bend(150, Math.PI / 2), line(900)]);
  const { length } = bent.centreline;

  it('at a saddle from its long point', () => {
    const saddle: EndGeometry = { kind: 'saddle', onto: 'below', station: 500, axisAngle: radians(60), offset: 0 };
    const { marks, check } = marksOf(member([line(2000)], { start: saddle, finish: saddle }), 700);
    const off = 24.15 / Math.sin(radians(60));
    expect(marks.from).toBe('saddle-face');
    expect(marks.generators[1]!.distance.value).toBeCloseTo(700 - off, 9);
    expect(check!.from).toBe('far-saddle-face');
    expect(check!.generators[1]!.distance.value).toBeCloseTo(1300 - off, 9);
  });

  it('at a closed member from its weld, both ways', () => {
    const { marks, check } = marksOf(member([line(2000)], { closed: true }), 1500);
    expect(marks).toMatchObject({ from: 'closing-weld', towards: 'start' });
    expect(marks.generators[0]!.distance.value).toBeCloseTo(500, 9);
    expect(check).toMatchObject({ from: 'closing-weld', towards: 'finish' });
    expect(check!.generators[0]!.distance.value).toBeCloseTo(1500, 9);
  });

  it("from a bend's scribed line where that is nearer by more than 200 mm", () => {
    // 500 from the datum end, 400 from the bend: not worth it; 560 and 340: worth it
    expect(marksOf(bent, 500).marks.from).toBe('datum-end');
    const { marks, check } = marksOf(bent, 560);
    expect(marks).toMatchObject({ from: 'bend-start', bend: 1, towards: 'start' });
    expect(marks.generators[0]!.distance.value).toBeCloseTo(340, 9);
    expect(check!.from).toBe('datum-end');
    expect(marksOf(bent, length - 560).marks).toMatchObject({ from: 'bend-end', bend: 1, towards: 'finish' });
  });

  it('with how far the face stands off its ring along each generator, the same from either end', () => {
    const { marks, check } = planned(joint(member([line(2000)]), 700, 0, { a: radians(2), b: 0 })).joint.faceA;
    const off = 24.15 * Math.tan(radians(2));
    const ordinates = marks.generators.map(({ ordinate }) => ordinate);
    expect(ordinates.map((one) => Math.abs(one) < 1e-9)).toEqual([false, true, false, true]);
    expect(Math.abs(ordinates[0]!)).toBeCloseTo(off, 9);
    expect(ordinates[2]).toBeCloseTo(-ordinates[0]!, 9);
    for (const [index, { distance, ordinate }] of marks.generators.entries()) {
      expect(distance.value).toBeCloseTo(700 + ordinate, 9);
      expect(check!.generators[index]!.ordinate).toBeCloseTo(ordinate, 9);
      expect(check!.generators[index]!.distance.value).toBeCloseTo(1300 - ordinate, 9);
    }
  });

  it('a rolled arc has no line to measure from, and generators run round it at their own radius', () => {
    const rolled = member([line(900), bend(1000, 1, 'rolled'), line(900)]);
    const { marks } = marksOf(rolled, 1300);
    expect(marks.from).toBe('datum-end');
    const [outside, top, inside] = marks.generators.map(({ distance }) => distance.value);
    expect(outside).toBeCloseTo(900 + 0.4 * 1024.15, 9);
    expect(top).toBeCloseTo(1300, 9);
    expect(inside).toBeCloseTo(900 + 0.4 * 975.85, 9);
  });
});

describe('new tube let in', () => {
  const letIn: LetIn = { length: 81.7, radius: 1000, angle: 0.0817, kinkA: radians(1), kinkB: radians(0.6) };
  const crown = member([bend(1000, 1.5, 'rolled')]);
  const lean = { a: -radians(0.5), b: radians(0.3) };
  const made = planned(joint(crown, 750, 40, lean, { letIn })).joint;

  it('is sawn long by its leaning ends and two kerfs', () => {
    expect(made.kind).toBe('let-in');
    const ends = 24.15 * (Math.tan(radians(0.5)) + Math.tan(radians(0.3)));
    expect(made.letIn!.cutLength.value).toBeCloseTo(81.7 + ends + 3.2, 9);
    expect(made.letIn!.radius!.value).toBe(1000);
    expect(made.letIn!.angle!.value).toBeCloseTo((0.0817 * 180) / Math.PI, 9);
    // what is rolled is held by no clamp: it has its own allowance
    const held = planned(joint(crown, 750, 40, lean, { letIn }), {}, { leftOn: { die: 500, rolled: 120 } }).joint;
    expect(held.letIn!.cutLength.value).toBeCloseTo(made.letIn!.cutLength.value + 120, 9);
  });

  it('has ends that lean against the faces that they close on', () => {
    const [start, finish] = made.letIn!.templates;
    expect(made.letIn!.templates).toHaveLength(2);
    expect(start).toMatchObject({ kind: 'plane-on-arc', scrap: 'start', ringStation: 0 });
    expect(finish).toMatchObject({ scrap: 'finish', ringStation: 81.7 });
    // face A reaches furthest at the outside, so the piece is shortest there
    expect(made.faceA.tiltDirection).toBeCloseTo(0, 9);
    expect(start!.stations[0]!.cut).toBeLessThan(0);
    expect(start!.stations[12]!.cut).toBeGreaterThan(0);
    expect(finish!.stations[0]!.cut).toBeGreaterThan(0);
    expect(made.faceB.tiltDirection).toBeCloseTo(180, 9);
  });

  it('comes without wraps where they are not shown', () => {
    const bare = planned(joint(crown, 750, 40, lean, { letIn }), {}, { templates: false }).joint;
    expect(bare.letIn!.templates).toEqual([]);
    expect([bare.faceA.template, bare.faceB.template]).toEqual([null, null]);
  });
});
