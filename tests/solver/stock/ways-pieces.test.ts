import { describe, expect, it } from 'vitest';
import { landingStage } from '../../../db/demo/landing-stage.ts';
import type { Job } from '../../../server/job/job.ts';
import type { CutPiece } from '../../../server/plan/stock.ts';
import type { WayKey } from '../../../server/plan/correction.ts';
import { plan } from '../../../server/solver/plan.ts';
import { sizeRead } from '../size-read.ts';

const JOINT = { member: 'hoop', station: 1640 };

const demo = landingStage();

const shown = (way: WayKey, change: (job: Job) => Job = (job) => job) =>
  plan(change({ ...demo, closing: { ...demo.closing, way }, stock: { ...demo.stock, joints: [JOINT], layout: null } }));

/** The frame came back this much too narrow. */
const narrow = (by: number) => (job: Job) => ({
  ...job,
  cameBack: {
    tapeAccuracy: 1,
    angleAccuracy: 0.2,
    readings: [
      sizeRead('width-at-corners', 950 - by),
      sizeRead('width-at-feet', 950 - by),
      sizeRead('left-leg', 600),
      sizeRead('right-leg', 600),
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

  it('cuts a crossbar anew that a rebend leaves too short, its saddles off as in a new frame', () => {
    const made = shown('rebend', narrow(20));
    const [crossbar] = made.stock!.pieces.filter(({ kind }) => kind === 'member');
    expect(crossbar!.of).toBe('crossbar 1');
    const of = (symbol: string, { working }: CutPiece['length']) =>
      working.inputs.find((input) => input.symbol === symbol)!.value;
    const throats = of('Σ a', crossbar!.length);
    expect(throats).toBeGreaterThan(10);
    expect(crossbar!.length.value).toBeCloseTo(of('L', crossbar!.length) - throats, 9);
    const anew = shown('new-frame', narrow(20)).stock!.pieces.find(({ of: member }) => member === 'crossbar 1')!;
    expect(throats).toBeCloseTo(of('Σ a', anew.length), 1);
  });

  it('leaves on a bent let-in piece what the machine holds, and saws that much off the bar', () => {
    const made = shown('splice-fewest', narrow(20));
    const joints = made.correction!.ways.find(({ key }) => key === made.correction!.chosen)!.joints;
    const bent = joints.find(({ letIn }) => letIn !== null && letIn.radius !== null)!;
    const straight = joints.find(({ letIn }) => letIn !== null && letIn.radius === null)!;
    const held = ({ letIn }: typeof bent) =>
      letIn!.cutLength.working.inputs.find(({ symbol }) => symbol === 'h')!.value;
    expect(bent.on).toBe('rolled');
    expect(demo.machine.trimAllowance).toBeGreaterThan(0);
    expect(held(bent)).toBe(demo.machine.trimAllowance);
    expect(held(straight)).toBe(0);
    const [piece] = made.stock!.pieces.filter(({ of, kind }) => kind === 'let-in' && of === String(bent.number));
    expect(piece!.length.value).toBe(bent.letIn!.cutLength.value);
  });

  it('saws once where scrap comes out in one pass or a hinge is left, else a face at a time', () => {
    const passes: Readonly<Record<string, number>> = { cut: 2, 'cut-once': 1, 'cut-dart': 1, 'make-let-in': 2 };
    const seen = new Set<string>();
    for (const change of [narrow(20), narrow(-3), (job: Job) => job]) {
      const made = shown('splice-fewest', (job) => {
        const bare = change(job);
        return {
          ...bare,
          site: { ...bare.site, legs: [] },
          closing: { ...bare.closing, kerf: 4, way: 'splice-fewest' },
        };
      });
      for (const { key, steps, trims, joints } of made.correction!.ways) {
        const option = made.quote!.options.find(({ scope }) => scope === key);
        if (joints.length === 0 || option === undefined) continue;
        for (const step of steps) if (step.key in passes) seen.add(step.key);
        const cuts = option.lines.find((line) => line.key === 'cut')!.quantity!.working.inputs;
        expect(cuts.find(({ symbol }) => symbol === 'n')!.value).toBe(
          steps.reduce((sum, step) => sum + (passes[step.key] ?? 0), trims.length),
        );
      }
    }
    expect([...seen].sort()).toEqual(expect.arrayContaining(['cut', 'cut-once', 'make-let-in']));
  });

  it('takes as much tube made anew as the plan of the frame says', () => {
    const anew = shown('new-frame', (job) => ({ ...job, stock: { ...job.stock, joints: [] } }));
    const members = anew.stock!.pieces.filter(({ kind }) => kind === 'member');
    const all = members.reduce((sum, { length }) => sum + length.value, 0);
    expect(all).toBeCloseTo(anew.frame!.tubeLength.value, 6);
  });
});
