import { pointOn, type MachinePoint, type PlacedPiece } from './bent-part.ts';
import type { MachineEnvelope } from './machine-envelope.ts';
import { SHARE, type Measure } from './nearest-station.ts';
import { noSwing, swingDistance, swingTo, type StandingBox } from './swing-distance.ts';

/** The bend that the machine is set up for, written over for each bend [mm, rad]. */
export type Setup = {
  dieRadius: number;
  command: number;
  /** Tube from the bend's start to the far end before the swing, and what the swing draws in of it. */
  tail: number;
  drawn: number;
  /** How much the tube has turned from the datum end to the bend's start. */
  turned: number;
};

/** How the bent part is measured against die, clamp, pressure die and the tube that is not yet bent. */
export type MachineMeasures = {
  readonly die: Measure;
  readonly clamp: Measure;
  /** The whole swing, for parts that are clear of the pressure die before it. */
  readonly pressureDie: Measure;
  /** From half a turn on, for the tube that lies against the pressure die's front before the swing. */
  readonly pressureDieAgain: Measure;
  readonly tube: Measure;
};

export function machineMeasures(envelope: MachineEnvelope, setup: Setup): MachineMeasures {
  const radius = envelope.outsideDiameter / 2;
  const point: MachinePoint = { a: 0, b: 0, z: 0 };
  const found = { swing: 0 };

  const still = (distance: () => number): Measure => ({
    clearance: (piece, at) => {
      pointOn(piece, at, point);
      return distance() - radius;
    },
    floor: -radius,
    share: SHARE,
    byTurn: false,
    found: { swing: 0 },
  });

  const againstPressureDie = (from: number): Measure => {
    const box: StandingBox = {
      length: envelope.pressureDieLength,
      near: 0,
      far: 0,
      halfHeight: envelope.pressureDieHeight / 2,
    };
    const swing = noSwing(from);
    const clearance = (piece: PlacedPiece, at: number, _half: number, enough: number): number => {
      if (setup.command < from) return Infinity;
      pointOn(piece, at, point);
      box.near = setup.dieRadius;
      box.far = setup.dieRadius + envelope.pressureDieReach;
      swingTo(swing, setup.command);
      return swingDistance(box, point, swing, enough + radius, found) - radius;
    };
    return { clearance, floor: -radius, share: SHARE, byTurn: false, found };
  };

  return {
    die: still(() => {
      const out = Math.sqrt(point.a * point.a + point.b * point.b) - setup.dieRadius - envelope.dieRim;
      return cornered(out, Math.abs(point.z) - envelope.dieHeight / 2, 0);
    }),
    clamp: still(() => {
      const { dieRadius } = setup;
      const along = Math.max(point.a, -envelope.clampLength - point.a);
      const across = Math.max(dieRadius - point.b, point.b - dieRadius - envelope.clampReach);
      return cornered(along, across, Math.abs(point.z) - envelope.clampHeight / 2);
    }),
    pressureDie: againstPressureDie(0),
    pressureDieAgain: againstPressureDie(Math.PI),
    tube: {
      clearance: againstTube(envelope, setup, point, found),
      floor: -2 * radius,
      share: SHARE,
      byTurn: true,
      found,
    },
  };
}

/** Distance from a box or a cylinder, from what a point stands out of it in each direction; 0 inside [mm]. */
function cornered(x: number, y: number, z: number): number {
  const out = Math.max(0, x);
  const aside = Math.max(0, y);
  const over = Math.max(0, z);
  return Math.sqrt(out * out + aside * aside + over * over);
}

/**
 * Steps of a swing at most: with fewer than the length asks for, less is told than there is, never more. Enough for a bend
 * of two metres of a thin tube; our own choice, so that a plan of no real tube is told in time too.
 */
const MOST_STEPS = 4000;

/**
 * Clearance from the tube that is not yet bent: a straight from the tangent point on that the swing draws in.
 *
 * Only where the tube between the two places turns by half a turn or more. Where it turns by less, κ ≤ π, two places
 * s apart along it are at least 2 r sin(κ/2) + (s − κ r) cos(κ/2) apart in space for s ≥ π r (r the smallest radius:
 * Schur's comparison theorem, 1921, with the flattest projection), which falls to 2 r ≥ D at κ = π; and for s < π r they
 * are at least 2 r sin(s/2r) apart, which is below D only for neighbours. So nothing that strikes is left out.
 *
 * The arc that the swing makes needs no look of its own: each of its points stood at the tangent point, as near to the
 * bent part as ever after.
 */
function againstTube(
  envelope: MachineEnvelope,
  setup: Setup,
  point: MachinePoint,
  found: { swing: number },
): Measure['clearance'] {
  const { outsideDiameter } = envelope;
  const line: StandingBox = { length: 0, near: 0, far: 0, halfHeight: 0 };
  const swing = noSwing(0);
  const here = { swing: 0 };

  const tailAt = (turn: number): number => Math.max(0, setup.tail - (setup.drawn * turn) / setup.command);

  /** Where the part may come by beyond the far end: the swing in steps, each with the tail as it is at the step's start. */
  const stepByStep = (from: number, enough: number): number => {
    const span = setup.command - from;
    const wanted = Math.ceil((setup.drawn * span) / setup.command / (outsideDiameter / 40));
    const steps = Math.min(MOST_STEPS, Math.max(1, wanted));
    let least = Infinity;
    for (let step = 0; step < steps; step += 1) {
      swing.from = from + (span * step) / steps;
      swingTo(swing, from + (span * (step + 1)) / steps);
      line.length = tailAt(swing.from);
      const distance = swingDistance(line, point, swing, Math.min(enough, least), here);
      if (distance >= least) continue;
      least = distance;
      found.swing = here.swing;
    }
    return least;
  };

  return (piece, at, half, enough) => {
    const turned = piece.turned + (piece.radius > 0 ? (at - half) / piece.radius : 0);
    const from = Math.max(0, Math.PI - (setup.turned - turned));
    if (from > setup.command) return Infinity;
    pointOn(piece, at, point);
    line.near = setup.dieRadius;
    line.far = setup.dieRadius;
    line.length = tailAt(from);
    swing.from = from;
    swingTo(swing, setup.command);
    const distance = swingDistance(line, point, swing, enough + outsideDiameter, found);
    if (distance >= enough + outsideDiameter) return distance - outsideDiameter;
    // nearest to what is still there when the swing ends: then the far end does not matter
    const along = point.a * Math.cos(found.swing) - point.b * Math.sin(found.swing);
    if (along <= tailAt(setup.command)) return distance - outsideDiameter;
    return stepByStep(from, enough + outsideDiameter) - outsideDiameter;
  };
}
