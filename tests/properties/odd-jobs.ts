import fc from 'fast-check';
import { landingStage } from '../../db/demo/landing-stage.ts';
import type { Schema } from '../../server/job/check-value.ts';
import { newFrame, SHAPES } from '../../server/job/default-frame.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Frame } from '../../server/job/frame.ts';
import { Job } from '../../server/job/job.ts';
import { plan } from '../../server/solver/plan.ts';
import { testBend } from '../solver/made-up-shop.ts';
import { inOddShop } from './odd-shops.ts';
import { withOddWelds } from './odd-welds.ts';
import { isPlain } from './plans-compared.ts';
import { valuesOf } from './schema-values.ts';

type Field = { readonly pointer: string; readonly schema: Schema };

/** Every field of a document with its schema: choices and lists as well as the numbers in them. */
function fieldsOf(schema: Schema, value: unknown, pointer = ''): Field[] {
  const { anyOf, properties, items } = schema;
  const here = [{ pointer, schema }];
  if (anyOf !== undefined) {
    const branch = anyOf.find((one) => fits(one, value));
    return branch === undefined ? here : [...here, ...fieldsOf(branch, value, pointer).slice(1)];
  }
  if (properties !== undefined && isPlain(value))
    return [
      ...here,
      ...Object.entries(properties).flatMap(([name, one]) => fieldsOf(one, value[name], `${pointer}/${name}`)),
    ];
  if (items !== undefined && Array.isArray(value))
    return [...here, ...value.flatMap((one, index) => fieldsOf(items, one, `${pointer}/${String(index)}`))];
  return here;
}

/** True where a value is of a branch of a union: each has its own kind, its own fields, or its own fixed word. */
const fits = ({ type, properties }: Schema, value: unknown): boolean => {
  if (!isPlain(value)) return (type === 'null') === (value === null) && type !== 'object';
  return (
    properties !== undefined &&
    Object.keys(value).every((name) => Object.hasOwn(properties, name)) &&
    Object.entries(properties).every(([name, one]) => one.const === undefined || one.const === value[name])
  );
};

/** A document with one field changed; unchanged where the field is no longer there. */
function put(document: unknown, pointer: string, value: unknown): void {
  const names = pointer.slice(1).split('/');
  const last = names.pop() ?? '';
  let at: unknown = document;
  for (const name of names) at = isPlain(at) || Array.isArray(at) ? (at as Record<string, unknown>)[name] : undefined;
  if (isPlain(at) || Array.isArray(at)) (at as Record<string, unknown>)[last] = value;
}

const saddle = (onto: string) => ({ end: 'saddle' as const, onto });
const at = (x: number, y: number, z = 0) => ({ x, y, z, radius: null });
const size = (value: number) => ({ value, reference: 'outside' as const });

/** Two posts, one bent, and a rail between them. */
const GATE: Frame = {
  shape: 'members',
  members: [
    {
      name: 'post',
      path: { by: 'points', points: [at(0, 0), at(0, 800), at(0, 1200, 500)], closed: false },
      start: { end: 'free' },
      finish: { end: 'free' },
    },
    {
      name: 'far post',
      path: {
        by: 'chain',
        start: { x: 700, y: 0, z: 0 },
        direction: { x: 0, y: 1, z: 0 },
        normal: { x: 0, y: 0, z: 1 },
        pieces: [
          { piece: 'straight', length: 700 },
          { piece: 'arc', angle: 60, radius: 2000, rotation: 90, made: 'rolled' },
          { piece: 'arc', angle: 45, radius: null, rotation: 0, made: 'die' },
          { piece: 'straight', length: 300 },
        ],
      },
      start: { end: 'free' },
      finish: { end: 'free' },
    },
    {
      name: 'rail',
      path: { by: 'points', points: [at(0, 400), at(700, 400)], closed: false },
      start: saddle('post'),
      finish: saddle('far post'),
    },
  ],
};

/** Two long legs square to each other's plane: on most machines one of them hangs deep. */
const LEGS: Frame = { shape: 'run', points: [at(0, 0), at(900, 0), at(900, 600), at(900, 600, 500)] };

/** A closed tube out of plane. */
const LOOP: Frame = {
  shape: 'members',
  members: [
    {
      name: 'loop',
      path: { by: 'points', points: [at(0, 0), at(700, 0), at(700, 500, 200), at(0, 600)], closed: true },
      start: { end: 'free' },
      finish: { end: 'free' },
    },
  ],
};

const HOOP: Frame = {
  shape: 'hoop',
  width: size(900),
  widthAtFeet: size(930),
  leftLeg: size(700),
  rightLeg: size(650),
  crossbar: { form: 'crowned', radius: 2400 },
  innerCrossbars: [{ fromFoot: size(300) }],
};

const TESTS: Job['machine']['springback'] = {
  method: 'test-bends',
  bends: [testBend(45, 43.2, 116), testBend(92, 89.1)],
};

/** Every size of a frame as a tape finds it where the frame came back as wanted. */
function measuredAsWanted(job: Job): Job['cameBack'] {
  const checks = plan(job).frame?.checks ?? [];
  const readings = checks.map(({ key, index, reference, ...sizes }) => ({
    reading: 'size' as const,
    check: key,
    index,
    reference,
    value: Math.round(sizes[reference].value * 10) / 10,
    accuracy: null,
  }));
  return { tapeAccuracy: 1, angleAccuracy: 0.2, readings };
}

function newJobOf(frame: Frame): Job {
  return { ...newJob(frame.shape), frame };
}

const withTests = (job: Job): Job => ({ ...job, machine: { ...job.machine, springback: TESTS } });

/** Jobs that can be made, of every shape: as wanted, come back, with dams, with test bends. */
const makeable: readonly Job[] = [...SHAPES.map(newFrame), GATE, HOOP, LOOP, LEGS].flatMap((frame): Job[] => {
  const job = newJobOf(frame);
  const holes = { ...job.purge.holes, underSaddles: 'all' as const };
  const purge = { ...job.purge, extent: 'dams' as const, holes };
  return [job, { ...withTests(job), purge, cameBack: measuredAsWanted(job) }];
});

const one = fc.constantFrom(...makeable, landingStage());
const onLegs = makeable.filter(({ frame }) => frame === LEGS);
/** New frames that are welded, and now and then one that came back and is cut. */
const welded = fc.oneof(
  { weight: 7, arbitrary: fc.constantFrom(...[GATE, HOOP, LOOP, newFrame('ring')].map(newJobOf).map(withTests)) },
  { weight: 1, arbitrary: fc.constant(landingStage()) },
);
const inAnyShop = fc.oneof(one, one.chain(inOddShop), welded.chain(withOddWelds));

/** Jobs that are valid and odd: one that can be made, a few of its fields changed to anything that they take. */
const changed: fc.Arbitrary<unknown> = inAnyShop.chain((job) => {
  // texts are left: they mean nothing to a plan but as names of members
  const fields = fieldsOf(Job, job).filter(
    ({ pointer }) => pointer !== '' && !/^\/(format|version|title|customer|drawingNumber|note|asTyped)/.test(pointer),
  );
  const change = fc
    .constantFrom(...fields)
    .chain(({ pointer, schema }) => fc.tuple(fc.constant(pointer), valuesOf(schema)));
  return fc.array(change, { minLength: 1, maxLength: 5 }).map((changes) => {
    // by its text: a frame that came back as wanted must not be the wanted one itself
    const document: unknown = JSON.parse(JSON.stringify(job));
    // the deeper first, so that a whole part that is changed as well stays valid
    const order = [...changes].sort(([a], [b]) => b.split('/').length - a.split('/').length);
    for (const [pointer, value] of order) put(document, pointer, structuredClone(value));
    return document;
  });
});

/** Valid jobs with every field anything that it takes. */
const anything: fc.Arbitrary<unknown> = fc
  .tuple(valuesOf(Job), fc.constantFrom(...makeable))
  .map(([odd, { format, version, tube }]) => ({ ...(odd as object), format, version, tube }));

export const oddJobs = fc.oneof(
  { weight: 4, arbitrary: changed },
  { weight: 3, arbitrary: one.chain(inOddShop) },
  { weight: 3, arbitrary: welded.chain(withOddWelds) },
  { weight: 1, arbitrary: fc.constantFrom(...onLegs).chain(inOddShop) },
  { weight: 1, arbitrary: anything },
);
