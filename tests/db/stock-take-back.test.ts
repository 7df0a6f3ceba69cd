import { describe, expect, it } from 'vitest';
import type { StockBar } from '../../server/job/stock.ts';
import { at, bar } from './kept-things.ts';
import { asked, END, laid, offcut, stockOfEachTest } from './made-up-takings.ts';

const rack = stockOfEachTest();
const { newId, take, counts } = rack;

describe('putting bars back', () => {
  it('has every bar and remnant there again and its offcuts gone; once and for all', async () => {
    const before = (await rack.stock.all()).map(({ document }) => document);
    await take(asked([laid('rack'), laid('rack'), END]));
    expect(await rack.stock.takeBack(1, newId, at(5))).toMatchObject({
      kind: 'back',
      taking: { number: 1, undoneAt: at(5) },
    });
    expect((await rack.stock.all()).map(({ document }) => document)).toEqual(before);
    expect(await rack.stock.takeBack(1, newId, at(6))).toMatchObject({ kind: 'back', taking: { undoneAt: at(5) } });
    expect(await counts()).toEqual({ rack: 3, end: 1 });
    expect(await rack.stock.takings()).toMatchObject([{ number: 1, undoneAt: at(5) }]);
  });

  it('leaves an offcut that is metal of its bar again without a count, even if it is restored', async () => {
    await take(asked([laid('rack')]));
    await rack.stock.takeBack(1, newId, at(5));
    expect(await rack.stock.restore('new-1')).toMatchObject({ document: { name: 'R1-1', count: 0 } });
  });

  it('goes on from what the row has become', async () => {
    await take(asked([laid('rack')]));
    await rack.stock.save('rack', bar('rack by the door', { count: 7 }), 2, at(3));
    await rack.stock.takeBack(1, newId, at(4));
    expect(await rack.stock.all()).toMatchObject([{ document: { name: 'rack by the door', count: 8 } }, { id: 'end' }]);
  });

  it('brings only its own bars back where the row was taken out meanwhile', async () => {
    await take(asked([laid('rack')]));
    await rack.stock.remove('rack', at(3));
    await rack.stock.takeBack(1, newId, at(4));
    expect(await counts()).toMatchObject({ rack: 1 });
  });

  it('is refused where an offcut was cut up, until that is put back too', async () => {
    await take(asked([laid('rack')]));
    const offcutBar = laid('new-1', { remnant: true, length: 3491, price: 0 });
    await take(asked([offcutBar], { key: 'second', offcuts: [] }), 3);
    const book = await rack.stock.takings();
    expect(await rack.stock.takeBack(1, newId, at(4))).toEqual({ kind: 'offcut-gone', name: 'R1-1' });
    expect(await counts()).toEqual({ rack: 2, end: 1 });
    expect(await rack.stock.takings()).toEqual(book);
    await rack.stock.takeBack(2, newId, at(5));
    expect(await rack.stock.takeBack(1, newId, at(6))).toMatchObject({ kind: 'back' });
    expect(await counts()).toEqual({ rack: 3, end: 1 });
  });

  it.each<[string, Partial<StockBar>]>([
    ['shortened', { length: 3000 }],
    ['counted anew', { count: 2 }],
  ])('is refused where an offcut was %s', async (_how, change) => {
    await take(asked([laid('rack')]));
    await rack.stock.save('new-1', { name: 'R1-1', ...offcut(3491), ...change }, 1, at(3));
    expect(await rack.stock.takeBack(1, newId, at(4))).toEqual({ kind: 'offcut-gone', name: 'R1-1' });
  });

  it('does not mind an offcut that only has another name', async () => {
    await take(asked([laid('rack')]));
    await rack.stock.save('new-1', { ...offcut(3491), name: 'by the window' }, 1, at(3));
    expect(await rack.stock.takeBack(1, newId, at(4))).toMatchObject({ kind: 'back' });
  });

  it('knows numbers that never were', async () => {
    expect(await rack.stock.takeBack(9, newId, at(1))).toEqual({ kind: 'unknown' });
  });

  it.each<[string, Partial<StockBar>]>([
    ['another heat', { heat: 'H-2' }],
    ['another grade', { grade: '304L' }],
    ['another length', { length: 4000 }],
    ['another size', { wall: 2 }],
  ])('gives them a row of their own where theirs has become one of %s', async (_what, change) => {
    await take(asked([laid('rack'), laid('rack')], { offcuts: [] }));
    const other = bar('rack by the door', { count: 7, ...change });
    await rack.stock.save('rack', other, 2, at(3));
    expect(await rack.stock.takeBack(1, newId, at(4))).toMatchObject({ kind: 'back' });
    const rows = (await rack.stock.all()).map(({ document }) => document);
    expect(rows).toContainEqual(other);
    expect(rows).toContainEqual(bar('rack', { count: 2 }));
    expect(rows).toHaveLength(3);
  });

  it('is refused where the row would count more than a row can, and nothing is written', async () => {
    await take(asked([laid('rack')]));
    await rack.stock.save('rack', bar('rack', { count: 100_000 }), 2, at(3));
    const before = await rack.stock.all();
    expect(await rack.stock.takeBack(1, newId, at(4))).toEqual({
      kind: 'row-full',
      name: 'rack',
      there: 100_000,
      back: 1,
    });
    expect(await rack.stock.all()).toEqual(before);
    await rack.stock.save('rack', bar('rack', { count: 99_999 }), 3, at(5));
    expect(await rack.stock.takeBack(1, newId, at(6))).toMatchObject({ kind: 'back' });
    expect(await counts()).toEqual({ rack: 100_000, end: 1 });
  });
});
