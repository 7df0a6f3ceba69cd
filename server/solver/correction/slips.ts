import type { Frame } from '../../job/frame.ts';
import type { Dimension, Reference } from '../../job/quantities.ts';
import type { SLIP_KEYS, SlipScore } from '../../plan/correction.ts';
import { figure, input } from '../figure.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import type { Centreline } from '../geometry/centreline.ts';
import { relay } from '../geometry/slice.ts';
import { readHoop, type HoopReadings } from './hoop-readings.ts';

type SlipKey = (typeof SLIP_KEYS)[number];

/** What the shop would have worked with: how a frame is drawn, the angle lost, and the bar as it was sawn. */
export type SlipContext = {
  readonly draw: (frame: Frame) => FrameGeometry | null;
  readonly outsideDiameter: number;
  /** Springback as a share of an angle [–]. */
  readonly springbackShare: number;
  /** What the bar is longer than the finished member [mm]. */
  readonly spareLength: number;
  readonly tape: number;
};

/** Root mean square, in tapes, up to which a slip explains the readings: two standard deviations (common practice). */
const EXPLAINED = 2;

/**
 * Ranks the known slips by how well each predicts the readings of a hoop that came back. Each is computed by bending
 * the wrong marks through the path model, or by reading the sketch the wrong way; a leg that the slip leaves longer
 * than wanted is compared as it left the machine.
 *
 * @returns best first; empty for a shape whose slips are not modelled
 */
export function scoreSlips(wanted: Frame, cameBack: FrameGeometry, context: SlipContext): SlipScore[] {
  if (wanted.shape !== 'hoop') return [];
  const drawn = context.draw(wanted);
  const planned = drawn?.members[0]?.centreline;
  const measuredLine = cameBack.members[0]?.centreline;
  const measured = measuredLine === undefined ? undefined : readHoop(measuredLine);
  if (planned === undefined || measured === undefined) return [];
  const readAs = (reference: Reference) => {
    const width: Dimension = { value: wanted.width.value, reference };
    return context.draw({ ...wanted, width })?.members[0]?.centreline;
  };
  const candidates: [SlipKey, Centreline | undefined][] = [
    ['apex-as-start', wrongMarks(planned, 'start', context.spareLength)],
    ['apex-as-middle', wrongMarks(planned, 'middle', context.spareLength)],
    ['springback-left-out', withoutOverbend(planned, context.springbackShare)],
  ];
  if (wanted.width.reference === 'outside') {
    candidates.push(['outside-read-as-centre', readAs('centre')], ['outside-read-as-inside', readAs('inside')]);
  }
  if (wanted.width.reference === 'inside') candidates.push(['inside-read-as-outside', readAs('outside')]);
  return candidates
    .flatMap(([key, line]) => {
      const predicted = line === undefined ? undefined : readHoop(line);
      return predicted === undefined ? [] : [scoreOf(key, predicted, measured, context)];
    })
    .sort((a, b) => a.misfit.value - b.misfit.value);
}

function scoreOf(key: SlipKey, predicted: HoopReadings, measured: HoopReadings, context: SlipContext): SlipScore {
  const tape = Math.max(context.tape, 0.1);
  const keys = ['width-at-corners', 'width-at-feet', 'left-leg', 'right-leg'] as const;
  const sum = keys.reduce((total, one) => total + ((predicted[one] - measured[one]) / tape) ** 2, 0);
  const misfit = Math.sqrt(sum / keys.length);
  return {
    key,
    misfit: figure(
      misfit,
      'ratio',
      'm = √(Σ ((p − r) / a)² / n)',
      [input('a', 'tape', context.tape, 'mm'), input('n', 'readings', keys.length, 'count')],
      ['path-model'],
    ),
    explains: misfit <= EXPLAINED,
    predicted: keys.map((one) => ({ key: one, index: 0, value: predicted[one], measured: measured[one] })),
  };
}

/**
 * A member whose apex distances were laid along the straight tube and taken for the start, or the middle, of each
 * bend. The last straight is what is left of the bar.
 */
export function wrongMarks(planned: Centreline, mark: 'start' | 'middle', spareLength: number): Centreline {
  const { pieces } = planned;
  const bends = pieces.flatMap((piece, index) => (piece.kind === 'arc' && piece.made === 'die' ? [index] : []));
  const tangent = (index: number | undefined) => {
    const piece = index === undefined ? undefined : pieces[index];
    return piece?.kind === 'arc' && piece.made === 'die' ? piece.radius * Math.tan(piece.angle / 2) : 0;
  };
  const half = (index: number | undefined) =>
    mark === 'middle' && index !== undefined ? (pieces[index]?.length ?? 0) / 2 : 0;
  // tube from one bend's end to the next one's start, between bend number `order − 1` and `order`
  const growth = (order: number) => {
    const before = bends[order - 1];
    const after = bends[order];
    const used = before === undefined ? 0 : (pieces[before]?.length ?? 0) - half(before);
    return tangent(before) + tangent(after) - half(after) - used;
  };
  let order = 0;
  let grown = 0;
  const last = pieces.length - 1;
  return relay(planned, (piece, index) => {
    const unchanged = { length: piece.length, angle: piece.kind === 'arc' ? piece.angle : 0 };
    if (bends.includes(index)) {
      order += 1;
      return unchanged;
    }
    if (index === last) return { length: piece.length - grown + spareLength, angle: 0 };
    const isLastBefore = bends[order] === index + 1;
    if (!isLastBefore) return unchanged;
    const more = growth(order);
    grown += more;
    if (piece.kind === 'arc') return { length: piece.length + more, angle: piece.angle + more / piece.radius };
    return { length: piece.length + more, angle: 0 };
  });
}

/** A member bent to the wanted angles instead of further: each bend opens by its springback, and uses less tube. */
function withoutOverbend(planned: Centreline, share: number): Centreline {
  let left = 0;
  return relay(planned, (piece) => {
    if (piece.kind === 'arc' && piece.made === 'die') {
      left += piece.length * share;
      return { length: piece.length, angle: piece.angle * (1 - share) };
    }
    const length = piece.length + left;
    left = 0;
    return { length, angle: piece.kind === 'arc' ? length / piece.radius : 0 };
  });
}
