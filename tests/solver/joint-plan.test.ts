import { describe, expect, it } from 'vitest';
import { planJoints } from '../../server/solver/correction/joint-plan.ts';
import { closing, context, frame, joint, planned, radians, rail, tube } from './made-up-joints.ts';

describe('what kind of joint it is', () => {
  const wide = 48.3 * Math.tan(radians(2)) * 2;
  it.each([
    ['parallel faces are a slug', 62, 0, 2, 'slug'],
    ['under 0.02 degrees no saw tells', 62, 0.0195, 2, 'slug'],
    ['leaning ones are a wedge', 62, 4, 2, 'wedge'],
    ['nothing on the short side is a dart', wide / 2, 4, 2, 'dart'],
    ['but not in a thick wall', wide / 2, 4, 2.6, 'wedge'],
    ['nor for more than 5 degrees', (48.3 * Math.tan(radians(3)) * 2) / 2, 6, 2, 'wedge'],
    ['nor where the notch is narrower than the saw', 0.6, 1, 2, 'wedge'],
  ])('%s', (_, removed, kink, wall, kind) => {
    const lean = radians(kink) / 2;
    const { joint: made } = planned(joint(rail, 1000, removed, { a: -lean, b: lean }), {}, { tube: { ...tube, wall } });
    expect(made.kind).toBe(kind);
  });
});

describe('a wedge out of a straight', () => {
  // 30 degrees on 48.3: 2 (D/2) tan 15° more on the outside than on the axis, as much less on the inside
  const lean = radians(15);
  const reach = 24.15 * Math.tan(lean);
  const { joint: made, codes } = planned(joint(rail, 1000, 40, { a: lean, b: -lean }));

  it('has a long and a short side, two leaning kerfs less', () => {
    const saws = (2 * 1.6) / Math.cos(lean);
    expect(made.removed.value).toBeCloseTo(40, 12);
    expect(made.scrap.value).toBeCloseTo(40 + 2 * reach - saws, 9);
    expect(made.scrapShort.value).toBeCloseTo(40 - 2 * reach - saws, 9);
    expect(made.kink.value).toBeCloseTo(30, 9);
    expect(codes).toEqual(['kink-visible caution']);
  });

  it('is sawn 15 degrees off square; each piece is left long on the inside', () => {
    for (const face of [made.faceA, made.faceB]) {
      expect(face.saw.offSquare.value).toBeCloseTo(15, 9);
      expect(face.saw).toMatchObject({ longSide: 'inside' });
      expect(face.saw.fromLongSide).toBeCloseTo(0, 9);
    }
    expect(made.faceA.tiltDirection).toBeCloseTo(180, 9);
    expect(made.faceB.tiltDirection).toBeCloseTo(0, 9);
  });

  it('is marked along four generators from the nearer end, and checked from the other', () => {
    const { marks, check } = made.faceA;
    expect(marks).toMatchObject({ from: 'datum-end', towards: 'finish', bend: 0 });
    const read = (list: typeof marks) =>
      Object.fromEntries(list.generators.map(({ key, distance }) => [key, distance.value]));
    expect(read(marks)['outside']).toBeCloseTo(980 - reach, 9);
    expect(read(marks)['top']).toBeCloseTo(980, 9);
    expect(read(marks)['inside']).toBeCloseTo(980 + reach, 9);
    expect(read(marks)['bottom']).toBeCloseTo(980, 9);
    expect(check).toMatchObject({ from: 'far-end', towards: 'start' });
    expect(read(check!)['outside']).toBeCloseTo(1020 + reach, 9);
    expect(marks.generators[0]!.distance.band).toEqual({ plusMinus: 1, from: ['tape'] });
  });

  it('has both its lines on one wrap, the second face none of its own', () => {
    const wrap = made.faceA.template!;
    expect(wrap).toMatchObject({ kind: 'wedge', place: 'joint 1', scrap: 'between', ringStation: 1000, hinge: null });
    expect(made.faceB.template).toBeNull();
    for (const { angle, cut, second } of wrap.stations)
      expect(second! - cut).toBeCloseTo(
        2 * Math.tan(lean) * (20 / Math.tan(lean) + 24.15 * Math.cos(radians(angle))),
        9,
      );
  });

  it('takes the bands that it is given', () => {
    const removed = { plusMinus: 0.4, from: ['tape', 'level'] };
    const bands = [{ removed, kink: { plusMinus: 0.1, from: ['level'] }, hiLo: removed }];
    const { joints } = planJoints([joint(rail, 1000, 40, { a: lean, b: -lean })], frame(rail), closing, context, bands);
    expect(joints[0]!.removed.band).toEqual(removed);
    expect(joints[0]!.kink.band!.plusMinus).toBe(0.1);
  });
});

it('a dart keeps the far wall as its hinge', () => {
  const lean = radians(2);
  const reach = 24.15 * Math.tan(lean);
  const { joint: made, codes } = planned(joint(rail, 1000, 2 * reach, { a: lean, b: -lean }));
  const wrap = made.faceA.template!;
  expect(wrap.kind).toBe('dart');
  expect(wrap.hinge!.girth / wrap.wrapLength).toBeCloseTo(0.5, 6);
  // r cos α = r − t
  expect(wrap.hinge!.width).toBeCloseTo(2 * 24.15 * Math.acos(22.15 / 24.15), 6);
  expect(made.scrapShort.value).toBe(0);
  expect(codes).toEqual(['kink-visible caution']);
});

describe('what there is to say', () => {
  it('a short side that is not there: filled up to half the wall, a stop beyond', () => {
    const lean = radians(3);
    const short = 2 * 24.15 * Math.tan(lean);
    const lacking = (missing: number) => planned(joint(rail, 1000, short - missing, { a: lean, b: -lean }));
    expect(lacking(-0.1).codes).not.toContain('cut-short-of-metal caution');
    expect(lacking(0.9).codes).toContain('cut-short-of-metal caution');
    expect(lacking(1.1).codes).toContain('cut-short-of-metal stop');
    const data = lacking(1.1).findings.find(({ code }) => code === 'cut-short-of-metal')!.data;
    expect(data['value']).toBeCloseTo(1.1, 9);
    expect(data).toMatchObject({ joint: 1, member: 'rail', high: 1 });
  });

  it.each([
    [3.3, []],
    [3.1, ['cut-narrower-than-kerf note']],
  ])('%d taken out with two kerfs of 1.6', (removed, codes) => {
    expect(planned(joint(rail, 1000, removed, { a: 0, b: 0 })).codes).toEqual(codes);
  });

  it.each([
    [0.19, 'good', []],
    [0.29, 'practice', []],
    [0.31, 'standard', ['hi-lo-over-practice caution']],
    [1.01, 'over', ['hi-lo-over-standard stop']],
  ])('a step of %d between walls of 2', (hiLo, grade, codes) => {
    const said = planned(joint(rail, 1000, 62, { a: 0, b: 0 }, { hiLo }));
    expect(said.joint.hiLoGrade).toBe(grade);
    expect(said.codes).toEqual(codes);
  });

  it.each([
    [0.49, []],
    [-0.51, ['joint-twist note']],
  ])('a twist of %d degrees', (twist, codes) => {
    const said = planned(joint(rail, 1000, 62, { a: 0, b: 0 }, { twist: radians(twist) }));
    expect(said.codes).toEqual(codes);
    expect(said.joint.twist.value).toBeCloseTo(twist, 12);
  });
});
