import type { CameBack } from '../../job/came-back.ts';
import type { ReadingsFit } from '../../plan/readings-fit.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { RADIANS } from '../geometry/angle.ts';
import { doubtOf } from './doubt-in-words.ts';
import { directionsOfDoubt, knowledgeOf } from './doubt.ts';
import { disagreementIn, studentised, type Disagreement } from './disagreement.ts';
import { fitProblem, parametersOf, poseOf, type FitProblem } from './fit-problem.ts';
import { fitUnknowns, type Fitted } from './fit-unknowns.ts';
import { fittedReadings, misfitFigure, type Compared } from './fitted-figures.ts';
import { frameModel, type FrameModel } from './frame-model.ts';
import { frameMaker, type FrameMaker } from './frame-of-lines.ts';
import { layFrame } from './lay-frame.ts';
import { linesLike, type Lines } from './lines.ts';
import { notMeasured } from './not-measured.ts';
import type { Scatter } from './parameters.ts';
import { bestPose, guessPose } from './pose.ts';
import { readingsOf, type Measured } from './readings.ts';
import type { ReturnedFrame } from './returned-frame.ts';
import { sizesOf } from './sizes.ts';
import type { SolvedReadings } from './solved-readings.ts';

/** A frame, what was measured on it when it came back, and the shop that made it. */
export type ReadingsInput = {
  /** As wanted, mirrored where it is the mirrored one that came back. */
  readonly wanted: FrameGeometry;
  readonly cameBack: CameBack;
  /** [mm] */
  readonly outsideDiameter: number;
  /** How well the machine holds angles and planes, ± [degrees]. */
  readonly angleScatter: number;
  readonly planeScatter: number;
};

export type ReadingsAnswer = {
  /** Null where nothing was measured, or no frame has what was. */
  readonly returned: ReturnedFrame | null;
  readonly fit: ReadingsFit;
  readonly findings: readonly Finding[];
  readonly solved: SolvedReadings;
};

/** From this misfit on no frame has the readings, and from the lower one on they are worth a look, in accuracies; common practice. */
const CONTRADICTS = 5;
const DOUBTFUL = 2;

/** A direction of doubt that moves nothing further than this is left out [mm]. */
const MOVES_NOTHING = 1e-4;

/**
 * Fits the frame as it came back to everything that was measured on it: the wanted frame with the deviations that explain
 * the readings best, what the fit leaves of each reading, which reading disagrees, and how sure the frame is.
 */
export function fitReadings(given: ReadingsInput): ReadingsAnswer {
  const { wanted, cameBack } = given;
  const sizes = sizesOf(wanted, given.outsideDiameter);
  const about = { wanted, sizes, radius: given.outsideDiameter / 2 };
  const { measured, findings: refused } = readingsOf(cameBack, about);
  const findings = [...refused];
  const solved = solvedReadings(wanted, measured);
  const scatter: Scatter = {
    angle: given.angleScatter * RADIANS,
    plane: given.planeScatter * RADIANS,
    length: Math.max(cameBack.tapeAccuracy, LEAST_SCATTER),
  };
  const model = frameModel(wanted, {
    flat: !measured.some(({ spatial }) => spatial),
    scatter,
    freeRadii: radiiOf(measured),
  });
  if (measured.length === 0 || model === undefined) {
    findings.push(finding('readings-none', 'note', '/cameBack/readings'));
    const unmeasured = sizes.map(({ check }) => ({ key: check.key, index: check.index }));
    return { returned: null, fit: { ...NO_FIT, misfit: misfitFigure([]), notMeasured: unmeasured }, findings, solved };
  }
  const lines = wanted.members.map(({ centreline }) => centreline);
  const pose = measured.some(({ posed }) => posed) ? guessPose(measured, lines) : null;
  const whole = fitProblem(model, measured, pose);
  const first = fitUnknowns(whole);
  const knows = knowledgeOf(whole, first);
  const disagreement = disagreementIn(whole, first, knows);
  const problem = disagreement?.problem ?? whole;
  const fitted = disagreement?.fitted ?? first;
  const knowledge = disagreement === null ? knows : knowledgeOf(problem, fitted);
  const compared = compare(measured, lines, problem, fitted, disagreement);
  const misfit = misfitFigure(compared);
  if (disagreement !== null) findings.push(disagrees(measured, disagreement));
  else findings.push(...contradictions(measured, studentised(first, knows), misfit.value));
  const negative = negativePieces(problem, fitted);
  findings.push(...negative);
  const decided = Math.round(knowledge.decided);
  const fit: ReadingsFit = {
    readings: fittedReadings(compared),
    unknowns: decided,
    spare: measured.length - decided,
    misfit,
    doubt: doubtOf(compared, misfit.value, DOUBTFUL),
    notMeasured: notMeasured(problem, fitted, knowledge, sizes),
  };
  const returned = negative.length > 0 ? null : returnedFrame(problem, fitted, frameMaker(wanted, sizes));
  return { returned, fit, findings, solved };
}

/** Nobody holds a length better than this [mm]; our own choice. */
const LEAST_SCATTER = 0.1;

const NO_FIT = { readings: [], unknowns: 0, spare: 0, doubt: null };

function radiiOf(measured: readonly Measured[]): Map<number, Set<number>> {
  const radii = new Map<number, Set<number>>();
  for (const { dieRadius } of measured) {
    if (dieRadius === null) continue;
    const of = radii.get(dieRadius.member) ?? new Set<number>();
    radii.set(dieRadius.member, of.add(dieRadius.piece));
  }
  return radii;
}

function solvedReadings(wanted: FrameGeometry, measured: readonly Measured[]): SolvedReadings {
  const predictAll = (frame: FrameGeometry): (number | undefined)[] => {
    const lines = linesLike(wanted, frame);
    if (lines === undefined) return measured.map(() => undefined);
    const pose = bestPose(measured, lines);
    return measured.map((one) => one.predict(lines, pose));
  };
  const predictOne =
    (one: Measured) =>
    (frame: FrameGeometry): number | undefined => {
      const lines = linesLike(wanted, frame);
      return lines === undefined ? undefined : one.predict(lines, bestPose(one.posed ? measured : [], lines));
    };
  return {
    readings: measured.map((one) => ({
      field: one.field,
      name: one.name,
      unit: one.unit,
      measured: one.value,
      accuracy: one.accuracy,
      posed: one.posed,
      predict: predictOne(one),
    })),
    predictAll,
  };
}

function compare(
  measured: readonly Measured[],
  wantedLines: Lines,
  problem: FitProblem,
  fitted: Fitted,
  disagreement: Disagreement | null,
): Compared[] {
  const lines = linesOf(problem.model, parametersOf(problem, fitted.unknowns));
  const pose = poseOf(problem, fitted.unknowns);
  const wantedPose = bestPose(measured, wantedLines);
  return measured.map((one, index) => ({
    one,
    wanted: one.predict(wantedLines, wantedPose) ?? one.value,
    fitted: disagreement?.place === index ? disagreement.ought : (one.predict(lines, pose) ?? one.value),
    disagrees: disagreement?.place === index,
  }));
}

const linesOf = (model: FrameModel, values: readonly number[]): Lines =>
  layFrame(model, values).map(({ line }) => line);

/** A tape shows tenths of a millimetre, a level hundredths of a degree. */
const SHOWN = { mm: 10, deg: 100 } as const;

const shown = (value: number, unit: 'mm' | 'deg'): number => Math.round(value * SHOWN[unit]) / SHOWN[unit];

function disagrees(measured: readonly Measured[], { place, ought, off }: Disagreement): Finding {
  const one = measured[place];
  const unit = one?.unit ?? 'mm';
  const field = one?.valueField ?? '/cameBack/readings';
  const value = shown(ought, unit);
  const code = unit === 'mm' ? 'reading-disagrees' : 'reading-angle-disagrees';
  const data = { value: one?.value ?? value, low: value, high: value, off: Math.round(off * 10) / 10 };
  // what was measured is never replaced by what was computed: it is left out, or measured again
  return finding(code, 'caution', field, data, { field, value: null });
}

/** Readings that no frame has: the one that is furthest off is named. */
function contradictions(measured: readonly Measured[], spread: readonly (number | null)[], misfit: number): Finding[] {
  if (misfit <= DOUBTFUL) return [];
  const sizes = spread.map((one) => Math.abs(one ?? 0));
  const worst = measured[sizes.indexOf(Math.max(...sizes))];
  const field = worst?.valueField ?? '/cameBack/readings';
  const data = { value: Math.round(misfit * 10) / 10, high: DOUBTFUL };
  return [finding('readings-contradict', misfit > CONTRADICTS ? 'stop' : 'caution', field, data)];
}

function negativePieces(problem: FitProblem, fitted: Fitted): Finding[] {
  const lines = linesOf(problem.model, parametersOf(problem, fitted.unknowns));
  return problem.model.wanted.members.flatMap(({ name }, member) =>
    (lines[member]?.pieces ?? []).flatMap(({ length }, piece): Finding[] =>
      length >= -1e-6
        ? []
        : [
            finding('readings-piece-negative', 'stop', '/cameBack/readings', {
              member: name,
              piece: piece + 1,
              value: Math.round(length * 10) / 10,
              low: 0,
            }),
          ],
    ),
  );
}

function returnedFrame(problem: FitProblem, fitted: Fitted, make: FrameMaker): ReturnedFrame {
  const { model, free } = problem;
  const flat = model.flat || free.length === 0;
  const values = parametersOf(problem, fitted.unknowns);
  const geometry = make(linesOf(model, values), flat && model.wanted.planeNormal !== null);
  const variations = directionsOfDoubt(problem, fitted).flatMap((direction): FrameGeometry[] => {
    const moved = parametersOf(
      problem,
      fitted.unknowns.map((value, index) => value + (direction[index] ?? 0)),
    );
    const varied = make(linesOf(model, moved), flat && model.wanted.planeNormal !== null);
    return furthest(geometry, varied) > MOVES_NOTHING ? [varied] : [];
  });
  return { geometry, variations };
}

/** How far the piece that has moved furthest starts from where it started [mm]. */
function furthest(frame: FrameGeometry, other: FrameGeometry): number {
  let most = 0;
  frame.members.forEach(({ centreline }, member) => {
    const line = other.members[member]?.centreline;
    centreline.pieces.forEach(({ start, length }, piece) => {
      const is = line?.pieces[piece];
      if (is === undefined) return;
      const { x, y, z } = is.start;
      most = Math.max(most, Math.hypot(x - start.x, y - start.y, z - start.z), Math.abs(is.length - length));
    });
  });
  return most;
}
