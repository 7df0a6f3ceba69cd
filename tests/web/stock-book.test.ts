import { describe, expect, it } from 'vitest';
import type { StockLayout } from '../../server/job/stock.ts';
import type { Taking } from '../../server/job/stock-row.ts';
import { StockBook, type BookSource } from '../../web/state/stock-book.svelte.ts';
import { layoutFrom } from '../../web/state/stock-taken.ts';
import { done, refused, silence, type Said, sourceOf } from './answers-told.ts';
import { rackBar } from './made-up-stock.ts';

describe('the book of what was taken', () => {
  const NAMES = ['takings', 'taking', 'take', 'putBack'];
  const own = { ...rackBar(), stock: 'a', times: 1, pieces: [{ name: 'hoop', length: 2000, job: '' }] };
  const other = { ...own, times: 2 };
  const layoutOf = (bar: typeof own) => ({ bars: [bar], taken: null, date: '2026-11-26' }) as unknown as StockLayout;
  const layout = layoutOf(own);
  const taking = (number: number, undoneAt: string | null = null) =>
    ({ number, jobId: 'j', together: [], title: 'T', layout, undoneAt }) as unknown as Taking;
  const bookOf = (...answers: Said[]) => {
    let keys = 0;
    const { source, asked } = sourceOf<BookSource>(NAMES, answers, { newKey: () => `key ${String((keys += 1))}` });
    return {
      book: new StockBook(source),
      asked,
      keysAsked: () => asked.flatMap(([, given]) => (given as { key: string }).key),
    };
  };
  const bars = { jobId: 'j', together: [], title: 'T', layout };

  it('asks again with the same key where no answer came, and with a new one for other bars', async () => {
    const { book, keysAsked } = bookOf(silence, done(taking(3)), done(taking(4)));
    expect(await book.take(bars)).toBeNull();
    expect(book.trouble).toContain('silence');
    expect((await book.take(bars))?.number).toBe(3);
    expect((await book.take({ ...bars, title: 'U' }))?.number).toBe(4);
    expect(keysAsked()).toEqual(['key 1', 'key 1', 'key 2']);
    expect([book.takings?.map(({ number }) => number), book.busy, book.trouble]).toEqual([[4, 3], false, '']);
  });

  it('knows that a layout was taken although the job says nothing of it any more', async () => {
    const { book, asked } = bookOf(
      done([taking(6), taking(5), taking(2, 'then')]),
      done({ ...taking(6), layout: layoutOf(other) }),
      done(taking(5)),
      done(),
      done([taking(5, 'now')]),
    );
    await book.load();
    expect(book.takenAs('j', layout)).toBeNull();
    await book.readOf('j');
    await book.readOf('j');
    await book.readOf('somebody else');
    expect(asked.map(([what]) => what)).toEqual(['takings', 'taking', 'taking']);
    expect(book.takenAs('j', { ...layout, taken: 5 })?.number).toBe(5);
    expect([book.takenAs('other', layout), book.takenAs('j', layoutOf({ ...other, length: 1 }))]).toEqual([null, null]);
    expect(await book.putBack(5)).toBe(true);
    expect(book.takenAs('j', layout)).toBeNull();
  });

  it('tells what was taken for a job that keeps no bars any more, and gives it these bars again', async () => {
    const pieces = ['Rail', 'Gate'].map((job) => ({ name: 'hoop', length: 900, job }));
    const shared = { ...own, pieces };
    const gates = { ...own, pieces: pieces.slice(1) };
    const together = [
      { id: 'j', name: 'Rail' },
      { id: 'g', name: 'Gate' },
    ];
    const whole = { ...layoutOf(own), bars: [shared, gates] };
    const both = { ...taking(7), together, layout: whole };
    const { book } = bookOf(done([both, taking(5), taking(2, 'then')]), done(both), silence);
    await book.load();
    expect(book.standingFor('j').map(({ number }) => number)).toEqual([7, 5]);
    expect(book.standingFor('g').map(({ number }) => number)).toEqual([7]);
    expect(book.layoutOf(7, 'j')).toBeNull();
    await book.readOf('j');
    expect(book.layoutOf(7, 'j')).toEqual({
      ...whole,
      bars: [{ ...shared, pieces: [{ ...pieces[0]!, job: '' }, pieces[1]!] }],
      taken: 7,
    });
    expect(book.layoutOf(7, 'g')!.bars.map((bar) => bar.pieces.map(({ job }) => job))).toEqual([['Rail', ''], ['']]);
    expect([book.layoutOf(7, 'nobody'), book.layoutOf(5, 'j')]).toEqual([null, null]);
    expect(layoutFrom(taking(5), 'j')).toEqual({ ...layout, taken: 5 });
    expect(layoutFrom(taking(5), 'g')).toBeNull();
  });

  it('says why something cannot be put back', async () => {
    const { book } = bookOf(refused('The offcut has gone.'));
    expect([await book.putBack(5), book.trouble, book.busy]).toEqual([false, 'The offcut has gone.', false]);
  });
});
