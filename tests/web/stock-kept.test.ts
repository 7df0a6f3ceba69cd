import { describe, expect, it } from 'vitest';
import type { Nesting, NestingRequest } from '../../server/nesting/nesting.ts';
import { NestingRun, type NestingSource } from '../../web/state/nesting-run.svelte.ts';
import { goodnessWords, leftOutWords, overlongWords, progressWords } from '../../web/state/nesting-words.ts';
import { StockList, type StockSource } from '../../web/state/stock-list.svelte.ts';
import { whenSaved } from '../../web/state/when-saved.ts';
import { done, refused, silence, sourceOf, type Said } from './answers-told.ts';
import { rackBar } from './made-up-stock.ts';

describe('the list of bars', () => {
  const NAMES = ['stock', 'addBar', 'saveBar', 'removeBar', 'restoreBar'];
  const row = (id: string, count = 4, revision = 1) => ({
    id,
    revision,
    savedAt: 'then',
    document: rackBar({ count }),
  });
  const listOf = (...answers: Said[]) => {
    const { source, asked } = sourceOf<StockSource>(NAMES, answers);
    return { list: new StockList(source), asked };
  };

  it('keeps what it has where the server does not answer, and says so', async () => {
    const { list } = listOf(done([row('a')]), silence, done([]));
    await list.load();
    await list.load();
    expect([list.bars?.length, list.trouble]).toEqual([1, 'The server did not answer. silence']);
    await list.load();
    expect([list.bars?.length, list.trouble]).toEqual([0, '']);
  });

  it('holds what somebody else saved meanwhile, and saves over it only when asked again', async () => {
    const { list, asked } = listOf(
      done([row('a')]),
      { kind: 'conflict', theirs: row('a', 3, 2) },
      done(row('a', 9, 3)),
    );
    await list.load();
    expect((await list.save(list.bars![0]!, rackBar({ count: 9 }))).kind).toBe('conflict');
    expect(list.bars![0]!.document.count).toBe(3);
    expect((await list.save(list.bars![0]!, rackBar({ count: 9 }))).kind).toBe('done');
    expect(list.bars![0]!.document.count).toBe(9);
    expect(asked.slice(1).map((each) => each.at(-1))).toEqual([1, 2]);
  });

  it('takes a row off and brings it back, even where that failed once', async () => {
    const { list } = listOf(done([row('a')]), done(), silence, done(row('a')));
    await list.load();
    await list.remove(list.bars![0]!);
    expect([list.bars?.length, list.removed?.id]).toEqual([0, 'a']);
    await list.restore();
    expect([list.bars?.length, list.removed?.id]).toEqual([0, 'a']);
    await list.restore();
    expect([list.bars?.length, list.removed, list.trouble]).toEqual([1, null, '']);
  });
});

describe('a search for bars', () => {
  const NAMES = ['nest', 'nesting', 'cancelNesting'];
  const request = { with: [], quantity: 1 } as unknown as NestingRequest;
  const nesting = (state: Nesting['state'], more: Partial<Nesting> = {}): Nesting => ({
    id: 'n',
    state,
    pieces: 5,
    best: null,
    result: null,
    trouble: '',
    ...more,
  });
  const found = { layout: { bars: [] }, sizes: [], overlong: [], shares: [] } as unknown as Nesting['result'];
  const runOf = (answers: Said[]) => {
    const { source, asked } = sourceOf<NestingSource>(NAMES, answers, { wait: async () => undefined });
    return { run: new NestingRun(source), asked };
  };

  it('is watched until it is over', async () => {
    const { run, asked } = runOf([
      done(nesting('waiting')),
      done(nesting('running')),
      silence,
      done(nesting('done', { result: found })),
    ]);
    await run.start(request);
    expect([run.running, run.nesting?.result, run.trouble, run.unheard]).toEqual([false, found, '', false]);
    expect(asked.map(([what]) => what)).toEqual(['nest', 'nesting', 'nesting', 'nesting']);
  });

  it('says why it could not begin, why it failed, and that it was lost', async () => {
    const busy = runOf([refused('Others are laid out now.')]);
    await busy.run.start(request);
    expect([busy.run.running, busy.run.trouble]).toEqual([false, 'Others are laid out now.']);
    const failed = runOf([done(nesting('failed', { trouble: 'No.' }))]);
    await failed.run.start(request);
    expect([failed.run.running, failed.run.trouble]).toEqual([false, 'No.']);
    const lost = runOf([done(nesting('running')), refused('There is none.')]);
    await lost.run.start(request);
    expect([lost.run.running, lost.run.trouble]).toEqual([false, 'The search was lost. There is none.']);
    const silent = runOf([done(nesting('running'))]);
    await silent.run.start(request);
    expect(silent.run.trouble).toContain('silence');
  });

  it('shows the best so far when it is stopped, and nothing where there is none', async () => {
    for (const result of [found, null]) {
      const { run, asked } = runOf([]);
      run.nesting = nesting('running');
      (asked as unknown[]).length = 0;
      const { run: stopped } = runOf([done(), done(nesting('cancelled', { result }))]);
      stopped.nesting = nesting('running');
      await stopped.stop();
      expect([stopped.running, stopped.nesting?.result ?? null]).toEqual([false, result]);
    }
  });

  it('is told in words, a gap never too small', () => {
    const money = { currency: 'EUR', minorDigits: 2 };
    const best = { bars: 4, cost: 36_000, bound: 34_000 };
    expect(progressWords(nesting('waiting'), money)).toBe('Waiting for its turn.');
    expect(progressWords(nesting('running', { best }), money)).toMatch(
      /^Laying out 5 pieces\. Best so far: 4 bars, EUR\s360\.00\. It cannot be less than EUR\s340\.00\.$/,
    );
    const open = { ...best, cost: null, bound: null };
    expect(progressWords(nesting('running', { best: open }), money)).toBe('Laying out 5 pieces. Best so far: 4 bars.');
    const size = { proven: false, gap: 1.21, cost: 1 } as never;
    expect(goodnessWords(size)).toBe('best so far, at most 1.3 % above what is possible');
    expect(goodnessWords({ proven: false, gap: null, cost: 1 } as never)).toBe('best so far, not proven');
    expect(goodnessWords({ proven: true } as never)).toBe('proven the cheapest');
    const row = (currency: string, minorDigits: number, name = 'far rack') => ({
      id: 'a',
      name,
      currency,
      minorDigits,
    });
    expect(leftOutWords([], money)).toBe('');
    expect(leftOutWords([row('USD', 2), row('EUR', 0, '')], money)).toBe(
      'Left out, because prices in two currencies never add up: far rack, priced in USD; without a name, priced in EUR with 0 digits after the point.',
    );
    const long = { job: 'Mast', name: 'hoop', length: 7000, longest: 0 };
    expect(overlongWords(long, { length: 'mm', fraction: 16 })).toContain(
      'hoop of Mast is 7000.0 mm, and there is no bar',
    );
  });
});

describe('bars are taken for a job that is saved', () => {
  it('waits for a save on its way, saves what is left, and says where that failed', async () => {
    const saver = { state: 'saving' as 'saving' | 'saved' | 'unsaved' | 'failed', save: async () => undefined };
    let times = 0;
    const pause = async () => {
      if ((times += 1) === 3) saver.state = 'saved';
    };
    expect([await whenSaved(saver, pause), times]).toEqual([true, 3]);
    saver.state = 'unsaved';
    saver.save = async () => void (saver.state = 'failed');
    expect(await whenSaved(saver, pause)).toBe(false);
  });
});
