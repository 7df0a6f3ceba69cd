import type { Job } from '../../server/job/job.ts';
import type { Die, Machine, TestBend } from '../../server/job/machine.ts';
import type { Tube } from '../../server/job/tube.ts';
import { calm, shapes, type Case } from './frame-finding-cases.ts';
import { BENDER, testBend } from './made-up-shop.ts';

const { D, run, at } = shapes;

const elbow = run(at(0, 0), at(600, 0), at(600, 600));
const job = calm(elbow);

const ofTube = (tube: Partial<Tube>): Job => ({ ...job, tube: { ...job.tube, ...tube } });
const ofMachine = (machine: Partial<Machine>): Job => ({ ...job, machine: { ...job.machine, ...machine } });

const [own] = job.machine.dies as [Die];
/** A die for a tube of 48.3 mm. */
const wide: Die = { ...own, name: 'wide', tubeDiameter: 48.3, radius: 144.9 };

const record = (...bends: TestBend[]): Machine['springback'] => ({ method: 'test-bends', bends });
const good = [testBend(45, 43.6), testBend(120, 116.6)];

/** What the tube as it was bought, the dies and the record of test bends give to say. */
export const shopCases: readonly Case[] = [
  {
    code: 'wall-over-half-diameter',
    grade: 'stop',
    name: 'a wall that leaves no bore',
    job: ofTube({ wall: 20 }),
    field: '/tube/wall',
    data: { value: 20, high: D / 2 },
  },
  {
    code: 'wall-outside-usual',
    grade: 'note',
    name: 'a wall thinner than tube is drawn',
    job: ofTube({ wall: 0.3 }),
    field: '/tube/wall',
    data: { value: 0.3 },
  },
  {
    code: 'tolerance-no-row',
    grade: 'caution',
    name: 'a wall that the standard has no row for',
    job: ofTube({ wall: 3.6, tolerance: { by: 'standard', standard: 'astm-a554' } }),
    field: '/tube/tolerance/standard',
    data: { standard: 'astm-a554' },
  },
  {
    code: 'die-missing',
    grade: 'stop',
    name: 'a die that the list does not have',
    job: ofMachine({ die: 3 }),
    field: '/machine/die',
    data: { value: 4, low: 1, high: 1 },
  },
  {
    code: 'die-for-other-tube',
    grade: 'stop',
    name: 'set up where another die of the list is for this tube',
    job: ofMachine({ dies: [wide, wide, own], die: 1 }),
    field: '/machine/dies/1/tubeDiameter',
    data: { value: 48.3, low: D, high: D },
    out: { field: '/machine/die', value: 2 },
  },
  {
    code: 'die-for-other-tube',
    grade: 'stop',
    name: 'set up where none of the list is for this tube',
    job: ofMachine({ dies: [wide] }),
    field: '/machine/dies/0/tubeDiameter',
    data: { value: 48.3, low: D, high: D },
    out: { field: '/machine/dies/0/tubeDiameter', value: D },
  },
  {
    code: 'test-bends-other-tube',
    grade: 'note',
    name: 'a record that holds bends of another tube, and of another die',
    job: ofMachine({
      springback: record(
        ...good,
        testBend(90, 88, null, { tubeDiameter: 48.3 }),
        testBend(90, 88, null, { dieRadius: 2 * BENDER.dies[0]!.radius }),
      ),
    }),
    field: '/machine/springback/bends',
    data: { others: 2, count: 4 },
  },
  {
    code: 'mandrel-not-on-die',
    grade: 'caution',
    name: 'a die without the plug that the wall asks for',
    job: calm(elbow, {}, { tooling: 'none' }),
    field: '/machine/dies/0/tooling',
    data: { mandrel: 'plug', tooling: 'none', value: D / 1.65, ratio: 3, member: 'run', bends: '1' },
  },
];
