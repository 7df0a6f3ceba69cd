import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import { PLACES, type TubePlace } from '../../server/job/tube-place.ts';
import { came, drawn, fitted, hoop, members, offset, ring, run } from './returned-frames.ts';

const frames = [
  ['hoop', drawn(hoop())],
  ['ring', drawn(ring)],
  ['offset', drawn(offset)],
  ['straight', drawn({ shape: 'straight', length: 1200 })],
  ['run in space', drawn(run)],
  ['members', drawn(members)],
] as const;

const length = fc.oneof(
  fc.double({ min: 0.001, max: 50_000, noNaN: true }),
  fc.double({ min: 100, max: 1500, noNaN: true }),
  fc.constant(null),
);
const angle = (min: number, max: number) =>
  fc.oneof(fc.double({ min, max, noNaN: true }), fc.constant(null), fc.constant(0));
const coordinate = fc.oneof(fc.double({ min: -50_000, max: 50_000, noNaN: true }), fc.constant(null));
const accuracy = fc.oneof(fc.constant(null), fc.double({ min: 1e-9, max: 50, noNaN: true }));
const reference = fc.constantFrom('outside' as const, 'centre' as const, 'inside' as const);

const anything = (names: string[], keys: { key: string; index: number }[]): fc.Arbitrary<Reading> => {
  const member = fc.constantFrom(...names, 'gone');
  const piece = fc.integer({ min: 1, max: 12 });
  const at: fc.Arbitrary<TubePlace> = fc.record({
    member,
    spot: fc.constantFrom(...PLACES),
    number: fc.integer({ min: 1, max: 8 }),
    distance: fc.double({ min: 0, max: 3000, noNaN: true }),
  });
  return fc.oneof(
    fc
      .tuple(fc.constantFrom(...keys), reference, length, accuracy)
      .map(([{ key, index }, side, value, own]): Reading => ({
        reading: 'size',
        check: key,
        index,
        reference: side,
        value,
        accuracy: own,
      })),
    fc.record({ reading: fc.constant('distance' as const), from: at, to: at, reference, value: length, accuracy }),
    fc.record({
      reading: fc.constant('piece' as const),
      what: fc.constantFrom('length' as const, 'radius' as const),
      member,
      piece,
      value: length,
      accuracy,
    }),
    fc.record({
      reading: fc.constant('turn' as const),
      what: fc.constantFrom('angle' as const, 'rotation' as const),
      member,
      piece,
      value: angle(-360, 3600),
      accuracy,
    }),
    fc.record({ reading: fc.constant('bevel' as const), from: at, to: at, value: angle(0, 180), accuracy }),
    fc.record({ reading: fc.constant('level' as const), at, value: angle(-90, 90), accuracy }),
    fc.record({ reading: fc.constant('point' as const), at, x: coordinate, y: coordinate, z: coordinate, accuracy }),
  );
};

/** Every number that an answer holds. */
function numbersIn(value: unknown, found: number[] = []): number[] {
  if (typeof value === 'number') found.push(value);
  else if (typeof value === 'object' && value !== null) for (const one of Object.values(value)) numbersIn(one, found);
  return found;
}

describe('whatever is typed as a reading', () => {
  it.each(frames)('%s: there is an answer, and every number of it is one', (_, wanted) => {
    const names = wanted.members.map(({ name }) => name);
    const keys = [...wanted.checks, { key: 'no such size', index: 0 }];
    fc.assert(
      fc.property(fc.array(anything(names, keys), { maxLength: 9 }), (readings) => {
        const { returned, fit, findings, solved } = fitted(
          wanted,
          came(readings, { tapeAccuracy: 0, angleAccuracy: 0 }),
        );
        const numbers = [...numbersIn(fit), ...numbersIn(findings), ...numbersIn(returned?.geometry)];
        expect(numbers.filter((one) => !Number.isFinite(one))).toEqual([]);
        expect(fit.readings).toHaveLength(solved.readings.length);
        for (const { field } of findings) expect(field).toMatch(/^\/cameBack\/readings/);
        if (returned === null) expect(findings.length).toBeGreaterThan(0);
        else for (const { members: parts } of returned.variations) expect(parts).toHaveLength(wanted.members.length);
      }),
      { numRuns: 40 },
    );
  });
});
