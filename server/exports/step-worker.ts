// Runs in a thread of its own: one solid is made, and the kernel's memory goes back when the thread ends.
import { parentPort, workerData } from 'node:worker_threads';
import type { SolidJob } from './solid-job.ts';
import { solidsAsStep, startKernel } from './step-kernel.ts';

await startKernel();
const { job } = workerData as { readonly job: SolidJob };
parentPort?.postMessage(await solidsAsStep(job));
