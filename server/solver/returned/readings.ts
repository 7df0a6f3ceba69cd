import type { CameBack, Reading } from '../../job/came-back.ts';
import type { TubePlace } from '../../job/tube-place.ts';
import type { Said } from '../../plan/readings-fit.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import { moved, turned, type RigidMotion } from '../geometry/rigid-motion.ts';
import { angleBetween } from '../geometry/vector.ts';
import { SIDES, type Lines } from './lines.ts';
import { distanceBetween, ofPiece } from './read-values.ts';
import type { Size } from './sizes.ts';
import { placeTyped, pointOf, tangentOf, type Place } from './tube-places.ts';

/** Nothing is read better than this, whatever accuracy was typed [mm, degrees]; our own choice. */
const FINEST = { mm: 0.1, deg: 0.02 } as const;

/** One measured number with what finds it on a frame. */
export type Measured = {
  readonly field: string;
  /** The field of its number, to type another one. */
  readonly valueField: string;
  readonly name: Said;
  readonly kind: Reading['reading'];
  readonly unit: 'mm' | 'deg';
  readonly value: number;
  readonly accuracy: number;
  readonly members: readonly number[];
  readonly posed: boolean;
  /** Set for a size: which one. */
  readonly size: { readonly key: string; readonly index: number } | null;
  /** The radius of a bend that was made on a die, which is then not taken as the die's. */
  readonly dieRadius: { readonly member: number; readonly piece: number } | null;
  /** True where it can tell a flat frame from one that is not. */
  readonly spatial: boolean;
  /** For a point: the place, and which coordinate. */
  readonly point: { readonly place: Place; readonly axis: 'x' | 'y' | 'z' } | null;
  readonly level: Place | null;
  readonly predict: (lines: Lines, pose: RigidMotion) => number | undefined;
};

type Compiled = { readonly measured: readonly Measured[]; readonly findings: readonly Finding[] };
type About = { readonly wanted: FrameGeometry; readonly sizes: readonly Size[]; readonly radius: number };

/** All readings that have a value and a place on the wanted frame; findings about the others. */
export function readingsOf(cameBack: CameBack, about: About): Compiled {
  const measured: Measured[] = [];
  const findings: Finding[] = [];
  for (const [index, reading] of cameBack.readings.entries()) {
    const field = `/cameBack/readings/${String(index)}`;
    const compiled = compile(reading, field, about);
    if ('code' in compiled) findings.push(compiled);
    else
      for (const one of compiled) {
        const accuracy = reading.accuracy ?? (one.unit === 'mm' ? cameBack.tapeAccuracy : cameBack.angleAccuracy);
        measured.push({ ...one, accuracy: Math.max(accuracy, FINEST[one.unit]) });
      }
  }
  return { measured, findings };
}

type Draft = Omit<Measured, 'accuracy'>;

const PLAIN = { posed: false, size: null, dieRadius: null, spatial: false, point: null, level: null } as const;

function compile(reading: Reading, field: string, about: About): Draft[] | Finding {
  const { wanted } = about;
  const noPlace = (part: string, data: Record<string, number | string> = {}): Finding =>
    finding('reading-no-such-place', 'caution', `${field}/${part}`, data);
  const whole = { field, valueField: `${field}/value`, kind: reading.reading };
  switch (reading.reading) {
    case 'size':
      return sizeRead(reading, field, about);
    case 'distance':
      return distanceRead(reading, field, about);
    case 'piece':
    case 'turn': {
      const member = wanted.members.findIndex(({ name }) => name === reading.member);
      const own = wanted.members[member];
      if (own === undefined) return noPlace('member');
      const piece = reading.piece - 1;
      const is = own.centreline.pieces[piece];
      const straightOnly = reading.what === 'length';
      if (is === undefined || (is.kind === 'straight') !== straightOnly) return noPlace('piece', { name: own.name });
      const before = own.centreline.pieces.slice(0, piece).findLastIndex(({ kind }) => kind === 'arc');
      if (reading.what === 'rotation' && before < 0) return noPlace('what', { name: own.name });
      if (reading.value === null) return [];
      const { value } = reading;
      const dieRadius = reading.what === 'radius' && is.kind === 'arc' && is.made === 'die' ? { member, piece } : null;
      return [
        {
          ...PLAIN,
          ...whole,
          name: { key: `measured.${reading.what}`, data: { member: own.name, piece: reading.piece } },
          unit: reading.reading === 'piece' ? 'mm' : 'deg',
          value,
          members: [member],
          dieRadius,
          spatial: reading.what === 'rotation',
          predict: (lines) => ofPiece(reading.what, { member, piece, before, value }, lines),
        },
      ];
    }
    case 'bevel': {
      const from = placeTyped(wanted, reading.from);
      const to = placeTyped(wanted, reading.to);
      if (from === undefined) return noPlace('from', { name: reading.from.member });
      if (to === undefined) return noPlace('to', { name: reading.to.member });
      if (reading.value === null) return [];
      const predict = (lines: Lines): number | undefined => {
        const [a, b] = [tangentOf(from, lines), tangentOf(to, lines)];
        return a === undefined || b === undefined ? undefined : angleBetween(a, b) * DEGREES;
      };
      const name = {
        key: 'measured.bevel',
        data: { ...placeData('from', reading.from), ...placeData('to', reading.to) },
      };
      return [{ ...PLAIN, ...whole, name, unit: 'deg', value: reading.value, members: both(from, to), predict }];
    }
    case 'level': {
      const at = placeTyped(wanted, reading.at);
      if (at === undefined) return noPlace('at', { name: reading.at.member });
      if (reading.value === null) return [];
      const predict = (lines: Lines, pose: RigidMotion): number | undefined => {
        const tangent = tangentOf(at, lines);
        if (tangent === undefined) return undefined;
        const stands = turned(pose, tangent);
        return Math.atan2(stands.z, Math.hypot(stands.x, stands.y)) * DEGREES;
      };
      const name = { key: 'measured.level', data: placeData('at', reading.at) };
      const posed = { posed: true, spatial: true, level: at } as const;
      return [{ ...PLAIN, ...whole, ...posed, name, unit: 'deg', value: reading.value, members: [at.member], predict }];
    }
    case 'point': {
      const place = placeTyped(wanted, reading.at);
      if (place === undefined) return noPlace('at', { name: reading.at.member });
      return (['x', 'y', 'z'] as const).flatMap((axis): Draft[] => {
        const value = reading[axis];
        if (value === null) return [];
        return [
          {
            ...PLAIN,
            field: `${field}/${axis}`,
            valueField: `${field}/${axis}`,
            kind: 'point',
            name: { key: `measured.${axis}`, data: placeData('at', reading.at) },
            unit: 'mm',
            value,
            members: [place.member],
            posed: true,
            spatial: true,
            point: { place, axis },
            predict: (lines, pose) => {
              const point = pointOf(place, lines);
              return point === undefined ? undefined : moved(pose, point)[axis];
            },
          },
        ];
      });
    }
  }
}

const both = (from: Place, to: Place): number[] => [...new Set([from.member, to.member])];

/** A place for the words: its member, the kind of place, and which one or how far along. */
function placeData(name: 'from' | 'to' | 'at', typed: TubePlace): Record<string, number | string> {
  const { member, spot, number, distance } = typed;
  const place = { [`${name}Member`]: member, [`${name}Spot`]: spot };
  if (spot === 'along') return { ...place, [`${name}Along`]: distance };
  return spot === 'start' || spot === 'finish' ? place : { ...place, [`${name}Number`]: number };
}

function sizeRead(reading: Extract<Reading, { reading: 'size' }>, field: string, { sizes }: About): Draft[] | Finding {
  const size = sizes.find(({ check }) => check.key === reading.check && check.index === reading.index);
  const data = { check: reading.check, index: reading.index };
  if (size === undefined) return finding('reading-no-such-size', 'caution', `${field}/check`, data);
  if (reading.value === null) return [];
  const side = SIDES[reading.reference];
  return [
    {
      ...PLAIN,
      field,
      valueField: `${field}/value`,
      kind: 'size',
      name: { key: `check.${reading.check}`, data: { index: reading.index } },
      unit: 'mm',
      value: reading.value,
      members: size.members,
      size: { key: reading.check, index: reading.index },
      predict: (lines) => size.value(lines, side),
    },
  ];
}

/** A distance from place to place. */
function distanceRead(
  reading: Extract<Reading, { reading: 'distance' }>,
  field: string,
  { wanted, radius }: About,
): Draft[] | Finding {
  const from = placeTyped(wanted, reading.from);
  const to = placeTyped(wanted, reading.to);
  const noPlace = (part: 'from' | 'to') =>
    finding('reading-no-such-place', 'caution', `${field}/${part}`, { name: reading[part].member });
  if (from === undefined) return noPlace('from');
  if (to === undefined) return noPlace('to');
  const side = SIDES[reading.reference];
  const predict = (lines: Lines): number | undefined => distanceBetween(from, to, lines, { side, radius });
  const lines = wanted.members.map(({ centreline }) => centreline);
  if (predict(lines) === undefined) return finding('reading-along-tube', 'caution', `${field}/reference`);
  if (reading.value === null) return [];
  const name = {
    key: 'measured.distance',
    data: { ...placeData('from', reading.from), ...placeData('to', reading.to) },
  };
  const whole = { field, valueField: `${field}/value`, kind: reading.reading, unit: 'mm' } as const;
  return [{ ...PLAIN, ...whole, name, value: reading.value, members: both(from, to), predict }];
}
