import { afterEach, describe, expect, it } from 'vitest';
import type { StockLayout } from '../../server/job/stock.ts';
import type { CutBars } from '../../server/nesting/cut-bars.ts';
import type { CuttingTask } from '../../server/nesting/cutting-task.ts';
import { nestingDesk, type NestingDesk, type NestingOrder } from '../../server/nesting/nesting-desk.ts';

let time = 0;
let desk: NestingDesk = nestingDesk(() => time);
afterEach(() => {
  desk.stop();
  desk = nestingDesk(() => time);
});

const start = (id: string, wanted: NestingOrder) => desk.place()?.start(id, wanted) ?? null;

const easy: CuttingTask = {
  pieces: [{ length: 200_000, count: 4 }],
  bars: [{ length: 600_000, count: null, cost: 9000 }],
  kerf: 0,
  endTrim: 0,
};

/** Two lengths of bar whose prices are close to one rate: a proof takes long. */
const hard: CuttingTask = {
  pieces: [
    [61_853, 14],
    [232_177, 20],
    [88_741, 17],
    [151_309, 12],
    [203_893, 19],
    [47_387, 15],
    [262_651, 18],
    [119_993, 16],
    [178_559, 21],
    [73_037, 13],
    [140_249, 20],
    [217_411, 15],
  ].map(([length, count]) => ({ length: length!, count: count! })),
  bars: [
    { length: 600_000, count: null, cost: 9001 },
    { length: 400_000, count: null, cost: 6203 },
    { length: 512_300, count: null, cost: 7807 },
  ],
  kerf: 160,
  endTrim: 1000,
};

const none: StockLayout = {
  found: 'best-so-far',
  date: '',
  saw: { kerf: 0, endTrim: 0, leastRemnant: 0 },
  currency: 'EUR',
  minorDigits: 2,
  bars: [],
  taken: null,
};

const order = (tasks: CuttingTask[], seconds = 60): NestingOrder => ({
  task: { sizes: tasks, seconds },
  pieces: 4,
  sum: (found: readonly CutBars[]) => ({
    bars: found.reduce((sum, { cuts }) => sum + cuts.reduce((all, { times }) => all + times, 0), 0),
    cost: found.reduce((sum, { cost }) => sum + cost, 0),
    bound: found.reduce((sum, { costBound }) => sum + costBound, 0),
  }),
  result: (found) => ({
    layout: none,
    layouts: [],
    whole: none,
    sizes: [],
    overlong: [],
    leftOut: [],
    shares: [{ job: '', id: '', cost: found.reduce((sum, { cost }) => sum + cost, 0) }],
  }),
  trouble: () => '',
});

async function until<Found>(look: () => Found | null | false): Promise<Found> {
  for (let tries = 0; tries < 600; tries += 1) {
    const found = look();
    if (found !== null && found !== false) return found;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error('It never came.');
}

const ended = (id: string) => until(() => ['done', 'failed'].includes(desk.look(id)!.state) && desk.look(id)!);

describe('searches for bars', () => {
  it('are done in a process of their own, one after the other', async () => {
    expect(start('one', order([easy]))).toMatchObject({ state: 'running', best: null, result: null });
    expect(start('two', order([easy, easy]))).toMatchObject({ state: 'waiting' });
    expect(await ended('one')).toMatchObject({
      state: 'done',
      pieces: 4,
      trouble: '',
      best: { bars: 2, cost: 18_000, bound: 18_000 },
      result: { shares: [{ cost: 18_000 }] },
    });
    expect(await ended('two')).toMatchObject({ state: 'done', best: { bars: 4, cost: 36_000 } });
  });

  it('with nothing to cut have an answer of nothing', async () => {
    start('none', order([]));
    expect(await ended('none')).toMatchObject({ state: 'done', best: { bars: 0, cost: 0 } });
  });

  it('tell the best so far, and keep it when they are cancelled', async () => {
    start('hard', order([hard]));
    const seen = await until(() => {
      const { state, best } = desk.look('hard')!;
      expect(state).toBe('running');
      return best !== null && (best.bound ?? 0) > 0 && best;
    });
    expect(seen.cost).toBeGreaterThan(seen.bound!);
    expect(seen.bound! / seen.cost!).toBeGreaterThan(0.9);
    expect(desk.cancel('hard')).toBe(true);
    const cancelled = desk.look('hard')!;
    expect(cancelled.state).toBe('cancelled');
    expect(cancelled.result!.shares[0]!.cost).toBe(cancelled.best!.cost);
    expect(cancelled.best!.cost).toBeLessThanOrEqual(seen.cost!);
    await new Promise((resolve) => setTimeout(resolve, 300));
    expect(desk.look('hard')).toEqual(cancelled);
    expect(desk.cancel('hard')).toBe(true);
    expect(desk.cancel('never')).toBe(false);
  });

  it('end when their time is over, with the best so far', async () => {
    start('short', order([hard], 1));
    const { state, best, result } = await ended('short');
    expect(state).toBe('done');
    expect(best!.cost).toBeGreaterThan(0);
    expect(result!.shares[0]!.cost).toBe(best!.cost);
  });

  it('wait in a short line; the next one starts when one is cancelled', async () => {
    start('hard', order([hard]));
    for (const id of ['a', 'b', 'c']) expect(start(id, order([easy]))!.state).toBe('waiting');
    expect(start('d', order([easy]))).toBeNull();
    desk.cancel('b');
    expect(desk.look('b')).toMatchObject({ state: 'cancelled', result: null, best: null });
    desk.cancel('hard');
    expect(desk.look('a')!.state).toBe('running');
    expect((await ended('c')).state).toBe('done');
    expect(desk.look('b')!.state).toBe('cancelled');
  });

  it('have a place before anything is made ready for them, which others do not get meanwhile', async () => {
    const places = Array.from({ length: 4 }, () => desk.place()!);
    expect(desk.place()).toBeNull();
    places[0]!.leave();
    places[0]!.leave();
    const [again, none] = [desk.place(), desk.place()];
    expect([again === null, none]).toEqual([false, null]);
    expect(places[1]!.start('one', order([easy])).state).toBe('running');
    places[1]!.leave();
    expect(desk.place()).toBeNull();
    for (const place of [...places, again!]) place.leave();
    expect((await ended('one')).state).toBe('done');
  });

  it('have their result made once, when they have come to their end', async () => {
    let made = 0;
    const { result, ...rest } = order([easy]);
    start('one', { ...rest, result: (found) => ((made += 1), result(found)) });
    await ended('one');
    for (let look = 0; look < 5; look += 1) expect(desk.look('one')!.result).not.toBeNull();
    expect(made).toBe(1);
  });

  it('say why where there is no answer', async () => {
    const few: CuttingTask = { ...easy, bars: [{ length: 600_000, count: 1, cost: 0 }] };
    start('few', { ...order([few]), trouble: () => 'There are too few bars.' });
    expect(await ended('few')).toMatchObject({ state: 'failed', trouble: 'There are too few bars.', result: null });
  });

  it('are forgotten some minutes after they have ended', async () => {
    start('one', order([easy]));
    await ended('one');
    time += 9 * 60_000;
    expect(desk.look('one')).not.toBeNull();
    time += 2 * 60_000;
    expect(desk.look('one')).toBeNull();
  });

  it('end with the server', () => {
    start('hard', order([hard]));
    start('next', order([easy]));
    desk.stop();
    expect(desk.look('hard')!.state).toBe('cancelled');
    expect(desk.look('next')!.state).toBe('cancelled');
  });
});
