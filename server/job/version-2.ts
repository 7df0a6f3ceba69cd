import { isPlainObject, type Document } from './check-value.ts';
import { newJob } from './default-job.ts';

/**
 * Version 1 knew one die, a plain list of test bends and no tolerances. The die becomes the first of the machine's,
 * its test bends get the tube and die that they were bent on, and the rest starts as a new job does.
 */
export function withDies(document: Document): Document {
  const fresh = newJob('straight');
  const tube = isPlainObject(document['tube']) ? document['tube'] : {};
  const old = isPlainObject(document['machine']) ? document['machine'] : {};
  const { dieRadius, gripLength, largestAngle, angleScatter, springback, ...kept } = old;
  const [die] = fresh.machine.dies;
  const bends = isPlainObject(springback) && Array.isArray(springback['bends']) ? springback['bends'] : [];
  const bentOn = { tubeDiameter: tube['outsideDiameter'], wall: tube['wall'], dieRadius, heat: '' };
  return {
    ...document,
    tube: { ...tube, heat: '', tolerance: fresh.tube.tolerance },
    machine: {
      ...kept,
      dies: [{ ...die, tubeDiameter: tube['outsideDiameter'], radius: dieRadius, gripLength, largestAngle }],
      die: 0,
      springback: {
        method: isPlainObject(springback) ? springback['method'] : undefined,
        bends: bends.map((bend: unknown) => ({
          ...(isPlainObject(bend) ? bend : {}),
          scribedBefore: null,
          scribedAfter: null,
          ...bentOn,
        })),
      },
      accuracy: { ...fresh.machine.accuracy, angleScatter },
      surroundings: fresh.machine.surroundings,
    },
    bending: fresh.bending,
    asTyped: movedTexts(document['asTyped']),
  };
}

/** Where the fields of version 1 stand now, for the texts that a person typed in them. */
const MOVED: Readonly<Record<string, string>> = {
  '/machine/dieRadius': '/machine/dies/0/radius',
  '/machine/gripLength': '/machine/dies/0/gripLength',
  '/machine/largestAngle': '/machine/dies/0/largestAngle',
  '/machine/angleScatter': '/machine/accuracy/angleScatter',
};

const movedTexts = (texts: unknown): unknown =>
  isPlainObject(texts)
    ? Object.fromEntries(Object.entries(texts).map(([field, text]) => [MOVED[field] ?? field, text]))
    : texts;
