// A boat with her bow 0.8 down and her port side 1.7 up: up by gravity, and what levels show on two raked posts; computed
// beforehand, and checked with any rotation that sets her upright.
import { describe, expect, it } from 'vitest';
import { siteBand } from '../../server/solver/site/site-study.ts';
import { dot } from '../../server/solver/geometry/vector.ts';
import { levelRows } from '../../server/solver/site/level/level-rows.ts';
import { levelStudy, lyingBoat, radians } from '../solver/site/level-study.ts';

const sine = (angle: number) => Math.sin(radians(angle));
const cosine = (angle: number) => Math.cos(radians(angle));

const aft = { x: -sine(10), y: 0, z: cosine(10) };
const starboard = { x: 0, y: -sine(12), z: cosine(12) };

/** The direction of the first post as a vector of a length that says nothing. */
const typed = (name: string, { x, y, z }: typeof aft) => ({
  name,
  direction: { by: 'axes' as const, vector: { x: 500 * x, y: 500 * y, z: 500 * z } },
});

const study = levelStudy({ level: lyingBoat, directions: [typed('post', aft), typed('arm', starboard)] });
const [post, arm] = levelRows(study);

it('up by gravity is (sin p, sin r, the rest)', () => {
  const { up } = study.laid;
  expect(up.x).toBeCloseTo(sine(-0.8), 14);
  expect(up.y).toBeCloseTo(sine(1.7), 14);
  expect(up.z).toBeCloseTo(Math.sqrt(1 - sine(-0.8) ** 2 - sine(1.7) ** 2), 14);
});

describe('a post raked 10 back', () => {
  it('has its axis at 80.6459', () => {
    expect(post!.along.value.toFixed(4)).toBe('80.6459');
    expect(post!.offPlumb.value).toBeCloseTo(90 - 80.6459, 4);
  });

  it('shows 80.80 on a level held fore and aft: 90 less (10 less 0.8)', () => {
    const [foreAndAft] = post!.planes;
    expect(foreAndAft!.plane).toBe('fore-and-aft');
    expect(foreAndAft!.shows.value.toFixed(2)).toBe('80.80');
    expect(foreAndAft!.leans).toBe('back');
    expect(post!.differs).toBe(true);
  });
});

it('a post that leans 12 to starboard has its axis at 76.2769', () => {
  expect(arm!.along.value.toFixed(4)).toBe('76.2769');
  expect(arm!.planes[1]!.leans).toBe('starboard');
});

it('0.1 degrees of the level are 1.05 mm at 600 mm', () => {
  const ahead = { x: 600, y: 0, z: 0 };
  const band = siteBand(study, ({ up }) => dot(up, ahead))!;
  expect(band.plusMinus.toFixed(2)).toBe('1.05');
  expect(band.from).toEqual(['site-level']);
});
