import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Frame, Hoop } from '../../server/job/frame.ts';
import type { Reference } from '../../server/job/quantities.ts';
import type { SlipScore } from '../../server/plan/correction.ts';
import type { Misreading } from '../../server/solver/correction/misreadings.ts';
import { slipPairs } from '../../server/solver/correction/slip-pairs.ts';
import { scoreSlips } from '../../server/solver/correction/slips.ts';
import { relay } from '../../server/solver/geometry/slice.ts';
import { readingsFrom, slipCase, type SlipCase } from '../solver/slip-shop.ts';
import { between } from './plans-compared.ts';

const reference = fc.constantFrom<Reference[]>('outside', 'centre', 'inside');
const size = (min: number, max: number) => fc.record({ value: between(min, max), reference });
const from = fc.constantFrom<('start' | 'finish')[]>('start', 'finish');
const at = ([x, y, z]: readonly [number, number, number]) => ({ x, y, z, radius: null });

const hoops: fc.Arbitrary<Frame> = fc
  .record({
    width: size(800, 1400),
    wider: fc.option(between(40, 120), { nil: null }),
    leftLeg: size(500, 900),
    longer: between(0, 60),
    radius: fc.option(between(2000, 9000), { nil: null }),
    bar: fc.boolean(),
  })
  .map(({ width, wider, leftLeg, longer, radius, bar }): Hoop => ({
    shape: 'hoop',
    width,
    widthAtFeet: wider === null ? null : { ...width, value: width.value + wider },
    leftLeg,
    rightLeg: { ...leftLeg, value: leftLeg.value + longer },
    crossbar: radius === null ? { form: 'straight' } : { form: 'crowned', radius },
    innerCrossbars: bar ? [{ fromFoot: { value: 220, reference: 'centre' } }] : [],
  }));
const rings: fc.Arbitrary<Frame> = fc
  .record({ width: size(1050, 1600), height: size(700, 900) })
  .map(({ width, height }) => ({ shape: 'ring', width, height }));
const offsets: fc.Arbitrary<Frame> = fc
  .record({ across: size(500, 700), angle: between(40, 75), first: size(500, 900), last: size(500, 900) })
  .map((sizes) => ({ shape: 'offset', ...sizes }));
/** Steps along the axes with a lean, so that no two bends are alike. */
const points = fc
  .record({
    a: between(450, 900),
    b: between(550, 900),
    c: between(550, 900),
    d: between(450, 900),
    lean: between(60, 160),
  })
  .map(({ a, b, c, d, lean }) => [
    at([0, 0, 0]),
    at([a, 0, 0]),
    at([a + lean, b, 0]),
    at([a + lean, b + lean / 2, c]),
    at([a + 2 * lean + d, b + lean / 2, c + lean]),
  ]);
const runs: fc.Arbitrary<Frame> = points.map((all) => ({ shape: 'run', points: all }));
/** A post bent in space, and a straight rail from it to a bent one that stands beside it. */
const gates: fc.Arbitrary<Frame> = fc
  .record({ high: between(700, 900), apart: between(600, 900), out: between(450, 600), rail: between(250, 400) })
  .map(({ high, apart, out, rail }) => {
    const post = (name: string, x: number) => ({
      name,
      path: {
        by: 'points' as const,
        points: [at([x, 0, 0]), at([x, high, 0]), at([x, high + 300, out]), at([x + 200, high + 700, out])],
        closed: false,
      },
      start: { end: 'free' as const },
      finish: { end: 'free' as const },
    });
    const onto = (name: string) => ({ end: 'saddle' as const, onto: name });
    return {
      shape: 'members',
      members: [
        post('post', 0),
        post('far post', apart),
        {
          name: 'rail',
          path: { by: 'points', points: [at([0, rail, 0]), at([apart, rail, 0])], closed: false },
          start: onto('post'),
          finish: onto('far post'),
        },
      ],
    };
  });

const SHAPES: readonly (readonly [string, fc.Arbitrary<Frame>])[] = [
  ['hoops', hoops],
  ['rings', rings],
  ['offsets', offsets],
  ['runs in space', runs],
  ['gates', gates],
];

const cases = (frames: fc.Arbitrary<Frame>): fc.Arbitrary<SlipCase> =>
  fc.tuple(frames, from).map(([frame, end]) => slipCase(frame, { from: () => end }));

const keysOf = (slips: Misreading['slips']): string => slips.map(({ key, fields }) => `${key} ${fields.join()}`).join();
const scoreKeys = ({ keys, fields }: SlipScore): string => `${[...keys].sort().join()} ${[...fields].sort().join()}`;
const slipsKeys = (slips: Misreading['slips']): string =>
  `${slips
    .map(({ key }) => key)
    .sort()
    .join()} ${slips
    .flatMap(({ fields }) => fields)
    .sort()
    .join()}`;

/** Rounding of a misfit: a slip that predicts every reading to this is as good as the best. */
const EXACT = 1e-6;

describe.each(SHAPES)('%s', (_, frames) => {
  it('every single slip, measured exactly, explains and is ranked first', () => {
    let told = 0;
    fc.assert(
      fc.property(cases(frames), ({ wanted, found }) => {
        for (const { slips, made } of found) {
          if (made === null) continue;
          const scores = scoreSlips(found, readingsFrom(wanted, made.frame()), wanted);
          // what no tape can tell from the wanted frame is none
          if (scores.length === 0) continue;
          told += 1;
          const best = scores.filter((one) => one.misfit.value < EXACT);
          expect(best[0]?.explains, keysOf(slips)).toBe(true);
          expect(best.map(scoreKeys), keysOf(slips)).toContain(slipsKeys(slips));
          expect(best[0]?.keys).toHaveLength(1);
          expect(scores.length).toBeLessThanOrEqual(12);
        }
      }),
      { numRuns: 8 },
    );
    expect(told).toBeGreaterThan(60);
  });

  it('two slips together are found as that pair, where neither explains by itself', () => {
    let told = 0;
    fc.assert(
      fc.property(cases(frames), fc.nat(), ({ wanted, found }, choice) => {
        const pairs = [...slipPairs(found)].filter(({ made }) => made !== null);
        for (let step = 0; step < 6; step += 1) {
          const pair = pairs[(choice + 17 * step) % pairs.length];
          if (pair === undefined || pair.made === null) continue;
          const scores = scoreSlips(found, readingsFrom(wanted, pair.made.frame()), wanted);
          if (scores.length === 0 || (scores[0]!.explains && scores[0]!.keys.length === 1)) continue;
          told += 1;
          const best = scores.filter((one) => one.misfit.value < EXACT);
          expect(best.map(scoreKeys), keysOf(pair.slips)).toContain(slipsKeys(pair.slips));
          expect(scores[0]?.explains).toBe(true);
        }
      }),
      { numRuns: 8 },
    );
    expect(told).toBeGreaterThan(20);
  });

  it('read with errors of one accuracy, the slip is still first in 95 of 100 where it can be told from the others', () => {
    let [asked, right] = [0, 0];
    fc.assert(
      fc.property(cases(frames), fc.integer(), ({ wanted, found }, seed) => {
        const off = normal(seed);
        for (const { slips, made } of found) {
          if (made === null) continue;
          const exact = scoreSlips(found, readingsFrom(wanted, made.frame()), wanted);
          const others = exact.filter((one) => scoreKeys(one) !== slipsKeys(slips));
          if (exact.length === 0 || others.some((one) => one.misfit.value < 3)) continue;
          const scores = scoreSlips(found, readingsFrom(wanted, made.frame(), off), wanted);
          asked += 1;
          if (scores[0] !== undefined && scoreKeys(scores[0]) === slipsKeys(slips) && scores[0].explains) right += 1;
        }
      }),
      { numRuns: 10 },
    );
    expect(asked).toBeGreaterThan(60);
    expect(right / asked).toBeGreaterThanOrEqual(0.95);
  });

  it('a frame that was bent anyhow is explained by none', () => {
    let [asked, none] = [0, 0];
    fc.assert(
      fc.property(cases(frames), fc.integer(), ({ wanted, found }, seed) => {
        const draw = normal(seed);
        const bent = wanted.members.map((member) => {
          const line = relay(member.centreline, (piece) => {
            // some fifteen millimetres and two degrees, each piece by itself
            if (piece.kind === 'straight') return { length: piece.length + 15 * draw(), angle: 0 };
            const angle = piece.angle + (piece.made === 'die' ? 0.03 * draw() : 0);
            return { length: piece.radius * angle, angle };
          });
          return { ...member, centreline: line };
        });
        const scores = scoreSlips(found, readingsFrom(wanted, { ...wanted, members: bent }), wanted);
        asked += 1;
        if (scores.every(({ explains }) => !explains)) none += 1;
      }),
      { numRuns: 40 },
    );
    expect(none / asked).toBeGreaterThanOrEqual(0.95);
  });
});

/** Draws of a standard normal distribution (Box and Muller) from a linear congruential generator. */
function normal(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
