import fc from 'fast-check';
import { Compile } from 'typebox/compile';
import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import { SHAPES } from '../../server/job/default-frame.ts';
import { Job, JOB_VERSION } from '../../server/job/job.ts';
import { parseJob } from '../../server/job/validate.ts';
import { problemsIn, shown, withValue } from './refused.ts';

const published = Compile(Job);

describe('a job that is right', () => {
  it.each(SHAPES)('a new %s', (shape) => {
    expect(problemsIn(newJob(shape))).toEqual([]);
    expect(newJob(shape).frame.shape).toBe(shape);
  });

  it('the demo, which says that it is made up and has rates of its own', () => {
    const parsed = parseJob(landingStage());
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    expect(parsed.job.invented).toBe(true);
    expect(parsed.job.note).toContain('invented');
    expect(parsed.job.rates.fillerPerKilogram).toMatchObject({ value: 2800, example: false });
    expect(parsed.job.rates.tubes[0]!.perMetre).toMatchObject({ value: 1450, since: '2026-11-02', example: false });
  });

  it('new jobs share nothing with each other', () => {
    newJob('hoop').purge.room.volume = 1;
    expect(newJob('hoop').purge.room.volume).toBe(30);
  });

  it('no two parts of a new job are one and the same, so that one can be changed without the other', () => {
    const parts = (value: unknown): object[] =>
      typeof value === 'object' && value !== null ? [value, ...Object.values(value).flatMap(parts)] : [];
    for (const shape of SHAPES) {
      const all = parts(newJob(shape));
      expect(new Set(all).size).toBe(all.length);
    }
  });
});

describe('a value that is refused', () => {
  it.each([
    ['/tube/wall', 45, 'above-range'],
    ['/tube/wall', 0, 'below-range'],
    ['/tube/wall', -1, 'below-range'],
    ['/tube/wall', '1.65', 'wrong-type'],
    ['/tube/wall', null, 'wrong-type'],
    ['/tube/wall', Number.POSITIVE_INFINITY, 'above-range'],
    ['/tube/wall', Number.NaN, 'wrong-type'],
    ['/closing/gap', Number.NEGATIVE_INFINITY, 'below-range'],
    ['/frame/width/value', [950], 'wrong-type'],
    ['/frame/width', 950, 'wrong-type'],
    ['/frame/width/reference', 'middle', 'not-one-of'],
    ['/machine/rotationSign', 0, 'not-one-of'],
    ['/closing/way', 'patch', 'not-one-of'],
    ['/invented', 'yes', 'wrong-type'],
    ['/title', 'x'.repeat(121), 'too-long'],
    ['/rates/currency', 'euro', 'wrong-form'],
    ['/rates/tubes/0/perMetre/value', 12.5, 'not-whole'],
    ['/rates/tubes/0/perMetre/value', 'much', 'wrong-type'],
    ['/rates/tubes/0/perMetre', 1450, 'wrong-type'],
    ['/purge/bottle/temperature', 40, 'above-range'],
    ['/cameBack', 'wide', 'wrong-type'],
    ['/frame/innerCrossbars', {}, 'wrong-type'],
  ])('%s = %j is %s', (field, value, code) => {
    expect(shown(withValue(field, value))).toEqual([`${code} ${field}`]);
  });

  it('says field, value, range and way out', () => {
    const [problem] = problemsIn(withValue('/tube/wall', 45));
    expect(problem).toEqual({
      code: 'above-range',
      field: '/tube/wall',
      value: 45,
      allowed: { low: 0.001, high: 40, unit: 'mm' },
      message: 'Wall is 45; allowed is at least 0.001 mm, at most 40 mm. Give a smaller value.',
    });
    expect(problemsIn(withValue('/tube/wall', 'thick'))[0]!.message).toBe(
      'Wall is the text "thick"; it takes a number, at least 0.001 mm, at most 40 mm. Give it that.',
    );
  });

  it('has its value shortened', () => {
    const [problem] = problemsIn(withValue('/title', '😀'.repeat(5000)));
    expect([...String(problem!.value)]).toHaveLength(61);
    expect(problemsIn(withValue('/tube', 'y'.repeat(5000)))[0]!.message.length).toBeLessThan(200);
  });

  it('that is missing or unknown is named', () => {
    const { wall: _wall, ...tube } = landingStage().tube;
    expect(shown({ ...landingStage(), tube })).toEqual(['missing-field /tube/wall']);
    expect(shown({ ...landingStage(), 'a/b~': 1 })).toEqual(['unknown-field /a~1b~0']);
    expect(shown(JSON.parse('{"format":"hoopwright-job","version":2,"__proto__":{"x":1}}'))).toContain(
      'unknown-field /__proto__',
    );
    expect(
      problemsIn({ format: 'hoopwright-job', version: JOB_VERSION }).every(({ code }) => code === 'missing-field'),
    ).toBe(true);
  });

  it('counts the texts as typed and their names', () => {
    expect(shown(withValue('/asTyped', { [`/${'n'.repeat(300)}`]: '1' }))[0]).toMatch(/^too-long \/asTyped\//);
    expect(shown(withValue('/asTyped', { '/tube/wall': 5 }))).toEqual(['wrong-type /asTyped/~1tube~1wall']);
    const many = Object.fromEntries(Array.from({ length: 1001 }, (_, index) => [`/${String(index)}`, '']));
    expect(shown(withValue('/asTyped', many))).toEqual(['too-long /asTyped']);
  });
});

const BEND = {
  commandedAngle: 90,
  measuredAngle: 88,
  measuredRadius: null,
  scribedBefore: null,
  scribedAfter: null,
  tubeDiameter: 38.1,
  wall: 1.65,
  dieRadius: 114.3,
  heat: '',
};

describe('a union answers for the branch that was meant', () => {
  it.each<[string, unknown, string[]]>([
    ['/frame', { shape: 'straight', length: -1 }, ['below-range /frame/length']],
    ['/frame', { shape: 'tripod' }, ['not-one-of /frame/shape']],
    ['/frame', { length: 5 }, ['missing-field /frame/shape']],
    ['/frame', 'hoop', ['wrong-type /frame']],
    ['/frame/crossbar', { form: 'crowned' }, ['missing-field /frame/crossbar/radius']],
    ['/frame/crossbar', { form: 'straight', radius: 5 }, ['unknown-field /frame/crossbar/radius']],
    ['/tube/grade', { from: 'catalogue', key: '430' }, ['not-one-of /tube/grade/key']],
    ['/machine/springback', { method: 'test-bends' }, ['missing-field /machine/springback/bends']],
    [
      '/machine/springback',
      {
        method: 'test-bends',
        bends: [{ ...BEND, measuredAngle: 400, measuredRadius: 'r', scribedBefore: 0, heat: 7 }],
      },
      [
        'above-range /machine/springback/bends/0/measuredAngle',
        'wrong-type /machine/springback/bends/0/measuredRadius',
        'below-range /machine/springback/bends/0/scribedBefore',
        'wrong-type /machine/springback/bends/0/heat',
      ],
    ],
    ['/machine/dies', [], ['too-short /machine/dies']],
    ['/machine/dies/0/tooling', 'ball', ['not-one-of /machine/dies/0/tooling']],
    ['/tube/tolerance', { by: 'own', outsideDiameter: 0.2 }, ['missing-field /tube/tolerance/wall']],
    ['/tube/tolerance', { by: 'standard', standard: 'house' }, ['not-one-of /tube/tolerance/standard']],
    [
      '/bending/members',
      [{ member: 'hoop', from: 'middle', side: 'usual', closingStraight: null }],
      ['not-one-of /bending/members/0/from'],
    ],
    [
      '/frame',
      { shape: 'members', members: [{ name: '', path: { by: 'chain' }, start: { end: 'hook' }, finish: 1 }] },
      [
        'too-short /frame/members/0/name',
        'missing-field /frame/members/0/path/start',
        'missing-field /frame/members/0/path/direction',
        'missing-field /frame/members/0/path/normal',
        'missing-field /frame/members/0/path/pieces',
        'not-one-of /frame/members/0/start/end',
        'wrong-type /frame/members/0/finish',
      ],
    ],
    ['/purge/gas', { from: 'certificate', oxygen: -2 }, ['below-range /purge/gas/oxygen']],
  ])('%s = %j', (field, value, problems) => {
    expect(shown(withValue(field, value))).toEqual(problems);
  });
});

describe('any value at all', () => {
  it('never throws, and gives a job or at least one problem', () => {
    fc.assert(
      fc.property(fc.anything({ withNullPrototype: true, withBigInt: true, withDate: true }), (input) => {
        const parsed = parseJob(input);
        return parsed.ok ? published.Check(parsed.job) : parsed.problems.length > 0;
      }),
    );
  });

  const pointers = (value: unknown, at = ''): string[] =>
    typeof value === 'object' && value !== null
      ? Object.entries(value).flatMap(([name, inner]) => [`${at}/${name}`, ...pointers(inner, `${at}/${name}`)])
      : [];

  /** A hoop with every list of its gas and its welds filled. */
  function filled(): Job {
    const job = newJob('hoop');
    const at = { member: 'hoop', spot: 'start' as const, number: 1, distance: 0 };
    const origin = { x: 0, y: 0, z: 0 };
    const plate = { thickness: 5, hole: 10 };
    const end = { member: 'crossbar 1', end: 'start' as const };
    return {
      ...job,
      fixing: [{ fixing: 'pad', name: 'foot', at, off: origin, lands: null, tolerance: null, plate }],
      purge: {
        ...job.purge,
        feed: { hole: 1 },
        vent: end,
        holes: { ...job.purge.holes, except: [end], toAir: [{ at, bore: 4 }] },
        meter: [{ chamber: 1, minutes: 3, oxygen: 90 }],
      },
      welding: { ...job.welding, order: [{ weld: 'S1', first: 1, way: 'round' }] },
    };
  }

  it('in place of any value of a job is judged as the published schema judges it', () => {
    const places = [...SHAPES.map(newJob), filled()].flatMap((job) =>
      pointers(job)
        .filter((pointer) => pointer !== '/format' && pointer !== '/version')
        .map((pointer) => ({ job, pointer })),
    );
    const odd = fc.oneof(
      fc.constantFrom<unknown>(null, 0, -0, 1, -1, 0.5, 16, 1e300, -1e300, '', 'hoop', 'outside', true, [], {}, [{}], {
        hole: 1,
      }),
      fc.double(),
      fc.jsonValue({ maxDepth: 2 }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...places), odd, ({ job, pointer }, value) => {
        const document = withValue(pointer, value, job);
        return parseJob(document).ok === published.Check(document);
      }),
      { numRuns: 3000 },
    );
  });

  it('has problems with a code, a field and a whole sentence', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const problems = [...problemsIn(value), ...problemsIn(withValue('/frame', value))];
        return problems.every(({ message }) => /^[A-Z].{10,}\.$/s.test(message) && !message.includes('[object'));
      }),
    );
  });
});
