import type { FrameGeometry } from '../frame/frame-geometry.ts';

/** A frame that came back: the one that explains the readings best, and how sure that is. */
export type ReturnedFrame = {
  /** In the axes of the wanted frame, laid on it as well as it goes; members and pieces are those of the wanted frame. */
  readonly geometry: FrameGeometry;
  /**
   * The same frame one standard deviation off, once for each independent direction of doubt that the readings leave.
   * The band of any size of it is √Σ (size of variation − size)².
   */
  readonly variations: readonly FrameGeometry[];
};
