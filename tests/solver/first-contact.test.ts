import { describe, expect, it } from 'vitest';
import { contactNear, firstContact } from '../../server/solver/joints/first-contact.ts';

const RADIUS = 19;
/** Room of a line that runs past round bodies at these places, so far beside their middles. */
const past =
  (middles: readonly number[], aside: number) =>
  (along: number): number =>
    Math.min(...middles.map((middle) => Math.hypot(along - middle, aside))) - RADIUS;
const RANGE = { far: 500, near: -100, least: 0.1 };

describe('where a line first meets a body', () => {
  it('is the side from which it comes, of the nearest one', () => {
    expect(firstContact(past([0], 10), RANGE)).toBeCloseTo(Math.sqrt(RADIUS ** 2 - 10 ** 2), 9);
    expect(firstContact(past([0, 120], 10), RANGE)).toBeCloseTo(120 + Math.sqrt(RADIUS ** 2 - 10 ** 2), 9);
  });

  it('is none where it passes, or is inside from the start', () => {
    expect(firstContact(past([0], 19.5), RANGE)).toBeUndefined();
    expect(firstContact(past([495], 3), RANGE)).toBeUndefined();
    expect(firstContact(() => NaN, RANGE)).toBeUndefined();
  });

  it('is found though it only just dips in', () => {
    expect(firstContact(past([40], 18.99), RANGE)).toBeCloseTo(40 + Math.sqrt(RADIUS ** 2 - 18.99 ** 2), 6);
  });
});

describe('a contact that is known about', () => {
  it('is mended, and is no other one', () => {
    const there = 120 + Math.sqrt(RADIUS ** 2 - 10 ** 2);
    expect(contactNear(past([0, 120], 10), there + 2, 5)).toBeCloseTo(there, 9);
    expect(contactNear(past([0, 120], 10), there + 40, 5)).toBeUndefined();
    // where the line goes out of the body on its far side it comes to no contact
    expect(contactNear(past([120], 10), 240 - there, 5)).toBeUndefined();
  });
});
