import type { Bending } from './bending.ts';
import type { Closing } from './closing.ts';
import { newFrame, type Shape } from './default-frame.ts';
import type { Finish } from './finish.ts';
import { JOB_VERSION, type Job } from './job.ts';
import type { Die, Machine } from './machine.ts';
import type { Purge } from './purge.ts';
import { RATES } from './default-rates.ts';
import type { Quote } from './quote.ts';
import type { Site } from './site.ts';
import type { Stock } from './stock.ts';
import type { Tube } from './tube.ts';
import type { WeldSettings, Welding } from './welding.ts';

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
  up: { x: 0, y: 0, z: 1 }, // a flat frame lies on the bench; convention
  ventBore: 6, // the plan says what pressure this gives
  holes: {
    underSaddles: 'none', // nothing that nobody drilled
    except: [],
    bore: 6, // passes 5 L/min at some 20 Pa; common practice, no source
    toAir: [],
  },
  model: 'well-mixed', // the cautious one of two models
  hold: null, // until the root is below about 250 °C, as reckoned
  meter: [],
  room: { volume: 30, lowVolume: null, fanFlow: 0, fanWay: 'in', receives: 'all' }, // small, closed, no fan: example
  bottle: {
    waterVolume: 20, // a small bottle; example
    gaugePressure: 150, // example
    temperature: 15,
    reserve: 10, // 5 to 10 are left, so that no air gets in; common practice, no source
    gaugeNow: null,
  },
};

/** Nothing is of one's own yet: every value is the plan's, by its tables. */
const SETTINGS: WeldSettings = {
  provedOn: '',
  process: null,
  current: null,
  voltage: null,
  travelSpeed: null,
  electrode: null,
  cup: null,
  preFlow: null,
  torchFlow: null,
  postFlow: null,
  filler: '',
  fillerDiameter: null,
  runs: null,
  interpass: null,
};

const WELDING: Welding = {
  butt: { ...SETTINGS },
  saddle: { ...SETTINGS },
  pad: { ...SETTINGS },
  groove: {
    form: null,
    angle: 32.5, // 30 to 35 each side over 3 mm of wall; common practice, no source
    land: 1.5, // 1 to 1.5; common practice, no source
  },
  backing: 'purge',
  sleeve: { wall: 1.5, length: null }, // a wall that is stocked; common practice, no source
  quality: 'B', // work that is polished and looked at; our own choice
  symbols: 'iso-2553',
  pull: 0.75, // 0.5 to 1 without a jig; common practice, no source
  order: [],
};

const FINISH: Finish = {
  treatment: 'flush', // rails are ground flush; common practice, no source
  surface: 'satin', // 240 to 320 grit, for outdoors and the sea: EN 10088-2 1K/2K, seen second-hand
  minutes: { flush: null, surface: null, saddleTimes: null },
  cleaning: 'citric-3', // no chromium(VI), room temperature: ASTM A967, from memory
  nearSea: true, // what this program is made for; look at it
};

const SITE: Site = {
  sides: 'boat',
  level: {
    sets: [], // nobody has read a level: the structure's own axes are taken for level
    angleAccuracy: 0.1, // a good digital level, ± degrees; common practice, no source
    heightAccuracy: 1, // a hose level read at both ends, ± mm; common practice, no source
    goodFor: 2, // people come aboard, tides and jacks move: our own choice
  },
  tapeAccuracy: 2, // a tape held in the open by two people; common practice, no source
  points: [],
  things: [],
  directions: [],
  // as a flat frame is drawn, seen from above with ahead up, until it is placed; our own choice
  placing: { by: 'axes', origin: { x: 0, y: 0, z: 0 }, x: { x: 0, y: -1, z: 0 }, y: { x: 1, y: 0, z: 0 } },
  standing: { hinge: null, slopes: [], height: null, swing: null },
  legs: [],
  load: null,
};

const STOCK: Stock = {
  saw: {
    kerf: 2, // blade of a small cold saw is 1.8 to 2.5; common practice, no source
    endTrim: 5, // squares an end as it comes from the mill; common practice, no source
    leastRemnant: 300, // shorter ones are seldom found again; common practice, no source
  },
  joints: [],
  layout: null,
};

const QUOTE: Quote = {
  reference: '',
  date: '',
  validDays: 30, // a month is usual; common practice, no source
  terms: '',
  quantities: [1],
  bending: 'own',
  bendersOffer: null, // nobody but the bender knows
  travel: { trips: 0, kilometres: 0, hours: 0 },
  offered: [],
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
    finish: FINISH,
    site: SITE,
    stock: STOCK,
    rates: RATES,
    quote: QUOTE,
    log: [],
    print: { paper: 'a4', templateStations: 16 },
  } satisfies Job);
}
