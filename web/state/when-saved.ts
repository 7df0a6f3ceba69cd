import type { JobSaver } from './job-saver.svelte.ts';

/** How often a save that is on its way is looked at, and for how long [ms, times]; our own choice. */
const PAUSE = 100;
const PATIENCE = 100;

const wait = (): Promise<void> => new Promise((done) => setTimeout(done, PAUSE));

/** Saves the job as it stands, and says whether the server has it. */
export async function whenSaved(
  saver: Pick<JobSaver, 'state' | 'save'>,
  pause: () => Promise<void> = wait,
): Promise<boolean> {
  for (let times = 0; saver.state === 'saving' && times < PATIENCE; times += 1) await pause();
  if (saver.state !== 'saved') await saver.save();
  return saver.state === 'saved';
}
