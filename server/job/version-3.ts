import { isPlainObject, type Document } from './check-value.ts';
import { newJob } from './default-job.ts';

/**
 * Version 2 knew the frame that came back as a second frame of the same shape, and one cut line. Each of its sizes
 * becomes a reading; where the cuts go the plan finds by itself.
 */
export function withReadings(document: Document): Document {
  const fresh = newJob('straight');
  const old = isPlainObject(document['closing']) ? document['closing'] : {};
  const { joints, cutOffset: _offset, spread: _spread, way, ...kept } = old;
  const { mostJoints, cutMembers, barred, joints: own, daysAtBender } = fresh.closing;
  return {
    ...document,
    fixing: fresh.fixing,
    cameBack: isPlainObject(document['cameBack'])
      ? readingsOf(document['cameBack'], document['frame'])
      : document['cameBack'],
    closing: {
      ...kept,
      mostJoints: joints === 'one' ? 1 : mostJoints,
      cutMembers,
      barred,
      joints: own,
      daysAtBender,
      way: typeof way === 'string' ? (WAYS[way] ?? way) : way,
    },
    asTyped: keptTexts(document['asTyped']),
  };
}

/** Where the ways of version 2 went: the plan now shows the best splice by three measures. */
const WAYS: Readonly<Record<string, string>> = {
  'splice-one': 'splice-fewest',
  'splice-two': 'splice-fairest',
  'splice-turned': 'splice-closest',
};

/** Texts of fields that are no more are let go: their values stand in the readings. */
const keptTexts = (texts: unknown): unknown =>
  isPlainObject(texts)
    ? Object.fromEntries(
        Object.entries(texts).filter(
          ([field]) => !/^\/(cameBack\/frame|closing\/(joints|cutOffset|spread))(\/|$)/.test(field),
        ),
      )
    : texts;

function readingsOf(cameBack: Document, wanted: unknown): Document {
  const { frame, ...kept } = cameBack;
  const angleAccuracy = 0.2; // a good level or bevel; common practice, no source
  return {
    ...kept,
    angleAccuracy,
    readings: isPlainObject(frame) ? readFrame(frame, isPlainObject(wanted) ? wanted : {}) : [],
  };
}

type Read = Document | undefined;

function readFrame(frame: Document, wanted: Document): Document[] {
  const sizes: readonly Read[] = (() => {
    switch (frame['shape']) {
      case 'hoop':
        return [
          size('width-at-corners', 0, frame['width']),
          size('width-at-feet', 0, frame['widthAtFeet'] ?? frame['width']),
          size('left-leg', 0, frame['leftLeg']),
          size('right-leg', 0, frame['rightLeg']),
          ...list(frame['innerCrossbars']).map((bar, index) =>
            size('crossbar-from-foot', index + 1, isPlainObject(bar) ? bar['fromFoot'] : undefined),
          ),
          ...crownOf(frame['crossbar'], wanted['crossbar']),
        ];
      case 'ring':
        return [size('width', 0, frame['width']), size('height', 0, frame['height'])];
      case 'offset':
        return [
          size('offset', 0, frame['across']),
          size('first-length', 0, frame['first']),
          size('last-length', 0, frame['last']),
          ...[2, 4].map((piece) => turn('offset', piece, 'angle', frame['angle'])),
        ];
      case 'straight':
        return [size('length', 0, { value: frame['length'], reference: 'centre' })];
      case 'run':
        return pathReadings('run', frame['points']);
      case 'members':
        return list(frame['members']).flatMap((member) => (isPlainObject(member) ? memberReadings(member) : []));
      default:
        return [];
    }
  })();
  return sizes.filter((one): one is Document => one !== undefined);
}

const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);

const size = (check: string, index: number, typed: unknown): Read =>
  isPlainObject(typed)
    ? { reading: 'size', check, index, reference: typed['reference'], value: typed['value'], accuracy: null }
    : undefined;

const turn = (member: unknown, piece: number, what: 'angle' | 'rotation', value: unknown): Read => ({
  reading: 'turn',
  member,
  piece,
  what,
  value,
  accuracy: null,
});

/** A crown's radius: the third piece of a hoop, after the leg and the corner. One that is as wanted nobody measured. */
const crownOf = (crossbar: unknown, wanted: unknown): Read[] =>
  isPlainObject(crossbar) &&
  crossbar['form'] === 'crowned' &&
  !(isPlainObject(wanted) && wanted['radius'] === crossbar['radius'])
    ? [{ reading: 'piece', member: 'hoop', piece: 3, what: 'radius', value: crossbar['radius'], accuracy: null }]
    : [];

/** The points of a path: its ends, and the corners between them. */
function pathReadings(member: unknown, points: unknown): Read[] {
  const all = list(points);
  return all.map((point, index): Read => {
    if (!isPlainObject(point)) return undefined;
    const spot = index === 0 ? 'start' : index === all.length - 1 ? 'finish' : 'corner';
    const at = { member, spot, number: spot === 'corner' ? index : 1, distance: 0 };
    return { reading: 'point', at, x: point['x'], y: point['y'], z: point['z'], accuracy: null };
  });
}

function memberReadings({ name, path }: Document): Read[] {
  if (!isPlainObject(path)) return [];
  if (path['by'] === 'points') return path['closed'] === true ? [] : pathReadings(name, path['points']);
  let arcs = 0;
  return list(path['pieces']).flatMap((piece, index): Read[] => {
    if (!isPlainObject(piece)) return [];
    if (piece['piece'] === 'straight') {
      const length = piece['length'];
      return [{ reading: 'piece', member: name, piece: index + 1, what: 'length', value: length, accuracy: null }];
    }
    arcs += 1;
    const angle = turn(name, index + 1, 'angle', piece['angle']);
    return arcs === 1 ? [angle] : [angle, turn(name, index + 1, 'rotation', piece['rotation'])];
  });
}
