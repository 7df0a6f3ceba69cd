import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { BendRow } from '../../server/plan/bending.ts';
import type { CheckDimension, MemberPlan } from '../../server/plan/frame.ts';
import type { Making, MemberMaking } from '../../server/plan/making.ts';
import type { ReadingCheck } from '../../server/plan/reading-check.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { correction } from './fixture-correction.ts';
import { figure } from './fixture-figure.ts';
import { purge } from './fixture-gas.ts';
import { faceView, HOOP } from './fixture-view.ts';
import { finish, welding } from './fixture-weld.ts';
import { stock } from './fixture-stock.ts';
import { quote } from './fixture-work.ts';
import { sitePlan } from './site-fixture.ts';

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
    cameBack: { tapeAccuracy: 1, angleAccuracy: 0.2, readings: [] },
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
    bendRatio: figure(3, 'ratio'),
    elongation: figure(16, 'percent'),
    wallOutside: figure(1.4, 'mm'),
    wallInside: figure(1.9, 'mm'),
    flatteningGuidance: figure(6, 'percent'),
    mandrel: 'plug',
    check: made === 'die' ? figure(start + 135, 'mm') : null,
  };
}

/** Bent from the start, near to its own end, with an extra to cut off; nothing for a member without bends. */
function making(bent: boolean): MemberMaking {
  const way = (key: Making['key'], possible: boolean): Making => ({
    key,
    possible,
    problems: possible ? [] : [{ code: 'strikes', bend: 3, value: -12.5, low: 0, obstacle: 'bed' }],
    extraFirst: figure(0, 'mm'),
    extraLast: figure(80, 'mm'),
    clearance: { obstacle: 'tube', while: 'bending', bend: 3, distance: figure(41.5, 'mm') },
  });
  return {
    from: 'start',
    side: 'right',
    bed: 'not-needed',
    ways: bent ? [way('as-planned', true), way('other-end', true), way('other-side', false)] : [],
    split: null,
    radii: null,
    closing: null,
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
    making: making(bends.length > 0),
    templates: [],
  };
}

/** Two sizes, one misreading and one that gives no frame. */
function readingCheck(diameter: number): ReadingCheck {
  const wanted = (key: string, value: number): ReadingCheck['dimensions'][number] => ({
    key,
    index: 0,
    field: '/frame/width',
    reference: 'outside',
    wanted: figure(value, 'mm'),
  });
  return {
    dimensions: [wanted('width-at-corners', 950), wanted('right-leg', 600)],
    rows: [
      {
        slip: 'outside-read-as-centre',
        fields: ['/frame/width'],
        dieRadius: null,
        gets: [figure(950 + diameter, 'mm'), figure(600, 'mm')],
        off: [diameter, 0],
        worst: diameter,
        readings: [],
      },
      {
        slip: 'other-die',
        fields: [],
        dieRadius: 76.2,
        gets: [null, null],
        off: [null, null],
        worst: null,
        readings: [],
      },
    ],
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
  const size = (key: string, value: number): CheckDimension => ({
    key,
    index: 0,
    field: '',
    reference: 'outside',
    allowed: figure(3, 'mm'),
    worstTube: { least: figure(value - 0.3, 'mm'), most: figure(value + 0.3, 'mm') },
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
      stretchAt90: figure(0, 'mm'),
      fit: null,
      bendsTyped: 0,
      bendsOfTube: [],
    },
    frame: {
      members: [hoop, bar],
      checks: [
        size('width-at-corners', 950),
        size('width-at-feet', 950),
        size('left-leg', 600),
        size('right-leg', 600),
      ],
      readingCheck: readingCheck(diameter),
      mass: figure(4.5, 'kg'),
      tubeLength: figure(2.99, 'm'),
      planar: true,
    },
    correction: correction(diameter, hoop, bar),
    purge: purge(diameter),
    welding: welding(),
    finish: finish(),
    site: sitePlan(diameter),
    stock: stock(),
    quote: quote(),
    views: [faceView(diameter)],
  };
}
