import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Reading } from '../../server/job/came-back.ts';
import type { Job } from '../../server/job/job.ts';

/** Welds and gas of the example with one of each that their stage can show, some of it wrong. */
function fullWelds({ purge, welding, finish }: Job): Pick<Job, 'purge' | 'welding' | 'finish'> {
  const hole = { at: { member: 'hoop', spot: 'along', number: 1, distance: 900 }, bore: 6 } as const;
  const end = 'start';
  return {
    purge: {
      ...purge,
      up: { x: 1, y: 1, z: 0 },
      feed: { hole: 3 },
      meter: [1, 9].map((chamber) => ({ chamber, minutes: 3, oxygen: 3000 })),
      holes: {
        ...purge.holes,
        except: [
          { member: 'crossbar 1', end },
          { member: 'gone', end },
        ],
        toAir: [hole],
      },
      room: { ...purge.room, volume: 6, lowVolume: 0.4, fanFlow: 200 },
      bottle: { ...purge.bottle, gaugeNow: 120 },
    },
    welding: {
      ...welding,
      backing: 'sleeve',
      butt: { ...welding.butt, current: 150, provedOn: 'test piece 3' },
      order: ['2A', '9'].map((weld) => ({ weld, first: 3, way: 'round' })),
    },
    finish: { ...finish, cleaning: 'pickle-paste', surface: 'mirror' },
  };
}

/** The example with as much in it as its stages of a wrong frame and of welding can show, and every row open. */
export function fullJob(): Job {
  const job = landingStage();
  const cameBack = job.cameBack!;
  // narrower than wanted, so that new tube is let in; the left leg was misread
  const read: Readonly<Record<string, number>> = {
    'width-at-corners/0': 917,
    'width-at-feet/0': 910,
    'left-leg/0': 751,
    'diagonal/1': 1152,
    'diagonal/2': 1104,
  };
  const sizes = cameBack.readings.map((one) =>
    one.reading === 'size' ? { ...one, value: read[`${one.check}/${String(one.index)}`] ?? one.value } : one,
  );
  const at = { member: 'hoop', spot: 'corner', number: 1, distance: 0 } as const;
  const zero = { x: 0, y: 0, z: 0 };
  const more: Reading[] = [
    { reading: 'piece', member: 'hoop', piece: 3, what: 'radius', value: 2400, accuracy: 50 },
    { reading: 'point', at, ...zero, accuracy: null },
    { reading: 'bevel', from: at, to: { ...at, spot: 'finish' }, value: null, accuracy: null },
    { reading: 'level', at: { ...at, spot: 'middle' }, value: null, accuracy: 0.5 },
  ];
  return {
    ...job,
    ...fullWelds(job),
    cameBack: { ...cameBack, readings: [...sizes, ...more] },
    closing: {
      ...job.closing,
      way: 'splice-fewest',
      barred: [{ member: 'crossbar 1', from: 700, to: 800, why: 'fitting' }],
    },
    fixing: [
      { fixing: 'foot', name: 'left', at: { ...at, spot: 'start' }, off: zero, lands: null, tolerance: 4, plate: null },
      {
        fixing: 'foot',
        name: 'right',
        at: { ...at, spot: 'finish' },
        off: zero,
        lands: null,
        tolerance: null,
        plate: null,
      },
      {
        fixing: 'pad',
        name: 'pad',
        at: { ...at, spot: 'start' },
        off: zero,
        lands: null,
        tolerance: null,
        plate: { thickness: 6, hole: 0 },
      },
    ],
  };
}
