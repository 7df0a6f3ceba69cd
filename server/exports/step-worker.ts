// Runs in a process of its own: one solid is made, told to the server, and that was it.
import type { SolidJob } from './solid-job.ts';
import { solidsAsStep, startKernel } from './step-kernel.ts';

// nobody waits for a solid whose server has gone
process.once('disconnect', () => process.exit());

process.once('message', (job: SolidJob) => {
  void startKernel()
    .then(() => solidsAsStep(job))
    .then((made) => process.send?.(made));
});
