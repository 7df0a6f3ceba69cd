import type { Reading } from '../../server/job/came-back.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import type { Hoop } from '../../server/job/frame.ts';
import { plan } from '../../server/solver/plan.ts';

/** A hoop with a crown and inner crossbars [mm over the outside], as it was wanted and as its tape says that it came back. */
export function returnedHoop(crossbars: number): Job {
  const job = newJob('hoop');
  const outside = (value: number) => ({ value, reference: 'outside' as const });
  const hoop = (width: number, widthAtFeet: number, rightLeg: number): Hoop => ({
    shape: 'hoop',
    width: outside(width),
    widthAtFeet: outside(widthAtFeet),
    leftLeg: outside(1800),
    rightLeg: outside(rightLeg),
    crossbar: { form: 'crowned', radius: 2400 },
    innerCrossbars: Array.from({ length: crossbars }, (_, index) => ({
      fromFoot: { value: 150 + (1350 * index) / Math.max(1, crossbars - 1), reference: 'centre' },
    })),
  });
  const made = plan({ ...job, frame: hoop(983, 976, 1806) });
  const readings = (made.frame?.checks ?? []).map(({ key, index, outside: size }): Reading => {
    // whole millimetres, as a tape is read
    const value = Math.round(size.value);
    return { reading: 'size', check: key, index, reference: 'outside', value, accuracy: null };
  });
  const cameBack = { tapeAccuracy: 1, angleAccuracy: 0.2, readings };
  return { ...job, frame: hoop(950, 950, 1800), cameBack };
}
