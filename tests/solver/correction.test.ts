import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Reading } from '../../server/job/came-back.ts';
import type { Hoop } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { Way, WayKey } from '../../server/plan/correction.ts';
import { plan } from '../../server/solver/plan.ts';
import { settledClosing } from './settled-closing.ts';
import { sizeRead } from './size-read.ts';

const demo = landingStage();
const { shrinkage } = settledClosing(demo.closing);
const wanted = demo.frame as Hoop;

function corrected(job: Job) {
  const { correction, findings } = plan(job);
  if (correction === null) throw new Error('no correction');
  const way = (key: WayKey): Way => correction.ways.find((one) => one.key === key)!;
  return { correction, findings, way };
}

/** A job whose frame was measured, every reading over the outside [mm]. */
const measured = (job: Job, ...readings: Reading[]): Job => ({
  ...job,
  cameBack: { tapeAccuracy: 1, angleAccuracy: 0.2, readings },
});

const AS_WANTED = [
  sizeRead('width-at-corners', 950),
  sizeRead('width-at-feet', 950),
  sizeRead('left-leg', 600),
  sizeRead('right-leg', 600),
];

const others = (...keys: string[]) => AS_WANTED.filter((one) => one.reading === 'size' && !keys.includes(one.check));

describe('the example frame', () => {
  it('is the frame that its readings say', () => {
    const { correction } = corrected(demo);
    expect(correction.fit.misfit.value).toBeLessThan(1);
    const found = (key: string) => correction.differences.find((one) => one.key === key)!.cameBack.value;
    expect(found('width-at-corners')).toBeCloseTo(983, 0);
    expect(found('left-leg')).toBeCloseTo(701, 0);
  });

  it('names the slip, and only that one', () => {
    const { correction } = corrected(demo);
    expect(correction.slips[0]).toMatchObject({ keys: ['apex-as-start'], explains: true });
    expect(correction.slips.slice(1).every((slip) => !slip.explains)).toBe(true);
  });

  it('is narrowed to its widths by one joint on each crossing member', () => {
    const { correction, way } = corrected(demo);
    const spliced = way('splice-fewest');
    expect(correction.recommended).toBe('splice-fewest');
    expect(spliced.joints.map((joint) => joint.member)).toEqual(['hoop', 'crossbar 1']);
    expect(spliced.fixingMisfit.value).toBeLessThan(0.5);
    expect(spliced.largestHiLo.value).toBeLessThan(0.01);
    const corner = spliced.after.find((one) => one.key === 'width-at-corners')!;
    expect(Math.abs(corner.difference.value)).toBeLessThan(0.5);
  });

  it('gives the sawn piece what gap and shrinkage ask for', () => {
    const [crown] = corrected(demo).way('splice-fewest').joints;
    const gap = corrected({ ...demo, closing: { ...demo.closing, gap: 1 } }).way('splice-fewest').joints[0]!;
    expect(crown!.on).toBe('rolled');
    expect(gap.removed.value - crown!.removed.value).toBeCloseTo(1, 3);
    expect(crown!.removed.value).toBeCloseTo(crown!.faceB.station.value - crown!.faceA.station.value, 9);
  });

  it('is not narrowed at the corners by rebending', () => {
    const bent = corrected(demo).way('rebend');
    expect(bent.cornerWidth!.value).toBeGreaterThan(15);
    expect(bent.rebends.length).toBeGreaterThan(0);
  });

  it('has its templates for the way that is shown, and none for the others', () => {
    const { correction } = corrected(demo);
    for (const way of correction.ways) {
      const shown = way.key === correction.chosen;
      for (const { faceA, faceB } of way.joints) expect(faceA.template !== null || faceB.template !== null).toBe(shown);
    }
  });

  it('has its ways drawn over the wanted frame, and other places for the joints', () => {
    const { correction } = corrected(demo);
    const drawn = correction.picture!.ways.map(({ key }) => key);
    expect(drawn).toEqual(correction.ways.filter(({ possible }) => possible).map(({ key }) => key));
    expect(correction.alternatives.length).toBeGreaterThan(0);
    expect(correction.search.layouts).toBeGreaterThan(10);
  });
});

describe('other frames', () => {
  it('a splayed frame is closed parallel by rebending, without a weld', () => {
    const plain = { ...demo, frame: { ...wanted, innerCrossbars: [] } };
    const job = measured(plain, ...others('width-at-feet'), sizeRead('width-at-feet', 980));
    const { correction, way } = corrected(job);
    expect(way('rebend').fixingMisfit.value).toBeLessThan(1.5);
    expect(way('rebend').welds.value).toBe(0);
    expect(correction.recommended).toBe('rebend');
  });

  it('a frame that came back as wanted is left alone', () => {
    const { correction, findings } = corrected(measured(demo, ...AS_WANTED));
    expect(correction.recommended).toBe('leave');
    expect(correction.slips).toEqual([]);
    expect(findings.map((one) => one.code)).toContain('came-back-as-wanted');
  });

  it('a narrower frame is widened with new tube, its cut list told', () => {
    const straight: Job = { ...demo, frame: { ...wanted, crossbar: { form: 'straight' } } };
    const narrow = [sizeRead('width-at-corners', 920), sizeRead('width-at-feet', 920)];
    const { way } = corrected(measured(straight, ...others('width-at-corners', 'width-at-feet'), ...narrow));
    const spliced = way('splice-fewest');
    expect(spliced.possible).toBe(true);
    expect(spliced.joints.map(({ kind }) => kind)).toEqual(['let-in', 'let-in']);
    expect(spliced.welds.value).toBe(4);
    for (const { letIn, removed } of spliced.joints) {
      // 30 mm more than what is taken out, and two welds that draw in
      expect(letIn!.length.value - removed.value).toBeCloseTo(30 + 2 * shrinkage, 1);
      expect(letIn!.length.value).toBeGreaterThanOrEqual(1.5 * demo.tube.outsideDiameter);
    }
    expect(Math.abs(spliced.cornerWidth!.value)).toBeLessThan(0.5);
  });

  it('joints put down by hand stand where they were put', () => {
    const joints = [
      { member: 'hoop', station: 1000 },
      { member: 'crossbar 1', station: 300 },
    ];
    const { way } = corrected({ ...demo, closing: { ...demo.closing, joints, way: 'splice-own' } });
    const own = way('splice-own');
    expect(own.joints.map(({ place }) => Math.round(place))).toEqual([1000, 300]);
    expect(own.fixingMisfit.value).toBeLessThan(4);
  });

  it('joints that part nothing are told, and the recommended way is shown', () => {
    const joints = [{ member: 'hoop', station: 1000 }];
    const closing = { ...demo.closing, joints, way: 'splice-own' as const };
    const { correction, findings } = corrected({ ...demo, closing });
    expect(findings.find(({ code }) => code === 'cut-parts-nothing')).toMatchObject({
      grade: 'stop',
      field: '/closing/joints',
    });
    expect(correction.chosen).toBe(correction.recommended);
    expect(findings.map(({ code }) => code)).toContain('way-not-possible');
  });

  it('a frame in many loose pieces is cautioned', () => {
    const stations = [750, 900, 1050, 1200, 1350];
    const joints = [
      ...stations.map((station) => ({ member: 'hoop', station })),
      { member: 'crossbar 1', station: 470 },
    ];
    const closing = { ...demo.closing, joints, way: 'splice-own' as const };
    const told = corrected({ ...demo, closing }).findings.find(({ code }) => code === 'cut-in-many-pieces');
    expect(told).toMatchObject({ grade: 'caution', data: { value: 6 } });
  });

  it('a stretch that is barred has no joint, and the rule is told', () => {
    const barred = [{ member: 'hoop', from: 900, to: 2000, why: 'fitting' as const }];
    const { way } = corrected({ ...demo, closing: { ...demo.closing, barred } });
    const [joint] = way('splice-fewest').joints;
    expect(joint!.faceB.station.value).toBeLessThanOrEqual(900);
    expect(joint!.bounds.to).toBe('fitting');
  });

  it('without a member that may be cut there is no splice, and why is told', () => {
    const closing = { ...demo.closing, cutMembers: ['crossbar 1'] };
    const { correction, findings } = corrected({ ...demo, closing });
    expect(correction.ways.some(({ key }) => key.startsWith('splice'))).toBe(false);
    expect(findings.map(({ code }) => code)).toContain('cut-holds-together');
  });

  it('a target that no cut reaches is named with what is left', () => {
    const job: Job = {
      ...demo,
      closing: { ...demo.closing, cutMembers: ['hoop', 'crossbar 1'], mostJoints: 1 },
      fixing: [
        {
          fixing: 'pad',
          name: 'far pad',
          at: { member: 'hoop', spot: 'start', number: 1, distance: 0 },
          off: { x: 0, y: 0, z: 0 },
          lands: { x: -456, y: -400, z: 300 },
          tolerance: null,
          plate: null,
        },
      ],
    };
    const told = corrected(job).findings.find(({ code }) => code === 'target-out-of-reach');
    expect(told).toMatchObject({ field: '/fixing/0', data: { name: 'far pad' } });
    expect(Number(told!.data['value'])).toBeGreaterThan(10);
    // where it comes to stand instead is told: as far from its place as was said
    const at = ['x', 'y', 'z'].map((axis) => Number(told!.data[axis]));
    expect(Math.hypot(at[0]! + 456, at[1]! + 400, at[2]! - 300)).toBeCloseTo(Number(told!.data['value']), 6);
  });
});

it('a ring is cut through two of its sides', () => {
  const outside = (value: number) => ({ value, reference: 'outside' as const });
  const ring = { shape: 'ring' as const, width: outside(800), height: outside(500) };
  const job = measured({ ...demo, frame: ring }, sizeRead('width', 830), sizeRead('height', 500));
  const one = corrected(job).way('splice-fewest');
  expect(one.possible).toBe(true);
  expect(one.joints).toHaveLength(2);
  for (const joint of one.joints) {
    expect(joint.kink.value).toBeCloseTo(0, 2);
    expect(joint.removed.value).toBeCloseTo(30 - shrinkage, 1);
  }
  expect(one.cornerMisfit.value).toBeLessThan(0.05);
});
