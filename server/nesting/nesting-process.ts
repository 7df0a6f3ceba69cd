import { fork } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { NestingNews, NestingTask } from './nesting-task.ts';

/**
 * So long the process may take to start, and so much longer than its task to come to an end [ms]: what has been told by then
 * is what was found. Our own choice.
 */
const PATIENCE = { start: 15_000, end: 400 };

/** How a search ended: it did all it could, its time was over and it had to be ended, or it broke. */
export type Ended = 'done' | 'overdue' | 'broken';

/**
 * Seeks bars in a process of its own: the server goes on answering meanwhile, and what the search takes in memory goes
 * back to the machine when it ends.
 *
 * @returns a function that ends it at once; nothing is told after that
 */
export function startNesting(
  task: NestingTask,
  { tell, ended }: { readonly tell: (news: NestingNews) => void; readonly ended: (how: Ended) => void },
): () => void {
  const fromSource = import.meta.url.endsWith('.ts');
  const file = fileURLToPath(new URL(fromSource ? 'nesting-worker.ts' : 'nesting-worker.js', import.meta.url));
  const loader = fromSource ? ['--import', pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href] : [];
  const worker = fork(file, {
    execArgv: loader,
    serialization: 'advanced',
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  let isOver = false;
  const end = (how: Ended | null): void => {
    if (isOver) return;
    isOver = true;
    clearTimeout(timer);
    worker.kill('SIGKILL');
    if (how !== null) ended(how);
  };
  const overdue = (): void => end('overdue');
  let timer = setTimeout(overdue, PATIENCE.start);
  worker.on('message', (news: NestingNews) => {
    if (isOver) return;
    if (news.kind === 'done') end('done');
    else if (news.kind === 'begun') {
      clearTimeout(timer);
      timer = setTimeout(overdue, task.seconds * 1000 + PATIENCE.end);
    } else tell(news);
  });
  // a second fault must find somebody who listens too
  worker.on('error', () => end('broken'));
  worker.once('exit', () => end('broken'));
  worker.send(task);
  return () => end(null);
}
