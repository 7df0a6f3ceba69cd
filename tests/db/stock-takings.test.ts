import { describe, expect, it } from 'vitest';
import type { LaidBar } from '../../server/job/stock.ts';
import { at, bar } from './kept-things.ts';
import { asked, END, laid, layout, OLD_END, offcut, stockOfEachTest } from './made-up-takings.ts';

const rack = stockOfEachTest();
const { newId, take, counts } = rack;

describe('taking the bars of a layout', () => {
  it('counts them off their rows, uses remnants up, and puts the offcuts into stock under names of their own', async () => {
    const outcome = await take(asked([laid('rack'), laid('rack'), END, laid('')]));
    expect(outcome).toEqual({
      kind: 'taken',
      taking: {
        number: 1,
        takenAt: at(2),
        jobId: null,
        together: [],
        title: 'Rail',
        layout: layout(laid('rack'), laid('rack'), END, laid('')),
        taken: [
          { id: 'rack', name: 'rack', count: 2, document: bar('rack', { count: 2 }) },
          { id: 'end', name: 'old end', count: 1, document: OLD_END },
        ],
        returned: [{ id: 'new-1', document: { name: 'R1-1', ...offcut(3491) } }],
        undoneAt: null,
      },
    });
    expect(await counts()).toEqual({ rack: 1, 'new-1': 1 });
    expect((await rack.stock.all()).map(({ revision }) => revision)).toEqual([2, 1]);
    expect(await rack.stock.taking(1)).toEqual(outcome.kind === 'taken' && outcome.taking);
    expect(await rack.stock.taking(2)).toBeNull();
  });

  it('leaves a row of bars where nothing is left of it', async () => {
    await take(asked([laid('rack'), laid('rack'), laid('rack')], { offcuts: [] }));
    expect(await counts()).toEqual({ rack: 0, end: 1 });
  });

  it('makes an older save of a row stale', async () => {
    await take(asked([laid('rack')]));
    expect(await rack.stock.save('rack', bar('rack', { count: 3 }), 1, at(3))).toMatchObject({
      kind: 'stale',
      theirs: { revision: 2, document: { count: 2 } },
    });
  });

  it('numbers each in the book, the last one first, and never gives a number twice', async () => {
    await take(asked([laid('rack')], { key: 'a' }));
    await take(asked([laid('rack')], { key: 'b', title: 'Step' }), 3);
    expect((await rack.stock.takings()).map(({ number, title }) => `${String(number)} ${title}`)).toEqual([
      '2 Step',
      '1 Rail',
    ]);
    expect((await rack.stock.all()).map(({ document }) => document.name)).toContain('R2-1');
  });

  it('asked for again with the same key takes nothing more', async () => {
    const first = await take(asked([laid('rack')]));
    expect(await take(asked([laid('rack')]), 3)).toEqual(first);
    expect(await counts()).toMatchObject({ rack: 2, 'new-1': 1 });
    const both = await Promise.all([4, 5].map((minute) => take(asked([laid('rack')], { key: 'twice' }), minute)));
    expect(both[0]).toEqual(both[1]);
    expect(await counts()).toMatchObject({ rack: 1 });
    expect(await take(asked([laid('rack'), laid('rack')]))).toMatchObject({ kind: 'key-used', taking: { number: 1 } });
  });
});

describe('bars that cannot be taken', () => {
  const untouched = async () => {
    expect(await counts()).toEqual({ rack: 3, end: 1 });
    expect(await rack.stock.takings()).toEqual([]);
  };

  it('where there are too few, none is, and the row is named with how many there are', async () => {
    const four = Array.from({ length: 4 }, () => laid('rack'));
    expect(await take(asked([END, ...four]))).toEqual({ kind: 'short', name: 'rack', there: 3, needed: 4 });
    await untouched();
  });

  it('where the row is gone or was never there', async () => {
    expect(await take(asked([laid('nowhere')]))).toEqual({
      kind: 'short',
      name: 'as it was called',
      there: 0,
      needed: 1,
    });
    await rack.stock.remove('end', at(2));
    expect(await take(asked([laid('rack'), END]))).toEqual({ kind: 'short', name: 'old end', there: 0, needed: 1 });
    await rack.stock.restore('end');
    await untouched();
  });

  it.each<[Partial<LaidBar>, string]>([
    [{ outsideDiameter: 42.4 }, 'size'],
    [{ wall: 2 }, 'size'],
    [{ grade: '304L' }, 'size'],
    [{ length: 5990 }, 'size'],
    [{ heat: 'H-2' }, 'heat'],
    [{ price: 9001 }, 'price'],
  ])('where the row is another bar than the layout says: %j', async (other, what) => {
    expect(await take(asked([laid('rack'), laid('rack', other)]))).toMatchObject({
      kind: 'changed',
      name: 'rack',
      what,
    });
    await untouched();
  });

  it('where its price is in another currency; one without a price has none', async () => {
    const request = asked([laid('rack')]);
    const dollars = { ...request, layout: { ...request.layout, currency: 'USD' } };
    expect(await take(dollars)).toEqual({
      kind: 'mixed-currencies',
      name: 'rack',
      priced: { currency: 'EUR', minorDigits: 2 },
    });
    const thousandths = { ...request, layout: { ...request.layout, minorDigits: 3 } };
    expect(await take(thousandths)).toMatchObject({ kind: 'mixed-currencies', priced: { minorDigits: 2 } });
    await untouched();
    expect(await take({ ...dollars, layout: { ...layout(END), currency: 'USD' } })).toMatchObject({ kind: 'taken' });
  });

  it('of two at once for the last of them exactly one gets it', async () => {
    const outcomes = await Promise.all(['a', 'b', 'c'].map((key) => take(asked([END], { key, offcuts: [] }))));
    expect(outcomes.map(({ kind }) => kind).sort()).toEqual(['short', 'short', 'taken']);
    expect(await counts()).toEqual({ rack: 3 });
  });
});

describe('bars that were taken already', () => {
  const own = (key: string, more = {}) => asked([laid('rack')], { key, jobId: 'rail', ...more });

  it('are not taken for the same job again whatever the key, until they are put back', async () => {
    expect(await take(own('a'))).toMatchObject({ kind: 'taken', taking: { number: 1 } });
    expect(await take(own('b'))).toMatchObject({ kind: 'already', taking: { number: 1 } });
    expect(await counts()).toMatchObject({ rack: 2 });
    await rack.stock.takeBack(1, newId, at(3));
    expect(await take(own('c'))).toMatchObject({ kind: 'taken', taking: { number: 2 } });
  });

  it('are another job’s, or other bars: these are taken', async () => {
    await take(own('a'));
    expect(await take(own('b', { jobId: 'gate' }))).toMatchObject({ kind: 'taken' });
    const longer = laid('rack', { pieces: [{ name: 'hoop', length: 2600, job: '' }] });
    expect(await take({ ...own('c'), layout: layout(longer) })).toMatchObject({ kind: 'taken' });
  });

  it('with those of other jobs are known from whichever of them they are looked at', async () => {
    const names = { rail: 'Rail', gate: 'Gate' };
    const on = (...jobs: string[]) =>
      laid('rack', { pieces: jobs.map((job) => ({ name: 'hoop', length: 2500, job })) });
    const whole = { together: Object.entries(names).map(([id, name]) => ({ id, name })), offcuts: [] };
    const together = { ...own('a'), ...whole, layout: layout(on('Rail', 'Gate'), on('Gate')) };
    expect(await take(together)).toMatchObject({ kind: 'taken', taking: { together: whole.together } });
    const alone = (key: string, jobId: string, ...bars: LaidBar[]) => ({ ...asked(bars, { key, jobId }), offcuts: [] });
    expect(await take(alone('b', 'rail', on('', 'Gate')))).toMatchObject({ kind: 'already' });
    expect(await take(alone('c', 'gate', on('Rail', ''), on('')))).toMatchObject({ kind: 'already' });
    expect(await take(alone('d', 'gate', on('')))).toMatchObject({ kind: 'taken' });
  });
});

describe('the list of takings', () => {
  it('has the latest fifty, without what is cut from each bar', async () => {
    const [{ pieces: _pieces, ...bare }] = [laid('')];
    for (let number = 1; number <= 52; number += 1)
      await take(asked([laid('')], { key: `key ${String(number)}`, offcuts: [] }));
    const listed = await rack.stock.takings();
    expect(listed.map(({ number }) => number)).toEqual(Array.from({ length: 50 }, (_, index) => 52 - index));
    expect(listed[0]!.layout).toEqual({ ...layout(), bars: [bare] });
    expect((await rack.stock.taking(1))!.layout.bars).toEqual([laid('')]);
  });
});
