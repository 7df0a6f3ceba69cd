import { describe, expect, it } from 'vitest';
import type { Answer, IssuedQuote } from '../../web/api/client.ts';
import { IssuedList } from '../../web/state/issued.svelte.ts';

const quote = (number: number): IssuedQuote => ({
  number,
  jobRevision: 4,
  issuedAt: '2026-11-26T08:00:00.000Z',
  reference: '',
  date: '2026-11-26',
  validUntil: '2026-12-26',
  scope: 'frame',
  total: 1,
  currency: 'EUR',
  minorDigits: 2,
  open: 0,
  examples: 0,
});

/** A server that has quotes 1 and 2, and answers what a test tells it to. */
function listThatIsTold(answer: Answer<IssuedQuote>) {
  const asked: unknown[] = [];
  const list = new IssuedList('a', {
    quotes: async () => ({ kind: 'done', body: [quote(1), quote(2)] }),
    issueQuote: async (...given) => {
      asked.push(given);
      return answer;
    },
  });
  return { list, asked };
}

const saved = { state: 'saved', revision: 4, reason: '' } as const;

describe('issuing a quote', () => {
  it('waits until the job is saved, and is asked once', async () => {
    const { list, asked } = listThatIsTold({ kind: 'done', body: quote(3) });
    await list.load();
    await list.look(saved);
    expect(asked).toEqual([]);
    list.want();
    await list.look({ state: 'unsaved', revision: 3, reason: '' });
    await list.look({ state: 'saving', revision: 3, reason: '' });
    expect([asked, list.waiting]).toEqual([[], true]);
    await Promise.all([list.look(saved), list.look(saved)]);
    await list.look(saved);
    expect([asked, list.waiting, list.latest?.number]).toEqual([[['a', 4]], false, 3]);
    expect(list.issued.map(({ number }) => number)).toEqual([3, 2, 1]);
  });

  it('is read again as soon as the server answers, and then nothing is said any more', async () => {
    const { list } = listThatIsTold({ kind: 'done', body: quote(3) });
    const broken = new IssuedList('a', {
      quotes: async () => ({ kind: 'unreachable', reason: 'There is no connection. Try again.' }),
      issueQuote: async () => ({ kind: 'unreachable', reason: 'There is no connection. Try again.' }),
    });
    await broken.load();
    expect(broken.trouble).toContain('no connection');
    await broken.back();
    expect(broken.trouble).toContain('no connection');

    const answers = [false, true, true];
    const mended = new IssuedList('a', {
      quotes: async () =>
        answers.shift() === true ? { kind: 'done', body: [quote(1)] } : { kind: 'unreachable', reason: 'silence' },
      issueQuote: async () => ({ kind: 'unreachable', reason: 'silence' }),
    });
    await mended.load();
    expect([mended.trouble === '', mended.issued.length]).toEqual([false, 0]);
    await mended.look(saved);
    expect([mended.trouble, mended.issued.length]).toEqual(['', 1]);
    mended.want();
    await mended.look(saved);
    expect(mended.trouble).toContain('silence');
    await mended.back();
    expect(mended.trouble).toBe('');
    await list.load();
    expect(list.trouble).toBe('');
  });

  it('says why nothing was issued where the job cannot be saved', async () => {
    for (const [state, said] of [
      ['conflict', 'somebody else'],
      ['failed', 'silence'],
      ['refused', 'silence'],
    ] as const) {
      const { list, asked } = listThatIsTold({ kind: 'done', body: quote(3) });
      list.want();
      await list.look({ state, revision: 3, reason: 'silence' });
      expect([asked, list.waiting]).toEqual([[], false]);
      expect(list.trouble).toContain(said);
    }
  });

  it('says why the server did not, and tries again when it is wanted again', async () => {
    const { list, asked } = listThatIsTold({ kind: 'refused', problems: [], reason: 'There is no price.' });
    list.want();
    await list.look(saved);
    expect([list.trouble, list.latest]).toEqual(['Nothing was issued: There is no price.', null]);
    list.want();
    expect(list.trouble).toBe('');
    await list.look(saved);
    expect(asked).toHaveLength(2);
  });
});
