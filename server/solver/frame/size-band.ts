import type { Band } from '../../plan/figure.ts';
import { isOfDie } from '../bending/planned-arc.ts';
import type { SetUp } from '../bending/set-up.ts';
import type { SpringbackLaw } from '../bending/springback-law.ts';
import { band } from '../figure.ts';
import { RADIANS } from '../geometry/angle.ts';
import { dot, subtract, unit } from '../geometry/vector.ts';
import { movement, sawnLonger, targetOf, type BentMember } from './bend-errors.ts';
import type { Check } from './frame-geometry.ts';

/** How far what is made may stand off the plan, and the law that all bends have alike. */
export type SizeDoubts = {
  readonly machine: Pick<SetUp, 'angleScatter' | 'planeScatter' | 'markAccuracy'>;
  readonly law: SpringbackLaw;
};

/** ± of a size, split by where it comes from [mm]. */
export type SizeBand = {
  readonly tape: number;
  readonly angle: number;
  readonly rotation: number;
  readonly law: number;
  readonly radius: number;
};

/**
 * ± of a size of the bent frame between two spots of one member, first order: each bend's angle, mark and rotation
 * and the sawn length on their own, the law of springback and the radius after release for all bends alike. Rolled
 * crowns are taken as planned. Derived; a Monte Carlo run of the whole path agrees.
 *
 * @param members each member as it is bent, by name
 * @returns tape alone where the two spots are on members that are fitted to each other by hand
 */
export function sizeBand(check: Check, members: ReadonlyMap<string, BentMember>, doubts: SizeDoubts): SizeBand {
  const { machine, law } = doubts;
  const member = members.get(check.from.member);
  const along = unit(subtract(check.to.point, check.from.point));
  if (member === undefined || along === undefined || check.from.member !== check.to.member)
    return { tape: machine.markAccuracy, angle: 0, rotation: 0, law: 0, radius: 0 };
  const from = targetOf(member, check.from);
  const to = targetOf(member, check.to);
  let [tape, angle, rotation, alike, radius] = [0, 0, 0, 0, 0];
  const sawn = dot(along, subtract(sawnLonger(member, to), sawnLonger(member, from)));
  tape += (sawn * machine.markAccuracy) ** 2;
  for (const bend of member.bends) {
    const far = movement(member, to, bend);
    const near = movement(member, from, bend);
    const turned = dot(along, subtract(far.angle, near.angle));
    tape += (dot(along, subtract(far.mark, near.mark)) * machine.markAccuracy) ** 2;
    angle += (turned * machine.angleScatter * RADIANS) ** 2;
    if (bend !== member.bends[0])
      rotation += (dot(along, subtract(far.rotation, near.rotation)) * machine.planeScatter * RADIANS) ** 2;
    alike += turned * law.lawBandFor(bend.angle);
    if (isOfDie(bend, law)) radius += dot(along, subtract(far.radius, near.radius)) * law.radiusPlusMinus;
  }
  return {
    tape: Math.sqrt(tape),
    angle: Math.sqrt(angle),
    rotation: Math.sqrt(rotation),
    law: Math.abs(alike),
    radius: Math.abs(radius),
  };
}

/** One band from its parts, the largest named first; parts that are nothing are not named. */
export function bandOfParts(parts: SizeBand, law: SpringbackLaw, tubeTolerance = 0): Band | null {
  const named: readonly (readonly [string, number])[] = [
    ['tape', parts.tape],
    ['angle-scatter', parts.angle],
    ['rotation-scatter', parts.rotation],
    [law.lawFrom, parts.law],
    [law.radiusMeasured ? 'test-bends' : 'springback-model', parts.radius],
    ['tube-tolerance', tubeTolerance],
  ];
  const some = named.filter(([, size]) => size > 1e-9).sort((a, b) => b[1] - a[1]);
  return some.length === 0
    ? null
    : band(Math.hypot(...some.map(([, size]) => size)), ...new Set(some.map(([name]) => name)));
}
