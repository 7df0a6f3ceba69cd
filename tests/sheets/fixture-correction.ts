import type { CorrectionPlan, Difference, Joint, JointFace, Way, WayKey } from '../../server/plan/correction.ts';
import type { MemberPlan, WrapTemplate } from '../../server/plan/frame.ts';
import { figure } from './fixture-figure.ts';

/** A plane cut's wrap: z = r tan τ cos φ, 181 points. */
function planeWrap(place: string, station: number, tilt: number, diameter: number, paper = 0.1): WrapTemplate {
  const wrapLength = Math.PI * (diameter + paper);
  const high = (diameter / 2) * Math.tan((tilt * Math.PI) / 180);
  const at = (share: number): number => high * Math.cos(2 * Math.PI * share);
  return {
    key: `joint ${place}`,
    kind: 'plane',
    member: 'hoop',
    place,
    wrapLength,
    low: -high,
    high,
    ringStation: station,
    scrap: place.endsWith('A') ? 'finish' : 'start',
    stations: Array.from({ length: 16 }, (_, index) => ({
      angle: index * 22.5,
      girth: (wrapLength * index) / 16,
      outer: at(index / 16),
      inner: at(index / 16) * 0.91,
      cut: at(index / 16),
    })),
    curve: Array.from({ length: 181 }, (_, index): [number, number] => [(wrapLength * index) / 180, at(index / 180)]),
  };
}

function face(place: string, station: number, tilt: number, diameter: number): JointFace {
  const keys = ['outside', 'top', 'inside', 'bottom'] as const;
  return {
    station: figure(station, 'mm', 1),
    tilt: figure(tilt, 'deg'),
    tiltDirection: place.endsWith('A') ? 180 : 0,
    measuredFrom: 'datum-end',
    generators: keys.map((key, index) => ({
      key,
      angle: index * 90,
      distance: figure(station + 60 * Math.cos((index * Math.PI) / 2), 'mm', 1),
    })),
    template: planeWrap(place, station, tilt, diameter),
  };
}

function joint(number: number, member: string, station: number, diameter: number): Joint {
  return {
    number,
    member,
    on: 'rolled',
    faceA: face(`${String(number)}A`, station, 12, diameter),
    faceB: face(`${String(number)}B`, station + 31.2, 12, diameter),
    removed: figure(31.2, 'mm', 1),
    scrap: figure(28.8, 'mm', 1),
    kink: figure(0.74, 'deg'),
    hiLo: figure(0.12, 'mm', 0.1),
    hiLoGrade: 'good',
    point: { x: 0, y: 60, z: 0 },
  };
}

const difference = (key: string, wanted: number, cameBack: number): Difference => ({
  key,
  index: 0,
  field: '',
  reference: 'outside',
  wanted: figure(wanted, 'mm'),
  cameBack: figure(cameBack, 'mm', 1),
  difference: figure(cameBack - wanted, 'mm', 1),
});

function way(key: WayKey, joints: Joint[], cost: number | null): Way {
  return {
    key,
    possible: true,
    reasons: [],
    footMisfit: figure(joints.length > 0 ? 0.6 : 31, 'mm', 1),
    cornerMisfit: figure(joints.length > 0 ? 0.4 : 31, 'mm', 1),
    toe: figure(0.1, 'deg', 0.05),
    largestKink: figure(joints.length > 0 ? 0.74 : 0, 'deg'),
    largestHiLo: figure(joints.length > 0 ? 0.12 : 0, 'mm'),
    welds: figure(joints.length, 'count'),
    purgeSetups: figure(joints.length > 0 ? 1 : 0, 'count'),
    purgeGas: figure(joints.length * 30, 'L'),
    minutes: cost === null ? null : figure(45 * joints.length, 'min'),
    costAtLeast: figure(cost ?? 0, 'minor'),
    cost: cost === null ? null : figure(cost, 'minor'),
    after: [difference('width-at-corners', 950, 950.4), difference('width-at-feet', 950, 950.6)],
    joints,
    rebends: [],
    trims: [],
    members: [],
    unbeaten: true,
  };
}

export function correction(diameter: number, hoop: MemberPlan, bar: MemberPlan): CorrectionPlan {
  const joints = [joint(1, 'hoop', 1000, diameter), joint(2, 'crossbar 1', 430, diameter)];
  return {
    members: [hoop, bar],
    differences: [difference('width-at-corners', 950, 1012), difference('left-leg', 600, 601)],
    slips: [],
    ways: [
      way('leave', [], 0),
      way('rebend', [], 4500),
      way('splice-one', joints, 21500),
      way('splice-two', [...joints, joint(3, 'hoop', 1200, diameter)], null),
      way('splice-turned', joints, 22000),
      way('new-frame', [], null),
    ],
    recommended: 'splice-one',
    reason: { key: 'reason.fewest-welds', data: { tolerance: 2, misfit: 0.6, welds: 2, kink: 0.74 } },
    chosen: 'splice-one',
  };
}
