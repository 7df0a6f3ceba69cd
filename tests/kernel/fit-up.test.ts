// Cuts and closes tube with the geometry kernel as the plan says, and measures what comes of it.
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { Joint } from '../../server/plan/joint.ts';
import {
  composed,
  inverted,
  moved,
  turnAbout,
  UNMOVED,
  type RigidMotion,
} from '../../server/solver/geometry/rigid-motion.ts';
import { length, scale, subtract, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { giveBack } from './cut-tube.ts';
import { inPlane, inSpace, type MadeUpFrame } from './fit-up-frames.ts';
import { sectionAt, type Weld } from './fit-up-joint.ts';
import { TUBE } from './fit-up-shapes.ts';
import { splicesOf, weldsOf, type Closes, type PlannedSplice } from './fit-up-splices.ts';
import { startKernel } from './kernel.ts';

beforeAll(startKernel);
afterEach(giveBack);

/** Gap and shrinkage take turns [mm]: pulled in, nothing at all, opened. */
const CLOSES: readonly Closes[] = [
  { gap: 0, shrinkage: 0.5 },
  { gap: 0, shrinkage: 0 },
  { gap: 1, shrinkage: 0.8 },
];

/** How near the kernel must come to the plan [degrees, mm]. */
const LEAN = 0.001;
const KINK = 0.001;
const APART = 0.01;
const HI_LO = 0.01;
const MISFIT = 0.01;

const DEGREES = 180 / Math.PI;
const { outsideDiameter, wall } = TUBE;
const METAL = Math.PI * (outsideDiameter - wall) * wall;
/** Metal in the same place twice [mm³]: faces that meet may come nearer than they should by no more than that. */
const SHARED = METAL * APART;

const cases = (frames: MadeUpFrame[]) =>
  frames.map((frame, index) => [frame.name, frame, CLOSES[index % CLOSES.length]!] as const);

/**
 * The kink of a bent let-in piece is told where centrelines meet, before gap and shrinkage are shared out: on an arc
 * each of the two faces then stands so far round the bend [degrees].
 */
const turnedByTrim = ({ letIn }: Joint, { gap, shrinkage }: Closes): number =>
  letIn === null || letIn.radius === null ? 0 : (Math.abs(gap - shrinkage) / 2 / letIn.radius.value) * DEGREES;

/** Every way in which a weld is not what the plan says. */
function faults(weld: Weld, joint: Joint, closes: Closes): string[] {
  const { lean, apart, hiLo, plannedHiLo, kink, plannedKink, overlap } = weld;
  const wrong: [string, boolean][] = [
    ['lean', lean > LEAN],
    ['apart', Math.abs(apart) > APART],
    ['hi-lo', Math.abs(hiLo - plannedHiLo) > HI_LO],
    ['kink', Math.abs(kink - plannedKink) > KINK + 2 * turnedByTrim(joint, closes)],
    ['overlap', overlap > SHARED],
  ];
  return wrong.flatMap(([name, is]) => (is ? [name] : []));
}

/** How far a section through the tube at each foot or corner is from where it must be [mm]. */
const offAt = ({ work, corrected, lay }: PlannedSplice, what: 'fixing' | 'corner'): number[] =>
  work.targets
    .filter(({ kind }) => kind === what)
    .map(({ spot: { member, station }, wanted }) => {
      const line = work.actual.members.find(({ name }) => name === member)!.centreline;
      const motion = composed(lay, corrected.motionAt(member, station));
      return length(subtract(sectionAt(line, station, motion, TUBE), wanted));
    });

describe.each([
  ['plane', inPlane()],
  ['space', inSpace()],
])('ten frames in the %s, cut and closed', (_, frames) => {
  it('are ten', () => {
    expect(frames).toHaveLength(10);
  });

  it.each(cases(frames))('%s', (_name, frame, closes) => {
    const splices = splicesOf(frame, closes);
    expect(splices.length).toBeGreaterThan(0);
    for (const splice of splices) {
      const { way } = splice;
      expect(way.joints.length).toBeGreaterThan(0);
      const kinks: number[] = [];
      for (const joint of way.joints) {
        const welds = weldsOf(splice, joint, closes);
        expect(welds).toHaveLength(joint.letIn === null ? 1 : 2);
        // what is bent and what is sawn of a bent piece are the same length
        const { letIn } = joint;
        if (letIn !== null && letIn.radius !== null && letIn.angle !== null)
          expect((letIn.radius.value * letIn.angle.value) / DEGREES).toBeCloseTo(letIn.length.value, 6);
        for (const weld of welds) {
          kinks.push(weld.kink);
          expect({ weld, faults: faults(weld, joint, closes) }).toMatchObject({ faults: [] });
        }
      }
      expect(Math.abs(way.largestKink.value - Math.max(...kinks))).toBeLessThan(KINK);
      const [feet, corners] = [offAt(splice, 'fixing'), offAt(splice, 'corner')];
      expect(way.fixings).toHaveLength(feet.length);
      for (const [foot, { misfit }] of way.fixings.entries())
        expect(Math.abs(misfit.value - feet[foot]!)).toBeLessThan(MISFIT);
      expect(feet.length + corners.length).toBeGreaterThan(1);
      expect(Math.abs(way.fixingMisfit.value - Math.max(0, ...feet))).toBeLessThan(MISFIT);
      expect(Math.abs(way.cornerMisfit.value - Math.max(0, ...corners))).toBeLessThan(MISFIT);
    }
  });
});

describe('what the frames bring about', () => {
  let joints: Joint[] = [];
  beforeAll(() => {
    joints = [...cases(inPlane()), ...cases(inSpace())].flatMap(([, frame, closes]) =>
      splicesOf(frame, closes).flatMap(({ way }) => way.joints),
    );
  });

  it.each([
    ['slugs', (joint: Joint) => joint.kind === 'slug'],
    ['wedges or darts on straights', (joint: Joint) => joint.on === 'straight' && joint.kink.value > 0.2],
    ['wedges on crowns', (joint: Joint) => joint.on === 'rolled' && joint.letIn === null],
    ['straight pieces let in', (joint: Joint) => joint.letIn?.radius === null],
    ['bent pieces let in', (joint: Joint) => joint.letIn !== null && joint.letIn.radius !== null],
    ['twists', (joint: Joint) => Math.abs(joint.twist.value) > 0.3],
    ['twists with a piece let in', (joint: Joint) => joint.letIn !== null && Math.abs(joint.twist.value) > 0.1],
    ['faces that lean neither in the plane of the curve nor square to it', obliquely],
  ])('has %s', (_, is) => {
    expect(joints.filter(is).length).toBeGreaterThan(1);
  });
});

/** Whether a face leans towards a generator between the four that are marked. */
function obliquely({ faceA: { tilt, tiltDirection } }: Joint): boolean {
  const past = tiltDirection % 90;
  return tilt.value > 0.1 && past > 10 && past < 80;
}

describe('what is wrong is found', () => {
  const closes = CLOSES[0]!;
  const kinked = (frame: MadeUpFrame): [PlannedSplice, Joint] => {
    const found = splicesOf(frame, closes).flatMap((splice) =>
      splice.way.joints
        .filter(({ letIn, faceA }) => letIn === null && faceA.tilt.value > 0.2)
        .map((joint): [PlannedSplice, Joint] => [splice, joint]),
    );
    return found[0]!;
  };
  const withFaceA = (joint: Joint, change: Partial<Joint['faceA']>): Joint => ({
    ...joint,
    faceA: { ...joint.faceA, ...change },
  });
  const faultsOf = (splice: PlannedSplice, joint: Joint): string[] =>
    weldsOf(splice, joint, closes).flatMap((weld) => faults(weld, joint, closes));

  describe.each([
    ['plane', inPlane()[0]!],
    ['space', inSpace()[0]!],
  ])('in the %s', (_, frame) => {
    it('a face that leans towards another generator', () => {
      const [splice, joint] = kinked(frame);
      expect(faultsOf(splice, joint)).toEqual([]);
      for (const by of [1, 90, 180]) {
        const tiltDirection = joint.faceA.tiltDirection + by;
        expect(faultsOf(splice, withFaceA(joint, { tiltDirection }))).toContain('lean');
      }
    });

    it('a face half a millimetre along the tube', () => {
      const [splice, joint] = kinked(frame);
      const { station } = joint.faceA;
      const shorter = { ...station, value: station.value - 0.5 };
      const longer = { ...station, value: station.value + 0.5 };
      expect(faultsOf(splice, withFaceA(joint, { station: shorter }))).toEqual(['apart']);
      expect(faultsOf(splice, withFaceA(joint, { station: longer }))).toEqual(['apart', 'overlap']);
      const [weld] = weldsOf(splice, withFaceA(joint, { station: longer }), closes);
      expect(weld!.overlap).toBeCloseTo(METAL * 0.5, 0);
    });

    it('a body that is a twentieth of a millimetre off, whichever way', () => {
      const [splice, joint] = kinked(frame);
      for (const axis of AXES) {
        const found = faultsOf(nudged(splice, joint, { ...UNMOVED, shift: scale(axis, 0.05) }), joint);
        expect(found.some((fault) => fault === 'apart' || fault === 'hi-lo')).toBe(true);
      }
    });

    it('a body that is turned a hundredth of a degree, about any axis but its own', () => {
      const [splice, joint] = kinked(frame);
      const closed = moved(inverted(splice.lay), joint.point);
      const found = AXES.map((axis) =>
        faultsOf(nudged(splice, joint, turnAbout(closed, scale(axis, 0.01 / DEGREES), UNMOVED.shift)), joint),
      );
      expect(found.filter((faulty) => faulty.includes('lean')).length).toBeGreaterThan(1);
    });
  });
});

const AXES: readonly Vector3[] = [UNMOVED.x, UNMOVED.y, UNMOVED.z];

/** A splice in which the body behind a joint ends up a little elsewhere. */
function nudged(splice: PlannedSplice, joint: Joint, error: RigidMotion): PlannedSplice {
  const { motionAt } = splice.corrected;
  const wrong = (member: string, station: number): RigidMotion =>
    station > joint.place ? composed(error, motionAt(member, station)) : motionAt(member, station);
  return { ...splice, corrected: { ...splice.corrected, motionAt: wrong } };
}
