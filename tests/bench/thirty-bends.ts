import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';

/** A run that climbs through 30 right-angled bends, each 400 mm on, with a bed under the machine. */
export function thirtyBends(): Job {
  const job = newJob('run');
  const at = { x: 0, y: 0, z: 0 };
  const points = Array.from({ length: 32 }, (_, index) => {
    const point = { ...at, radius: null };
    if (index % 3 === 0) at.x += 400;
    else if (index % 3 === 1) at.y += 400;
    else at.z += 400;
    return point;
  });
  const surroundings = { ...job.machine.surroundings, bedBelow: 900 };
  return { ...job, machine: { ...job.machine, surroundings }, frame: { shape: 'run', points } };
}
