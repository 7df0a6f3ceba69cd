import { newJob } from '../../server/job/default-job.ts';
import type { CameBack, Hoop } from '../../server/job/frame.ts';
import type { Job } from '../../server/job/job.ts';

const outside = (value: number) => ({ value, reference: 'outside' as const });
const centre = (value: number) => ({ value, reference: 'centre' as const });

/** What the club asked for [mm]. */
const WANTED: Hoop = {
  shape: 'hoop',
  width: outside(950),
  widthAtFeet: null,
  leftLeg: outside(600),
  rightLeg: outside(600),
  crossbar: { form: 'crowned', radius: 2400 },
  innerCrossbars: [{ fromFoot: centre(250) }],
};

/** What the tape found when the frame came back; null while nobody has measured it. */
const CAME_BACK: CameBack | null = null;

/** The job that a new database opens with: made up from end to end, and it says so. */
export function landingStage(): Job {
  const job = newJob('hoop');
  const { rates } = job;
  return {
    ...job,
    title: 'Landing stage boarding frame',
    customer: 'a rowing club',
    drawingNumber: 'LS-1',
    note: 'Made-up example: club, sizes, readings and rates are invented. Two equal frames hold the hand rail of a landing stage.',
    invented: true,
    frame: WANTED,
    cameBack: CAME_BACK,
    rates: {
      ...rates,
      // invented; the filler and the finishing are left open on purpose, so that their lines show how that looks
      date: '2026-11-02',
      tubePerMetre: 1450,
      gasPerCubicMetre: 1100,
      labourPerHour: { bend: 5200, cut: 4600, fit: 5200, purge: 4600, weld: 5600, finish: null },
      times: {
        bend: { setUp: 20, each: 4 },
        cut: { setUp: 10, each: 6 },
        fit: { setUp: 15, each: 8 },
        purge: { setUp: 10, each: 5 },
        weld: { setUp: 10, each: 6 },
        finish: { setUp: null, each: 12 },
      },
    },
  };
}
