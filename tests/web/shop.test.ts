import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import type { Die, Machine } from '../../server/job/machine.ts';
import { problemsOf } from '../../server/job/validate.ts';
import type { Kept, KeptSize } from '../../server/job/kept.ts';
import type { Answer } from '../../web/api/client.ts';
import { dieSetUp, dieWords, placeOfDie, withDieAdded, withoutDie } from '../../web/state/dies.ts';
import { fitPicture } from '../../web/state/fit-picture.ts';
import { freshTestBend } from '../../web/state/fresh-rows.ts';
import { differingFields, keptByName, keptSizeOf, sizeOf, withSize } from '../../web/state/kept.ts';
import { ShopKeeper, type ShopSource } from '../../web/state/shop.svelte.ts';
import { TOLERANCE_STANDARDS, toleranceFrom } from '../../web/state/tolerances.ts';
import { withText } from '../../web/state/typed-text.ts';
import { wayOutWords } from '../../web/state/way-out-words.ts';

const job = newJob('hoop');
const machine = (name: string, leastStraight = 76.2): Machine => ({ ...job.machine, name, leastStraight });
const kept = (id: string, document: Machine, revision = 1): Kept<'machine'> => ({
  id,
  revision,
  savedAt: 'then',
  document,
});

/** A shop that answers what a test tells it to, and says what it was asked. */
function shopThatAnswers(...answers: Answer<unknown, unknown>[]) {
  const asked: unknown[][] = [];
  const next =
    (what: string) =>
    async (...given: unknown[]) => {
      asked.push([what, ...given]);
      return answers.shift() ?? { kind: 'unreachable', reason: 'silence' };
    };
  const source = Object.fromEntries(
    ['shop', 'keep', 'saveKept', 'removeKept', 'restoreKept'].map((what) => [what, next(what)]),
  ) as unknown as ShopSource;
  return { shop: new ShopKeeper(source), asked };
}

const done = (body: unknown): Answer<unknown, unknown> => ({ kind: 'done', body });

describe('what the shop keeps', () => {
  it('is read, by name as a person sorts', async () => {
    const machines = [kept('b', machine('Bender 10')), kept('a', machine('bender 2'))];
    const { shop } = shopThatAnswers(done({ machines, sizes: [], grades: [], settings: [], rates: [] }));
    await shop.load();
    expect(shop.machines.kept.map(({ document }) => document.name)).toEqual(['bender 2', 'Bender 10']);
    await shop.load();
    expect(shop.trouble).toContain('silence');
    expect(shop.machines.kept).toHaveLength(2);
  });

  it('grows by what is kept, and says why something is not', async () => {
    const refused = { kind: 'refused' as const, problems: [], reason: 'The name is taken.' };
    const { shop, asked } = shopThatAnswers(done(kept('a', machine('A'))), refused);
    expect(await shop.machines.keep(machine('A'))).toBe(true);
    expect(await shop.machines.keep(machine('a'))).toBe(false);
    expect([shop.machines.kept.length, shop.machines.trouble]).toEqual([1, 'The name is taken.']);
    expect(asked.map(([what, kind]) => [what, kind])).toEqual([
      ['keep', 'machine'],
      ['keep', 'machine'],
    ]);
  });

  it('is saved on what the page knows, and holds what somebody else saved meanwhile', async () => {
    const theirs = kept('a', machine('A', 90), 2);
    const mine = kept('a', machine('A', 80), 3);
    const { shop, asked } = shopThatAnswers({ kind: 'conflict', theirs }, done(mine));
    const known = kept('a', machine('A'));
    shop.machines.show([known]);
    expect(await shop.machines.save(known, machine('A', 80))).toBe(false);
    expect([shop.machines.theirs, shop.machines.kept]).toEqual([theirs, [theirs]]);
    expect(await shop.machines.save(theirs, machine('A', 80))).toBe(true);
    expect([shop.machines.theirs, shop.machines.kept]).toEqual([null, [mine]]);
    expect(asked.map((each) => each.at(-1))).toEqual([1, 2]);
  });

  it('comes back after it was deleted, and can still come back where that failed once', async () => {
    const one = kept('a', machine('A'));
    const { shop } = shopThatAnswers(done(undefined), { kind: 'unreachable', reason: 'no signal' }, done(one));
    shop.machines.show([one]);
    await shop.machines.remove(one);
    expect([shop.machines.kept, shop.machines.deleted]).toEqual([[], one]);
    await shop.machines.restore();
    expect([shop.machines.deleted, shop.machines.trouble]).toEqual([one, expect.stringContaining('no signal')]);
    await shop.machines.restore();
    expect([shop.machines.kept, shop.machines.deleted, shop.machines.trouble]).toEqual([[one], null, '']);
  });
});

describe('a job beside the shop', () => {
  it('is found by the name of its machine, and says in which fields it differs', () => {
    const ours = kept('a', machine('Draw bender'));
    expect(keptByName([ours], ' DRAW bender')).toBe(ours);
    expect(keptByName([ours], 'Roller')).toBeNull();
    const [die] = job.machine.dies;
    const other = { ...machine('draw bender', 80), die: 1, dies: [{ ...die!, radius: 100 }] };
    expect(differingFields('machine', ours.document, other)).toEqual([
      '/machine/dies/0/radius',
      '/machine/leastStraight',
    ]);
    expect(differingFields('machine', ours.document, { ...ours.document, die: 1 })).toEqual([]);
  });

  it('takes a size with its tolerance, and knows it again by its sizes', () => {
    const size: KeptSize = { ...sizeOf(job.tube, 'rail'), wall: 2, tolerance: toleranceFrom('own') };
    const typed = withText(job, '/tube/wall', '0.065 in', { kind: 'length', mayBeEmpty: false });
    const next = withSize(typed, size);
    expect(next.tube).toEqual({ ...job.tube, wall: 2, tolerance: size.tolerance });
    expect(next.asTyped).toEqual({});
    const list = [
      { id: 'a', revision: 1, savedAt: '', document: { ...size, name: 'x', tolerance: toleranceFrom('astm-a554') } },
      { id: 'b', revision: 1, savedAt: '', document: size },
    ];
    expect(keptSizeOf(list, next.tube)?.id).toBe('b');
    expect(keptSizeOf(list, { ...next.tube, tolerance: toleranceFrom('astm-a312') })?.id).toBe('a');
    expect(keptSizeOf(list, job.tube)).toBeNull();
    expect(withSize(job, { outsideDiameter: 50, wall: 2, tolerance: null }).tube.tolerance).toEqual(job.tube.tolerance);
  });

  it('offers every tolerance that a job takes', () => {
    for (const choice of [...TOLERANCE_STANDARDS, 'own'] as const)
      expect(problemsOf(Job, { ...job, tube: { ...job.tube, tolerance: toleranceFrom(choice) } })).toEqual([]);
    const { anyOf } = Job.properties.tube.properties.tolerance;
    expect(anyOf[0].properties.standard.anyOf.map((each) => each.const)).toEqual([...TOLERANCE_STANDARDS]);
  });
});

describe('dies', () => {
  const die = (name: string, tubeDiameter = 38.1): Die => ({ ...job.machine.dies[0]!, name, tubeDiameter });
  const three = { ...job, machine: { ...job.machine, die: 1, dies: [die('a'), die('b', 42.4), die('c')] } };

  it('are added as the one that is set up, and taken out without changing which that is', () => {
    const more = withDieAdded(three);
    expect(more.machine.dies.map(({ name, tubeDiameter }) => [name, tubeDiameter]).at(-1)).toEqual(['', 42.4]);
    for (const index of [0, 2]) expect(dieSetUp(withoutDie(three, index).machine).name).toBe('b');
    expect(withoutDie(three, 1)).toBe(three);
    expect(withoutDie(three, 7)).toBe(three);
    expect(placeOfDie({ ...three.machine, die: 9 })).toBe(0);
  });

  it('keep the texts of the rows that stay', () => {
    const typed = withText(three, '/machine/dies/2/radius', '4 1/2 in', { kind: 'length', mayBeEmpty: false });
    expect(withoutDie(typed, 0).asTyped).toEqual({ '/machine/dies/1/radius': '4 1/2 in' });
  });

  it('are said in words, also where a finding offers one', () => {
    expect(dieWords(die('Old block'), 0, job.units)).toBe('Old block, for 38.1 mm, radius 114.3 mm');
    expect(dieWords(die(''), 1, { length: 'inch', fraction: 16 })).toBe('Die 2, for 1 1/2 in, radius 4 1/2 in');
    expect(wayOutWords({ field: '/machine/die', value: 1 }, three)).toBe('b, for 42.4 mm, radius 114.3 mm');
    const value = [{ member: 'hoop', from: 'finish' as const, side: 'usual' as const, closingStraight: null }];
    expect(wayOutWords({ field: '/bending/members', value }, job)).toBe('hoop: from its finish, on the usual side');
    expect(wayOutWords({ field: '/tube/wall', value: 2 }, job)).toBe('2 mm');
    expect(wayOutWords({ field: '/closing/way', value: null }, job)).toBe('');
  });

  it('give a new test bend its radius, with the tube and the heat of the job', () => {
    const bend = freshTestBend({ ...three, tube: { ...job.tube, outsideDiameter: 42.4, wall: 2, heat: 'H 7' } });
    expect(bend).toMatchObject({ tubeDiameter: 42.4, wall: 2, dieRadius: 114.3, heat: 'H 7', scribedBefore: null });
    const springback = { method: 'test-bends' as const, bends: [bend] };
    expect(problemsOf(Job, { ...job, machine: { ...job.machine, springback } })).toEqual([]);
  });
});

describe('the picture of a springback line', () => {
  const size = { width: 320, height: 220 };

  it('holds every bend and both ends of the line, against round numbers from nothing on', () => {
    const angle = fc.double({ min: 1, max: 180, noNaN: true });
    const lost = fc.double({ min: -2, max: 20, noNaN: true });
    const bends = fc.array(fc.record({ commanded: angle, springback: lost }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(bends, lost, fc.double({ min: -0.05, max: 0.2, noNaN: true }), (record, fixed, share) => {
        const picture = fitPicture(record, (at) => fixed + share * at, size);
        const { left, right, top, bottom } = picture.frame;
        for (const { x, y } of [...picture.points, ...picture.line]) {
          expect(x).toBeGreaterThanOrEqual(left - 1e-6);
          expect(x).toBeLessThanOrEqual(right + 1e-6);
          expect(y).toBeGreaterThanOrEqual(top - 1e-6);
          expect(y).toBeLessThanOrEqual(bottom + 1e-6);
        }
        for (const ticks of [picture.across, picture.up]) {
          expect(ticks.map(({ value }) => value)).toContain(0);
          expect(ticks.length).toBeGreaterThanOrEqual(2);
          expect(ticks.length).toBeLessThanOrEqual(9);
        }
      }),
    );
  });

  it('lays a point on the line where its springback is that of the line', () => {
    const picture = fitPicture(
      [
        { commanded: 45, springback: 1.4 },
        { commanded: 120, springback: 2.9 },
      ],
      (angle) => 0.5 + 0.02 * angle,
      size,
    );
    expect(picture.points).toEqual(picture.line);
    expect(picture.across.map(({ value }) => value)).toEqual([0, 20, 40, 60, 80, 100, 120]);
    expect(picture.up.map(({ value }) => value)).toEqual([0, 1, 2, 3]);
  });
});
