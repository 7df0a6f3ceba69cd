import type { Fixing } from '../../job/fixing.ts';
import type { WeldForm } from '../../job/welding.ts';
import type { Joint } from '../../plan/joint.ts';
import type { WeldKind } from '../../plan/welding.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { tubePlaceEnd } from '../frame/tube-place-end.ts';
import { placeAt } from '../geometry/centreline.ts';
import { ORIGIN, type Vector3 } from '../geometry/vector.ts';

/** A place where a piece of work welds: stations are on the frame that is welded, before it is cut [mm]. */
export type WeldPlace = {
  readonly kind: Exclude<WeldKind, 'pad'>;
  /** Number of the cut joint; 0 where nothing is cut. */
  readonly joint: number;
  /** Which of the two welds of a let-in piece: at face A or at face B. */
  readonly side: 'A' | 'B' | '';
  readonly member: string;
  readonly station: number;
};

/** A weld with its name on page and sheets. */
export type WeldSite = {
  readonly name: string;
  readonly kind: WeldKind;
  readonly form: WeldForm;
  readonly joint: number;
  readonly member: string;
  readonly station: number;
  readonly point: Vector3;
  /** The end of its member that it closes; null for one between the ends. */
  readonly end: 'start' | 'finish' | null;
  /** The tube under a saddle, or the name of the pad. */
  readonly onto: string;
  /** Of a saddle: where it sits on that tube. */
  readonly ontoStation: number;
  /** Of a pad: its plate [mm] and the hole through it; null for the others. */
  readonly plate: { readonly thickness: number; readonly hole: number } | null;
};

/** A station this near to an end is the end: finer than a tape reads [mm]. */
const NEAR = 0.1;

const LETTERS: Readonly<Record<Exclude<WeldKind, 'splice' | 'let-in'>, string>> = {
  saddle: 'S',
  closing: 'C',
  pad: 'P',
  'bar-joint': 'B',
};

/**
 * The welds of a piece of work, named: cut joints by their number, the two of a let-in by number and face, and saddles,
 * closing welds, joints between bars and pads counted each by themselves. Pads are the plates that the job has welded to open ends.
 */
export function weldSites(
  places: readonly WeldPlace[],
  frame: Pick<FrameGeometry, 'members'>,
  fixing: Fixing,
): WeldSite[] {
  const counted = { saddle: 0, closing: 0, pad: 0, 'bar-joint': 0 };
  const next = (kind: keyof typeof counted): string => {
    counted[kind] += 1;
    return `${LETTERS[kind]}${String(counted[kind])}`;
  };
  const sites = places.flatMap(({ kind, joint, side, member: name, station }): WeldSite[] => {
    const member = frame.members.find((one) => one.name === name);
    if (member === undefined) return [];
    const { length } = member.centreline;
    const end = kind !== 'saddle' ? null : station <= NEAR ? 'start' : station >= length - NEAR ? 'finish' : null;
    const seat = end === null ? null : member[end];
    return [
      {
        name: kind === 'splice' || kind === 'let-in' ? `${String(joint)}${side}` : next(kind),
        kind,
        form: kind === 'saddle' ? 'saddle' : 'butt',
        joint,
        member: name,
        station,
        point: placeAt(member.centreline, station)?.point ?? ORIGIN,
        end,
        onto: seat?.kind === 'saddle' ? seat.onto : '',
        ontoStation: seat?.kind === 'saddle' ? seat.station : 0,
        plate: null,
      },
    ];
  });
  const pads = fixing.flatMap((point): WeldSite[] => {
    if (point.fixing !== 'pad' || point.plate === null) return [];
    const member = frame.members.find((one) => one.name === point.at.member);
    const end = member === undefined ? undefined : tubePlaceEnd(point.at, member);
    if (member === undefined || end === undefined || member[end].kind !== 'free') return [];
    const station = end === 'start' ? 0 : member.centreline.length;
    return [
      {
        name: next('pad'),
        kind: 'pad',
        form: 'pad',
        joint: 0,
        member: member.name,
        station,
        point: placeAt(member.centreline, station)?.point ?? ORIGIN,
        end,
        onto: point.name,
        ontoStation: 0,
        plate: point.plate,
      },
    ];
  });
  return [...sites, ...pads];
}

/** How far a weld stands from the middle of the joint that it closes, along its member [mm]: half a let-in piece, or nothing. */
export function offMiddle({ kind, name }: Pick<WeldSite, 'kind' | 'name'>, letIn: Joint['letIn']): number {
  if (kind !== 'let-in' || letIn === null) return 0;
  return ((name.endsWith('A') ? -1 : 1) * letIn.length.value) / 2;
}
