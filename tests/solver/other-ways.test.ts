import { describe, expect, it } from 'vitest';
import type { FrameGeometry } from '../../server/solver/frame/frame-geometry.ts';
import { leaveWay } from '../../server/solver/correction/leave-way.ts';
import { rebentFrame } from '../../server/solver/correction/rebend.ts';
import { rebendWay } from '../../server/solver/correction/rebend-way.ts';
import { arcsOf, type RebendShop } from '../../server/solver/correction/turn-limits.ts';
import { DEGREE, drawn, EASY, HOOP, RUN, workOn } from './made-up-corrections.ts';

const outside = (value: number) => ({ value, reference: 'outside' as const });
const hoop = drawn(HOOP);
const run = drawn(RUN);
const ring = drawn({ shape: 'ring', width: outside(900), height: outside(600) });

const offBy = (frame: FrameGeometry, degrees: readonly number[]): FrameGeometry =>
  rebentFrame(
    frame,
    arcsOf(frame).map((arc, index) => ({ ...arc, turn: (degrees[index] ?? 0) * DEGREE })),
  );

const shop = (machine: Partial<RebendShop['machine']>): typeof EASY => ({
  ...EASY,
  machine: { ...EASY.machine, ...machine },
});

describe('a frame that came back as wanted', () => {
  it.each([
    ['hoop', hoop],
    ['run', run],
  ])('%s: nothing is asked for', (_, frame) => {
    const work = workOn(frame, frame);
    const left = leaveWay(work);
    const bent = rebendWay(work, EASY);
    expect(left.fixingMisfit.value).toBeLessThan(1e-9);
    expect(left.packing).toEqual([]);
    expect(left.trims).toEqual([]);
    expect(left.steps.map(({ key }) => key)).toEqual(['check-sizes']);
    for (const size of left.after) expect(size.difference.value).toBeCloseTo(0, 9);
    expect(bent.way.possible).toBe(false);
    expect(bent.way.reasons).toEqual(['rebend-not-needed']);
    expect(bent.way.rebends).toEqual([]);
    expect(bent.way.effort.bends).toBe(0);
  });
});

describe('leave it and pack the feet', () => {
  it('a leg that is short stands on packing, and then the frame stands as wanted', () => {
    const short = drawn({ ...HOOP, leftLeg: outside(988) });
    // the crossbar is measured from the left foot: the short leg is short at its foot
    const left = leaveWay(workOn(hoop, short));
    expect(left.packing).toHaveLength(1);
    expect(left.packing[0]).toMatchObject({ member: 'hoop', end: 'start' });
    expect(left.packing[0]!.height.value).toBeCloseTo(12, 4);
    expect(left.fixingMisfit.value).toBeLessThan(1e-4);
  });

  it('two short legs stand on as much each as they are short', () => {
    const left = leaveWay(workOn(hoop, drawn({ ...HOOP, leftLeg: outside(992), rightLeg: outside(985) })));
    expect(left.packing.map(({ end, height }) => [end, Math.round(height.value * 1e4) / 1e4])).toEqual([
      ['start', 8],
      ['finish', 15],
    ]);
  });

  it('a leg that is long is cut back, and no leg is packed for it', () => {
    const left = leaveWay(workOn(hoop, drawn({ ...HOOP, rightLeg: outside(1020) })));
    expect(left.packing).toEqual([]);
    expect(left.trims).toHaveLength(1);
    expect(left.trims[0]).toMatchObject({ member: 'hoop', end: 'finish' });
    expect(left.trims[0]!.length.value).toBeCloseTo(20, 5);
    expect(left.fixingMisfit.value).toBeLessThan(1e-5);
    const leg = left.after.find(({ key }) => key === 'right-leg')!;
    expect(leg.difference.value).toBeCloseTo(0, 5);
  });

  it('what the tape cannot tell is neither cut off nor packed', () => {
    const left = leaveWay(workOn(hoop, drawn({ ...HOOP, leftLeg: outside(999.5), rightLeg: outside(1000.7) })));
    expect(left.packing).toEqual([]);
    expect(left.trims).toEqual([]);
  });

  it('says toe in as positive, and the widths that are left', () => {
    const left = leaveWay(workOn(hoop, offBy(hoop, [1, 1])));
    expect(left.toe.value).toBeCloseTo(2, 9);
    expect(left.endWidth!.value).toBeLessThan(-20);
    expect(Math.abs(left.cornerWidth!.value)).toBeLessThan(3);
  });
});

describe('rebend within what the machine and the tube allow', () => {
  it('a bend is opened by no more than 3 degrees, and the finding says that it needs more', () => {
    const { way, findings } = rebendWay(workOn(hoop, offBy(hoop, [5, 0])), EASY);
    expect(way.rebends[0]!.turn.value).toBeCloseTo(-3, 9);
    expect(findings.find(({ code }) => code === 'rebend-at-limit')).toMatchObject({
      data: { member: 'hoop', bend: 1 },
    });
    expect(findings.find(({ code }) => code === 'rebend-opens-bend')).toMatchObject({ data: { bend: 1 } });
    // what is left over is said
    expect(way.fixingMisfit.value).toBeGreaterThan(5);
  });

  it('the machine has a largest angle', () => {
    const { way, findings } = rebendWay(workOn(hoop, offBy(hoop, [-2, 0])), shop({ largestAngle: 89 }));
    expect(way.rebends[0]!.to.value).toBeCloseTo(89, 6);
    expect(findings.map(({ code }) => code)).toContain('rebend-over-machine');
  });

  it('a bend that the clamp cannot hold stays, and the others do what they can', () => {
    const off = offBy(hoop, [1, 1]);
    const { way, findings } = rebendWay(workOn(hoop, off), shop({ gripLength: 5000 }));
    expect(way.rebends.map(({ bend }) => bend)).toEqual([2]);
    const said = findings.find(({ code }) => code === 'rebend-no-grip')!;
    expect(said.data).toMatchObject({ member: 'hoop', bend: 1, low: 5000 });
    expect(said.data['turn']).toBeCloseTo(-1, 1);
  });

  it('turned further it needs tube after it', () => {
    const points = [
      [0, 0],
      [800, 0],
      [800, 118],
    ].map(([x = 0, y = 0]) => ({ x, y, z: 0, radius: null }));
    const stub = drawn({ shape: 'run', points });
    const { way, findings } = rebendWay(workOn(stub, offBy(stub, [-4])), EASY);
    const left = stub.members[0]!.centreline.pieces[2]!.length + 115 * 4 * DEGREE;
    expect(way.rebends[0]!.turn.value * DEGREE * 115).toBeLessThanOrEqual(left + 1e-6);
    expect(findings.every(({ grade }) => grade !== 'stop')).toBe(true);
  });

  it('a turn that the machine would miss by as much as it asks for is not asked for', () => {
    const work = workOn(hoop, offBy(hoop, [0.35, 0.1]));
    expect(rebendWay(work, shop({ angleScatter: 0.5 })).way.rebends).toEqual([]);
    expect(rebendWay(work, shop({ angleScatter: 0.3 })).way.rebends).toHaveLength(1);
  });

  it('a closed ring has nothing that could swing', () => {
    const { way, findings } = rebendWay(workOn(ring, ring), EASY);
    expect(way).toMatchObject({ possible: false, reasons: ['rebend-ring-closed'] });
    expect(findings.map(({ code }) => code)).toContain('rebend-ring-closed');
  });

  it('a straight tube has no bend', () => {
    const tube = drawn({ shape: 'straight', length: 900 });
    expect(rebendWay(workOn(tube, tube), EASY).way.reasons).toEqual(['rebend-no-bends']);
  });

  it('the crossbar is parted and laid between the legs again', () => {
    const { way } = rebendWay(workOn(hoop, offBy(hoop, [2, 0])), EASY);
    expect(way.welds.value).toBe(2);
    expect(way.effort.joints.map(({ member }) => member)).toEqual(['crossbar 1', 'crossbar 1']);
    expect(way.steps.map(({ key }) => key)).toEqual(['cut-saddles', 'rebend-open', 'refit-saddles', 'check-sizes']);
    const bar = way.members.find(({ name }) => name === 'crossbar 1')!.pieces[0]!;
    expect(bar.length).toBeCloseTo(hoop.members[1]!.centreline.length, 4);
  });

  it('says that the corners stay off', () => {
    const wide = drawn({ ...HOOP, width: outside(962) });
    const { way, findings } = rebendWay(workOn(hoop, wide), EASY);
    expect(findings.find(({ code }) => code === 'rebend-cannot-narrow')!.data['value']).toBeGreaterThan(55);
    expect(way.cornerWidth!.value).toBeGreaterThan(55);
  });

  it('a crown is rolled to the radius that was wanted', () => {
    const crowned = drawn({ ...HOOP, crossbar: { form: 'crowned', radius: 2400 } });
    const { way, findings } = rebendWay(workOn(crowned, offBy(crowned, [0, 2, 0])), EASY);
    expect(way.rebends).toHaveLength(1);
    expect(way.rebends[0]).toMatchObject({ made: 'rolled', bend: 1 });
    expect(way.rebends[0]!.radiusTo!.value).toBeCloseTo(2400, 1);
    expect(way.rebends[0]!.radiusFrom!.value).toBeLessThan(2300);
    expect(findings.map(({ code }) => code)).toContain('re-roll-between-bends');
  });
});
