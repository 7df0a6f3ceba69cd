import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Hoop } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';
import type { Way, WayKey } from '../../server/plan/correction.ts';
import { readHoop } from '../../server/solver/correction/hoop-readings.ts';
import { wrongMarks } from '../../server/solver/correction/wrong-marks.ts';
import { frameGeometry } from '../../server/solver/frame/expand-frame.ts';
import { plan } from '../../server/solver/plan.ts';

const demo = landingStage();
const wanted = demo.frame as Hoop;

function corrected(job: Job) {
  const { correction } = plan(job);
  if (correction === null) throw new Error('no correction');
  const way = (key: WayKey): Way => correction.ways.find((one) => one.key === key)!;
  return { correction, way };
}

/** The demo's hoop, came back with other sizes [mm over the outside]. */
function cameBackAs(sizes: Partial<Record<'width' | 'widthAtFeet' | 'leftLeg' | 'rightLeg', number>>): Job {
  const outside = (value: number) => ({ value, reference: 'outside' as const });
  const typed = Object.fromEntries(Object.entries(sizes).map(([key, value]) => [key, outside(value)]));
  return { ...demo, cameBack: { tapeAccuracy: 1, frame: { ...wanted, ...typed } } };
}

describe('the example frame', () => {
  it('came back as its slip makes it, to the millimetre of the tape', () => {
    const radius = plan(demo).springback!.radiusAfterRelease.value;
    const { geometry } = frameGeometry(wanted, { outsideDiameter: 38.1, cornerRadius: radius, root: '/frame' });
    const planned = geometry!.members[0]!.centreline;
    const made = readHoop(wrongMarks(planned, 'start', demo.machine.trimAllowance)!)!;
    const extra = geometry!.checks.find((check) => check.key === 'left-leg')!.outsideExtra;
    const back = demo.cameBack!.frame as Hoop;
    expect(back.width.value).toBe(Math.round(made['width-at-corners'] + 38.1));
    expect(back.widthAtFeet!.value).toBe(Math.round(made['width-at-feet'] + 38.1));
    expect(back.leftLeg.value).toBe(Math.round(made['left-leg'] + extra));
    expect(back.rightLeg.value).toBe(Math.round(made['right-leg'] + extra));
  });

  it('names the slip, and only that one', () => {
    const { correction } = corrected(demo);
    expect(correction.slips[0]).toMatchObject({ key: 'apex-as-start', explains: true });
    expect(correction.slips.slice(1).every((slip) => !slip.explains)).toBe(true);
  });

  it('is narrowed to its widths by one joint on each crossing member', () => {
    const { correction, way } = corrected(demo);
    const turned = way('splice-turned');
    expect(correction.recommended).toBe('splice-turned');
    expect(turned.joints.map((joint) => joint.member)).toEqual(['hoop', 'crossbar 1']);
    expect(turned.footMisfit.value).toBeLessThan(0.2);
    expect(turned.largestHiLo.value).toBeLessThan(0.01);
    const corner = turned.after.find((one) => one.key === 'width-at-corners')!;
    expect(Math.abs(corner.difference.value)).toBeLessThan(0.3);
  });

  it('keeps its angle where the halves only move together: the kink is the turn that was taken out', () => {
    const one = corrected(demo).way('splice-one');
    const crown = one.joints.find((joint) => joint.member === 'hoop')!;
    expect(crown.on).toBe('rolled');
    const taken = crown.faceB.station.value - crown.faceA.station.value + demo.closing.shrinkage - demo.closing.gap;
    expect((crown.kink.value * Math.PI) / 180).toBeCloseTo(taken / 2400, 8);
    // shrinkage gives back what it takes: the sawn piece is shorter by it
    expect(crown.removed.value).toBeCloseTo(taken - demo.closing.shrinkage, 9);
  });

  it('shares the kink between two joints on the crown', () => {
    const two = corrected(demo).way('splice-two');
    const [left, right] = two.joints.filter((joint) => joint.member === 'hoop');
    expect(two.joints).toHaveLength(3);
    expect(left!.kink.value).toBeCloseTo(right!.kink.value, 3);
    const middle = (joint: typeof left) => (joint!.faceA.station.value + joint!.faceB.station.value) / 2;
    expect(middle(right) - middle(left)).toBeCloseTo(demo.closing.spread, 0);
  });

  it('cannot be narrowed at the corners by rebending', () => {
    const { way } = corrected(demo);
    const bent = way('rebend');
    const corner = bent.after.find((one) => one.key === 'width-at-corners')!;
    expect(Math.abs(corner.difference.value)).toBeGreaterThan(20);
    expect(bent.rebends.length).toBeGreaterThan(0);
  });

  it('has its templates for the way that is shown, and none for the others', () => {
    const { correction } = corrected(demo);
    for (const way of correction.ways) {
      const shown = way.key === correction.chosen;
      for (const joint of way.joints) expect(joint.faceA.template !== null).toBe(shown);
    }
  });
});

describe('other frames', () => {
  it('a splayed frame is closed parallel by rebending alone', () => {
    const { correction, way } = corrected(cameBackAs({ widthAtFeet: 990 }));
    expect(way('rebend').footMisfit.value).toBeLessThan(1.5);
    expect(correction.recommended).toBe('rebend');
  });

  it('a frame that came back as wanted is left alone', () => {
    const job = cameBackAs({});
    const { correction } = corrected(job);
    expect(correction.recommended).toBe('leave');
    expect(plan(job).findings.map((one) => one.code)).toContain('came-back-as-wanted');
  });

  it('a narrower frame cannot be put right by cutting', () => {
    const job = cameBackAs({ width: 920 });
    const { way } = corrected(job);
    expect(way('splice-one').possible).toBe(false);
    expect(way('splice-one').reasons).toContain('came-back-narrower');
    const said = plan(job).findings.find(({ code }) => code === 'came-back-narrower');
    expect(said?.field).toBe('/cameBack/frame/width/value');
    expect(Number(said?.data['value'])).toBeGreaterThan(0);
  });

  it.each([
    [345, 'cut-too-much'],
    [400, 'cut-no-place'],
    [290, 'cut-beside-bend'],
  ] as const)('a cut %i off the middle of a straight crossbar: %s', (cutOffset, code) => {
    const straight = { ...wanted, crossbar: { form: 'straight' as const } };
    const wider = { ...straight, width: { value: 983, reference: 'outside' as const } };
    const closing = { ...demo.closing, cutOffset, way: 'splice-one' as const };
    const job: Job = { ...demo, frame: straight, cameBack: { tapeAccuracy: 1, frame: wider }, closing };
    const made = plan(job);
    const found = made.findings.find((one) => one.code === code)!;
    expect(found).toMatchObject({ data: { member: 'hoop' } });
    const possible = made.correction!.ways.find((way) => way.key === 'splice-one')!.possible;
    expect(possible).toBe(code === 'cut-beside-bend');
    expect(found.grade).toBe(possible ? 'caution' : 'stop');
  });

  it('another shape is not compared', () => {
    const job: Job = { ...demo, cameBack: { tapeAccuracy: 1, frame: { shape: 'straight', length: 900 } } };
    const made = plan(job);
    expect(made.correction).toBeNull();
    expect(made.findings.map((one) => one.code)).toContain('came-back-other-shape');
  });

  it('a way that is asked for and possible is the one shown', () => {
    const { correction } = corrected({ ...demo, closing: { ...demo.closing, way: 'splice-two' } });
    expect(correction.chosen).toBe('splice-two');
    const refused = corrected({ ...cameBackAs({ width: 920 }), closing: { ...demo.closing, way: 'splice-one' } });
    expect(refused.correction.chosen).toBe(refused.correction.recommended);
  });
});

it('a ring is cut through both its sides', () => {
  const ring = (width: number) => ({
    shape: 'ring' as const,
    width: { value: width, reference: 'outside' as const },
    height: { value: 500, reference: 'outside' as const },
  });
  const job: Job = { ...demo, frame: ring(800), cameBack: { tapeAccuracy: 1, frame: ring(830) } };
  const one = corrected(job).way('splice-one');
  expect(one.possible).toBe(true);
  expect(one.joints).toHaveLength(2);
  for (const joint of one.joints) {
    expect(joint.kink.value).toBeCloseTo(0, 6);
    expect(joint.removed.value).toBeCloseTo(30 - demo.closing.shrinkage, 6);
  }
  expect(one.cornerMisfit.value).toBeLessThan(1e-6);
});
