import { Type, type Static } from 'typebox';
import { Figure, Point, literals } from './figure.ts';
import { WrapTemplate } from './frame.ts';

/** From where distances on a tube are laid out. */
export const MEASURED_FROM = [
  'datum-end',
  'far-end',
  'saddle-face',
  'far-saddle-face',
  'closing-weld',
  'bend-start',
  'bend-end',
] as const;

/** Distances along four generators to a face, from one point that a tape finds. */
export const TapeMarks = Type.Object({
  from: literals(MEASURED_FROM, 'measured from'),
  /** Which bend, counted from the datum end; 0 for the others. */
  bend: Type.Integer(),
  /** Whether the tape runs with the stations (towards the finish) or against them. */
  towards: literals(['start', 'finish'], 'towards'),
  generators: Type.Array(
    Type.Object({
      key: literals(['outside', 'top', 'inside', 'bottom'], 'generator'),
      angle: Type.Number(),
      distance: Figure,
      /** How far along the tube, towards the finish, the face lies there from the ring at its station [mm]. */
      ordinate: Type.Number(),
    }),
  ),
});
export type TapeMarks = Static<typeof TapeMarks>;

/** How a saw is set for a face: degrees off square, and the generator where the tube is left longest. */
export const SawSetting = Type.Object({
  offSquare: Figure,
  /** The generator nearest to the long side, and the angle from it to the long side itself [degrees]. */
  longSide: literals(['outside', 'top', 'inside', 'bottom'], 'generator'),
  fromLongSide: Type.Number(),
});
export type SawSetting = Static<typeof SawSetting>;

/** A cut face, measured on the tube as it is. */
export const JointFace = Type.Object({
  /** Station on the member's centreline from its datum end. */
  station: Figure,
  /** Tilt off square, and the direction (degrees from the outside of the curve) of the longest side. */
  tilt: Figure,
  tiltDirection: Type.Number(),
  saw: SawSetting,
  /** From the nearest point that a tape finds, then from another one to check with. */
  marks: TapeMarks,
  check: Type.Union([TapeMarks, Type.Null()]),
  /** For the way that the sheets show; null for the others. */
  template: Type.Union([WrapTemplate, Type.Null()]),
});
export type JointFace = Static<typeof JointFace>;

/** A piece of new tube that stands between the two faces. */
export const LetInPiece = Type.Object({
  /** Along its centreline between its finished faces, and what is sawn off the bar for it. */
  length: Figure,
  cutLength: Figure,
  /** Radius and angle where it is bent or rolled; null for a straight one. */
  radius: Type.Union([Figure, Type.Null()]),
  angle: Type.Union([Figure, Type.Null()]),
  /** Tilt of each of its faces off square. */
  tiltA: Figure,
  tiltB: Figure,
  templates: Type.Array(WrapTemplate),
});
export type LetInPiece = Static<typeof LetInPiece>;

/** What keeps a joint from standing somewhere: an end, a bend, a weld, a fitting, a stretch that a person barred. */
export const KeepOut = literals(['end', 'bend', 'weld', 'fitting', 'barred'], 'keep-out');
export type KeepOut = Static<typeof KeepOut>;

/** slug: parallel faces; wedge: the faces lean; dart: a wedge not cut right through; let-in: new tube between them. */
export const JOINT_KINDS = ['slug', 'wedge', 'dart', 'let-in'] as const;

export const Joint = Type.Object({
  number: Type.Integer(),
  member: Type.String(),
  on: literals(['straight', 'die', 'rolled'], 'stands on'),
  kind: literals(JOINT_KINDS, 'kind of joint'),
  /** Halfway between the two faces along the uncut member, and how far it may be moved either way. */
  place: Type.Number(),
  range: Type.Object({ from: Type.Number(), to: Type.Number() }),
  /** Which rule bounds the range at each side. */
  bounds: Type.Object({ from: KeepOut, to: KeepOut }),
  faceA: JointFace,
  faceB: JointFace,
  /** Centreline length between the two finished faces of the old tube. */
  removed: Figure,
  /** Piece that falls out between two saw cuts on its long side and on its short one; nothing where the cuts overlap. */
  scrap: Figure,
  scrapShort: Figure,
  kink: Figure,
  hiLo: Figure,
  hiLoGrade: literals(['good', 'practice', 'standard', 'over'], 'grade of hi-lo'),
  /** Turn of the second piece about the tube's own axis, right-handed towards the finish. */
  twist: Figure,
  letIn: Type.Union([LetInPiece, Type.Null()]),
  /** Where the closed joint stands in the corrected frame. */
  point: Point,
});
export type Joint = Static<typeof Joint>;
