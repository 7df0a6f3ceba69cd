import type { Bending } from './bending.ts';
import type { Closing } from './closing.ts';
import { newFrame, type Shape } from './default-frame.ts';
import { JOB_VERSION, type Job } from './job.ts';
import type { Die, Machine } from './machine.ts';
import type { Purge, Welding } from './purge.ts';
import type { Rates } from './rates.ts';
import type { Tube } from './tube.ts';

/** 1-1/2 in × 0.065 in 316L: rail tube in common stock; common practice, no source. */
const TUBE: Tube = {
  outsideDiameter: 38.1,
  wall: 1.65,
  grade: { from: 'catalogue', key: '316L' },
  heat: '',
  tolerance: { by: 'standard', standard: 'iso-1127-d3-t3' }, // welded tube up to 168.3 mm, EN 10217-7; seen second-hand
};

const DIE: Die = {
  name: '',
  tubeDiameter: 38.1,
  radius: 114.3, // 3 × 38.1, a usual die for this tube; common practice, no source
  gripLength: 76.2, // 2 × 38.1, the low end of plain clamps' 2 to 3 D; common practice, no source
  pressureDieLength: 114.3, // 3 × 38.1; common practice, no source
  largestAngle: 180, // usual stop of a draw bender; common practice, no source
  tooling: 'unknown',
};

const MACHINE: Machine = {
  name: '',
  dies: [DIE],
  die: 0,
  springback: { method: 'theory', bends: [] }, // until the shop has bent and measured its own
  leastStraight: 76.2, // 2 × 38.1, a bending shop's public design sheet; medium confidence
  trimAllowance: 0, // nothing that nobody asked for
  stretchPerBend: 0, // unknown until scribed before and after a bend
  rotationSign: 1, // right-handed about the feed direction; convention
  accuracy: {
    angleScatter: 0.5, // manual draw bending, ± degrees; common practice, no source
    planeScatter: 0.5, // the upper end of ±0.3 to 0.5; common practice, no source
    markAccuracy: 0.5, // ±0.5 mm of a set length; common practice, no source
  },
  surroundings: {
    bedBelow: null, // every machine is another one: measure it
    dieHeight: 76.2, // 2 × 38.1; common practice, no source
    clampReach: 76.2, // 2 × 38.1; common practice, no source
    side: 'right', // convention of this program until it is typed
  },
};

const BENDING: Bending = {
  hand: 'as-drawn',
  toleranceClass: 'B', // welded structures where nobody asked for finer; common practice, no source
  members: [],
};

const CLOSING: Closing = {
  gap: 0, // fused square butt of a wall under 2 mm; common practice, no source
  kerf: 1.2, // thin cutting disc is 1.0 to 1.2; common practice, no source
  shrinkage: 0.5, // 0.3 to 0.8 for a tight butt of a thin wall, ± 50 %; common practice, no source: test one piece
  mostJoints: 2, // a third joint is seldom worth its weld; common practice, no source
  cutMembers: [],
  barred: [],
  joints: [],
  paperThickness: 0.1, // office paper of 80 g/m²; common practice, no source
  daysAtBender: null, // nobody but the bender knows
  way: null,
};

const PURGE: Purge = {
  gas: { from: 'grade', key: '5.0' }, // common welding argon; common practice, no source
  prePurgeFlow: 10, // 5 to 15 for tubes up to 60 mm; common practice, no source
  weldingFlow: 5, // 2 to 8; common practice, no source
  targetOxygen: 50, // choices 20, 50, 100, 500, 1000 by the colour that is allowed; common practice, no source
  extent: 'whole-frame',
  damDistance: 150, // clear of the heat of the weld; common practice, no source
  feed: null,
  vent: null,
  ventBore: 6, // the plan says what pressure this gives
  ventHoles: 'none', // nothing that nobody drilled
  model: 'well-mixed', // the cautious one of two models
  hold: 60, // until the root is below about 250 °C; common practice, no source
  room: { volume: 30, fanFlow: 0 }, // a small closed workshop and no fan: the safe side; example
  bottle: { waterVolume: 20, gaugePressure: 150, temperature: 15 }, // a full small bottle; example
};

const WELDING: Welding = {
  travelSpeed: 1.5, // 1 to 2.5 by hand on 1 to 2 mm wall; common practice, no source
  torchFlow: 8, // 6 to 10; common practice, no source
  postFlow: 8, // about 1 s for each 10 A, at least 5 s; common practice, no source
  fillerDiameter: 1.6, // wall of 1.5 mm in an equipment maker's table
};

const UNKNOWN_TIME = { setUp: null, each: null };

/** Rates are the shop's own: none is made up here, so every line of a first quote stands open. */
const RATES: Rates = {
  currency: 'EUR',
  minorDigits: 2, // ISO 4217, EUR
  date: '',
  tubePerMetre: null,
  gasPerCubicMetre: null,
  fillerPerKilogram: null,
  labourPerHour: { bend: null, cut: null, fit: null, purge: null, weld: null, finish: null },
  times: {
    bend: UNKNOWN_TIME,
    cut: UNKNOWN_TIME,
    fit: UNKNOWN_TIME,
    purge: UNKNOWN_TIME,
    weld: UNKNOWN_TIME,
    finish: UNKNOWN_TIME,
  },
};

/** A complete job of one shape with starting values, each to be looked at and replaced. A fresh copy every time. */
export function newJob(shape: Shape): Job {
  return structuredClone({
    format: 'hoopwright-job',
    version: JOB_VERSION,
    title: '',
    customer: '',
    drawingNumber: '',
    note: '',
    invented: false,
    units: { length: 'mm', fraction: 16 },
    asTyped: {},
    tube: TUBE,
    machine: MACHINE,
    bending: BENDING,
    frame: newFrame(shape),
    fixing: [],
    cameBack: null,
    closing: CLOSING,
    purge: PURGE,
    welding: WELDING,
    rates: RATES,
    print: { paper: 'a4', templateStations: 16 },
  } satisfies Job);
}
