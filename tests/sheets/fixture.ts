import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { BendRow } from '../../server/plan/bending.ts';
import type { CorrectionPlan, Difference, Joint, JointFace, Way, WayKey } from '../../server/plan/correction.ts';
import type { Figure, Unit } from '../../server/plan/figure.ts';
import type { MemberPlan, WrapTemplate } from '../../server/plan/frame.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Chamber, PurgePlan } from '../../server/plan/purge.ts';
import type { QuoteLine, QuotePlan } from '../../server/plan/quote.ts';
import { faceView } from './fixture-view.ts';

/** Sizes of the made-up hoop [mm]: over the outside 950 wide, legs 600, came back 62 too wide. */
export const HOOP = { width: 950, leg: 600, wrong: 62, corner: 116 } as const;

export const figure = (value: number, unit: Unit, plusMinus: number | null = null): Figure => ({
  value,
  unit,
  band: plusMinus === null ? null : { plusMinus, from: ['tape'] },
  working: { formula: 'a = a', inputs: [], sources: ['typed'] },
});

/** A job of a hoop in tube of any outside diameter. */
export function makeJob(diameter = 38.1, paper: Job['print']['paper'] = 'a4'): Job {
  const job = newJob('hoop');
  return {
    ...job,
    title: 'Boarding hoop',
    customer: 'A rowing club',
    drawingNumber: 'BH-1',
    invented: true,
    tube: { ...job.tube, outsideDiameter: diameter },
    cameBack: { tapeAccuracy: 1, frame: job.frame },
    print: { ...job.print, paper },
  };
}

function bend(number: number, start: number, made: BendRow['made'], angle: number, radius: number): BendRow {
  const arc = (radius * angle * Math.PI) / 180;
  return {
    number,
    made,
    feed: figure(start, 'mm'),
    rotation: figure(number === 1 ? 0 : 180, 'deg'),
    rotationRound: figure(number === 1 ? 0 : 59.8, 'mm'),
    angle: figure(angle, 'deg'),
    angleToBendTo: figure(angle * 1.026, 'deg'),
    dieRadius: figure(114.3, 'mm'),
    radiusAfterRelease: figure(radius, 'mm'),
    startMark: figure(start, 'mm'),
    middleMark: figure(start + arc / 2, 'mm'),
    endMark: figure(start + arc, 'mm'),
    arcLength: figure(arc, 'mm'),
    tangentLength: figure(radius, 'mm'),
    elongation: figure(16, 'percent'),
    wallOutside: figure(1.4, 'mm'),
    wallInside: figure(1.9, 'mm'),
    flatteningGuidance: figure(6, 'percent'),
    mandrel: 'plug',
    check: made === 'die' ? figure(start + 135, 'mm') : null,
  };
}

/** A plane cut's wrap: z = r tan τ cos φ, 181 points. */
export function planeWrap(place: string, station: number, tilt: number, diameter: number, paper = 0.1): WrapTemplate {
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

function member(name: string, bends: BendRow[], length: number): MemberPlan {
  const point = { x: 0, y: 0, z: 0 };
  const end = { kind: 'free', onto: null, point, angle: null, offset: null } as const;
  const saddle = { kind: 'saddle', onto: 'hoop', point, angle: 90, offset: 0 } as const;
  return {
    name,
    closed: false,
    start: bends.length > 0 ? end : saddle,
    finish: bends.length > 0 ? end : saddle,
    pieces: [],
    developedLength: figure(length, 'mm', 0.5),
    cutLength: figure(length, 'mm', 0.5),
    mass: figure(length * 0.0015, 'kg'),
    bends,
    lastStraight: figure(484, 'mm'),
    templates: [],
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
    cost: cost === null ? null : figure(cost, 'minor'),
    after: [difference('width-at-corners', 950, 950.4), difference('width-at-feet', 950, 950.6)],
    joints,
    rebends: [],
    trims: [],
    members: [],
    unbeaten: true,
  };
}

function correction(diameter: number, hoop: MemberPlan, bar: MemberPlan): CorrectionPlan {
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

function purge(): PurgePlan {
  const time = (volumes: number) => ({
    volumes: figure(volumes, 'ratio'),
    time: figure(volumes * 25, 's'),
    gas: figure(volumes * 2.1, 'L'),
  });
  const point = { x: 0, y: 0, z: 0 };
  const chamber: Chamber = {
    number: 1,
    stretches: [{ member: 'hoop', from: 0, to: 2200 }],
    joints: [1, 2],
    volume: figure(2.1, 'L'),
    length: figure(2200, 'mm'),
    plug: time(1),
    longTube: time(1.8),
    wellMixed: time(8.38),
    printed: time(8.38),
    feed: { member: 'hoop', station: 0, point },
    vent: { member: 'hoop', station: 2200, point },
    dams: [],
    plugs: [{ member: 'crossbar 1', end: 'start', point }],
  };
  return {
    gasOxygen: figure(5, 'ppm'),
    targetOxygen: figure(50, 'ppm'),
    chambers: [chamber],
    prePurgeFlow: figure(8, 'L/min'),
    weldingFlow: figure(4, 'L/min'),
    ventPressure: figure(103, 'Pa'),
    ventBoreFor100Pa: figure(5, 'mm'),
    leakLimit: figure(1.8, 'mL/min'),
    reynolds: figure(360, 'ratio'),
    hold: figure(60, 's'),
    purgeGas: figure(40, 'L'),
    torchGas: figure(60, 'L'),
    jobGas: figure(100, 'L'),
    bottleContents: figure(4290, 'L'),
    bottleShare: figure(0.02, 'ratio'),
    roomOxygenStill: figure(20.7, 'percent'),
    roomOxygenFan: figure(20.8, 'percent'),
    timeToAlarm: null,
    airToStaySafe: figure(139, 'L/min'),
  };
}

function quote(): QuotePlan {
  const line = (key: QuoteLine['key'], quantity: Figure | null, rate: number | null): QuoteLine => ({
    key,
    quantity,
    rate,
    rateField: '/rates/tubePerMetre',
    amount: quantity === null || rate === null ? null : Math.round(quantity.value * rate),
  });
  const lines = [
    line('tube', figure(3.1, 'm'), 1450),
    line('gas', figure(0.1, 'm3'), 1100),
    line('filler', figure(0.004, 'kg'), null),
    line('weld', figure(0.5, 'h'), 6200),
    line('finish', null, 5800),
  ];
  return {
    scope: 'splice-one',
    currency: 'EUR',
    minorDigits: 2,
    date: '2026-11-02',
    lines,
    subtotal: lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0),
    open: ['filler', 'finish'],
  };
}

/** A whole plan of a hoop with two joints, made by hand. */
export function makePlan(diameter = 38.1): Plan {
  const hoop = member(
    'hoop',
    [bend(1, 484, 'die', 84, HOOP.corner), bend(2, 660, 'rolled', 18, 2400), bend(3, 1420, 'die', 84, HOOP.corner)],
    2080,
  );
  const bar = member('crossbar 1', [], 910);
  const size = (key: string, value: number) => ({
    key,
    index: 0,
    field: '',
    outside: figure(value, 'mm', 0.5),
    centre: figure(value - diameter, 'mm', 0.5),
    inside: figure(value - 2 * diameter, 'mm', 0.5),
  });
  return {
    version: 1,
    findings: [
      { code: 'springback-estimate', grade: 'note', field: '/machine/springback', data: {}, wayOut: null },
      {
        code: 'kink-visible',
        grade: 'caution',
        field: '/closing/joints',
        data: { joint: 1, value: 1.2, high: 1 },
        wayOut: null,
      },
    ],
    tube: null,
    springback: {
      method: 'theory',
      shareAt90: figure(0.026, 'ratio'),
      bendTo90: figure(92.4, 'deg', 0.5),
      radiusAfterRelease: figure(HOOP.corner, 'mm'),
    },
    frame: {
      members: [hoop, bar],
      checks: [
        size('width-at-corners', 950),
        size('width-at-feet', 950),
        size('left-leg', 600),
        size('right-leg', 600),
      ],
      mass: figure(4.5, 'kg'),
      tubeLength: figure(2.99, 'm'),
      planar: true,
    },
    correction: correction(diameter, hoop, bar),
    purge: purge(),
    welding: {
      weldLength: figure(239, 'mm'),
      arcTime: figure(160, 's'),
      joints: figure(2, 'count'),
      currentLow: figure(41, 'count'),
      currentHigh: figure(64, 'count'),
      filler: 'ER316L 1.6 mm',
      fillerMass: figure(4, 'g'),
      fillerLength: figure(250, 'mm'),
      tacks: figure(6, 'count'),
    },
    quote: quote(),
    views: [faceView(diameter)],
  };
}
