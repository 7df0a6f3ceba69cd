import fc from 'fast-check';
import { centrelineFromChain, type Centreline, type Link } from '../../server/solver/geometry/centreline.ts';
import type { DieBend, MachineEnvelope } from '../../server/solver/making/machine-envelope.ts';
import type { SweptInput } from '../../server/solver/making/swept-check.ts';

const DEGREE = Math.PI / 180;
export const DIAMETER = 38;
export const RADIUS = 76;

/** Straight, rotation, angle; the last straight by itself [mm, degrees]. */
export type Step = readonly [straight: number, rotation: number, angle: number];

export const ENVELOPE: MachineEnvelope = {
  outsideDiameter: DIAMETER,
  dieHeight: 60,
  dieRim: 0,
  clampLength: 80,
  clampReach: 150,
  clampHeight: 60,
  pressureDieLength: 300,
  pressureDieReach: 120,
  pressureDieHeight: 50,
  bedBelow: 900,
};

/** Lays a member on one die, its first bend turning about +z from the direction +x. */
export function member(steps: readonly Step[], lastStraight: number, radius = RADIUS): Centreline {
  const links = steps.flatMap(([straight, rotation, angle]): Link[] => [
    { kind: 'straight', length: straight },
    { kind: 'arc', radius, angle: angle * DEGREE, rotation: rotation * DEGREE, made: 'die' },
  ]);
  return centrelineFromChain(
    { point: { x: 0, y: 0, z: 0 }, direction: { x: 1, y: 0, z: 0 }, normal: { x: 0, y: 0, z: 1 } },
    [...links, { kind: 'straight', length: lastStraight }],
  );
}

/** Its die bends, over-bent by a share, on a die that is smaller by the same. */
export function dieBends({ pieces }: Centreline, springback = 0): DieBend[] {
  let number = 0;
  return pieces.flatMap((piece, index): DieBend[] => {
    if (piece.kind !== 'arc') return [];
    number += 1;
    if (piece.made !== 'die') return [];
    const dieRadius = piece.radius * (1 - springback);
    return [{ number, piece: index, command: piece.angle / (1 - springback), dieRadius }];
  });
}

export const swept = (centreline: Centreline, more: Partial<SweptInput> = {}): SweptInput => ({
  centreline,
  bends: dieBends(centreline),
  machine: ENVELOPE,
  side: 'right',
  extraAtStart: 0,
  extraAtEnd: 0,
  closed: false,
  ...more,
});

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Members of one to four bends in any plane, and machines of any size and side. */
export const anySwept: fc.Arbitrary<SweptInput> = fc
  .record({
    steps: fc.array(fc.tuple(between(1, 300), between(-180, 180), between(5, 200)), { minLength: 1, maxLength: 4 }),
    flat: fc.boolean(),
    lastStraight: between(0, 400),
    springback: between(0, 0.05),
    side: fc.constantFrom<SweptInput['side']>('right', 'left'),
    extraAtStart: fc.constantFrom(0, 35),
    extraAtEnd: fc.constantFrom(0, 50),
    machine: fc.record({
      outsideDiameter: fc.constant(DIAMETER),
      dieHeight: between(20, 120),
      dieRim: between(0, DIAMETER / 2),
      clampLength: between(20, 150),
      clampReach: between(20, 250),
      clampHeight: between(20, 120),
      pressureDieLength: between(50, 400),
      pressureDieReach: between(20, 250),
      pressureDieHeight: between(20, 120),
      bedBelow: between(50, 600),
    }),
  })
  .map(({ steps, flat, lastStraight, springback, ...rest }) => {
    const centreline = member(
      steps.map(([straight, rotation, angle]): Step => [straight, flat ? (rotation > 60 ? 180 : 0) : rotation, angle]),
      lastStraight,
    );
    return swept(centreline, { ...rest, bends: dieBends(centreline, springback) });
  });
