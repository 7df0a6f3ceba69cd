// The file that leaves the program is read back by the kernel and measured.
import { importSTEP, iterTopo, cast, measureVolume, type Solid } from 'replicad';
import { beforeAll, describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Job } from '../../server/job/job.ts';
import { solidJob } from '../../server/exports/solid-job.ts';
import { solidsAsStep, startKernel } from '../../server/exports/step-kernel.ts';
import { stepMaker } from '../../server/exports/step-maker.ts';
import { stepText } from '../../server/exports/step-text.ts';
import type { ExportInput } from '../../server/exports/export-file.ts';
import { saddleOrdinate } from '../../server/solver/joints/saddle-cut.ts';
import { arc, braced, chain, frameOf, inputOf, inSpace, line, straight } from './made-up-frames.ts';

beforeAll(startKernel);

async function stepOf(input: ExportInput): Promise<string> {
  const solid = solidJob(input);
  if (!solid.ok) throw new Error(solid.reason);
  const made = await solidsAsStep(solid.job);
  if (!made.ok) throw new Error(`${made.member}: ${made.cause}`);
  return made.step;
}

async function bodiesOf(step: string): Promise<Solid[]> {
  const shape = await importSTEP(new Blob([step]));
  return [...iterTopo(shape.wrapped, 'solid')].map((found) => cast(found) as Solid);
}

/** Names of the products of a file, in its order. */
const namesIn = (step: string): string[] => [...step.matchAll(/\bPRODUCT\('((?:[^']|'')*)'/g)].map(([, name]) => name!);

const sectionOf = ({ tube: { outsideDiameter, wall } }: Job): number => Math.PI * wall * (outsideDiameter - wall);

/** What a saddle takes off a tube on the mean of its section [mm]: the closed form of its ordinate over the wall. */
function meanOrdinate({ tube: { outsideDiameter, wall } }: Job, axisAngle: number): number {
  const [rings, generators] = [40, 720];
  let [sum, weight] = [0, 0];
  for (let ring = 0; ring < rings; ring += 1) {
    const radius = outsideDiameter / 2 - wall * ((ring + 0.5) / rings);
    for (let step = 0; step < generators; step += 1) {
      const generator = (2 * Math.PI * (step + 0.5)) / generators;
      // the cut stands a hundredth clear of the partner
      const main = { mainRadius: outsideDiameter / 2 + 0.01, offset: 0, axisAngle };
      sum += radius * saddleOrdinate({ ...main, radius, generator })!;
      weight += radius;
    }
  }
  return sum / weight;
}

/** Volume inside a fine mesh [mm³]: the kernel's own integral is coarse where a face ends in a saddle. */
function volumeOfMesh(body: Solid): number {
  const { vertices, triangles } = body.mesh({ tolerance: 0.002, angularTolerance: 0.05 });
  const corner = (index: number) => {
    const at = 3 * triangles[index]!;
    return { x: vertices[at]!, y: vertices[at + 1]!, z: vertices[at + 2]! };
  };
  let six = 0;
  for (let index = 0; index < triangles.length; index += 3) {
    const [a, b, c] = [corner(index), corner(index + 1), corner(index + 2)];
    six += a.x * (b.y * c.z - b.z * c.y) - a.y * (b.x * c.z - b.z * c.x) + a.z * (b.x * c.y - b.y * c.x);
  }
  return six / 6;
}

const free: [string, Job][] = [
  ['a hoop', newJob('hoop')],
  ['a ring that joins itself', newJob('ring')],
  ['an offset', newJob('offset')],
  ['a run', newJob('run')],
  ['bends in turned planes, one over half a turn', inSpace()],
];

describe('a solid', () => {
  it.each(free)('of %s has the metal of its section times its length', async (_, job) => {
    const input = inputOf(job);
    const bodies = await bodiesOf(await stepOf(input));
    const { members } = input.plan.frame!;
    expect(bodies).toHaveLength(members.length);
    members.forEach((member, index) => {
      const wanted = sectionOf(job) * member.developedLength.value;
      expect(Math.abs(measureVolume(bodies[index]!) / wanted - 1)).toBeLessThan(1e-6);
    });
  });

  it('whose ends sit on straight tubes has its saddles cut', async () => {
    const input = inputOf(braced());
    const step = await stepOf(input);
    expect(namesIn(step)).toEqual(['rail', 'square', 'slanting']);
    const [, ...bodies] = await bodiesOf(step);
    [90, 50].forEach((angle, index) => {
      const length = 400 - meanOrdinate(input.job, (angle * Math.PI) / 180);
      const wanted = sectionOf(input.job) * length;
      expect(Math.abs(volumeOfMesh(bodies[index]!) / wanted - 1)).toBeLessThan(1e-4);
    });
  });

  it('whose partner is bent keeps a square end and says so', async () => {
    const job = frameOf([
      chain('crown', [arc(60, 900, 0)]),
      straight(
        'post',
        [
          [12.5, -40, 7],
          [12.5, -40, -300],
        ],
        { start: { end: 'saddle', onto: 'crown' } },
      ),
    ]);
    const input = inputOf(job);
    const step = await stepOf(input);
    expect(namesIn(step)).toEqual(['crown', 'post (saddle at the start not cut, end left square)']);
    const [, post] = await bodiesOf(step);
    const length = input.plan.frame!.members[1]!.developedLength.value;
    expect(Math.abs(measureVolume(post!) / (sectionOf(job) * length) - 1)).toBeLessThan(1e-6);
  });

  it('that runs into itself is not written', async () => {
    const job = frameOf([chain('knot', [line(100), arc(300, 15, 0), line(100)])]);
    const solid = solidJob(inputOf(job));
    if (!solid.ok) throw new Error(solid.reason);
    expect(await solidsAsStep(solid.job)).toMatchObject({ ok: false, member: 'knot' });
  });

  it('is in millimetres, of ISO 10303-242, with its job’s title and ASCII alone', async () => {
    const job = { ...frameOf([chain('Bügel', [line(100)])]), title: "Größe 'A' \u{1F6E0}" };
    const step = await stepOf(inputOf(job));
    expect(step).toMatch(/^ISO-10303-21;/);
    expect(step).toContain('AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF');
    expect(step).toContain('SI_UNIT(.MILLI.,.METRE.)');
    expect(step).toContain(`FILE_NAME('Gr\\X2\\00F6\\X0\\\\X2\\00DF\\X0\\e ''A'' \\X4\\0001F6E0\\X0\\'`);
    expect(step).toMatch(/^\p{ASCII}*$/u);
    expect(namesIn(step)).toEqual(['B\\X2\\00FC\\X0\\gel']);
  });

  it('has a title with a backslash in its file name', () => {
    expect(stepText("FILE_NAME('x','t')", 'a\\b')).toBe("FILE_NAME('a\\\\b','t')");
  });
});

describe('the maker of solids', { timeout: 120_000 }, () => {
  const jobOf = (job: Job) => {
    const solid = solidJob(inputOf(job));
    if (!solid.ok) throw new Error(solid.reason);
    return solid.job;
  };
  const stage = jobOf(landingStage());
  const short = jobOf(newJob('straight'));

  it('makes them in a worker, and the next starts when the first has ended', async () => {
    const maker = stepMaker({ time: 100_000, waiting: 1 });
    const [first, second, third] = await Promise.all([maker.make(short), maker.make(short), maker.make(short)]);
    expect(first).toMatchObject({ ok: true });
    expect(second).toMatchObject({ ok: true });
    expect(third).toMatchObject({ ok: false, reason: 'solid-busy' });
    expect(first.ok && first.text).toContain('MANIFOLD_SOLID_BREP');
  });

  it('gives up after its time, and goes on with the next', async () => {
    const maker = stepMaker({ time: 20, waiting: 1 });
    for (const late of await Promise.all([maker.make(stage), maker.make(stage)]))
      expect(late).toMatchObject({ ok: false, reason: 'solid-too-long' });
  });

  it('gives up when the server ends', async () => {
    const maker = stepMaker({ time: 100_000, waiting: 1 });
    const made = Promise.all([maker.make(stage), maker.make(stage)]);
    setTimeout(() => maker.stop(), 50);
    expect(await made).toEqual([
      expect.objectContaining({ reason: 'solid-busy' }),
      expect.objectContaining({ reason: 'solid-busy' }),
    ]);
  });

  it('tells which member cannot be swept', async () => {
    const knot = jobOf(frameOf([chain('knot', [line(100), arc(300, 15, 0), line(100)])]));
    expect(await stepMaker().make(knot)).toMatchObject({ ok: false, reason: 'solid-not-possible', member: 'knot' });
  });
});
