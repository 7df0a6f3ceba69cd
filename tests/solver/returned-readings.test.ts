import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { D, came, drawn, fitted, hoop, offset, place, ring, run, sized } from '../properties/returned-frames.ts';

const straightHoop = drawn(hoop({ crossbar: { form: 'straight' }, innerCrossbars: [] }));
const centreWidth = 950 - D;

const distance = (from: TubePlace, to: TubePlace, reference: 'outside' | 'centre' | 'inside'): Reading => ({
  reading: 'distance',
  from,
  to,
  reference,
  value: 1,
  accuracy: null,
});

const valueOf = (frame: typeof straightHoop, reading: Reading): number => {
  const { solved } = fitted(frame, came([reading]));
  return solved.readings[0]!.predict(frame)!;
};

describe('a distance by its reference', () => {
  const corners = [place('hoop', 'corner', 1), place('hoop', 'corner', 2)] as const;
  const feet = [place('hoop', 'start'), place('hoop', 'finish')] as const;

  it.each([
    ['outside', 950],
    ['centre', centreWidth],
    ['inside', centreWidth - D],
  ] as const)('across two legs, %s', (reference, wanted) => {
    // the right leg is longer by 40: its places 140 and 100 above the feet are level
    const [left, right] = [place('hoop', 'along', 1, 100), place('hoop', 'along', 1, 0)];
    const whole = straightHoop.members[0]!.centreline.length;
    expect(valueOf(straightHoop, distance(left, { ...right, distance: whole - 140 }, reference))).toBeCloseTo(
      wanted,
      9,
    );
  });

  it('from corner to corner of square corners it is the typed width in every reference', () => {
    expect(valueOf(straightHoop, distance(...corners, 'outside'))).toBeCloseTo(950, 9);
    expect(valueOf(straightHoop, distance(...corners, 'inside'))).toBeCloseTo(950 - 2 * D, 9);
  });

  it('from a foot to its corner it is the typed leg', () => {
    expect(valueOf(straightHoop, distance(feet[0], corners[0], 'outside'))).toBeCloseTo(600, 9);
    expect(valueOf(straightHoop, distance(corners[1], feet[1], 'outside'))).toBeCloseTo(640, 9);
  });

  it('askew to a tube the line leaves it later: D / sin φ', () => {
    const low = place('hoop', 'along', 1, 100);
    const high = { ...low, distance: straightHoop.members[0]!.centreline.length - 400 };
    const askew = Math.hypot(centreWidth, 260);
    expect(valueOf(straightHoop, distance(low, high, 'outside'))).toBeCloseTo(askew + (D * askew) / centreWidth, 9);
  });
});

describe('sizes that a frame has by itself', () => {
  it('both diagonals of a hoop, corner to corner of the outer edges and of the inner ones', () => {
    const [first, second] = [1, 2].map((index) =>
      straightHoop.checks.find((one) => one.key === 'diagonal' && one.index === index)!,
    );
    const centre = (check: typeof first) =>
      Math.hypot(check!.to.point.x - check!.from.point.x, check!.to.point.y - check!.from.point.y);
    // from the left foot: the right corner is 600 up, less half a tube; from the right foot 640
    expect(centre(first)).toBeCloseTo(Math.hypot(centreWidth, 600 - D / 2), 9);
    expect(centre(second)).toBeCloseTo(Math.hypot(centreWidth, 640 - D / 2), 9);
    expect(centre(first) + first!.outsideExtra).toBeCloseTo(Math.hypot(950, 600), 9);
    expect(centre(second) + second!.insideExtra).toBeCloseTo(Math.hypot(centreWidth - D, 640 - D), 9);
    for (const index of [1, 2])
      expect(valueOf(straightHoop, sized('diagonal', index))).toBeCloseTo(Math.hypot(950, index === 1 ? 600 : 640), 9);
  });

  it('the diagonals of a ring', () => {
    const frame = drawn(ring);
    expect(valueOf(frame, sized('diagonal', 1))).toBeCloseTo(Math.hypot(900, 700), 9);
    expect(valueOf(frame, { ...sized('diagonal', 2), reference: 'inside' } as Reading)).toBeCloseTo(
      Math.hypot(900 - 2 * D, 700 - 2 * D),
      9,
    );
  });

  it('the width half-way up splayed legs is the mean of the widths of their two ends', () => {
    const splayed = drawn(
      hoop({ widthAtFeet: { value: 1030, reference: 'outside' }, rightLeg: { value: 600, reference: 'outside' } }),
    );
    const middle = splayed.checks.find(({ key }) => key === 'width-at-middle')!;
    const leg = splayed.checks.find(({ key }) => key === 'left-leg')!;
    const apexes = Math.abs(2 * leg.to.point.x);
    expect(middle.to.point.x - middle.from.point.x).toBeCloseTo((apexes + 1030 - D) / 2, 9);
    expect(middle.to.point.y).toBeCloseTo(middle.from.point.y, 9);
  });

  it('is not asked half-way up legs that are bend by then', () => {
    const short = drawn(
      hoop({
        leftLeg: { value: 110, reference: 'centre' },
        rightLeg: { value: 110, reference: 'centre' },
        innerCrossbars: [],
      }),
    );
    expect(short.checks.map(({ key }) => key)).not.toContain('width-at-middle');
  });

  it.each([
    ['hoop', straightHoop],
    ['crowned hoop', drawn(hoop())],
    ['splayed hoop', drawn(hoop({ widthAtFeet: { value: 1030, reference: 'outside' }, innerCrossbars: [] }))],
    ['ring', drawn(ring)],
    ['offset', drawn(offset)],
    ['run', drawn(run)],
  ])('%s: each is found again on the frame as drawn, in all three references', (_, frame) => {
    for (const { key, index, from, to, outsideExtra, insideExtra } of frame.checks) {
      const centre = Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y, to.point.z - from.point.z);
      const read = (reference: 'outside' | 'centre' | 'inside') =>
        valueOf(frame, { ...sized(key, index), reference } as Reading);
      expect(read('centre'), key).toBeCloseTo(centre, 8);
      expect(read('outside'), key).toBeCloseTo(centre + outsideExtra, 8);
      expect(read('inside'), key).toBeCloseTo(centre + insideExtra, 8);
    }
  });
});
