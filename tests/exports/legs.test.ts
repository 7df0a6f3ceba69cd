import DxfParser, { type ITextEntity } from 'dxf-parser';
import papaparse from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { ExportInput, Exported } from '../../server/exports/export-file.ts';
import { legsCsv } from '../../server/exports/legs-csv.ts';
import { levelCsv } from '../../server/exports/level-csv.ts';
import { wrapsDxf } from '../../server/exports/wraps-dxf.ts';
import { wrapsSvg } from '../../server/exports/wraps-svg.ts';
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
  low: -5,
  high: 5,
  ringStation: kind === 'saddle' ? 700 : 30,
  scrap: kind === 'saddle' ? 'finish' : 'start',
  edge: 0,
  stations: [],
  curve: [
    [0, -5],
    [40, 5],
    [80, -5],
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
  foot: { end: 'mitre', tilt: figure(31.5, 'deg'), takes: figure(6, 'mm'), rise: figure(15.6, 'mm') },
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
  leans: rises === null ? 'ahead' : null,
});

const row = (of: LevelRow['of'], name: string, planes: PlaneReading[]): LevelRow => ({
  of,
  name,
  field: '',
  direction: { x: 0, y: 0, z: 1 },
  along: figure(80.64591, 'deg', 0.14),
  offPlumb: figure(9.35409, 'deg', 0.14),
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
  row('direction', 'hand rail post', [reading('fore-and-aft', 80.8, 'ahead'), reading('athwart', 88.3, 'port')]),
  row('member', 'rail', [reading('fore-and-aft', 0, null)]),
];

/** The braced frame on a made-up site. */
function sited(site: Partial<SitePlan> = {}, member: string | null = null): ExportInput {
  const input = inputOf(braced(), member);
  const upright = { x: 0, y: 0, z: 1 };
  const level = {
    known: true,
    up: upright,
    trim: figure(-0.8, 'deg'),
    list: figure(1.7, 'deg'),
    tilt: figure(1.88, 'deg'),
    set: 2,
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

const onShore = (input: ExportInput): ExportInput => ({
  ...input,
  job: { ...input.job, site: { ...input.job.site, sides: 'shore' } },
});

function read(made: Exported): Record<string, string>[] {
  if (!made.ok) throw new Error(made.reason);
  const { data, errors } = papaparse.parse<Record<string, string>>(made.text, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}

describe('the legs', () => {
  it('have a row each with how they are cut, its unit in the head', () => {
    expect(read(legsCsv(sited()))).toEqual([
      {
        number: '1',
        leg: 'port leg',
        side: 'port',
        'outside diameter (mm)': '25.4',
        'wall (mm)': '1.65',
        'centre length (mm)': '762.379',
        'cut length (mm)': '748.1235',
        'cut length: plus or minus (mm)': '3.25',
        'tilt at the foot (deg)': '31.5',
        'angle to the tube at the head (deg)': '77.25',
        'roll, foot to head (deg)': '-12.5',
        'roll round the outside (mm)': '-2.77',
        'length for a degree of slope (mm/deg)': '6.703',
        'sits on': 'rail',
        'station (mm)': '480',
      },
      expect.objectContaining({
        number: '2',
        side: 'middle',
        'cut length: plus or minus (mm)': '',
        'roll, foot to head (deg)': '',
        'roll round the outside (mm)': '',
        'length for a degree of slope (mm/deg)': '',
        'sits on': 'square',
      }),
    ]);
  });

  it('begin with their first head as it is: no byte order mark', () => {
    for (const made of [legsCsv(sited()), levelCsv(sited())])
      expect(made.ok && made.text).toMatch(/^(number,leg,side|what,name),/);
  });

  it('call their sides as the job does', () => {
    expect(read(legsCsv(onShore(sited())))[0]!['side']).toBe('left');
  });

  it('are those under one member where one is chosen', () => {
    expect(read(legsCsv(sited({}, 'square'))).map((one) => one['leg'])).toEqual(['middle leg']);
    expect(legsCsv(sited({}, 'slanting'))).toMatchObject({ ok: false, reason: 'no-legs' });
    expect(legsCsv(sited({}, 'nobody'))).toMatchObject({ ok: false, reason: 'no-such-member', member: 'nobody' });
  });

  it('are refused where there are none, or no frame', () => {
    expect(legsCsv(sited({ legs: [] }))).toMatchObject({ ok: false, reason: 'no-legs' });
    expect(legsCsv(inputOf(newJob('straight')))).toMatchObject({ ok: false, reason: 'no-legs' });
    const job = newJob('straight');
    const tooThick = inputOf({ ...job, tube: { ...job.tube, wall: job.tube.outsideDiameter / 2 } });
    expect(legsCsv(tooThick)).toMatchObject({ ok: false, reason: 'frame-not-possible' });
    expect(levelCsv(tooThick)).toMatchObject({ ok: false, reason: 'frame-not-possible' });
  });
});

describe('what the level must show', () => {
  it('has a row a line, each plane with the side that is higher', () => {
    const [post, rail] = read(levelCsv(sited()));
    expect(post).toEqual({
      what: 'direction',
      name: 'hand rail post',
      'along it (deg)': '80.6459',
      'along it: plus or minus (deg)': '0.14',
      'off plumb (deg)': '9.3541',
      'fore-and-aft: level shows (deg)': '80.8',
      'fore-and-aft: level shows, plus or minus (deg)': '0.1',
      'fore-and-aft: higher': 'ahead',
      'fore-and-aft: off plumb (deg)': '9.2',
      'fore-and-aft: leans to': '',
      'athwart: level shows (deg)': '88.3',
      'athwart: level shows, plus or minus (deg)': '0.1',
      'athwart: higher': 'port',
      'athwart: off plumb (deg)': '1.7',
      'athwart: leans to': '',
      'set of readings': '2',
      'taken at': '2026-11-02T10:20',
    });
    expect(rail).toMatchObject({
      what: 'member',
      'fore-and-aft: level shows (deg)': '0',
      'fore-and-aft: higher': '',
      'fore-and-aft: leans to': 'ahead',
      'athwart: level shows (deg)': '',
      'athwart: off plumb (deg)': '',
    });
    expect(read(levelCsv(onShore(sited())))[0]!['athwart: higher']).toBe('left');
  });

  it('names no set where nobody has read a level', () => {
    const { plan } = sited();
    const unread = { ...plan.site!.level, known: false, taken: '' };
    expect(read(levelCsv(sited({ level: unread })))[0]).toMatchObject({ 'set of readings': '', 'taken at': '' });
  });

  it('is of one member where one is chosen, and refused where there is nothing', () => {
    expect(read(levelCsv(sited({}, 'rail'))).map((one) => one['name'])).toEqual(['rail']);
    expect(levelCsv(sited({}, 'square'))).toMatchObject({ ok: false, reason: 'no-level-rows' });
    expect(levelCsv(sited({}, 'nobody'))).toMatchObject({ ok: false, reason: 'no-such-member' });
    expect(levelCsv(sited({ rows: [] }))).toMatchObject({ ok: false, reason: 'no-level-rows' });
    expect(levelCsv(inputOf(braced()))).toMatchObject({ ok: false, reason: 'no-level-rows' });
  });
});

describe('wraps of the legs', () => {
  const texts = (input: ExportInput): string[] => {
    const made = wrapsDxf(input);
    if (!made.ok) throw new Error(made.reason);
    return new DxfParser()
      .parseSync(made.text)!
      .entities.filter((one): one is ITextEntity => one.type === 'TEXT')
      .map(({ text }) => text);
  };

  it('stand after those of the frame, with the name of the leg', () => {
    const drawn = texts(sited());
    const titles = ['port leg, mitre at the foot', 'port leg, saddle at the head', 'middle leg, mitre at the foot'];
    for (const title of titles) expect(drawn).toContain(title);
    expect(drawn.indexOf('square, saddle at the start')).toBeGreaterThanOrEqual(0);
    expect(drawn.indexOf('square, saddle at the start')).toBeLessThan(drawn.indexOf(titles[0]!));
    expect(drawn).toContain('Ring at 700.0 mm from the datum end of port leg (its foot); the far end is up.');
    const svg = wrapsSvg(sited());
    expect(svg.ok && svg.text).toContain('middle leg, saddle at the head');
  });

  it('are enough for a file, and no part of a member’s', () => {
    const plain = sited();
    const members = plain.plan.frame!.members.map((member) => ({ ...member, templates: [] }));
    const alone = { ...plain, plan: { ...plain.plan, frame: { ...plain.plan.frame!, members } } };
    expect(texts(alone)).toContain('port leg, saddle at the head');
    expect(texts(sited({}, 'square')).filter((text) => text.includes('leg'))).toEqual([]);
    expect(wrapsDxf({ ...alone, member: 'rail' })).toMatchObject({ ok: false, reason: 'no-wraps' });
  });
});
