import type { ExportInput } from '../../server/exports/export-file.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Figure, Unit } from '../../server/plan/figure.ts';
import type { WrapTemplate } from '../../server/plan/frame.ts';
import type { LegPlan } from '../../server/plan/leg.ts';
import type { LevelRow, PlaneReading, SitePlan } from '../../server/plan/site.ts';
import { braced, inputOf } from './made-up-frames.ts';

const figure = (value: number, unit: Unit, plusMinus?: number): Figure => ({
  value,
  unit,
  band: plusMinus === undefined ? null : { plusMinus, from: ['site-point'] },
  working: { formula: 'v', inputs: [], sources: ['geometry'] },
});

const wrap = (kind: 'saddle' | 'plane', member: string): WrapTemplate => ({
  key: `${member} ${kind}`,
  kind,
  member,
  place: kind === 'saddle' ? 'finish' : 'start',
  wrapLength: 80,
  low: kind === 'saddle' ? -10 : 0,
  high: kind === 'saddle' ? 0 : 10,
  ringStation: kind === 'saddle' ? 748.1234567 : 0,
  scrap: kind === 'saddle' ? 'finish' : 'start',
  edge: 0,
  stations: [],
  curve: [
    [0, kind === 'saddle' ? -10 : 0],
    [40, kind === 'saddle' ? 0 : 10],
    [80, kind === 'saddle' ? -10 : 0],
  ],
  second: null,
  hinge: null,
});

const leg = (number: number, name: string, change: Partial<LegPlan> = {}): LegPlan => ({
  number,
  name,
  field: `/site/legs/${String(number - 1)}`,
  side: 'port',
  outsideDiameter: 25.4,
  wall: 1.65,
  foot: {
    end: 'mitre',
    tilt: figure(31.5, 'deg'),
    takes: figure(6, 'mm'),
    rise: figure(15.6, 'mm'),
    longSide: figure(90, 'deg'),
    plate: 6,
  },
  head: {
    end: 'saddle',
    member: 'rail',
    station: figure(480, 'mm'),
    axisAngle: figure(77.25, 'deg'),
    takes: figure(14.125, 'mm'),
  },
  footPoint: { x: 0, y: 0, z: 0 },
  headPoint: { x: 0, y: 0, z: 0 },
  centreLength: figure(762.379, 'mm', 3.2),
  cutLength: figure(748.1234567, 'mm', 3.25),
  middleLength: figure(741, 'mm'),
  shortest: figure(735, 'mm'),
  longest: figure(748, 'mm'),
  mass: figure(0.7, 'kg'),
  roll: figure(-12.5, 'deg'),
  rollRound: figure(-2.77, 'mm'),
  templates: [wrap('plane', name), wrap('saddle', name)],
  adjust: null,
  perDegree: figure(6.703, 'mm/deg'),
  slopes: [{ axis: 'asked', field: '/site/standing/slopes/0', perDegree: figure(-6.703, 'mm/deg') }],
  doubts: [],
  measureAgain: null,
  order: 1,
  bandThen: figure(1, 'mm'),
  ...change,
});

const reading = (plane: PlaneReading['plane'], shows: number, rises: PlaneReading['rises']): PlaneReading => ({
  plane,
  shows: figure(shows, 'deg', 0.1),
  rises,
  offPlumb: figure(90 - shows, 'deg', 0.1),
  leans: rises === null ? null : rises === 'port' ? 'starboard' : 'back',
});

const row = (of: LevelRow['of'], name: string, along: number, planes: PlaneReading[]): LevelRow => ({
  of,
  name,
  field: '',
  direction: { x: 0, y: 0, z: 1 },
  along: figure(along, 'deg', 0.14),
  offPlumb: figure(90 - along, 'deg', 0.14),
  planes,
  differs: false,
});

const LEGS = [
  leg(1, 'port leg'),
  leg(2, 'middle leg', {
    side: 'middle',
    roll: null,
    rollRound: null,
    perDegree: null,
    cutLength: figure(500, 'mm'),
    head: { ...leg(2, '').head, member: 'square' },
  }),
];
const ROWS = [
  row('direction', 'hand rail post', 80.64591, [
    reading('fore-and-aft', 80.8, 'ahead'),
    reading('athwart', 88.3, 'port'),
  ]),
  row('member', 'rail', 2.5, [reading('fore-and-aft', 0, null), reading('athwart', 2.5, 'port')]),
];

/** The braced frame on a made-up site. */
export function sited(site: Partial<SitePlan> = {}, member: string | null = null): ExportInput {
  const input = inputOf(braced(), member);
  const upright = { x: 0, y: 0, z: 1 };
  const level = {
    known: true,
    up: upright,
    trim: figure(-0.8, 'deg'),
    list: figure(1.7, 'deg'),
    tilt: figure(1.88, 'deg'),
    set: 2,
    waiting: 0,
    taken: '2026-11-02T10:20',
    goodFor: 2,
    residuals: [],
    drift: null,
  };
  const strength = { struts: [], spans: [], loads: [] };
  const whole: SitePlan = {
    level,
    rows: ROWS,
    points: [],
    standing: null,
    legs: LEGS,
    gaps: [],
    strength,
    views: [],
    ...site,
  };
  return { ...input, plan: { ...input.plan, site: whole } };
}

/** The same site on shore, where sides are left and right. */
export const onShore = (input: ExportInput): ExportInput => ({
  ...input,
  job: { ...input.job, site: { ...input.job.site, sides: 'shore' } },
});

/** A tube that is all wall: no frame can be made of it. */
export function tooThick(): ExportInput {
  const job = newJob('straight');
  return inputOf({ ...job, tube: { ...job.tube, wall: job.tube.outsideDiameter / 2 } });
}
