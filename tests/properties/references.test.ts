import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Frame, Hoop } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { Dimension, Reference } from '../../server/job/quantities.ts';
import type { FramePlan, PlanPiece } from '../../server/plan/frame.ts';
import { plan } from '../../server/solver/plan.ts';
import { between, firstDifference, jobWith, plannedFrame } from './plans-compared.ts';

// A straight tube's length, the points of a run or a member and the pieces of a chain are typed on the centreline
// alone; a crown's radius, an offset's angle and every typed bend radius too. No reference applies to them.

const REFERENCES = ['outside', 'centre', 'inside'] as const;
const SIDE = { outside: 1, centre: 0, inside: -1 } as const;
const RUNS = { numRuns: 25, seed: 1 };

const tube = fc.record({ outsideDiameter: between(20, 60), share: between(2.2, 3.5), spring: between(5, 25) });
type TubeSizes = { outsideDiameter: number; share: number; spring: number };

const jobOf = (frame: Frame, { outsideDiameter, share, spring }: TubeSizes): Job =>
  jobWith(frame, {
    tube: { outsideDiameter, wall: outsideDiameter / spring },
    die: { radius: share * outsideDiameter },
  });

/**
 * The plan without what is told in the reference that was typed: the views' dimension lines, the reference of each check
 * and the ± that a size has in it, and what the frame becomes where it is read by another one.
 */
function comparable(job: Job) {
  const made = plan(job);
  const findings = made.findings.filter(({ code }) => code !== 'size-doubtful');
  if (made.frame === null) return { ...made, findings, views: [] };
  const checks = made.frame.checks.map(({ reference: _, ...check }) => check);
  return { ...made, findings, views: [], frame: { ...made.frame, checks, readingCheck: null } };
}

/** Holds the plan of a frame typed over the outside, centre to centre and inside to inside against each other. */
function samePlans(typed: (reference: Reference) => Frame, sizes: TubeSizes): FramePlan {
  const centre = jobOf(typed('centre'), sizes);
  const wanted = comparable(centre);
  const frame = plannedFrame(centre);
  for (const reference of ['outside', 'inside'] as const)
    expect(firstDifference(wanted, comparable(jobOf(typed(reference), sizes)), 1e-9)).toBeUndefined();
  return frame;
}

/** The check that answers a field says each reference as it was typed there. */
function checksSay(frame: FramePlan, field: string, typed: (reference: Reference) => Dimension): void {
  const found = frame.checks.find((check) => check.field === field)!;
  for (const reference of REFERENCES) expect(found[reference].value).toBeCloseTo(typed(reference).value, 8);
}

const across = (value: number, diameter: number) => (reference: Reference) => ({
  value: value + SIDE[reference] * diameter,
  reference,
});

/** A length to a corner: (D/2) tan(θ/2) more along the outer lines. */
const toCorner = (value: number, diameter: number, angle: number) => (reference: Reference) => ({
  value: value + (SIDE[reference] * diameter * Math.tan(angle / 2)) / 2,
  reference,
});

type Arc = Extract<PlanPiece, { kind: 'arc' }>;
type Straight = Extract<PlanPiece, { kind: 'straight' }>;

/**
 * From the left foot, level with it, along a line `off` outside the leg to a circle `off` outside the crown, in the
 * plane: the corner that a tape over the tube finds. Solved here from the drawn pieces, apart from the program.
 */
function footToCrown(leg: Straight, crown: Arc, off: number): number {
  const long = Math.hypot(leg.to.x - leg.from.x, leg.to.y - leg.from.y);
  const way = { x: (leg.to.x - leg.from.x) / long, y: (leg.to.y - leg.from.y) / long };
  const from = { x: leg.from.x - off * way.y - crown.centre.x, y: leg.from.y + off * way.x - crown.centre.y };
  const half = from.x * way.x + from.y * way.y;
  const rest = from.x ** 2 + from.y ** 2 - (crown.radius + off) ** 2;
  return -half + Math.sqrt(half ** 2 - rest);
}

describe('a ring', () => {
  it('is the same ring over the outside, centre to centre and inside to inside', () => {
    fc.assert(
      fc.property(tube, between(450, 2000), between(450, 2000), (sizes, width, height) => {
        const wide = across(width, sizes.outsideDiameter);
        const high = across(height, sizes.outsideDiameter);
        const frame = samePlans((as) => ({ shape: 'ring', width: wide(as), height: high(as) }), sizes);
        checksSay(frame, '/frame/width/value', wide);
        checksSay(frame, '/frame/height/value', high);
      }),
      RUNS,
    );
  });
});

describe('an offset', () => {
  it('is the same offset in every reference', () => {
    fc.assert(
      fc.property(tube, between(5, 120), between(450, 900), between(450, 900), (sizes, degrees, first, last) => {
        const angle = (degrees * Math.PI) / 180;
        // room for both bends along the slope
        const least = 2 * 1.1 * sizes.share * sizes.outsideDiameter * Math.tan(angle / 2) * Math.sin(angle);
        const up = across(least + 100, sizes.outsideDiameter);
        const one = toCorner(first, sizes.outsideDiameter, angle);
        const two = toCorner(last, sizes.outsideDiameter, angle);
        const typed = (as: Reference): Frame => ({
          shape: 'offset',
          across: up(as),
          angle: degrees,
          first: one(as),
          last: two(as),
        });
        const frame = samePlans(typed, sizes);
        checksSay(frame, '/frame/across/value', up);
        checksSay(frame, '/frame/first/value', one);
        checksSay(frame, '/frame/last/value', two);
      }),
      RUNS,
    );
  });
});

const hoop = fc.record({
  width: between(500, 1600),
  left: between(600, 1200),
  right: between(600, 1200),
  splay: fc.option(between(0.93, 1.1), { nil: null }),
  crown: fc.option(between(1200, 9000), { nil: null }),
  bars: fc.array(between(0.2, 0.7), { maxLength: 1 }),
});
type HoopSizes = typeof hoop extends fc.Arbitrary<infer T> ? T : never;

/** A hoop with its sizes typed in a reference, given what a leg is longer by on each side. */
function hoopIn(size: HoopSizes, diameter: number, leg: (value: number) => (reference: Reference) => Dimension) {
  const wide = across(size.width, diameter);
  const feet = across(size.width * (size.splay ?? 1), diameter);
  return (as: Reference): Hoop => ({
    shape: 'hoop',
    width: wide(as),
    widthAtFeet: size.splay === null ? null : feet(as),
    leftLeg: leg(size.left)(as),
    rightLeg: leg(size.right)(as),
    crossbar: size.crown === null ? { form: 'straight' } : { form: 'crowned', radius: size.crown },
    // to the far side, the middle or the near side of the inner crossbar
    innerCrossbars: size.bars.map((share) => ({
      fromFoot: across(Math.min(size.left, size.right) * share + Math.max(0, size.left - size.right), diameter / 2)(as),
    })),
  });
}

describe('a hoop', () => {
  it('straight or crowned, splayed, with an inner crossbar, is the same hoop in every reference', () => {
    fc.assert(
      fc.property(tube, hoop, (sizes, size) => {
        const diameter = sizes.outsideDiameter;
        const drawn = hoopIn(size, diameter, (value) => () => ({ value, reference: 'centre' }));
        const { pieces, bends } = plannedFrame(jobOf(drawn('centre'), sizes)).members[0]!;
        const crown = pieces.find((piece): piece is Arc => piece.kind === 'arc' && piece.made === 'rolled');
        const left = pieces[0] as Straight;
        const leg = (value: number) => (reference: Reference) => {
          const off = (SIDE[reference] * diameter) / 2;
          if (crown === undefined) return toCorner(value, diameter, (bends[0]!.angle.value * Math.PI) / 180)(reference);
          return { value: value + footToCrown(left, crown, off) - footToCrown(left, crown, 0), reference };
        };
        const typed = hoopIn(size, diameter, leg);
        const frame = samePlans(typed, sizes);
        checksSay(frame, '/frame/width/value', (as) => typed(as).width);
        checksSay(frame, '/frame/leftLeg/value', (as) => typed(as).leftLeg);
        checksSay(frame, '/frame/rightLeg/value', (as) => typed(as).rightLeg);
        if (size.splay !== null) checksSay(frame, '/frame/widthAtFeet/value', (as) => typed(as).widthAtFeet!);
        if (size.bars.length > 0)
          checksSay(frame, '/frame/innerCrossbars/0/fromFoot/value', (as) => typed(as).innerCrossbars[0]!.fromFoot);
      }),
      { ...RUNS, numRuns: 60 },
    );
  });
});
