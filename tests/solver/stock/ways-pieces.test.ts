import { describe, expect, it } from 'vitest';
import { landingStage } from '../../../db/demo/landing-stage.ts';
import type { Reading } from '../../../server/job/came-back.ts';
import type { Job } from '../../../server/job/job.ts';
import type { WayKey } from '../../../server/plan/correction.ts';
import { plan } from '../../../server/solver/plan.ts';

const JOINT = { member: 'hoop', station: 1640 };

const demo = landingStage();

const shown = (way: WayKey, change: (job: Job) => Job = (job) => job) =>
  plan(change({ ...demo, closing: { ...demo.closing, way }, stock: { ...demo.stock, joints: [JOINT], layout: null } }));

const size = (check: string, value: number): Reading => ({
  reading: 'size',
  check,
  index: 0,
  reference: 'outside',
  value,
  accuracy: null,
});

/** The frame came back this much too narrow. */
const narrow = (by: number) => (job: Job) => ({
  ...job,
  cameBack: {
    tapeAccuracy: 1,
    angleAccuracy: 0.2,
    readings: [
      size('width-at-corners', 950 - by),
      size('width-at-feet', 950 - by),
      size('left-leg', 600),
      size('right-leg', 600),
    ],
  },
});

const legs = (made: ReturnType<typeof plan>) => made.stock!.pieces.filter(({ kind }) => kind === 'leg').length;

describe('a frame that came back', () => {
  it('has joints between bars only where it is made anew', () => {
    const anew = shown('new-frame');
    const names = anew.stock!.pieces.map(({ name }) => name);
    expect(names).toContain('hoop 1 of 2');
    expect(names).toContain('hoop 2 of 2');
    expect(anew.welding!.welds.map(({ kind }) => kind)).toContain('bar-joint');
    expect(anew.findings.map(({ code }) => code)).toContain('bar-joint-bent-over');

    const spliced = shown('splice-fewest');
    expect(spliced.stock!.pieces.every(({ kind }) => kind === 'let-in' || kind === 'leg')).toBe(true);
    expect(spliced.welding!.welds.map(({ kind }) => kind)).not.toContain('bar-joint');
    expect(spliced.findings.map(({ code }) => code)).not.toContain('bar-joint-bent-over');
  });

  it('takes no new tube where it is left as it is', () => {
    const left = shown('leave');
    expect(left.stock!.pieces).toHaveLength(legs(left));
  });

  it('takes let-in pieces as they are sawn, called by their joints', () => {
    const made = shown('splice-fewest', narrow(60));
    const way = made.correction!.ways.find(({ key }) => key === made.correction!.chosen)!;
    const letIn = way.joints.flatMap(({ number, letIn: piece }) => (piece === null ? [] : [{ number, piece }]));
    expect(letIn.length).toBeGreaterThan(0);
    const pieces = made.stock!.pieces.filter(({ kind }) => kind === 'let-in');
    expect(pieces.map(({ name, length }) => [name, length.value])).toEqual(
      letIn.map(({ number, piece }) => [`let-in ${String(number)}`, piece.cutLength.value]),
    );
  });

  it('takes as much tube made anew as the plan of the frame says', () => {
    const anew = shown('new-frame', (job) => ({ ...job, stock: { ...job.stock, joints: [] } }));
    const members = anew.stock!.pieces.filter(({ kind }) => kind === 'member');
    const all = members.reduce((sum, { length }) => sum + length.value, 0);
    expect(all).toBeCloseTo(anew.frame!.tubeLength.value, 6);
  });
});
