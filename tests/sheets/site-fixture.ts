import type { Job } from '../../server/job/job.ts';
import type { GapPlan } from '../../server/plan/gap.ts';
import type {
  LevelPlan,
  LevelRow,
  PlaneReading,
  SitePlan,
  SitePointPlan,
  StandingPlan,
} from '../../server/plan/site.ts';
import type { StrengthPlan } from '../../server/plan/strength.ts';
import { makeJob } from './fixture.ts';
import { figure } from './fixture-figure.ts';
import { legs } from './site-fixture-legs.ts';
import { siteViews } from './site-fixture-views.ts';

/** A hoop on a transom, two legs to its sides and one in the middle, a rudder post that swings in front of it. */
export const sitePlan = (diameter = 38.1): SitePlan => ({
  level: lies(),
  rows: rows(),
  points: points(),
  standing: stands(),
  legs: legs(diameter),
  gaps: gaps(),
  strength: strength(),
  views: siteViews(diameter),
});

/** The job that such a plan belongs to, as far as the sheets look at it. */
export function siteJob(paper: Job['print']['paper'] = 'a4', length: Job['units']['length'] = 'mm'): Job {
  const job = makeJob(38.1, paper);
  const distance = (from: string, value: number) => ({ from, distance: value, accuracy: null });
  return {
    ...job,
    cameBack: null,
    units: { ...job.units, length },
    site: {
      ...job.site,
      points: [
        { name: 'transom port', at: { by: 'typed', point: { x: 0, y: 420, z: -610 }, accuracy: null } },
        { name: 'transom starboard', at: { by: 'typed', point: { x: 0, y: -420, z: -610 }, accuracy: null } },
        {
          name: 'pontoon pad',
          at: {
            by: 'distances',
            distances: [
              distance('transom port', 771.5),
              distance('transom starboard', 773.1),
              distance('rail', 920),
              distance('post foot', 640),
            ],
            on: null,
            towards: 'down',
          },
        },
      ],
    },
  };
}

const lies = (): LevelPlan => ({
  known: true,
  up: { x: -0.01396, y: 0.02967, z: 0.99946 },
  trim: figure(-0.8, 'deg', 0.07),
  list: figure(1.7, 'deg', 0.07),
  tilt: figure(1.88, 'deg', 0.07),
  set: 2,
  waiting: 0,
  taken: '2026-11-26T23:10',
  goodFor: 2,
  residuals: [0, 1, 2].map((index) => ({
    field: `/site/level/sets/1/readings/${String(index)}`,
    measured: figure(1.7, 'deg', 0.1),
    residual: figure(index === 2 ? 0.45 : -0.06, 'deg'),
    disagrees: index === 2,
  })),
  drift: {
    set: 1,
    taken: '2026-11-26T18:00',
    trim: figure(0.2, 'deg', 0.1),
    list: figure(-0.35, 'deg', 0.1),
    turn: figure(0.4, 'deg', 0.14),
  },
});

type Held = { readonly shows: number; readonly rises: PlaneReading['rises']; readonly leans: PlaneReading['leans'] };

const held = (plane: PlaneReading['plane'], { shows, rises, leans }: Held): PlaneReading => ({
  plane,
  shows: figure(shows, 'deg', 0.07),
  rises,
  offPlumb: figure(90 - shows, 'deg', 0.07),
  leans,
});

/** A post raked aft and one that leans to starboard as they show where a boat is down by the bow and to starboard. */
function rows(): LevelRow[] {
  const row = (of: LevelRow['of'], name: string, along: number, planes: PlaneReading[], differs = false): LevelRow => ({
    of,
    name,
    field: of === 'direction' ? '/site/directions/0/direction' : '',
    direction: { x: 0, y: 0, z: 1 },
    along: figure(along, 'deg', 0.07),
    offPlumb: figure(90 - along, 'deg', 0.07),
    planes,
    differs,
  });
  return [
    row(
      'direction',
      'raked post',
      80.6459,
      [
        held('fore-and-aft', { shows: 80.8, rises: 'back', leans: 'back' }),
        held('athwart', { shows: 88.3, rises: 'starboard', leans: 'starboard' }),
      ],
      true,
    ),
    row('thing', 'rudder post', 88.1, [held('fore-and-aft', { shows: 89.2, rises: 'ahead', leans: 'ahead' })]),
    row('member', 'hoop', 2.4, [
      held('fore-and-aft', { shows: 0.8, rises: 'back', leans: 'back' }),
      held('athwart', { shows: 2.4, rises: 'port', leans: 'port' }),
    ]),
    row('leg', 'port strut', 51.2, [held('fore-and-aft', { shows: 51.7, rises: 'back', leans: 'back' })], true),
    row('hinge', '', 1.7, [held('athwart', { shows: 1.7, rises: 'port', leans: 'port' })]),
  ];
}

function points(): SitePointPlan[] {
  const point = (index: number, name: string, at: readonly [number, number, number], spare: readonly number[]) => ({
    name,
    field: `/site/points/${String(index)}`,
    x: figure(at[0], 'mm', 1.2),
    y: figure(at[1], 'mm', 1.5),
    z: figure(at[2], 'mm', 2.1),
    residuals: spare.map((residual, distance) => ({
      field: `/site/points/${String(index)}/at/distances/${String(distance)}/distance`,
      measured: figure(771.5, 'mm', 2),
      residual: figure(residual, 'mm'),
      disagrees: Math.abs(residual) > 6,
    })),
  });
  return [
    point(0, 'transom port', [0, 420, -610], []),
    point(1, 'transom starboard', [0, -420, -610], []),
    point(2, 'pontoon pad', [-650, 0, -612.4], [0.8, -0.5, 7.2, -1.1]),
  ];
}

const stands = (): StandingPlan => ({
  origin: { x: 0, y: 0, z: 0 },
  x: { x: 0, y: -1, z: 0 },
  y: { x: -1, y: 0, z: 0 },
  z: { x: 0, y: 0, z: 1 },
  misfits: [{ field: '/site/placing/pairs/0', name: 'transom port', misfit: figure(2.4, 'mm') }],
  turn: figure(2.27, 'deg', 0.2),
  slopes: [
    {
      field: '/site/standing/slopes/0',
      axis: 'asked',
      toStructure: figure(-0.8, 'deg', 0.07),
      toLevel: figure(0, 'deg', 0.1),
    },
    { field: '', axis: 'x', toStructure: figure(0, 'deg', 0.07), toLevel: figure(-1.7, 'deg', 0.1) },
    { field: '', axis: 'y', toStructure: figure(-2.27, 'deg', 0.07), toLevel: figure(-1.47, 'deg', 0.1) },
  ],
  height: figure(412.3, 'mm', 1.9),
});

function gaps(): GapPlan[] {
  const row = (of: 'member' | 'leg', name: string, gap: number, swing: number | null): GapPlan['rows'][number] => ({
    of,
    name,
    field: of === 'leg' ? '/site/legs/2' : '',
    gap: figure(gap, 'mm', 2.3),
    station: figure(612.5, 'mm'),
    onTube: { x: -300, y: 100, z: 0 },
    onThing: { x: -250, y: 100, z: 0 },
    thingSwing: swing === null ? null : figure(swing, 'deg'),
    frameSwing: null,
  });
  return [
    {
      thing: 'rudder post',
      field: '/site/things/0',
      clearance: figure(25, 'mm'),
      rows: [
        row('leg', 'middle post', -4.2, 35),
        row('member', 'hoop', 18.3, 20),
        row('member', 'crossbar 1', 61, null),
      ],
      ellipse: { long: figure(61.2, 'mm'), short: figure(60.3, 'mm'), tilt: figure(9.7, 'deg') },
      keptClear: true,
    },
  ];
}

function strength(): StrengthPlan {
  const strut = (leg: string, index: number, holds: boolean): StrengthPlan['struts'][number] => ({
    leg,
    field: `/site/legs/${String(index)}`,
    factor: figure(1, 'ratio'),
    bucklingLength: figure(762.4, 'mm'),
    slenderness: figure(59.2, 'ratio'),
    euler: figure(108_400, 'N'),
    eulerHolds: holds,
    adjusted: null,
    reduced: holds ? figure(31_500, 'N') : null,
  });
  return {
    struts: [strut('port strut', 0, true), strut('starboard strut', 1, true), strut('middle post', 2, false)],
    spans: [],
    loads: [
      {
        key: 'boarding-step',
        load: figure(1500, 'N'),
        legs: [{ leg: 'port strut', field: '/site/legs/0', force: figure(-2390, 'N'), overReduced: false }],
      },
    ],
  };
}
