import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { correctionWork } from '../../server/solver/correction/correction-work.ts';
import { judge, type JudgeContext, type Outcome } from '../../server/solver/correction/outcome.ts';
import { outcomeFigures } from '../../server/solver/correction/outcome-figures.ts';
import { assembler } from '../../server/solver/correction/splice/assemble.ts';
import { searchSplices, type SpliceTask } from '../../server/solver/correction/splice/search-splices.ts';
import type { SolvedSplice } from '../../server/solver/correction/splice/solve-splice.ts';
import { splicedFrame } from '../../server/solver/correction/splice/spliced-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { moved, turned, type RigidMotion } from '../../server/solver/geometry/rigid-motion.ts';
import { angleBetween, dot, length, subtract } from '../../server/solver/geometry/vector.ts';
import type { ReturnedFrame } from '../../server/solver/returned/returned-frame.ts';
import {
  came,
  D,
  deformed,
  drawn,
  everyPiece,
  everySize,
  fitted,
  hoop,
  readOn,
  run,
} from '../properties/returned-frames.ts';
import { randomSource } from '../properties/returned-scatter.ts';
import { settledClosing } from './settled-closing.ts';

const DRAWS = 400;
const TAPE = 1;

const workOf = (wanted: FrameGeometry, returned: ReturnedFrame) =>
  correctionWork({ fixing: [], posts: [], wanted, returned, outsideDiameter: D, tape: TAPE, tolerance: 3 }).work;

/** The best splice of a frame as its readings make it. */
function spliced(wanted: FrameGeometry, returned: ReturnedFrame) {
  const work = workOf(wanted, returned);
  const closing = settledClosing(newJob('hoop').closing);
  const { kerf, gap, shrinkage } = closing;
  const flat = wanted.planeNormal !== null && work.actual.planeNormal !== null;
  const task: SpliceTask = {
    frame: work.actual,
    targets: work.targets,
    planeNormal: flat ? wanted.planeNormal : null,
    closing,
    sizes: { outsideDiameter: D, kerf, gap, shrinkage, tape: TAPE },
    wall: 1.65,
  };
  const { best, ground } = searchSplices(task);
  const { splice } = best[0]!.candidate;
  const assembled = assembler(splice, work.actual);
  const outcome = (context: JudgeContext): Outcome => {
    const isPlanned = context === work;
    const motions = isPlanned ? splice.motions : assembled(context.actual);
    return judge(context, splicedFrame(splice, context.actual, ground.graph, motions));
  };
  return { work, splice, outcome };
}

const bars = [{ fromFoot: { value: 250, reference: 'centre' as const } }];

const cases = [
  ['a hoop with a crown', drawn(hoop({ innerCrossbars: [] })), 11],
  ['a hoop whose crossbar is cut too', drawn(hoop({ innerCrossbars: bars })), 5],
  ['a run in space', drawn(run), 3],
] as const;

/** The frame that came back, its readings without any error, and what is read of it. */
function cameBack(wanted: FrameGeometry, seed: number) {
  const { normal } = randomSource(seed);
  const actual = deformed(wanted, (_, what) => (what === 'length' ? 0.25 : 0.1) * normal());
  // a crossbar's own length would say how far it is out of level, and that goes with the square: no band of first order
  const pieces = everyPiece(wanted).filter(
    (one) => one.reading === 'size' || !('member' in one) || one.member !== 'crossbar 1',
  );
  const readings = [...pieces, ...everySize(wanted)];
  const exact = readOn(wanted, actual, readings);
  return { exact, answer: fitted(wanted, came(exact)) };
}

describe('the band of where a splice brings a fixing point', () => {
  it.each(cases)('%s: as wide as frames spread that the readings may have come from', (_, wanted, seed) => {
    const { normal } = randomSource(77);
    const { exact, answer } = cameBack(wanted, seed);
    const { work, outcome } = spliced(wanted, answer.returned!);
    const base = outcome(work);
    const { fixings } = outcomeFigures(base, work.variations.map(outcome));
    const accuracies = answer.solved.readings.map(({ accuracy }) => accuracy);
    const frames: FrameGeometry[] = [];
    for (let round = 0; round < DRAWS; round += 1) {
      const measured = exact.map((one, index) =>
        one.reading === 'point' ? one : { ...one, value: one.value! + accuracies[index]! * normal() },
      );
      const { fit, returned } = fitted(wanted, came(measured));
      // a suspect that is left out makes another frame: bands are about the fit itself
      if (!fit.readings.some(({ disagrees }) => disagrees)) frames.push(returned!.geometry);
    }
    expect(frames.length).toBeGreaterThan(0.6 * DRAWS);
    // the plan's marks on every one of them, cut back as the plan says
    const drawnFrames = workOf(wanted, { geometry: answer.returned!.geometry, variations: frames }).variations;
    const outcomes = drawnFrames.map(outcome);
    const landed = base.targets.flatMap(({ target }, index) => (target.kind === 'fixing' ? [index] : []));
    expect(landed.length).toBe(fixings.length);
    expect(landed.length).toBeGreaterThan(1);
    for (const [place, index] of landed.entries()) {
      const squares = outcomes.map(
        ({ targets }) => length(subtract(targets[index]!.off, base.targets[index]!.off)) ** 2,
      );
      const spread = Math.sqrt(squares.reduce((sum, one) => sum + one, 0) / squares.length);
      const band = fixings[place]!.misfit.band!.plusMinus;
      expect(spread).toBeGreaterThan(0.05);
      expect(band / spread).toBeGreaterThan(0.85);
      expect(band / spread).toBeLessThan(1.15);
    }
  });
});

/** How far the faces of a joint are apart on a frame that is not the planned one [mm, rad]. */
function facesApart(splice: SolvedSplice, motions: readonly RigidMotion[], frame: FrameGeometry) {
  return splice.joints.map(({ joint, middle, sides }) => {
    const side = (station: number, body: number) => {
      const place = placeAt(frame.members[joint.place.stretch.member]!.centreline, station)!;
      return { point: moved(motions[body]!, place.point), tangent: turned(motions[body]!, place.tangent) };
    };
    const a = side(middle - sides.half, joint.bodyA);
    const b = side(middle + sides.half, joint.bodyB);
    return {
      // new tube is as long as it was made
      gap: length(subtract(b.point, a.point)) - length(sides.gap),
      along: dot(subtract(b.point, a.point), a.tangent),
      letIn: sides.letIn !== null,
      kink: angleBetween(a.tangent, b.tangent),
      plannedKink: angleBetween(sides.a.tangent, sides.b.tangent),
    };
  });
}

describe('a frame that is put together by the marks of another', () => {
  it.each(cases.filter(([, { members }]) => members.length === 1))(
    '%s: in an open frame its faces lie on each other, with the kink that was sawn',
    (_, wanted, seed) => {
      const { answer } = cameBack(wanted, seed);
      const { work, splice } = spliced(wanted, answer.returned!);
      expect(work.variations.length).toBeGreaterThan(2);
      const assembled = assembler(splice, work.actual);
      for (const { actual } of work.variations) {
        for (const { gap, kink, plannedKink } of facesApart(splice, assembled(actual), actual)) {
          expect(Math.abs(gap)).toBeLessThan(0.02);
          expect(kink).toBeCloseTo(plannedKink, 4);
        }
      }
    },
  );

  it.each(cases.filter(([, { members }]) => members.length === 1))(
    '%s: where its welds pull in more, its faces end up that much closer, and turn no further',
    (_, wanted, seed) => {
      const { answer } = cameBack(wanted, seed);
      const { work, splice } = spliced(wanted, answer.returned!);
      const assembled = assembler(splice, work.actual);
      const as = facesApart(splice, assembled(work.actual), work.actual);
      const pulled = facesApart(splice, assembled(work.actual, 0.4), work.actual);
      for (const [index, { along, letIn, kink }] of pulled.entries()) {
        expect(as[index]!.along - along).toBeCloseTo(letIn ? 0.8 : 0.4, 2);
        expect(kink).toBeCloseTo(as[index]!.kink, 4);
      }
    },
  );

  it('is the planned one where it is the planned one', () => {
    for (const [, wanted, seed] of cases) {
      const { answer } = cameBack(wanted, seed);
      const { work, splice } = spliced(wanted, answer.returned!);
      for (const [body, motion] of assembler(splice, work.actual)(work.actual).entries()) {
        const like = splice.motions[body]!;
        for (const point of work.targets.map(({ spot }) => spot.point))
          expect(length(subtract(moved(motion, point), moved(like, point)))).toBeLessThan(0.01);
      }
    }
  });
});
