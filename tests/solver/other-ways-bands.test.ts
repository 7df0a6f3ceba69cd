import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Figure } from '../../server/plan/figure.ts';
import { planSpringback } from '../../server/solver/bending/plan-springback.ts';
import { setUpOf } from '../../server/solver/bending/set-up.ts';
import { correctionTargets } from '../../server/solver/correction/correction-targets.ts';
import { leaveWay } from '../../server/solver/correction/leave-way.ts';
import { newFrameWay, type NewFrame } from '../../server/solver/correction/new-frame-way.ts';
import { judge } from '../../server/solver/correction/outcome.ts';
import { rebentFrame } from '../../server/solver/correction/rebend.ts';
import { rebendWay } from '../../server/solver/correction/rebend-way.ts';
import { arcsOf } from '../../server/solver/correction/turn-limits.ts';
import { drawFrame } from '../../server/solver/frame/expand-frame.ts';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { planFrame } from '../../server/solver/frame/plan-frame.ts';
import { UNMOVED } from '../../server/solver/geometry/rigid-motion.ts';
import { planTube } from '../../server/solver/tube/plan-tube.ts';
import { D, DEGREE, drawn, EASY, HOOP, RUN, workOn } from './made-up-corrections.ts';
import { settledClosing } from './settled-closing.ts';

const turnedBy = (frame: FrameGeometry, degrees: readonly number[]): FrameGeometry =>
  rebentFrame(
    frame,
    arcsOf(frame).map((arc, index) => ({ ...arc, turn: (degrees[index] ?? 0) * DEGREE })),
  );

/** Normal draws from a small generator (Lehmer, with Box and Muller), the same ones each time. */
function normalDraws(): () => number {
  let state = 381;
  const next = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

const DRAWS = 3000;
/** Standard error of a standard deviation from so many draws is 1 / √(2 n): four of them. */
const NEAR = 4 / Math.sqrt(2 * DRAWS);

describe('bands beside drawn frames', () => {
  const sigmas = [0.05, 0.08, 0.06];
  it.each([
    ['hoop', drawn(HOOP), [1.5, -0.6]],
    ['crowned hoop', drawn({ ...HOOP, crossbar: { form: 'crowned', radius: 2400 } }), [1, 0.5, -0.8]],
    ['run in space', drawn(RUN), [1.2, -0.4, 0.9]],
  ])('%s', (_, wanted, off) => {
    const back = turnedBy(wanted, off);
    const variations = sigmas.slice(0, off.length).map((by, at) =>
      turnedBy(
        back,
        off.map((_one, index) => (index === at ? by : 0)),
      ),
    );
    const work = workOn(wanted, back, { variations, tape: 30 });
    const way = leaveWay(work);
    const fixed = { motionAt: () => UNMOVED, members: [] };
    const draw = normalDraws();
    const base = judge(work, fixed);
    const drawnFrames = Array.from({ length: DRAWS }, () => {
      const actual = turnedBy(
        back,
        off.map((_one, index) => (sigmas[index] ?? 0) * draw()),
      );
      const { targets } = correctionTargets({
        fixing: [],
        wanted,
        actual,
        outsideDiameter: D,
        tape: 30,
        tolerance: 3,
      });
      return judge({ wanted, actual, targets, posts: [] }, fixed);
    });
    const spread = (of: (outcome: typeof base) => number) =>
      Math.sqrt(drawnFrames.reduce((sum, one) => sum + (of(one) - of(base)) ** 2, 0) / DRAWS);
    for (const [index, size] of way.after.entries()) {
      const band = size.cameBack.band?.plusMinus ?? 0;
      expect(Math.abs(spread((one) => one.sizes[index]!.after) - band)).toBeLessThan(NEAR * band + 1e-3);
    }
    expect(way.toe.band!.plusMinus * DEGREE).toBeCloseTo(
      spread((one) => one.toe),
      4,
    );
    for (const [index, fixing] of way.fixings.entries()) {
      const moved = Math.sqrt(
        drawnFrames.reduce((sum, one) => {
          const [a, b] = [one.targets[index]!.off, base.targets[index]!.off];
          return sum + (a.x - b.x) ** 2 + (a.y - b.y) ** 2 + (a.z - b.z) ** 2;
        }, 0) / DRAWS,
      );
      const band = fixing.misfit.band!.plusMinus;
      expect(Math.abs(moved - band)).toBeLessThan(NEAR * band);
    }
  });

  it('a misfit of nothing has the band that its point has', () => {
    const wanted = drawn(HOOP);
    const way = leaveWay(workOn(wanted, wanted, { variations: [turnedBy(wanted, [0.1, 0])], tape: 1 }));
    expect(way.fixingMisfit.value).toBeLessThan(1e-9);
    expect(way.fixingMisfit.band!.plusMinus).toBeGreaterThan(0.2);
    expect(way.fixingMisfit.band!.from).toEqual(['readings']);
  });

  it('a rebend adds what the machine scatters, and says so', () => {
    const wanted = drawn(HOOP);
    const work = workOn(wanted, turnedBy(wanted, [2, 0]), { variations: [turnedBy(wanted, [2.02, 0])] });
    const sure = rebendWay(work, EASY).way;
    const rough = rebendWay(work, { ...EASY, machine: { ...EASY.machine, angleScatter: 0.5 } }).way;
    expect(sure.endWidth!.band!.from).toEqual(['readings']);
    expect(rough.endWidth!.band!.from).toEqual(['angle-scatter', 'readings']);
    const lever = wanted.members[0]!.centreline.pieces[0]!.length;
    const added = Math.sqrt(rough.endWidth!.band!.plusMinus ** 2 - sure.endWidth!.band!.plusMinus ** 2);
    expect(added / (lever * 0.5 * DEGREE)).toBeGreaterThan(0.9);
    expect(added / (lever * 0.5 * DEGREE)).toBeLessThan(1.2);
  });
});

describe('a new frame', () => {
  const job = { ...newJob('hoop'), frame: HOOP };
  const { grade, tolerance } = planTube(job.tube);
  const machine = setUpOf(job.machine, job.tube).setUp!;
  const law = planSpringback(job.tube, grade, machine).law!;
  const wanted = drawFrame(HOOP, {
    outsideDiameter: job.tube.outsideDiameter,
    cornerRadius: law.radiusAfterRelease,
    root: '/frame',
    closingStraight: () => null,
  }).geometry!;
  const { frame } = planFrame(
    { ...job, holes: job.purge.holes, barJoints: [], quality: 'B', closing: settledClosing(job.closing) },
    wanted,
    { grade, law, machine, tolerance },
    [],
  );
  const made: NewFrame = {
    fixing: [],
    tolerance: 3,
    effort: { welds: 2, cuts: 4, bends: 2, pieces: [], bentTube: 0, joints: [] },
    machine,
    law,
    fromFinish: new Set(),
    checks: frame.checks,
  };
  const way = newFrameWay(workOn(wanted, wanted), made);

  it('is as wanted, with the bands that the plan of its sizes has', () => {
    expect(way.fixingMisfit.value).toBeLessThan(1e-9);
    for (const size of way.after) {
      const planned = frame.checks.find(({ key, index }) => key === size.key && index === size.index)!;
      expect(size.difference.value).toBeCloseTo(0, 9);
      expect(size.cameBack.band).toEqual(planned[planned.reference].band);
    }
    expect(way.endWidth!.band).toEqual(frame.checks.find(({ key }) => key === 'width-at-feet')!.outside.band);
  });

  it('has feet that scatter as far as its width at the feet does', () => {
    const band = ({ band: own }: Figure) => own!.plusMinus;
    // both feet share what the width is off by, and corners hold the frame
    expect(band(way.fixingMisfit) / band(way.endWidth!)).toBeGreaterThan(0.3);
    expect(band(way.fixingMisfit) / band(way.endWidth!)).toBeLessThan(1.2);
  });
});
