import { fork, type ChildProcess } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { exported, refused, type Exported } from './export-file.ts';
import type { SolidJob } from './solid-job.ts';
import type { Solids } from './step-kernel.ts';

/**
 * Longest time for one file [ms], and how many may wait behind it. Our own choice: forty members, the most that a frame
 * has, took half a minute with their saddles, on two cores that had other work too.
 */
const LIMITS = { time: 120_000, waiting: 3 } as const;

/**
 * Makes solids one at a time, each in a process of its own: the server goes on answering, and the kernel's memory goes
 * back to the machine when the process ends.
 */
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
      const made = last.then(() => makeInProcess(job, limits.time, stopping.signal)).finally(() => (inHand -= 1));
      // the next one starts whether this one came out well or not; whoever asked for this one hears of its fault
      last = made.catch(() => undefined);
      return made;
    },
    stop: () => stopping.abort(),
  };
}

/** The process beside this file, as built or from its source; what the kernel prints is not the server's to say. */
function startProcess(): ChildProcess {
  const fromSource = import.meta.url.endsWith('.ts');
  const file = fileURLToPath(new URL(fromSource ? 'step-worker.ts' : 'step-worker.js', import.meta.url));
  const loader = fromSource ? ['--import', pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href] : [];
  return fork(file, { execArgv: loader, serialization: 'advanced', stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
}

/** One solid from its own process; it is answered when the process has ended. */
function makeInProcess(job: SolidJob, time: number, stopping: AbortSignal): Promise<Exported> {
  if (stopping.aborted) return Promise.resolve(refused('solid-busy'));
  const worker = startProcess();
  let answer: Exported | undefined;
  const end = (told: Exported): void => {
    answer ??= told;
    worker.kill('SIGKILL');
  };
  const giveUp = (): void => end(refused('solid-busy'));
  const timer = setTimeout(() => end(refused('solid-too-long')), time);
  stopping.addEventListener('abort', giveUp);
  worker.once('message', (made: Solids) =>
    end(made.ok ? exported(made.step) : refused('solid-not-possible', made.member, made.cause)),
  );
  return new Promise<Exported>((resolve, reject) => {
    const settle = (): void => {
      clearTimeout(timer);
      stopping.removeEventListener('abort', giveUp);
    };
    worker.once('error', (fault) => {
      settle();
      worker.kill('SIGKILL');
      reject(fault);
    });
    worker.once('exit', (code) => {
      settle();
      if (answer === undefined)
        reject(new Error(`The process of the solids ended with ${String(code)} and no answer.`));
      else resolve(answer);
    });
    worker.send(job);
  });
}
