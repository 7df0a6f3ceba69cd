import { Worker } from 'node:worker_threads';
import { exported, refused, type Exported } from './export-file.ts';
import type { SolidJob } from './solid-job.ts';
import type { Solids } from './step-kernel.ts';

/**
 * Longest time for one file [ms], and how many may wait behind it. Our own choice: forty members, the most that a frame
 * has, took half a minute with their saddles, on two cores that had other work too.
 */
const LIMITS = { time: 120_000, waiting: 3 } as const;

/** Makes solids one at a time, each in a thread of its own, so that the server goes on answering. */
export type StepMaker = {
  readonly make: (job: SolidJob) => Promise<Exported>;
  /** Gives up what is being made and what waits; for the end of the server. */
  readonly stop: () => void;
};

export function stepMaker(limits: { readonly time: number; readonly waiting: number } = LIMITS): StepMaker {
  let inHand = 0;
  let last: Promise<unknown> = Promise.resolve();
  const stopping = new AbortController();
  return {
    make(job) {
      if (inHand > limits.waiting) return Promise.resolve(refused('solid-busy'));
      inHand += 1;
      const made = last.then(() => makeInWorker(job, limits.time, stopping.signal)).finally(() => (inHand -= 1));
      // the next one starts whether this one came out well or not; whoever asked for this one hears of its fault
      last = made.catch(() => undefined);
      return made;
    },
    stop: () => stopping.abort(),
  };
}

/** Runs a source in a worker: the loader of sources has to be set up inside it first. */
const FROM_SOURCE = `
  const { workerData } = require('node:worker_threads');
  import('tsx/esm/api').then(({ tsImport }) => tsImport(workerData.file, workerData.file));
`;

/** The worker beside this file, as built or as its source. */
function startWorker(job: SolidJob): Worker {
  const fromSource = import.meta.url.endsWith('.ts');
  const file = new URL(fromSource ? 'step-worker.ts' : 'step-worker.js', import.meta.url);
  return fromSource
    ? new Worker(FROM_SOURCE, { eval: true, execArgv: [], workerData: { file: file.href, job } })
    : new Worker(file, { execArgv: [], workerData: { job } });
}

/** One solid from its own worker; it is answered when the worker has ended and its memory has gone back. */
function makeInWorker(job: SolidJob, time: number, stopping: AbortSignal): Promise<Exported> {
  if (stopping.aborted) return Promise.resolve(refused('solid-busy'));
  const worker = startWorker(job);
  let answer: Exported | undefined;
  const end = (told: Exported): void => {
    answer ??= told;
    void worker.terminate();
  };
  const giveUp = (): void => end(refused('solid-busy'));
  const timer = setTimeout(() => end(refused('solid-too-long')), time);
  stopping.addEventListener('abort', giveUp);
  worker.once('message', (made: Solids) =>
    end(made.ok ? exported(made.step) : refused('solid-not-possible', made.member, made.cause)),
  );
  return new Promise<Exported>((resolve, reject) => {
    worker.once('error', reject);
    worker.once('exit', (code) => {
      clearTimeout(timer);
      stopping.removeEventListener('abort', giveUp);
      if (answer === undefined) reject(new Error(`The worker of the solids ended with ${String(code)} and no answer.`));
      else resolve(answer);
    });
  });
}
