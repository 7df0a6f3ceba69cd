import type { Finding } from '../../plan/finding.ts';
import type { FrameGeometry } from './frame-geometry.ts';

/**
 * What a frame is drawn with: outside diameter and centreline radius of a die bend after release [mm], and the JSON
 * pointer of the frame in the job.
 */
export type ShapeContext = {
  readonly outsideDiameter: number;
  readonly cornerRadius: number;
  readonly root: '/frame' | '/cameBack/frame';
  /** For a closed member, the straight that the job wants its closing weld in, counted from 1; null: by rule. */
  readonly closingStraight?: (member: string) => number | null;
};

/** A frame drawn, or null with the stops that say why not. */
export type DrawnFrame = { readonly geometry: FrameGeometry | null; readonly findings: Finding[] };
