import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job as JobSchema, type Job } from '../../server/job/job.ts';
import { Level, LevelSet } from '../../server/job/level.ts';
import { Site } from '../../server/job/site.ts';
import { TOWARDS } from '../../server/job/site-point.ts';
import { parseJob } from '../../server/job/validate.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { LevelRow, PlaneReading, SitePlan } from '../../server/plan/site.ts';
import { figure } from '../../server/solver/figure.ts';
import { plan } from '../../server/solver/plan.ts';
import { ageOf, wallClock } from '../../web/state/level-age.ts';
import { sidedTextAt, withAngleSide, withAngleSize } from '../../web/state/level-angle.ts';
import {
  alongKey,
  freshReadings,
  freshSet,
  LEVEL_SETS,
  SET_KINDS,
  setAgain,
  untouchedKind,
} from '../../web/state/level-readings.ts';
import { isSteep, nearestPlane, residualAt, rowGroups, tellingResiduals } from '../../web/state/level-rows.ts';
import { isSetUsed, withoutSet } from '../../web/state/level-sets.ts';
import { rowName, setWords, sided, wayWords } from '../../web/state/level-words.ts';
import {
  MOST_DIRECTIONS,
  MOST_LEVEL_READINGS,
  MOST_LEVEL_SETS,
  MOST_SITE_DISTANCES,
  MOST_SITE_POINTS,
} from '../../web/state/limits.ts';
import { directionOptions, freshDirection, thingsWithDirection } from '../../web/state/site-directions.ts';
import { freshName, placesOfName, withName } from '../../web/state/site-names.ts';
import { foundOptions, freshFound, freshSitePoint, nameOptions, TOWARDS_WAYS } from '../../web/state/site-points.ts';
import { isSiteEmpty } from '../../web/state/site-state.ts';
import { stageFigure, stageOf } from '../../web/state/stages.ts';
import { isLengthField } from '../../web/state/length-fields.ts';
import { wayOutWords } from '../../web/state/way-out-words.ts';
import { valueAt } from '../../web/state/pointer.ts';
import { tubesOf } from '../../web/state/tubes.ts';
import { withText } from '../../web/state/typed-text.ts';

const hoop = newJob('hoop');
const NOON = '2026-11-26T12:00';
const withSite = (site: Partial<Job['site']>, job: Job = hoop): Job => ({ ...job, site: { ...job.site, ...site } });
const withSets = (...sets: Job['site']['level']['sets']): Job => withSite({ level: { ...hoop.site.level, sets } });
const read = withSets(freshSet('two-levels', NOON));
const angle = `${LEVEL_SETS}/0/readings/0/angle`;
const degrees = (value: number) => figure(value, 'deg', 'x = y', [], ['first-order']);
const lengthOf = (value: number) => figure(value, 'mm', 'x = y', [], ['first-order']);

describe('an angle with a side', () => {
  const value = (job: Job): unknown => valueAt(job, angle);

  it('is a size and a choice on the page, one signed number in the job', () => {
    const typed = withAngleSize(read, angle, '0.8');
    expect(value(typed)).toBe(0.8);
    const back = withAngleSide(typed, angle, true);
    expect([value(back), sidedTextAt(back, angle)]).toEqual([-0.8, { negative: true, size: '0.8' }]);
    expect(value(withAngleSide(back, angle, false))).toBe(0.8);
    expect(parseJob(back).ok).toBe(true);
  });

  it('keeps a side that was chosen before the number', () => {
    const chosen = withAngleSide(read, angle, true);
    expect([value(chosen), sidedTextAt(chosen, angle)]).toEqual([0, { negative: true, size: '0' }]);
    expect(value(withAngleSize(chosen, angle, '1.7'))).toBe(-1.7);
  });

  it('takes a minus of one’s own for the second side, letter by letter', () => {
    const letters = ['-', '-0', '0.', '0.8'].reduce((job, text) => withAngleSize(job, angle, text), read);
    expect([value(letters), sidedTextAt(letters, angle)]).toEqual([-0.8, { negative: true, size: '0.8' }]);
    expect(value(withAngleSize(read, angle, '\u22120.8'))).toBe(-0.8);
  });

  it('shows a number that nobody typed by its size', () => {
    const set = { ...freshSet('two-levels', NOON), readings: [{ ...freshReadings('two-levels')[0]!, angle: -1.25 }] };
    expect(sidedTextAt(withSets(set as LevelSet), angle)).toEqual({ negative: true, size: '1.25' });
  });

  it('keeps a text that is no number, and the last angle with it', () => {
    const text = withAngleSize(withAngleSize(read, angle, '0.8'), angle, '0.8x.');
    expect([value(text), sidedTextAt(text, angle).size]).toEqual([0.8, '0.8x.']);
  });

  it('is the number that a side and a size say, whichever comes first', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 18_000 }), fc.boolean(), (hundredths, negative) => {
        const size = String(hundredths / 100);
        const first = withAngleSide(withAngleSize(read, angle, size), angle, negative);
        const second = withAngleSize(withAngleSide(read, angle, negative), angle, size);
        expect(first).toEqual(second);
        expect(Math.abs(Number(value(first)) - (negative ? -1 : 1) * (hundredths / 100))).toBeLessThan(1e-12);
      }),
      { numRuns: 60 },
    );
  });
});

describe('sets of level readings', () => {
  it('begin with the rows that their way of reading takes', () => {
    for (const kind of SET_KINDS) {
      const job = withSets(freshSet(kind, NOON));
      expect(parseJob(job).ok).toBe(true);
      expect(untouchedKind(job, 0)).toBe(kind);
    }
    expect(freshReadings('two-levels').map(({ reading }) => reading)).toEqual(['incline', 'incline']);
    expect(freshReadings('marks-and-level').map(({ reading }) => reading)).toEqual(['height', 'height', 'incline']);
    const marks = freshReadings('three-heights').map((one) => (one.reading === 'height' ? one.at : null)!);
    const [a, b, c] = [marks[0]!, marks[1]!, marks[2]!];
    expect((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)).not.toBe(0);
  });

  it('are touched by the first letter, so that no other way of reading takes them away', () => {
    expect(untouchedKind(withAngleSize(read, angle, ''), 0)).toBeNull();
    expect(untouchedKind(withAngleSide(read, angle, true), 0)).toBeNull();
    expect(untouchedKind(withSets({ ...freshSet('two-levels', NOON), readings: [] }), 0)).toBeNull();
  });

  it('are read again along the same lines with the last numbers, at a new time and without the note', () => {
    const last: LevelSet = { ...freshSet('three-heights', NOON), note: 'at the jetty' };
    expect(setAgain(last, '2026-11-26T15:00')).toEqual({
      taken: '2026-11-26T15:00',
      note: '',
      readings: last.readings,
    });
  });

  it('know the two usual lines from any other', () => {
    expect(alongKey({ x: 2, y: 0, z: 0 })).toBe('ahead');
    expect(alongKey({ x: 0, y: 1, z: 0 })).toBe('port');
    for (const other of [
      { x: -1, y: 0, z: 0 },
      { x: 1, y: 1, z: 0 },
      { x: 1, y: 0, z: 0.1 },
      { x: 0, y: 0, z: 0 },
    ])
      expect(alongKey(other)).toBeNull();
  });

  it('go without a trace, and what was measured while another held goes on naming that one', () => {
    const set = freshSet('two-levels', NOON);
    const lean = (number: number) => ({
      name: `line ${String(number)}`,
      direction: { by: 'plumb' as const, ahead: 1, port: 2, set: number },
    });
    const job = withSite({ directions: [lean(1), lean(3)] }, withSets(set, set, set));
    expect([0, 1, 2].map((index) => isSetUsed(job, index))).toEqual([true, false, true]);
    const left = withoutSet(job, 1);
    expect(left.site.level.sets).toHaveLength(2);
    expect(left.site.directions.map(({ direction }) => 'set' in direction && direction.set)).toEqual([1, 2]);
  });
});

describe('how old readings are', () => {
  it('is told by the hands of the clock alone', () => {
    expect(ageOf(NOON, 2, '2026-11-26T13:59')).toEqual({ is: 'fresh', minutes: 119, until: '2026-11-26T14:00' });
    expect(ageOf(NOON, 2, '2026-11-26T14:00')).toMatchObject({ is: 'fresh' });
    expect(ageOf(NOON, 2, '2026-11-26T14:01')).toEqual({ is: 'old', minutes: 121, until: '2026-11-26T14:00' });
    expect(ageOf('2026-12-31T23:30', 1, '2027-01-01T00:45')).toMatchObject({ is: 'old', minutes: 75 });
    expect(ageOf(NOON, 0.05, '2026-11-26T12:04')).toMatchObject({ is: 'old' });
  });

  it('says when nothing was noted, and when the time is still to come', () => {
    expect(ageOf('', 2, NOON)).toEqual({ is: 'unknown' });
    expect(ageOf('2026-13-40T99:99', 2, NOON)).toEqual({ is: 'unknown' });
    expect(ageOf('2026-11-26T12:04', 2, NOON)).toMatchObject({ is: 'fresh', minutes: 0 });
    expect(ageOf('2026-11-26T12:06', 2, NOON)).toEqual({ is: 'ahead' });
  });

  it('takes what the clock on the wall shows in the form that the job keeps', () => {
    expect(wallClock(new Date(2026, 0, 2, 3, 4))).toBe('2026-01-02T03:04');
    expect(parseJob(withSets(freshSet('two-levels', wallClock(new Date())))).ok).toBe(true);
  });
});

const plane = (of: Partial<PlaneReading>): PlaneReading => ({
  plane: 'fore-and-aft',
  shows: degrees(80.8),
  rises: 'ahead',
  offPlumb: degrees(9.2),
  leans: 'back',
  ...of,
});
const row = (of: Partial<LevelRow>): LevelRow => ({
  of: 'direction',
  name: 'mast',
  field: '/site/directions/0',
  direction: { x: 0, y: 0, z: 1 },
  along: degrees(80.65),
  offPlumb: degrees(9.35),
  planes: [],
  differs: true,
  ...of,
});

describe('what the level must show, in words', () => {
  it('says which way a post leans and which side of a rail is up, as boat or shore call it', () => {
    expect([isSteep(row({})), isSteep(row({ along: degrees(45) }))]).toEqual([true, false]);
    expect(wayWords('boat', plane({}), true)).toBe('leans astern');
    expect(wayWords('shore', plane({ leans: 'starboard' }), true)).toBe('leans to the right');
    expect(wayWords('boat', plane({ rises: 'port' }), false)).toBe('port up');
    expect([wayWords('boat', plane({ leans: null }), true), wayWords('boat', plane({ rises: null }), false)]).toEqual([
      'plumb',
      'level',
    ]);
  });

  it('sets beside each other the two that are taken for each other', () => {
    const athwart = plane({ plane: 'athwart', shows: degrees(88.3) });
    expect(nearestPlane(row({ planes: [athwart, plane({})] }))?.plane).toBe('fore-and-aft');
    expect(nearestPlane(row({}))).toBeUndefined();
  });

  it('has the hinge and legs before what stands there anyway', () => {
    const rows = (['direction', 'member', 'leg', 'thing', 'hinge'] as const).map((of) => row({ of, name: of }));
    const { set, asStands } = rowGroups(rows);
    expect([set.map(({ of }) => of), asStands.map(({ of }) => of)]).toEqual([
      ['leg', 'hinge'],
      ['member', 'thing'],
    ]);
    expect(rows.map(rowName)).toEqual(['direction', 'tube member', 'leg', 'thing', 'hinge']);
    expect(rowName({ of: 'direction', name: '' })).toBe('no name');
  });

  it('has a size and the end that is up instead of a sign', () => {
    const { units } = hoop;
    expect(sided(degrees(-0.8), 'fore-and-aft', units)).toMatchObject({ size: { value: 0.8 }, side: 'back' });
    expect(sided(degrees(1.7), 'athwart', units)).toMatchObject({ size: { value: 1.7 }, side: 'port' });
    expect(sided(degrees(-1e-9), 'athwart', units).side).toBeNull();
  });

  it('finds what a reading is off by', () => {
    const residual = { field: `${angle}`, measured: degrees(1), residual: degrees(0.1), disagrees: false };
    expect(residualAt([residual], `${LEVEL_SETS}/0/readings/0`)).toBe(residual);
    expect(residualAt([residual], `${LEVEL_SETS}/0/readings/01`)).toBeNull();
    const none = { ...residual, residual: degrees(-1e-12) };
    expect([tellingResiduals([none, none]), tellingResiduals([none, residual])]).toEqual([[], [none, residual]]);
    expect(setWords({ taken: '' }, 1)).toBe('Set 2');
  });
});

const typed = (x: number, y: number, z: number) => ({ by: 'typed' as const, point: { x, y, z }, accuracy: null });
const cylinder = (name: string): Job['site']['things'][number] => ({
  name,
  shape: {
    shape: 'cylinder',
    at: { named: 'A' },
    axis: { by: 'points', from: 'A', to: 'B' },
    diameter: 60,
    ends: null,
  },
  clearance: 5,
  swing: null,
});
const named = withSite(
  {
    points: [
      { name: 'A', at: typed(0, 0, 0) },
      { name: 'B', at: typed(0, 0, 900) },
      {
        name: 'C',
        at: {
          by: 'distances',
          distances: ['A', 'B', 'B'].map((from) => ({ from, distance: 700, accuracy: null })),
          on: 'post',
          towards: 'up',
        },
      },
    ],
    things: [
      cylinder('post'),
      {
        name: 'wall',
        shape: { shape: 'plane', plane: { by: 'points', points: ['C', 'B', 'A'] } },
        clearance: null,
        swing: null,
      },
      { name: 'A', shape: { shape: 'point', at: { x: 0, y: 0, z: 0 }, radius: 5 }, clearance: null, swing: null },
    ],
    directions: [{ name: 'A', direction: { by: 'thing', thing: 'post' } }],
  },
  read,
);

describe('names of the site', () => {
  it('take along what names them, and nothing that only sounds alike', () => {
    const places = placesOfName(named, 'point', 'A');
    expect(places).toEqual([
      '/site/points/2/at/distances/0/from',
      '/site/things/0/shape/at/named',
      '/site/things/0/shape/axis/from',
      '/site/things/1/shape/plane/points/2',
    ]);
    const renamed = withName(named, ['/site/points/0/name', ...places], 'step');
    expect(placesOfName(renamed, 'point', 'step')).toEqual(places);
    expect([renamed.site.directions[0]!.name, renamed.site.things[2]!.name]).toEqual(['A', 'A']);
    expect(placesOfName(named, 'thing', 'post')).toEqual([
      '/site/points/2/at/on',
      '/site/directions/0/direction/thing',
    ]);
  });

  it('leave everything as it is where two bear the name', () => {
    const twice = withSite({ points: [...named.site.points, { name: 'A', at: typed(1, 1, 1) }] }, named);
    expect(placesOfName(twice, 'point', 'A')).toEqual([]);
  });

  it('are new ones for new rows', () => {
    expect(freshName('point', ['point 1', 'point 3', 'mast'])).toBe('point 2');
    expect(freshSitePoint(named.site).name).toBe('point 1');
    expect(nameOptions(['A', 'B'], 'gone').map(({ value }) => value)).toEqual(['gone', 'A', 'B']);
  });
});

describe('ways to say a direction and to find a point', () => {
  const tubes = tubesOf(plan(hoop));

  it('are offered where there is something to say them by', () => {
    const by = (site: Job['site'], withTubes = true): string[] =>
      directionOptions('lean', { site, tubes: withTubes ? tubes : [] }).map(({ value }) => value);
    expect(by(hoop.site, false)).toEqual(['lean', 'axes']);
    expect(by(named.site)).toEqual(['lean', 'plumb', 'points', 'thing', 'tube', 'axes']);
    expect(thingsWithDirection({ site: named.site, tubes, own: 'post' })).toEqual(['wall']);
    const options = (site: Job['site'], index: number): string[] =>
      foundOptions('typed', site, index).map(({ value }) => value);
    expect(options(withSite({ points: [{ name: 'A', at: typed(0, 0, 0) }] }, read).site, 0)).toEqual(['typed']);
    expect(options(named.site, 0)).toEqual(['typed', 'plumb', 'distances']);
    expect(options({ ...named.site, level: hoop.site.level }, 0)).toEqual(['typed', 'distances']);
  });

  it('begin as something that the job takes', () => {
    for (const by of ['lean', 'plumb', 'points', 'thing', 'tube', 'axes'] as const) {
      const direction = freshDirection(by, { site: named.site, tubes })!;
      expect(parseJob(withSite({ directions: [{ name: by, direction }] }, named)).ok, by).toBe(true);
    }
    for (const by of ['typed', 'plumb', 'distances'] as const) {
      const points = named.site.points.map((point, index) =>
        index === 2 ? { ...point, at: freshFound(by, named.site, 2)! } : point,
      );
      expect(parseJob(withSite({ points }, named)).ok, by).toBe(true);
    }
    expect([...TOWARDS_WAYS].sort()).toEqual([...TOWARDS].sort());
  });
});

describe('the stage in the index', () => {
  const level: SitePlan['level'] = {
    known: true,
    up: { x: 0, y: 0, z: 1 },
    trim: degrees(-0.8),
    list: degrees(1.7),
    tilt: degrees(1.9),
    set: 1,
    taken: NOON,
    goodFor: 2,
    residuals: [],
    drift: null,
  };
  const withPlan = (site: Partial<SitePlan>): Plan => ({
    ...plan(hoop),
    site: {
      level,
      rows: [],
      points: [],
      standing: null,
      legs: [],
      gaps: [],
      views: [],
      ...site,
    } as unknown as SitePlan,
  });
  const leg = (cut: number) => ({ cutLength: lengthOf(cut) }) as SitePlan['legs'][number];

  it('shows the cut length of the first leg, else how the structure lies', () => {
    expect(stageFigure('level', hoop, withPlan({ legs: [leg(741.26), leg(500)] }))).toBe('741.3 mm');
    expect(stageFigure('level', hoop, withPlan({}))).toBe('\u22120.8 / 1.7°');
    expect(stageFigure('level', hoop, withPlan({ level: { ...level, known: false } }))).toBe('');
    expect(stageFigure('level', hoop, { ...plan(hoop), site: null })).toBe('');
    expect(stageOf(angle)).toBe('level');
  });

  it('is empty until anything of the site is typed', () => {
    expect(SET_KINDS.map((kind) => isSiteEmpty(withSets(freshSet(kind, '')).site))).toEqual([false, false, false]);
    expect(isSiteEmpty(hoop.site)).toBe(true);
    expect([isSiteEmpty({ ...hoop.site, load: 900 }), isSiteEmpty(withSite({ tapeAccuracy: 3 }).site)]).toEqual([
      false,
      true,
    ]);
  });
});

describe('fields of the site', () => {
  it('hold a length or an angle by where they stand', () => {
    const lengths = [
      '/site/points/3/at/ahead',
      '/site/points/3/at/distances/2/distance',
      '/site/points/0/at/point/x',
      '/site/level/sets/0/readings/1/height',
      '/site/level/heightAccuracy',
      '/site/things/0/shape/ends/from',
      '/site/legs/1/foot/end/plate',
      '/site/placing/origin/x',
      '/site/legs/0/foot/at/z',
    ];
    expect(lengths.filter((field) => !isLengthField(field))).toEqual([]);
    const plain = [
      '/site/directions/3/direction/ahead',
      '/site/directions/3/direction/vector/x',
      '/site/level/sets/0/readings/1/along/x',
      '/site/standing/slopes/0/angle',
      '/site/standing/swing/from',
      '/site/things/0/swing/to',
      '/site/placing/x/x',
      '/site/level/goodFor',
    ];
    expect(plain.filter(isLengthField)).toEqual([]);
  });

  it('have a way out to a place of a tube in words', () => {
    const at = { member: 'hoop', spot: 'corner' as const, number: 2, distance: 0 };
    expect(wayOutWords({ field: '/site/standing/hinge/from', value: at }, hoop)).toMatch(/^hoop, .*2/);
    const job = withText(read, angle, '50', { kind: 'number', mayBeEmpty: false });
    expect(wayOutWords({ field: angle, value: 40 }, job)).toBe('40');
  });

  it('are as many as the job takes', () => {
    const most = (list: unknown): unknown => (list as { maxItems?: number }).maxItems;
    const found = JobSchema.properties.site.properties.points.items.properties.at.anyOf[2];
    expect([
      most(Level.properties.sets),
      most(LevelSet.properties.readings),
      most(Site.properties.points),
      most(Site.properties.directions),
      most(found.properties.distances),
    ]).toEqual([MOST_LEVEL_SETS, MOST_LEVEL_READINGS, MOST_SITE_POINTS, MOST_DIRECTIONS, MOST_SITE_DISTANCES]);
  });
});
