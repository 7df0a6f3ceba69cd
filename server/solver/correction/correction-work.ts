import type { Fixing } from '../../job/fixing.ts';
import type { Finding } from '../../plan/finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { ReturnedFrame } from '../returned/returned-frame.ts';
import { correctionTargets } from './correction-targets.ts';
import type { CorrectedFrame, Post } from './corrected.ts';
import { judge, type JudgeContext, type Outcome } from './outcome.ts';
import { footExcesses, trimmedFeet, type FootExcess } from './trims.ts';

/** What every way of correcting a frame works on [mm]. */
export type CorrectionWork = JudgeContext & {
  readonly outsideDiameter: number;
  readonly tape: number;
  /** The frame as it came back, nothing cut off. */
  readonly uncut: FrameGeometry;
  /** How much longer each leg is than wanted; `actual` is cut back by it already. */
  readonly excesses: readonly FootExcess[];
  /** The same for each variation of the frame as the readings leave it in doubt: cut back by as much. */
  readonly variations: readonly JudgeContext[];
  /** The same work with the feet cut back otherwise, for a way that changes the legs. */
  readonly cutBackBy: (excesses: readonly FootExcess[]) => CorrectionWork;
};

/** Cuts the feet back and finds the targets, on the frame as it came back and on each of its variations. */
export function correctionWork(source: {
  readonly fixing: Fixing;
  /** Kept clear of; those that the wanted frame itself runs into are left out. */
  readonly posts: readonly Post[];
  readonly wanted: FrameGeometry;
  readonly returned: ReturnedFrame;
  readonly outsideDiameter: number;
  readonly tape: number;
  readonly tolerance: number;
}): { work: CorrectionWork; findings: Finding[] } {
  const { posts, wanted, returned, outsideDiameter, tape } = source;
  const found: Finding[] = [];
  const cutBackBy = (measured: readonly FootExcess[]): CorrectionWork => {
    // nobody cuts off what the tape cannot tell
    const excesses = measured.filter(({ excess }) => Math.abs(excess) > tape);
    const contextOf = (frame: FrameGeometry): JudgeContext => {
      const actual = trimmedFeet(frame, excesses);
      const { targets, findings } = correctionTargets({ ...source, actual });
      found.splice(0, found.length, ...findings);
      return { wanted, actual, targets, posts };
    };
    const variations = returned.variations.map(contextOf);
    const context = contextOf(returned.geometry);
    return { ...context, outsideDiameter, tape, uncut: returned.geometry, excesses, variations, cutBackBy };
  };
  const work = cutBackBy(footExcesses(wanted, returned.geometry));
  return { work, findings: [...found] };
}

/** What a way comes to on the frame as it came back, and on each of its variations. */
export function judgeAll(
  work: CorrectionWork,
  corrected: (context: JudgeContext) => CorrectedFrame,
): { base: Outcome; variations: Outcome[] } {
  return {
    base: judge(work, corrected(work)),
    variations: work.variations.map((context) => judge(context, corrected(context))),
  };
}
