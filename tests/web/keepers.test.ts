import { describe, expect, it } from 'vitest';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { JobProblem } from '../../server/job/problem.ts';
import type { SavedJob } from '../../server/job/saved-job.ts';
import type { Plan } from '../../server/plan/plan.ts';
import type { Answer } from '../../web/api/client.ts';
import { JobHistory } from '../../web/state/job-history.svelte.ts';
import { JobSaver, type Draft } from '../../web/state/job-saver.svelte.ts';
import { PlanKeeper } from '../../web/state/plan-keeper.svelte.ts';

const base = newJob('hoop');
const titled = (title: string): Job => ({ ...base, title });
const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

const emptyPlan: Plan = {
  version: 1,
  findings: [],
  tube: null,
  springback: null,
  frame: null,
  correction: null,
  purge: null,
  welding: null,
  finish: null,
  site: null,
  stock: null,
  quote: null,
  views: [],
};

describe('history', () => {
  it('makes one step of the letters of one field, and a new one after a pause', () => {
    const history = new JobHistory(base, () => undefined);
    history.change(titled('a'), 'title');
    history.change(titled('ab'), 'title');
    history.pause();
    history.change(titled('abc'), 'title');
    history.undo();
    expect(history.job.title).toBe('ab');
    history.undo();
    expect([history.job.title, history.canUndo]).toEqual(['', false]);
    history.redo();
    history.redo();
    expect([history.job.title, history.canRedo]).toEqual(['abc', false]);
  });

  it('forgets what was undone once something else is done', () => {
    const history = new JobHistory(base, () => undefined);
    history.change(titled('a'));
    history.undo();
    history.change(titled('b'));
    expect(history.canRedo).toBe(false);
    history.undo();
    expect(history.job).toBe(base);
  });
});

describe('the plan', () => {
  function keeper() {
    const asked: { job: Job; answer: (answer: Answer<Plan>) => void }[] = [];
    const waiting: (() => void)[] = [];
    const refused: (readonly JobProblem[])[] = [];
    const keeping = new PlanKeeper({
      ask: (job) => new Promise((answer) => asked.push({ job, answer })),
      later: (work) => waiting.push(work),
      again: (work) => waiting.push(work),
      refused: (_, problems) => refused.push(problems),
      accepted: () => undefined,
    });
    return { keeping, asked, waiting, refused };
  }

  it('is asked for once, however fast somebody types, and then for the newest', async () => {
    const { keeping, asked, waiting } = keeper();
    for (const title of ['a', 'ab', 'abc']) keeping.request(titled(title));
    expect(waiting).toHaveLength(1);
    waiting[0]?.();
    keeping.request(titled('abcd'));
    keeping.request(titled('abcde'));
    expect(asked.map(({ job }) => job.title)).toEqual(['abc']);
    asked[0]?.answer({ kind: 'done', body: emptyPlan });
    await settled();
    expect(asked.map(({ job }) => job.title)).toEqual(['abc', 'abcde']);
    expect([keeping.plan, keeping.working]).toEqual([emptyPlan, true]);
    asked[1]?.answer({ kind: 'done', body: emptyPlan });
    await settled();
    expect(keeping.working).toBe(false);
  });

  it('stays when no answer comes, and is asked for again', async () => {
    const { keeping, asked, waiting } = keeper();
    keeping.request(base);
    waiting.shift()?.();
    asked[0]?.answer({ kind: 'done', body: emptyPlan });
    await settled();
    keeping.request(titled('a'));
    waiting.shift()?.();
    asked[1]?.answer({ kind: 'unreachable', reason: 'no signal' });
    await settled();
    expect([keeping.plan, keeping.unreachable, keeping.working]).toEqual([emptyPlan, true, true]);
    waiting.shift()?.();
    waiting.shift()?.();
    asked[2]?.answer({ kind: 'done', body: emptyPlan });
    await settled();
    expect([keeping.unreachable, keeping.working]).toEqual([false, false]);
  });

  it('stays when a value is refused', async () => {
    const { keeping, asked, waiting, refused } = keeper();
    keeping.request(base);
    waiting.shift()?.();
    asked[0]?.answer({ kind: 'done', body: emptyPlan });
    await settled();
    keeping.request(titled('a'));
    waiting.shift()?.();
    asked[1]?.answer({ kind: 'refused', problems: [], reason: 'no' });
    await settled();
    expect([keeping.plan, keeping.trouble, refused.length]).toEqual([emptyPlan, 'no', 1]);
  });
});

describe('saving', () => {
  const stored = (job: Job, revision: number): SavedJob => ({ id: 'one', job, revision, savedAt: 'later' });
  function saver(stands: SavedJob = stored(base, 1), draft: Draft | null = null) {
    let job: Job = draft?.job ?? base;
    const sent: { job: Job; basedOn: number; answer: (answer: Answer<SavedJob>) => void }[] = [];
    const waiting: (() => void)[] = [];
    const drafts: (Draft | null)[] = [];
    const saving = new JobSaver(
      stands,
      {
        save: (next, basedOn) => new Promise((answer) => sent.push({ job: next, basedOn, answer })),
        later: (work) => waiting.push(work),
        keepDraft: (draft) => drafts.push(draft),
        now: () => job,
      },
      draft,
    );
    const change = (next: Job): void => {
      job = next;
      saving.changed();
    };
    return { saving, change, sent, waiting, drafts };
  }

  it('waits for a pause in the typing, keeps a draft until the server has it', async () => {
    const { saving, change, sent, waiting, drafts } = saver();
    change(titled('a'));
    change(titled('ab'));
    for (const work of waiting.splice(0)) work();
    expect(sent.map(({ job, basedOn }) => [job.title, basedOn])).toEqual([['ab', 1]]);
    expect(drafts.at(-1)?.job.title).toBe('ab');
    sent[0]?.answer({ kind: 'done', body: stored(titled('ab'), 2) });
    await settled();
    expect([saving.state, saving.revision, drafts.at(-1)]).toEqual(['saved', 2, null]);
  });

  it('saves what was typed while a save was on its way', async () => {
    const { saving, change, sent, waiting } = saver();
    change(titled('a'));
    waiting.shift()?.();
    change(titled('ab'));
    sent[0]?.answer({ kind: 'done', body: stored(titled('a'), 2) });
    await settled();
    expect(saving.state).toBe('unsaved');
    for (const work of waiting.splice(0)) work();
    expect(sent.map(({ job, basedOn }) => [job.title, basedOn])).toEqual([
      ['a', 1],
      ['ab', 2],
    ]);
  });

  it('takes up what was left behind as an offer to merge, unless the server has it already', () => {
    const draft: Draft = { job: titled('mine'), base, basedOn: 1 };
    const { saving } = saver(stored({ ...base, customer: 'theirs' }, 2), draft);
    expect([saving.state, saving.sides]).toEqual(['conflict', { yours: ['/title'], theirs: ['/customer'] }]);
    expect(saving.settle('both')).toMatchObject({ title: 'mine', customer: 'theirs' });
    expect(saver(stored(titled('mine'), 2), draft).saving.state).toBe('saved');
    expect(saver(stored(base, 1), draft).saving.theirs).toBeNull();
  });

  it('knows its own save again where the answer was lost', async () => {
    const { saving, change, sent, waiting } = saver();
    change(titled('a'));
    waiting.shift()?.();
    sent[0]?.answer({ kind: 'conflict', theirs: stored(titled('a'), 2) });
    await settled();
    expect([saving.state, saving.revision]).toEqual(['saved', 2]);
  });

  it('tries again when no answer comes', async () => {
    const { saving, change, sent, waiting } = saver();
    change(titled('a'));
    waiting.shift()?.();
    sent[0]?.answer({ kind: 'unreachable', reason: 'no signal' });
    await settled();
    expect(saving.state).toBe('failed');
    waiting.shift()?.();
    expect(sent).toHaveLength(2);
  });

  it.each([
    ['both', 'mine', 'theirs'],
    ['mine', 'mine', ''],
    ['theirs', '', 'theirs'],
  ] as const)('offers a merge when somebody else saved, and keeps %s', async (how, title, customer) => {
    const { saving, change, sent, waiting } = saver();
    change(titled('mine'));
    waiting.shift()?.();
    sent[0]?.answer({ kind: 'conflict', theirs: stored({ ...base, customer: 'theirs' }, 2) });
    await settled();
    expect(saving.state).toBe('conflict');
    expect(saving.sides).toEqual({ yours: ['/title'], theirs: ['/customer'] });
    const next = saving.settle(how);
    expect([next.title, next.customer]).toEqual([title, customer]);
    change(next);
    for (const work of waiting.splice(0)) work();
    expect(sent[1]?.basedOn).toBe(how === 'theirs' ? undefined : 2);
  });
});
