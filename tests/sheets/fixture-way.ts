import type { FixingResult, MisfitPicture, Way, WayKey } from '../../server/plan/correction.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { Difference } from '../../server/plan/readings-fit.ts';
import type { FlatPoint } from '../../server/plan/view.ts';
import { figure } from './fixture-figure.ts';
import { HOOP, hoopLine } from './fixture-view.ts';

export const difference = (key: string, wanted: number, cameBack: number): Difference => ({
  key,
  index: 0,
  field: '',
  reference: 'outside',
  wanted: figure(wanted, 'mm'),
  cameBack: figure(cameBack, 'mm', 1),
  difference: figure(cameBack - wanted, 'mm', 1),
});

const fixing = (name: string, misfit: number): FixingResult => ({
  field: '',
  name,
  fixing: 'foot',
  misfit: figure(misfit, 'mm', 1),
  allowed: figure(2, 'mm'),
});

/** The order of the work on some joints: all are marked before the first is cut. */
const stepsOf = (joints: readonly Joint[]): Way['steps'] => {
  const whole = (key: string): Way['steps'][number] => ({ key: `step.${key}`, joint: 0, data: {} });
  const each = (key: string): Way['steps'] =>
    joints.map(({ number, member }) => ({ key: `step.${key}`, joint: number, data: { member, number } }));
  if (joints.length === 0) return [whole('check-sizes')];
  return [
    whole('mark-all'),
    whole('hold-shape'),
    ...each('cut'),
    whole('dress-faces'),
    ...each('close-and-tack'),
    whole('check-sizes'),
    whole('weld-opposite'),
  ];
};

/** A way with its joints; whatever is better or worse about it may be given. */
export function way(key: WayKey, joints: Joint[], cost: number | null, change: Partial<Way> = {}): Way {
  const [some, off] = [joints.length > 0, joints.length > 0 ? 0.6 : 31];
  return {
    key,
    possible: true,
    reasons: [],
    fixingMisfit: figure(off, 'mm', 1),
    fixings: [fixing('left foot', off), fixing('right foot', off / 2)],
    cornerMisfit: figure(some ? 0.4 : 31, 'mm', 1),
    cornerWidth: figure(some ? 0.4 : 62, 'mm', 1),
    endWidth: figure(some ? 0.6 : 62, 'mm', 1),
    toe: figure(0.1, 'deg', 0.05),
    largestKink: figure(some ? 0.74 : 0, 'deg'),
    largestHiLo: figure(some ? 0.12 : 0, 'mm'),
    welds: figure(joints.length, 'count'),
    purgeSetups: figure(some ? 1 : 0, 'count'),
    purgeGas: figure(joints.length * 30, 'L'),
    minutes: cost === null ? null : figure(45 * joints.length, 'min'),
    costAtLeast: figure(cost ?? 0, 'minor'),
    cost: cost === null ? null : figure(cost, 'minor'),
    days: cost === null ? null : figure(some ? 1 : 10, 'count'),
    risks: some ? ['risk.weld-pull', 'risk.kink-shows', 'risk.root-sugars'] : ['risk.packing-comes-loose'],
    after: [
      difference('width-at-corners', 950, 950.4),
      difference('width-at-feet', 950, 950.6),
      difference('diagonal-1', 1102.5, 1102.8),
      difference('diagonal-2', 1102.5, 1102.7),
    ],
    joints,
    rebends: [],
    trims: [],
    packing: [],
    steps: stepsOf(joints),
    members: [],
    within: true,
    unbeaten: true,
    ...change,
  };
}

/** How many times the distances of the made-up picture are enlarged. */
export const ENLARGED = 20;

/** Each way's hoop over the wanted one, wider or narrower by some millimetres times the factor. */
export function misfitPicture(ways: readonly Way[]): MisfitPicture {
  const width = HOOP.width - 38.1;
  const bar = (half: number): FlatPoint[] => [
    [-half, -350],
    [half, -350],
  ];
  return {
    enlarged: ENLARGED,
    bounds: [-640, -620, 640, 30],
    wanted: [hoopLine(width), bar(width / 2)],
    ways: ways
      .filter(({ possible }) => possible)
      .map(({ key, joints }, index) => {
        const wide = width + ENLARGED * (3 - index);
        return {
          key,
          lines: [hoopLine(wide), bar(wide / 2)],
          joints: joints.map((_, place): FlatPoint => [place * 90 - 90, place % 2 === 0 ? 0 : -350]),
        };
      }),
  };
}
