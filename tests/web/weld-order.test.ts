import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import { Job } from '../../server/job/job.ts';
import { problemsOf } from '../../server/job/validate.ts';
import type { WeldTurn } from '../../server/job/welding.ts';
import type { Weld } from '../../server/plan/welding.ts';
import { orderReversed } from '../../web/state/reversed-order.ts';
import { leftOut, quarterWords, turnOf, withOwnOrder } from '../../web/state/weld-order.ts';

const turn = fc.record<WeldTurn>({
  weld: fc.constantFrom('1', '2A', '2B', 'S1'),
  first: fc.constantFrom(1, 2, 3, 4),
  way: fc.constantFrom('opposed', 'opposed-back', 'round', 'round-back'),
});

describe('an order of welding', () => {
  it('is read off the quarters as they follow each other', () => {
    const way = (...quarters: number[]) => turnOf({ weld: '1', quarters });
    expect(way(1, 3, 2, 4)).toEqual({ weld: '1', first: 1, way: 'opposed' });
    expect(way(1, 3, 4, 2)).toEqual({ weld: '1', first: 1, way: 'opposed-back' });
    expect(way(4, 2, 1, 3)).toEqual({ weld: '1', first: 4, way: 'opposed' });
    expect(way(3, 4, 1, 2)).toEqual({ weld: '1', first: 3, way: 'round' });
    expect(way(1, 4, 3, 2)).toEqual({ weld: '1', first: 1, way: 'round-back' });
  });

  it('begins as the plan has it and is a value that the job takes', () => {
    const planned = [
      { weld: 'S1', quarters: [2, 4, 3, 1] },
      { weld: '1', quarters: [1, 3, 2, 4] },
    ];
    const job = withOwnOrder(newJob('hoop'), planned);
    expect(job.welding.order.map(({ weld }) => weld)).toEqual(['S1', '1']);
    expect(problemsOf(Job, job)).toEqual([]);
    expect(leftOut(job.welding.order.slice(1), planned)).toEqual([planned[0]]);
    expect(quarterWords(planned[1]!)).toBe('1 – 3 – 2 – 4');
  });
});

describe('an order when a tube is turned round', () => {
  const weld = (name: string, member: string, station: number) => ({ name, member, station }) as Weld;
  const welds = [
    weld('1', 'run', 300),
    weld('2A', 'run', 900),
    weld('2B', 'run', 940),
    weld('S1', 'run', 0),
    weld('S2', 'run', 2000),
    weld('S3', 'other', 0),
  ];

  it('names the same welds from the other end, and the same quarters of them', () => {
    const order: readonly WeldTurn[] = [
      { weld: '2A', first: 1, way: 'opposed' },
      { weld: '1', first: 2, way: 'round' },
      { weld: 'S1', first: 3, way: 'opposed-back' },
      { weld: 'S3', first: 3, way: 'round-back' },
    ];
    expect(orderReversed(order, welds, 'run')).toEqual([
      { weld: '1B', first: 4, way: 'opposed-back' },
      { weld: '2', first: 3, way: 'round-back' },
      { weld: 'S2', first: 2, way: 'opposed' },
      { weld: 'S3', first: 3, way: 'round-back' },
    ]);
  });

  it('is as it was when the tube is turned round again', () => {
    const turned = welds.map((one) => ({
      ...one,
      name: orderReversed([{ weld: one.name, first: 1, way: 'round' }], welds, 'run')[0]!.weld,
      station: one.member === 'run' ? 2000 - one.station : one.station,
    }));
    fc.assert(
      fc.property(fc.array(turn, { maxLength: 8 }), (order) => {
        expect(orderReversed(orderReversed(order, welds, 'run'), turned, 'run')).toEqual(order);
      }),
    );
  });
});
