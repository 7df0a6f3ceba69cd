import type { LetInPiece } from '../../plan/joint.ts';
import type { WrapTemplate } from '../../plan/frame.ts';
import { band, figure, input } from '../figure.ts';
import { DEGREES } from '../geometry/angle.ts';
import { wrapForPlane } from '../joints/wrap.ts';
import { placeAt } from '../geometry/centreline.ts';
import type { CutJoint, LetIn } from './cut-joint.ts';
import { jointFrame, type FaceContext, type Lean } from './joint-face.ts';

/**
 * New tube for a joint, with what is sawn off the bar for it and the wraps of its ends. Its generators count as those
 * of the tube that it continues; where it is bent, its outside is the outside there, and it is sawn with what the machine
 * must hold. What a bend stretches is not taken off: it goes with the ends that are cut.
 *
 * @param faces how the two faces of the old tube lean
 */
export function letInPiece(
  joint: CutJoint,
  letIn: LetIn,
  number: number,
  faces: { readonly first: Lean; readonly second: Lean },
  closing: { readonly kerf: number },
  context: FaceContext,
): LetInPiece {
  const { length, radius, angle } = letIn;
  const outside = context.tube.outsideDiameter / 2;
  const [tiltA, tiltB] = [faces.first.tilt, faces.second.tilt];
  const held = radius === null ? 0 : leftOnFor(joint, context);
  // the long point of each end stands out by r tan τ, and each end is sawn once
  const cutLength = length + outside * (Math.tan(tiltA) + Math.tan(tiltB)) + 2 * closing.kerf + held;
  const tapeBand = band(context.tape, 'tape');
  const lengthInput = input('ℓ', 'let-in-length', length, 'mm');
  return {
    length: figure(length, 'mm', 'ℓ', [lengthInput], ['geometry'], tapeBand),
    cutLength: figure(
      cutLength,
      'mm',
      'L = ℓ + r (tan τ_A + tan τ_B) + 2 k + h',
      [
        lengthInput,
        input('r', 'outside-radius', outside, 'mm'),
        input('τ_A', 'face-tilt', tiltA * DEGREES, 'deg'),
        input('τ_B', 'face-tilt', tiltB * DEGREES, 'deg'),
        input('k', 'kerf', closing.kerf, 'mm'),
        input('h', 'left-on', held, 'mm'),
      ],
      ['geometry'],
      tapeBand,
    ),
    radius: radius === null ? null : figure(radius, 'mm', 'R', [input('R', 'radius', radius, 'mm')], ['geometry']),
    angle:
      radius === null
        ? null
        : figure(angle * DEGREES, 'deg', 'θ = ℓ / R', [lengthInput, input('R', 'radius', radius, 'mm')], ['geometry']),
    tiltA: tiltFigure(tiltA),
    tiltB: tiltFigure(tiltB),
    templates: context.templates ? ends(joint, letIn, number, faces, context) : [],
  };
}

/** A let-in piece is made as the tube that it continues: on a die where that was, else rolled. */
function leftOnFor({ member, stationA, stationB }: CutJoint, { leftOn }: FaceContext): number {
  const piece = placeAt(member.centreline, (stationA + stationB) / 2)?.piece;
  return leftOn?.[piece?.kind === 'arc' ? piece.made : 'die'] ?? 0;
}

/** The piece leans as much as the face that it closes on. */
const tiltFigure = (tilt: number) =>
  figure(tilt * DEGREES, 'deg', 'τ', [input('τ', 'face-tilt', tilt * DEGREES, 'deg')], ['geometry']);

/**
 * A face that closes on another leans the other way: the piece is longest where the old tube is shortest. Its generators
 * are those of face A, so that face B stands to them turned by the twist.
 */
function ends(
  { member, twist }: CutJoint,
  { length, radius }: LetIn,
  number: number,
  faces: { readonly first: Lean; readonly second: Lean },
  context: FaceContext,
): WrapTemplate[] {
  const arc = radius === null ? null : { radius };
  const name = String(number);
  const wraps = [
    wrapForPlane({
      ...jointFrame(member, 0, `${name} let in A`, context),
      scrap: 'start',
      tilt: faces.first.tilt,
      tiltDirection: faces.first.tiltDirection + Math.PI,
      arc,
    }),
    wrapForPlane({
      ...jointFrame(member, length, `${name} let in B`, context),
      scrap: 'finish',
      tilt: faces.second.tilt,
      tiltDirection: faces.second.tiltDirection + twist + Math.PI,
      arc,
    }),
  ];
  return wraps.filter((wrap) => wrap !== undefined);
}
