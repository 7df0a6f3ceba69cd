import { describe, expect, it } from 'vitest';
import type { PlacedJoint } from '../../../server/job/closing.ts';
import { newFrame, type Shape } from '../../../server/job/default-frame.ts';
import type { Job } from '../../../server/job/job.ts';
import type { Plan } from '../../../server/plan/plan.ts';
import { plan } from '../../../server/solver/plan.ts';
import { withRunReversed } from '../../../web/state/reversed-run.ts';
import { byBar, SAW, stockJob } from './made-up-stock.ts';

/** A frame whose members come from bars of so many mm. */
const jobOf = (
  shape: Shape,
  bar: number,
  joints: readonly PlacedJoint[] = [],
  change: (job: Job) => Job = (job) => job,
): Job =>
  stockJob((job) =>
    change({
      ...job,
      frame: newFrame(shape),
      stock: { ...job.stock, joints: [...joints] },
      rates: { ...job.rates, tubes: [byBar(9000, bar)] },
      closing: { ...job.closing, shrinkage: 0.8, gap: 0.5 },
      machine: { ...job.machine, stretchPerBend: 2, trimAllowance: 40 },
    }),
  );

const told = ({ findings }: Plan, code: string) => findings.filter((one) => one.code === code);

const fromFinish = (member: string) => (job: Job) => ({
  ...job,
  bending: {
    ...job.bending,
    members: [{ member, from: 'finish' as const, side: 'usual' as const, closingStraight: null }],
  },
});

/** The joints that the plan itself offers, taken until nothing is too long any more. */
function joined(job: Job): Plan {
  let made = plan(job);
  for (let round = 0; round < 5 && told(made, 'piece-too-long').length > 0; round += 1) {
    const [long] = told(made, 'piece-too-long');
    expect(long!.wayOut?.field).toBe('/stock/joints');
    made = plan({ ...job, stock: { ...job.stock, joints: long!.wayOut!.value as PlacedJoint[] } });
    job = { ...job, stock: { ...job.stock, joints: long!.wayOut!.value as PlacedJoint[] } };
  }
  return made;
}

describe('a piece that is longer than any bar', () => {
  it('is named, with where a joint may stand and one that leaves two lengths that fit', () => {
    const made = plan(jobOf('hoop', 1500));
    const [member] = made.frame!.members;
    expect(told(made, 'piece-too-long')).toMatchObject([
      {
        grade: 'caution',
        field: '/frame',
        data: { name: member!.name, length: member!.cutLength.value, longest: 1490 },
      },
    ]);
    const [long] = made.stock!.overlong;
    expect(long!.member).toBe(member!.name);
    expect(long!.joints.some(({ from, to }) => from <= long!.offered! && long!.offered! <= to)).toBe(true);
    expect(made.stock!.sizes[0]).toMatchObject({ from: 'none', bars: [], cost: null });
  });

  it.each<[Shape, number, (job: Job) => Job]>([
    ['hoop', 1500, (job) => job],
    ['hoop', 1500, fromFinish('hoop')],
    ['run', 1100, (job) => job],
    ['straight', 600, (job) => job],
    ['ring', 1700, (job) => job],
  ])('of a %s fits on bars of %f mm once it is joined', (shape, bar, change) => {
    const whole = plan(jobOf(shape, bar, [], change));
    const made = joined(jobOf(shape, bar, [], change));
    expect(told(made, 'piece-too-long')).toEqual([]);
    expect(told(made, 'bar-joint-misplaced')).toEqual([]);
    const { pieces } = made.stock!;
    expect(pieces.length).toBeGreaterThan(1);
    const sum = pieces.reduce((total, { length }) => total + length.value, 0);
    // what the welds pull in, less their gaps, and nothing else
    expect(sum).toBeCloseTo(whole.frame!.members[0]!.cutLength.value + (pieces.length - 1) * (0.8 - 0.5), 6);
    for (const { length } of pieces) expect(length.value).toBeLessThanOrEqual(bar - SAW.endTrim);
    const [{ of }] = pieces as [(typeof pieces)[number]];
    expect(pieces.map(({ name }) => name)).toEqual(
      pieces.map((_, index) => `${of} ${String(index + 1)} of ${String(pieces.length)}`),
    );
    const joints = made.welding!.welds.filter(({ kind }) => kind === 'bar-joint');
    expect(joints.map(({ name, form, joint }) => [name, form, joint])).toEqual(
      pieces.slice(1).map((_, index) => [`B${String(index + 1)}`, 'butt', 0]),
    );
  });

  it('has the first of several joints offered where one alone does not do: what it leaves fits on a bar', () => {
    const short = jobOf('hoop', 900);
    const [whole] = plan(short).stock!.overlong;
    expect(whole).toMatchObject({ enough: false });
    const [long] = told(plan(short), 'piece-too-long');
    const first = plan({ ...short, stock: { ...short.stock, joints: long!.wayOut!.value as PlacedJoint[] } });
    const lengths = first.stock!.pieces.map(({ length }) => length.value);
    expect(lengths).toHaveLength(2);
    expect(lengths.filter((length) => length <= 890)).toHaveLength(1);
    const made = joined(short);
    expect(told(made, 'piece-too-long')).toEqual([]);
    expect(made.stock!.pieces.length).toBeGreaterThan(2);
    expect(plan(jobOf('hoop', 1500)).stock!.overlong[0]).toMatchObject({ enough: true });
  });

  it('has no joint offered where nothing that fits could be left', () => {
    const tiny = plan(jobOf('hoop', 60));
    expect(tiny.stock!.overlong[0]).toMatchObject({ offered: null, enough: false });
    expect(told(tiny, 'piece-too-long')[0]!.wayOut).toBeNull();
  });

  it('is offered no joint further on than a place can be typed', () => {
    const points = [0, 45_000, 90_000].map((x) => ({ x, y: 0, z: x === 45_000 ? 100 : 0, radius: null }));
    const long = plan({ ...jobOf('run', 6000), frame: { shape: 'run', points } });
    const [piece] = long.stock!.overlong;
    expect(piece!.length.value).toBeGreaterThan(89_000);
    expect(piece!.offered).toBeLessThanOrEqual(50_000);
    expect(piece!.joints.every(({ to }) => to <= 50_000)).toBe(true);
  });

  it('keeps saying where its joints may stand once they are there', () => {
    const [before] = plan(jobOf('hoop', 1500)).stock!.overlong;
    const one = { member: 'hoop', station: before!.offered! };
    const made = plan(jobOf('hoop', 1500, [one, { member: 'keel', station: 5 }])).stock!.joints;
    expect(made).toEqual([{ member: 'hoop', field: '/stock/joints/0/station', ranges: before!.joints }]);
    const [, range] = before!.joints;
    const other = { member: 'hoop', station: range!.from };
    const [first] = plan(jobOf('hoop', 1500, [one, other])).stock!.joints;
    expect(first!.ranges).not.toEqual(before!.joints);
    expect(first!.ranges.every(({ from, to }) => to <= other.station || from >= other.station)).toBe(true);
  });
});

describe('a joint between bars', () => {
  const TOP: PlacedJoint = { member: 'hoop', station: 950 };

  it('parts the straight tube at its station less the stretch of the bends before it', () => {
    const made = plan(jobOf('hoop', 6000, [TOP]));
    const [member] = made.frame!.members;
    const [bend] = member!.bends;
    const [first] = made.stock!.pieces;
    const [, arc] = member!.pieces;
    const sinceBend = TOP.station - member!.pieces[0]!.length - arc!.length;
    // up to where the first bend ends on the straight tube, then along the crossbar, and half of what the weld wants
    expect(first!.length.value).toBeCloseTo(bend!.endMark.value + sinceBend + (0.8 - 0.5) / 2, 6);
    expect(bend!.endMark.value).toBeLessThan(member!.pieces[0]!.length + arc!.length);
  });

  it('counts from the finish where the tube is bent from there', () => {
    const one = plan(jobOf('hoop', 6000, [TOP]));
    const other = plan(jobOf('hoop', 6000, [TOP], fromFinish('hoop')));
    const [a, b] = [one, other].map((made) => made.stock!.pieces.map(({ length }) => length.value));
    // the trim stays on the far end: it is the second length that has it, whichever that is
    const trim = one.frame!.members[0]!.cutLength.working.inputs.find(({ symbol }) => symbol === 'z')!.value;
    expect(b![0]! + trim).toBeCloseTo(a![1]!, 6);
    expect(a![0]! + trim).toBeCloseTo(b![1]!, 6);
  });

  it('is welded first, takes gas, filler and time, and does not move the frame', () => {
    const ordinary = plan(jobOf('hoop', 6000));
    const made = plan(jobOf('hoop', 6000, [TOP]));
    const of = ({ welding }: Plan) => welding!.welds.map(({ name }) => name);
    expect(of(made)).toEqual([...of(ordinary), 'B1']);
    expect(made.welding!.order[0]!.weld).toBe('B1');
    expect(made.welding!.movement).toEqual(ordinary.welding!.movement);
    expect(made.welding!.arcTime.value).toBeGreaterThan(ordinary.welding!.arcTime.value);
    expect(made.purge!.chambers.length).toBeGreaterThan(0);
    expect(told(made, 'bar-joint-bent-over')).toMatchObject([
      { grade: 'caution', field: '/stock/joints', data: { member: 'hoop', value: 1 } },
    ]);
  });

  it('is told of no bends on a tube that has none', () => {
    const made = plan(jobOf('straight', 6000, [{ member: 'tube', station: 500 }]));
    const member = made.frame!.members[0]!.name;
    const again = plan(jobOf('straight', 6000, [{ member, station: 500 }]));
    expect(told(again, 'bar-joint-bent-over')).toEqual([]);
    expect(again.stock!.pieces).toHaveLength(2);
  });

  it('stops where it is on no member', () => {
    const made = plan(jobOf('hoop', 6000, [{ member: 'keel', station: 500 }]));
    expect(told(made, 'bar-joint-no-member')).toMatchObject([
      { grade: 'stop', field: '/stock/joints/0/member', data: { member: 'keel' } },
    ]);
    expect(made.stock!.pieces).toHaveLength(1);
  });

  it.each([
    ['in a bend', 560, 'bend'],
    ['past the end', 40_000, 'end'],
    ['at the end', 0, 'end'],
  ])('stops where it stands %s, and the way out mends it', (_, station, keepOut) => {
    const job = jobOf('hoop', 6000, [{ member: 'hoop', station }]);
    const made = plan(job);
    const [found] = told(made, 'bar-joint-misplaced');
    expect(found).toMatchObject({ grade: 'stop', field: '/stock/joints/0/station', data: { value: station, keepOut } });
    expect(made.stock!.pieces).toHaveLength(1);
    const { value } = found!.wayOut!;
    expect(value).toBeGreaterThanOrEqual(found!.data['low'] as number);
    expect(value).toBeLessThanOrEqual(found!.data['high'] as number);
    const mended = plan({ ...job, stock: { ...job.stock, joints: [{ member: 'hoop', station: value as number }] } });
    expect(told(mended, 'bar-joint-misplaced')).toEqual([]);
    expect(mended.stock!.pieces).toHaveLength(2);
  });

  it('keeps clear of another one: the first that is typed stands', () => {
    const near = [TOP, { ...TOP, station: TOP.station + 50 }];
    const made = plan(jobOf('hoop', 6000, near));
    expect(told(made, 'bar-joint-misplaced')).toMatchObject([
      { field: '/stock/joints/1/station', data: { keepOut: 'weld', low: TOP.station + 1.5 * 38.1 } },
    ]);
    expect(made.stock!.pieces).toHaveLength(2);
  });

  it('is not where the clamp holds the tube before a bend', () => {
    const long = (job: Job): Job => ({
      ...job,
      machine: { ...job.machine, dies: job.machine.dies.map((die) => ({ ...die, gripLength: 150 })) },
    });
    const rooms = (change: (job: Job) => Job) => plan(jobOf('hoop', 1500, [], change)).stock!.overlong[0]!.joints;
    const [usual, held] = [rooms((job) => job), rooms(long)];
    // from the start the straight before a bend is held: that side gives way, the other stays
    expect(held.map(({ from }) => from)).toEqual(usual.map(({ from }) => from));
    const less = held.map(({ to }, index) => usual[index]!.to - to);
    // before two bends 150 instead of 76.2; the last straight is free up to its end
    for (const [index, given] of [73.8, 73.8, 0].entries()) expect(less[index]).toBeCloseTo(given, 6);
  });
});

describe('a run that is typed from its other end', () => {
  it('keeps the joints between its bars on the spots where they were', () => {
    const job = jobOf('run', 6000, [{ member: 'run', station: 300 }]);
    const turned = withRunReversed(job, '/frame/points', plan(job));
    const lengths = (of: Job) => plan(of).stock!.pieces.map(({ length }) => length.value);
    const trim = 40;
    const [first, second] = lengths(job);
    const [other, one] = lengths(turned);
    expect(turned.stock.joints).not.toEqual(job.stock.joints);
    expect(one! - trim).toBeCloseTo(first!, 6);
    expect(other! + trim).toBeCloseTo(second!, 6);
  });
});
