import type { Machine, TestBend } from '../../job/machine.ts';
import { commandFor, fitTestBends } from './test-bends.ts';
import { springbackShare, type LoadedBend } from './springback.ts';

const RADIAN = Math.PI / 180;

/** What the machine does to this tube. Angles in radians, radii in mm. */
export type SpringbackLaw = {
  readonly method: 'theory' | 'fitted' | 'share';
  /** s = a + b c on the commanded angle; by theory and by share a is 0. */
  readonly fixed: number;
  readonly share: number;
  /** Angle to bend to; on another die theory takes that die's own share, test bends keep theirs. */
  readonly commandFor: (angle: number, dieRadius?: number) => number;
  /** ± of the finished angle where a bend is commanded for this wanted angle, and what it comes from. */
  readonly bandFor: (angle: number) => { readonly plusMinus: number; readonly from: readonly string[] };
  /** Centreline radius that the machine's own die leaves, with its ±. */
  readonly radiusAfterRelease: number;
  readonly radiusPlusMinus: number;
  readonly radiusMeasured: boolean;
  readonly radiusFor: (dieRadius: number) => number;
  readonly dieFor: (wantedRadius: number) => number;
  /** Range of commanded angles that were tested; null by theory. */
  readonly tested: { readonly low: number; readonly high: number } | null;
};

/** Why test bends give no law: all at one angle, or a springback that is negative or half the angle and more. */
export type LawProblem = 'none' | 'too-few' | 'no-fit';

/** Annealed 304 and 316 at 2D to 3D spring back 2 to 4° at 90° in the shop; common practice, no source. */
export const SHOP_AT_90 = { low: 2 * RADIAN, high: 4 * RADIAN } as const;

/** A springback of half the angle is not a bend that holds; beyond it the fit is refused (common practice). */
export const LARGEST_SHARE = 0.5;

type Angles = Pick<SpringbackLaw, 'method' | 'fixed' | 'share' | 'commandFor' | 'bandFor' | 'tested'>;

function byTheory(bend: LoadedBend, scatter: number): Angles {
  const share = springbackShare(bend);
  const quarter = Math.PI / 2;
  const at90 = quarter / (1 - share) - quarter;
  const halfSpread = (SHOP_AT_90.high - SHOP_AT_90.low) / 2;
  const model = Math.max(SHOP_AT_90.high - at90, halfSpread);
  return {
    method: 'theory',
    fixed: 0,
    share,
    commandFor: (angle, radius = bend.radius) =>
      angle / (1 - (radius === bend.radius ? share : springbackShare({ ...bend, radius }))),
    bandFor: (angle) => ({
      plusMinus: Math.hypot((model * angle) / quarter, scatter),
      from: ['springback-model', 'angle-scatter'],
    }),
    tested: null,
  };
}

function byTests(bends: readonly TestBend[], scatter: number): Angles | LawProblem {
  if (bends.length === 0) return 'too-few';
  const tests = bends.map((b) => ({ commanded: b.commandedAngle * RADIAN, measured: b.measuredAngle * RADIAN }));
  const fit = fitTestBends(tests);
  const commanded = tests.map((test) => test.commanded);
  const low = Math.min(...commanded);
  const high = Math.max(...commanded);
  const mean = commanded.reduce((sum, angle) => sum + angle, 0) / tests.length;
  const lost = tests.reduce((sum, test) => sum + test.commanded - test.measured, 0) / tests.length;
  const law = fit ?? { fixed: 0, share: lost / mean };
  const standing = fit?.standing ?? ((angle: number) => angle / mean / Math.sqrt(tests.length));
  for (const angle of [low, high]) {
    const share = (law.fixed + law.share * angle) / angle;
    if (!(share >= 0 && share < LARGEST_SHARE)) return 'no-fit';
  }
  return {
    method: fit === undefined ? 'share' : 'fitted',
    fixed: law.fixed,
    share: law.share,
    commandFor: (angle) => commandFor(angle, law),
    bandFor: (angle) => ({
      plusMinus: scatter * Math.hypot(1, standing(commandFor(angle, law))),
      from: ['test-bends', 'angle-scatter'],
    }),
    tested: { low, high },
  };
}

/**
 * Die radius that springs back to a wanted one [mm]: R_f grows steadily with the die's radius, so the answer is
 * bracketed and closed in on by false position (Illinois: Dahlquist & Björck, Numerical Methods, 6.2.2; from memory).
 * Theory has no answer above the radius that the tube takes elastically; none is needed, because R_f has no limit.
 */
function dieFor(wanted: number, radiusFor: (die: number) => number): number {
  // 1/R has no pole where the tube springs straight again, so the false position is taken in curvatures over the wanted
  const missing = (die: number): number => wanted / radiusFor(die) - 1;
  let high = { die: wanted, missing: missing(wanted) };
  while (high.missing > 0) high = { die: 2 * high.die, missing: missing(2 * high.die) };
  let low = { die: high.die / 2, missing: missing(high.die / 2) };
  while (low.missing < 0) low = { die: low.die / 2, missing: missing(low.die / 2) };
  let last = 0;
  for (let round = 0; round < 100 && high.die - low.die > 1e-9 * wanted; round += 1) {
    const die = low.die + ((high.die - low.die) * low.missing) / (low.missing - high.missing);
    const here = { die, missing: missing(die) };
    if (Math.abs(here.missing) < 1e-12) return die;
    if (here.missing > 0) {
      if (last > 0) high = { die: high.die, missing: high.missing / 2 };
      low = here;
    } else {
      if (last < 0) low = { die: low.die, missing: low.missing / 2 };
      high = here;
    }
    last = Math.sign(here.missing);
  }
  return (low.die + high.die) / 2;
}

/**
 * The law that plans every bend of a job. Angles follow the test bends where there are enough of them, else theory.
 * The radius after release is the mean of those measured, else theory's R / (1 − λ); for another die theory's trend
 * is carried through the measured point (derived; an assumption).
 *
 * @param bend tube and grade under load on the machine's own die
 */
export function springbackLaw(bend: LoadedBend, machine: Machine): { law: SpringbackLaw; problem: LawProblem } {
  const scatter = machine.angleScatter * RADIAN;
  const theory = byTheory(bend, scatter);
  const { share } = theory;
  const tests = machine.springback.method === 'test-bends' ? machine.springback.bends : [];
  const tried = machine.springback.method === 'test-bends' ? byTests(tests, scatter) : theory;
  const angles = typeof tried === 'string' ? theory : tried;
  const problem = typeof tried === 'string' ? tried : tried.method === 'share' ? 'too-few' : 'none';

  const measured = tests.flatMap((test) => (test.measuredRadius === null ? [] : [test.measuredRadius]));
  const theoryRadius = bend.radius / (1 - share);
  const radius = measured.length > 0 ? measured.reduce((sum, r) => sum + r, 0) / measured.length : theoryRadius;
  const ratio = radius / theoryRadius;
  const byShare = (die: number) => {
    const kept = 1 - springbackShare({ ...bend, radius: die });
    return kept > 0 ? (ratio * die) / kept : Infinity;
  };
  // a tube that stays elastic springs straight again: λ rounds to 1 and there is no radius
  const radiusFor = (die: number) => (die === bend.radius ? radius : byShare(die));
  const model = theory.bandFor(Math.PI / 2).plusMinus / (Math.PI / 2 / (1 - share));
  return {
    law: {
      ...angles,
      radiusAfterRelease: radius,
      radiusPlusMinus:
        measured.length > 0 ? (Math.max(...measured) - Math.min(...measured)) / 2 : (radius * model) / (1 - share),
      radiusMeasured: measured.length > 0,
      radiusFor,
      // no die makes a radius of no more than the tube's own: the plan of the member says so
      dieFor: (wanted) => (wanted > bend.outsideDiameter / 2 ? dieFor(wanted, radiusFor) : wanted),
    },
    problem,
  };
}
