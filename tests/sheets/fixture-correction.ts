import type { CorrectionPlan, ReturnedMember, Way } from '../../server/plan/correction.ts';
import type { FittedReading, ReadingsFit } from '../../server/plan/readings-fit.ts';
import type { MemberPlan, PlanPiece } from '../../server/plan/frame.ts';
import { figure } from './fixture-figure.ts';
import { joint } from './fixture-joint.ts';
import { difference, misfitPicture, way } from './fixture-way.ts';

/** Straights and arcs of a member as it came back, as long as its bend table says; where they are is of no matter here. */
function piecesOf({ bends, developedLength }: MemberPlan): PlanPiece[] {
  const origin = { x: 0, y: 0, z: 0 };
  let reached = 0;
  const straight = (to: number): PlanPiece => ({ kind: 'straight', from: origin, to: origin, length: to - reached });
  const pieces = bends.flatMap(({ made, startMark, endMark, angle, radiusAfterRelease }): PlanPiece[] => {
    const before = straight(startMark.value);
    reached = endMark.value;
    const sizes = { radius: radiusAfterRelease.value, angle: angle.value, length: endMark.value - startMark.value };
    return [before, { kind: 'arc', from: origin, to: origin, centre: origin, normal: origin, made, ...sizes }];
  });
  return [...pieces, straight(developedLength.value)];
}

const returned = (member: MemberPlan): ReturnedMember => ({
  name: member.name,
  closed: member.closed,
  developedLength: member.developedLength,
  pieces: piecesOf(member),
  free: [{ from: 60, to: member.developedLength.value - 60, startRule: 'end', endRule: 'end' }],
});

function reading(
  index: number,
  key: string,
  sizes: { wanted: number; measured: number; fitted: number },
): FittedReading {
  const residual = sizes.measured - sizes.fitted;
  return {
    field: `/cameBack/readings/${String(index)}`,
    name: { key: `check.${key}`, data: { index: 0 } },
    wanted: figure(sizes.wanted, 'mm'),
    measured: figure(sizes.measured, 'mm', 1),
    fitted: figure(sizes.fitted, 'mm', 0.6),
    residual: figure(residual, 'mm'),
    accuracies: residual,
    disagrees: Math.abs(residual) > 3,
  };
}

const fit = (): ReadingsFit => ({
  readings: [
    reading(0, 'width-at-corners', { wanted: 950, measured: 1012, fitted: 1011.6 }),
    reading(1, 'width-at-feet', { wanted: 950, measured: 1012, fitted: 1012.3 }),
    reading(2, 'left-leg', { wanted: 600, measured: 607, fitted: 601.2 }),
    reading(3, 'right-leg', { wanted: 600, measured: 600.5, fitted: 600.6 }),
  ],
  unknowns: 3,
  spare: 1,
  misfit: figure(2.9, 'ratio'),
  doubt: null,
  notMeasured: [{ key: 'crown-rise', index: 0 }],
});

/** The ways of the made-up frame; joint 1 stands on the crown, joint 2 on the crossbar. */
function ways(diameter: number): Way[] {
  const lean = (station: number): { a: { station: number; offSquare: number; longest: number }; b: typeof a } => {
    const a = { station, offSquare: 12, longest: 0 };
    return { a, b: { ...a, station: station + 31.2, longest: 180 } };
  };
  const joints = [
    joint({ number: 1, member: 'hoop', on: 'rolled', ...lean(1000) }, diameter),
    joint({ number: 2, member: 'crossbar 1', on: 'straight', ...lean(430) }, diameter),
  ];
  const more = [...joints, joint({ number: 3, member: 'hoop', on: 'rolled', ...lean(1200) }, diameter)];
  return [
    way('leave', [], 0, {
      packing: [{ member: 'hoop', end: 'finish', height: figure(7.4, 'mm', 1) }],
      risks: ['risk.packing-comes-loose'],
    }),
    way('rebend', [], 4500, { possible: false, reasons: ['width-not-by-rebend'], unbeaten: false }),
    way('splice-fewest', joints, 21500),
    way('splice-fairest', more, null, { unbeaten: false }),
    way('splice-closest', joints, 22000),
    way('new-frame', [], null),
  ];
}

export function correction(diameter: number, hoop: MemberPlan, bar: MemberPlan): CorrectionPlan {
  const all = ways(diameter);
  return {
    fit: fit(),
    members: [hoop, bar].map(returned),
    differences: [difference('width-at-corners', 950, 1012), difference('left-leg', 600, 601)],
    slips: [],
    ways: all,
    alternatives: [],
    search: { layouts: 312, workedOut: 14, complete: true },
    recommended: 'splice-fewest',
    reason: { key: 'reason.fewest-welds', data: { tolerance: 2, misfit: 0.6, welds: 2, kink: 0.74 } },
    money: [
      { key: 'money.cheaper-than-new', data: { cost: 12240 } },
      { key: 'money.other-less-but-off', data: { cost: 6000, off: 12.4, other: 'leave' } },
    ],
    wouldChange: [{ key: 'change.readings', data: { times: 4, tolerance: 2 } }],
    chosen: 'splice-fewest',
    picture: misfitPicture(all),
  };
}
