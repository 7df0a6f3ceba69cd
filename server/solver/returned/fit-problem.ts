import { cross, subtract } from '../geometry/vector.ts';
import { standAt, type LaidLine } from '../geometry/laid-line.ts';
import { UNMOVED, type RigidMotion } from '../geometry/rigid-motion.ts';
import type { FrameModel } from './frame-model.ts';
import { layAgain, layFrame, type LaidFrame } from './lay-frame.ts';
import { POSE_SIZES, poseAt, type PoseGuess } from './pose.ts';
import type { Measured } from './readings.ts';

/**
 * What is solved: the deviations of the members that readings touch, and how the frame stood where that matters. The
 * unknowns are counted in their sizes.
 */
export type FitProblem = {
  readonly model: FrameModel;
  readonly measured: readonly Measured[];
  /** Parameters that may move, by their number in the model; the pose comes after them. */
  readonly free: readonly number[];
  readonly pose: PoseGuess | null;
  readonly sizes: readonly number[];
  readonly lows: readonly number[];
};

/** A closed tube closes to this [mm, rad]; our own choice, a hundredth of what a tape shows. */
const CLOSES = { mm: 1e-3, rad: 1e-6 } as const;

/** Step of a difference to one side, in sizes of an unknown: half the digits of a double, and far below what bends matter. */
const STEP = 1e-6;

/** A reading that the bent tube has no place for is this many accuracies off. */
const NOT_THERE = 1e3;

export function fitProblem(model: FrameModel, measured: readonly Measured[], pose: PoseGuess | null): FitProblem {
  const touched = new Set<number>();
  const touch = (member: number): void => {
    if (touched.has(member)) return;
    touched.add(member);
    const seat = model.members[member]?.seat;
    if (seat?.kind === 'one') touch(seat.at.partner);
    if (seat?.kind === 'two') [seat.start.partner, seat.finish.partner].forEach(touch);
  };
  for (const { members } of measured) members.forEach(touch);
  const free = [...model.parameters.keys()].filter((index) => touched.has(model.parameters[index]?.member ?? -1));
  const parameters = free.flatMap((index) => model.parameters[index] ?? []);
  const none = POSE_SIZES.map(() => Number.NEGATIVE_INFINITY);
  return {
    model,
    measured,
    free,
    pose,
    sizes: [...parameters.map(({ size }) => size), ...(pose === null ? [] : POSE_SIZES)],
    lows: [...parameters.map(({ low }) => low), ...(pose === null ? [] : none)],
  };
}

/** All parameters of the model from the unknowns. */
export function parametersOf({ model, free }: FitProblem, unknowns: readonly number[]): number[] {
  const values = new Array<number>(model.parameters.length).fill(0);
  for (let index = 0; index < free.length; index += 1) values[free[index] ?? 0] = unknowns[index] ?? 0;
  return values;
}

export const poseOf = ({ pose, free }: FitProblem, unknowns: readonly number[]): RigidMotion =>
  pose === null ? UNMOVED : poseAt(pose, unknowns, free.length);

const residualOf = (one: Measured, lines: LaidLine['line'][], pose: RigidMotion): number => {
  const predicted = one.predict(lines, pose);
  return predicted !== undefined && Number.isFinite(predicted) ? (predicted - one.value) / one.accuracy : NOT_THERE;
};

/** How far each reading is off, in accuracies, then how far each closed tube is from closing. */
export function residualsAt(problem: FitProblem, unknowns: readonly number[]): number[] {
  const laid = layFrame(problem.model, parametersOf(problem, unknowns));
  const lines = laid.map(({ line }) => line);
  const pose = poseOf(problem, unknowns);
  return [...problem.measured.map((one) => residualOf(one, lines, pose)), ...closings(problem, laid)];
}

const closedMembers = ({ model, free }: FitProblem): number[] =>
  [...model.members.keys()].filter(
    (index) =>
      model.members[index]?.closed === true && free.some((parameter) => model.parameters[parameter]?.member === index),
  );

const closings = (problem: FitProblem, laid: LaidFrame): number[] =>
  closedMembers(problem).flatMap((index) => closingOf(laid[index]));

/** From the start of a closed tube to its finish: three distances, and the angle between the two directions. */
function closingOf(laid: LaidLine | undefined): number[] {
  const start = laid === undefined ? undefined : standAt(laid, 0);
  const finish = laid === undefined ? undefined : standAt(laid, laid.line.length);
  if (start === undefined || finish === undefined) return [0, 0, 0, 0, 0, 0];
  const gap = subtract(finish.point, start.point);
  const turn = cross(finish.direction, start.direction);
  const { mm, rad } = CLOSES;
  return [gap.x / mm, gap.y / mm, gap.z / mm, turn.x / rad, turn.y / rad, turn.z / rad].map(finite);
}

/** A tube that is bent beyond all measure closes nowhere. */
const finite = (value: number): number => (Number.isFinite(value) ? value : NOT_THERE);

/**
 * Derivatives of the residuals by the unknowns, each counted in its size: differences to one side. Only the members that an
 * unknown moves are laid again, and only the readings on those are taken again.
 */
export function slopesAt(problem: FitProblem, unknowns: readonly number[]): Float64Array[] {
  const { model, measured, free, sizes } = problem;
  const values = parametersOf(problem, unknowns);
  const laid = layFrame(model, values);
  const pose = poseOf(problem, unknowns);
  const closed = closedMembers(problem);
  const lines = laid.map(({ line }) => line);
  const still = measured.map((one) => residualOf(one, lines, pose));
  const rows = Array.from({ length: measured.length + 6 * closed.length }, () => new Float64Array(sizes.length));
  const moves = model.after.map((after) => {
    const changed = new Set(after);
    return [...measured.keys()].filter((index) => measured[index]?.members.some((member) => changed.has(member)));
  });
  for (let column = 0; column < free.length; column += 1) {
    const parameter = free[column] ?? 0;
    const member = model.parameters[parameter]?.member ?? 0;
    const which = moves[member] ?? [];
    const place = closed.indexOf(member);
    const before = values[parameter] ?? 0;
    values[parameter] = before + STEP * (sizes[column] ?? 1);
    const changed = laid.slice();
    layAgain(model, model.after[member] ?? [], values, changed);
    values[parameter] = before;
    const moved = changed.map(({ line }) => line);
    for (const row of which) {
      const [one, into] = [measured[row], rows[row]];
      if (one !== undefined && into !== undefined) into[column] = slope(residualOf(one, moved, pose), still[row]);
    }
    if (place < 0) continue;
    const closes = closingOf(laid[member]);
    closingOf(changed[member]).forEach((gap, index) => {
      const into = rows[measured.length + 6 * place + index];
      if (into !== undefined) into[column] = slope(gap, closes[index]);
    });
  }
  if (problem.pose !== null) poseSlopes(problem, unknowns, { lines, still }, rows);
  return rows;
}

/** What a step changes, in sizes of the unknown; a place that comes or goes is a jump and no slope. */
function slope(after: number, before = 0): number {
  const rise = (after - before) / STEP;
  return Math.abs(rise) < STEEPEST ? rise : 0;
}

/** Far beyond what the closing of a ring comes to; our own choice. */
const STEEPEST = 1e8;

function poseSlopes(
  problem: FitProblem,
  unknowns: readonly number[],
  { lines, still }: { lines: LaidLine['line'][]; still: readonly number[] },
  rows: readonly Float64Array[],
): void {
  const { measured, free, sizes } = problem;
  for (let column = free.length; column < sizes.length; column += 1) {
    const step = STEP * (sizes[column] ?? 1);
    const pose = poseOf(
      problem,
      unknowns.map((value, index) => (index === column ? value + step : value)),
    );
    for (const [row, one] of measured.entries()) {
      const into = rows[row];
      if (one.posed && into !== undefined) into[column] = slope(residualOf(one, lines, pose), still[row]);
    }
  }
}
