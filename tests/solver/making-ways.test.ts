import { describe, expect, it } from 'vitest';
import type { Centreline } from '../../server/solver/geometry/centreline.ts';
import { JOINT_KEEP_OUT, splitMember } from '../../server/solver/making/split-member.ts';
import type { MakingInput, MakingMachine } from '../../server/solver/making/way-to-bend.ts';
import { bestWay, otherWays, plannedWay } from '../../server/solver/making/ways-to-bend.ts';
import { dieBends, DIAMETER, ENVELOPE, member, RADIUS, type Step } from '../properties/bent-members.ts';

const MACHINE: MakingMachine = {
  gripLength: 80,
  leastStraight: 80,
  trimAllowance: 10,
  largestAngle: 3.2,
  side: 'right',
  bothSides: true,
  envelope: ENVELOPE,
};

const made = (centreline: Centreline, machine: Partial<MakingMachine> = {}, more: Partial<MakingInput> = {}) =>
  ({
    centreline,
    closed: false,
    bends: dieBends(centreline),
    throatAtStart: 0,
    throatAtFinish: 0,
    machine: { ...MACHINE, ...machine },
    ...more,
  }) satisfies MakingInput;

const waysToBend = (input: MakingInput) => [plannedWay(input), ...otherWays(input)];
const split = (input: MakingInput, keepOut: number) => splitMember(input, waysToBend(input), keepOut);
const way = (input: MakingInput, key: string) => waysToBend(input).find((each) => each.key === key)!;

/** A first leg of 1000 that hangs down at the second bend of a die on the right (see making-swept.test.ts). */
const HANGING: readonly Step[] = [
  [1000, 0, 90],
  [300, 90, 90],
];

describe('ways to bend a member', () => {
  it('are as planned, from the other end, and both on the other side where the machine can', () => {
    const line = member(HANGING, 300);
    expect(waysToBend(made(line)).map(({ key }) => key)).toEqual([
      'as-planned',
      'other-end',
      'other-side',
      'other-end-other-side',
    ]);
    expect(waysToBend(made(line, { bothSides: false })).map(({ key }) => key)).toEqual(['as-planned', 'other-end']);
    expect(way(made(line, { side: 'left' }), 'other-side').side).toBe('right');
  });

  it('the leg that strikes the bed one way does not on the other side, nor where the short end hangs', () => {
    const input = made(member(HANGING, 300));
    const planned = way(input, 'as-planned');
    expect(planned.possible).toBe(false);
    expect(planned.problems).toEqual([
      // bedBelow 900, leg 1000 + R; on the way there its corner reaches no lower by more than a fortieth of D
      expect.objectContaining({ code: 'strikes', bend: 2, obstacle: 'bed', low: 0 }),
      expect.objectContaining({ code: 'strikes', bend: 2, obstacle: 'bed', low: 0 }),
    ]);
    expect(planned.problems[1]!.value).toBeCloseTo(900 - 1000 - RADIUS, 9);
    expect(planned.nearest).toMatchObject({ obstacle: 'bed', bend: 2 });
    expect(way(input, 'other-side').possible).toBe(true);
    expect(way(input, 'other-end').possible).toBe(true);
    expect(bestWay(waysToBend(input))?.possible).toBe(true);
    expect(waysToBend({ ...input, machine: { ...MACHINE, envelope: null } }).every((each) => each.possible)).toBe(true);
  });

  it('short ends are got over by what is left on, and change places with the end', () => {
    const input = made(
      member(
        [
          [30, 0, 90],
          [300, 0, 90],
        ],
        200,
      ),
      {},
      { throatAtStart: 5 },
    );
    const planned = way(input, 'as-planned');
    expect(planned.problems).toEqual([{ code: 'grip-short', bend: 1, value: 25, low: 80, high: null, obstacle: null }]);
    expect(planned).toMatchObject({ possible: true, extraAtStart: 55, extraAtEnd: 10 });
    const other = way(input, 'other-end');
    expect(other.problems).toEqual([
      { code: 'last-straight-short', bend: 2, value: 35, low: 80, high: null, obstacle: null },
    ]);
    expect(other).toMatchObject({ possible: true, extraAtStart: 0, extraAtEnd: 55, fromOtherEnd: true });
    expect(bestWay(waysToBend(input))?.extraAtEnd).toBe(55);
  });

  it('tell of a short straight and of an angle over the machine, at the bend in the order of each', () => {
    const input = made(
      member(
        [
          [200, 0, 40],
          [60, 0, 90],
          [200, 0, 30],
        ],
        200,
      ),
      { largestAngle: 1 },
    );
    const problems = (key: string) => way(input, key).problems.map(({ code, bend }) => [code, bend]);
    expect(problems('as-planned')).toEqual([
      ['straight-short', 2],
      ['angle-over-machine', 2],
    ]);
    expect(problems('other-end')).toEqual([
      ['angle-over-machine', 2],
      ['straight-short', 3],
    ]);
    const [short, over] = way(input, 'as-planned').problems;
    expect(short).toMatchObject({ low: 80, high: null });
    expect(short!.value).toBeCloseTo(60, 9);
    expect(over).toMatchObject({ value: Math.PI / 2, low: null, high: 1 });
    expect(bestWay(waysToBend(input))).toBeUndefined();
  });
});

describe('a member in two pieces', () => {
  /** Four quarters in a flat coil: bent whole, the last ones swing the beginning into the tube. */
  const COIL: readonly Step[] = [
    [500, 0, 90],
    [300, 0, 90],
    [400, 0, 90],
    [300, 0, 90],
  ];

  it('is cut in the middle of the longest straight that lets both halves be bent', () => {
    const line = member(COIL, 500);
    const input = made(line);
    expect(bestWay(waysToBend(input))).toBeUndefined();
    const cut = split(input, JOINT_KEEP_OUT * DIAMETER);
    const quarter = (RADIUS * Math.PI) / 2;
    expect(cut?.margin).toBeCloseTo(200, 9);
    expect(cut?.station).toBeCloseTo(500 + quarter + 300 + quarter + 200, 9);
    const [first, second] = cut!.halves;
    expect(first.length + second.length).toBeCloseTo(line.length, 9);
    expect([first.bends.length, second.bends.length]).toEqual([2, 2]);
    expect(second.bends.map(({ number, piece }) => [number, piece])).toEqual([
      [1, 1],
      [2, 3],
    ]);
    expect([first.way.possible, second.way.possible]).toEqual([true, true]);
  });

  it('has no joint where no straight has room, nor before the first bend or after the last', () => {
    const line = member(
      [
        [500, 0, 90],
        [100, 0, 90],
      ],
      500,
    );
    expect(split(made(line), 50)?.margin).toBeCloseTo(50, 9);
    expect(split(made(line), 51)).toBeNull();
    expect(split(made(member([[500, 0, 90]], 500)), 50)).toBeNull();
    expect(split(made(line, { largestAngle: 1 }), 50)).toBeNull();
  });
});
