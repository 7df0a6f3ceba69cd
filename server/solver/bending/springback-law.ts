import type { Tube } from '../../job/tube.ts';
import { RADIANS } from '../geometry/angle.ts';
import type { SetUp } from './set-up.ts';
import { springbackShare, type LoadedBend } from './springback.ts';
import type { StraightLineFit } from './straight-line-fit.ts';
import {
  bendsOfTube,
  commandFor,
  fitSpringback,
  fitStretch,
  RADIUS_READING,
  radiusOf,
  type BendsOfTube,
  type Stretch,
} from './test-bends.ts';

/** What the machine does to this tube. Angles in radians, radii in mm. */
export type SpringbackLaw = {
  readonly method: 'theory' | 'fitted';
  /** s = a + b c on the commanded angle; by theory a is 0. */
  readonly fixed: number;
  readonly share: number;
  /** Angle to bend to; on another die theory takes that die's own share, test bends keep theirs. */
  readonly commandFor: (angle: number, dieRadius?: number) => number;
  /** ± of the finished angle where a bend is commanded for this wanted angle, and what it comes from. */
  readonly bandFor: (angle: number) => { readonly plusMinus: number; readonly from: readonly string[] };
  /** The part of it that all bends have alike: how sure the law is, ± [rad]; what it comes from. */
  readonly lawBandFor: (angle: number) => number;
  readonly lawFrom: 'springback-model' | 'test-bends';
  /** Centreline radius that the machine's own die leaves, with its ±. */
  readonly radiusAfterRelease: number;
  readonly radiusPlusMinus: number;
  readonly radiusMeasured: boolean;
  readonly radiusFor: (dieRadius: number) => number;
  readonly dieFor: (wantedRadius: number) => number;
  /** Range of commanded angles that were tested; null by theory. */
  readonly tested: { readonly low: number; readonly high: number } | null;
  /** The line and the test bends that it goes through; null by theory. */
  readonly fit: { readonly line: StraightLineFit; readonly used: BendsOfTube } | null;
  readonly bendsOfTube: readonly number[];
  readonly bendsOfOthers: number;
  /** Growth of the centreline in a bend of this commanded angle [mm], and whether scribed lines say so. */
  readonly stretchFor: (command: number) => number;
  /** The scribed lines behind it; null where it was typed. */
  readonly stretch: Stretch | null;
};

/** Why test bends give no law: too few, all at one angle, or a springback that is negative or half the angle and more. */
export type LawProblem = 'none' | 'too-few' | 'one-angle' | 'no-fit';

/** Annealed 304 and 316 at 2D to 3D spring back 2 to 4° at 90° in the shop; common practice, no source. */
export const SHOP_AT_90 = { low: 2 * RADIANS, high: 4 * RADIANS } as const;

/** A springback of half the angle is not a bend that holds; beyond it the fit is refused (common practice). */
export const LARGEST_SHARE = 0.5;

type Angles = Pick<
  SpringbackLaw,
  'method' | 'fixed' | 'share' | 'commandFor' | 'bandFor' | 'lawBandFor' | 'lawFrom' | 'tested' | 'fit'
>;

function byTheory(bend: LoadedBend, scatter: number): Angles {
  const share = springbackShare(bend);
  const quarter = Math.PI / 2;
  const at90 = quarter / (1 - share) - quarter;
  const halfSpread = (SHOP_AT_90.high - SHOP_AT_90.low) / 2;
  const model = Math.max(SHOP_AT_90.high - at90, halfSpread);
  const lawBandFor = (angle: number): number => (model * angle) / quarter;
  return {
    method: 'theory',
    fixed: 0,
    share,
    commandFor: (angle, radius = bend.radius) =>
      angle / (1 - (radius === bend.radius ? share : springbackShare({ ...bend, radius }))),
    bandFor: (angle) => ({
      plusMinus: Math.hypot(lawBandFor(angle), scatter),
      from: ['springback-model', 'angle-scatter'],
    }),
    lawBandFor,
    lawFrom: 'springback-model',
    tested: null,
    fit: null,
  };
}

/** Two bends leave no residual, so the scatter that was typed stands in for what they would have shown. */
const bandOfLine = (line: StraightLineFit, command: number, scatter: number): number =>
  line.confidence(command) ?? scatter * line.standing(command);

function byTests(used: BendsOfTube, scatter: number): Angles | LawProblem {
  const { bends } = used;
  if (bends.length < 2) return 'too-few';
  const line = fitSpringback(bends);
  if (line === undefined) return 'one-angle';
  const commanded = bends.map((bend) => bend.commandedAngle * RADIANS);
  const low = Math.min(...commanded);
  const high = Math.max(...commanded);
  const law = { fixed: line.at0, share: line.slope };
  // a springback that falls as the angle grows, or grows by half of it, would bend the next tube anyhow
  if (!(law.share >= 0 && law.share < LARGEST_SHARE)) return 'no-fit';
  for (const angle of [low, high]) {
    const share = (law.fixed + law.share * angle) / angle;
    if (!(share >= 0 && share < LARGEST_SHARE)) return 'no-fit';
  }
  const lawBandFor = (angle: number): number => bandOfLine(line, commandFor(angle, law), scatter);
  return {
    method: 'fitted',
    ...law,
    commandFor: (angle) => commandFor(angle, law),
    bandFor: (angle) => ({
      plusMinus: Math.hypot(scatter, lawBandFor(angle)),
      from: ['test-bends', 'angle-scatter'],
    }),
    lawBandFor,
    lawFrom: 'test-bends',
    tested: { low, high },
    fit: { line, used },
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

/** Mean of the measured radii with half their spread, no less than what one reading is sure to. */
function measuredRadius(used: BendsOfTube): { readonly mean: number; readonly plusMinus: number } | undefined {
  const radii = used.bends.flatMap((test) => radiusOf(test) ?? []);
  if (radii.length === 0) return undefined;
  const mean = radii.reduce((sum, radius) => sum + radius, 0) / radii.length;
  return { mean, plusMinus: Math.max((Math.max(...radii) - Math.min(...radii)) / 2, RADIUS_READING * mean) };
}

/**
 * The law that plans every bend of a job. Angles follow the test bends of this tube and die where two or more at
 * different angles are on record, else theory. The radius after release is the mean of those measured, else theory's
 * R / (1 − λ); for another die theory's trend is carried through the measured point (derived; an assumption).
 *
 * @param bend tube and grade under load on the machine's own die
 */
export function springbackLaw(
  bend: LoadedBend,
  tube: Tube,
  machine: SetUp,
): { law: SpringbackLaw; problem: LawProblem } {
  const scatter = machine.angleScatter * RADIANS;
  const theory = byTheory(bend, scatter);
  const { share } = theory;
  const byRecord = machine.springback.method === 'test-bends';
  const used = bendsOfTube(machine.springback.bends, tube, machine.dieRadius);
  const tried = byRecord ? byTests(used, scatter) : theory;
  const angles = typeof tried === 'string' ? theory : tried;

  const measured = byRecord ? measuredRadius(used) : undefined;
  const theoryRadius = bend.radius / (1 - share);
  const radius = measured?.mean ?? theoryRadius;
  const ratio = radius / theoryRadius;
  const byShare = (die: number) => {
    const kept = 1 - springbackShare({ ...bend, radius: die });
    return kept > 0 ? (ratio * die) / kept : Infinity;
  };
  // a tube that stays elastic springs straight again: λ rounds to 1 and there is no radius
  const radiusFor = (die: number) => (die === bend.radius ? radius : byShare(die));
  const model = theory.lawBandFor(Math.PI / 2) / (Math.PI / 2 / (1 - share));
  const stretch = byRecord ? fitStretch(used.bends, machine.markAccuracy) : undefined;
  return {
    law: {
      ...angles,
      radiusAfterRelease: radius,
      radiusPlusMinus: measured?.plusMinus ?? (radius * model) / (1 - share),
      radiusMeasured: measured !== undefined,
      radiusFor,
      // no die makes a radius of no more than the tube's own: the plan of the member says so
      dieFor: (wanted) => (wanted > bend.outsideDiameter / 2 ? dieFor(wanted, radiusFor) : wanted),
      bendsOfTube: used.ofTube,
      bendsOfOthers: used.others,
      stretchFor: (command) => stretch?.at(command) ?? machine.stretchPerBend,
      stretch: stretch ?? null,
    },
    problem: typeof tried === 'string' ? tried : 'none',
  };
}
