import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import {
  assembleWire,
  cast,
  exportSTEP,
  genericSweep,
  iterTopo,
  makeCircle,
  makeCylinder,
  makeLine,
  makeThreePointArc,
  measureVolume,
  setOC,
  type Edge,
  type Shape3D,
  type Solid,
} from 'replicad';
import opencascade from 'replicad-opencascadejs';
import { words } from '../language/words.ts';
import type { Point } from '../plan/figure.ts';
import type { PlanPiece } from '../plan/frame.ts';
import { cross, direction, minus, onArc, partsOfArc, plus, times } from './in-space.ts';
import type { SolidEnd, SolidJob, SolidMember } from './solid-job.ts';
import { stepText } from './step-text.ts';

/** The kernel sweeps no more than half a turn at a time [degrees]. Found by trial. */
const MOST_TURN = 180;
/**
 * How much wider than the partner a saddle is cut [mm]. Two tubes of one diameter touch along a line at the sides of a
 * saddle, and a cut that only touches is where kernels go wrong; a hundredth is far below any fit-up. Our own choice.
 */
const CLEAR = 0.01;
/** A swept tube whose volume is further off A · L than this share is not what was asked for. */
const TRUE_VOLUME = 1e-6;
/** Grey of ground stainless steel; our own choice. */
const COLOUR = '#b4b9be';

type Tube = Pick<SolidJob, 'outsideDiameter' | 'wall'>;
export type Solids =
  | { readonly ok: true; readonly step: string }
  | { readonly ok: false; readonly member: string; readonly cause: string };

/**
 * Starts the geometry kernel; some 150 MB stay taken as long as its process or worker lives. It would print statistics
 * on standard output; they are nobody's.
 */
export async function startKernel(): Promise<void> {
  const wasmBinary = readFileSync(fileURLToPath(import.meta.resolve('replicad-opencascadejs/wasm')));
  // its types tell of no options
  const start = opencascade as unknown as (options: {
    wasmBinary: Uint8Array;
    print: (line: string) => void;
  }) => Promise<Parameters<typeof setOC>[0]>;
  setOC(await start({ wasmBinary, print: () => undefined }));
}

const triple = ({ x, y, z }: Point): [number, number, number] => [x, y, z];

/** A piece of a centreline as the kernel's own lines and circular arcs. */
function edgesOf(piece: PlanPiece): Edge[] {
  if (piece.kind === 'straight') return [makeLine(triple(piece.from), triple(piece.to))];
  return partsOfArc(piece, MOST_TURN).map((arc) =>
    makeThreePointArc(triple(arc.from), triple(onArc(arc, 0.5)), triple(arc.to)),
  );
}

/** The direction in which a piece sets off. */
const setsOff = (piece: PlanPiece): Point =>
  direction(
    piece.kind === 'straight' ? minus(piece.to, piece.from) : cross(piece.normal, minus(piece.from, piece.centre)),
  );

/** A rod along a centreline. The kernel uses a wire up, so that each rod has its own. */
function rod(pieces: readonly PlanPiece[], radius: number): Shape3D {
  const [first] = pieces;
  if (first === undefined) throw new Error('A member without pieces.');
  const profile = makeCircle(radius, triple(first.from), triple(setsOff(first)));
  return genericSweep(assembleWire([profile]), assembleWire(pieces.flatMap(edgesOf)), {});
}

/** The body with the most metal of what a cut leaves. */
function largestBody(shape: Shape3D): { body: Solid; volume: number } {
  const bodies = [...iterTopo(shape.wrapped, 'solid')].map((found) => cast(found) as Solid);
  const measured = bodies.map((body) => ({ body, volume: measureVolume(body) }));
  const [largest] = measured.toSorted((a, b) => b.volume - a.volume);
  if (largest === undefined) throw new Error('Nothing is left of a tube.');
  return largest;
}

const lengthOf = (pieces: readonly PlanPiece[]): number => pieces.reduce((sum, { length }) => sum + length, 0);

/** A tube of even wall along a centreline: the rod less its bore, held against π (ro² − ri²) L (Pappus). */
function sweptTube(pieces: readonly PlanPiece[], { outsideDiameter, wall }: Tube): { body: Solid; section: number } {
  const [outer, inner] = [outsideDiameter / 2, outsideDiameter / 2 - wall];
  const section = Math.PI * (outer ** 2 - inner ** 2);
  const { body, volume } = largestBody(rod(pieces, outer).cut(rod(pieces, inner)));
  const off = volume / (section * lengthOf(pieces)) - 1;
  if (!(Math.abs(off) < TRUE_VOLUME)) throw new Error(`The volume is off by a share of ${String(off)}.`);
  return { body, section };
}

/** Makes both ends longer where a saddle is to be cut. */
function lengthened({ pieces, start, finish }: SolidMember): PlanPiece[] {
  const longer = (piece: PlanPiece, end: SolidEnd, side: 'from' | 'to'): PlanPiece => {
    if (end.kind !== 'saddle' || piece.kind !== 'straight') return piece;
    const step = times(setsOff(piece), side === 'to' ? end.beyond : -end.beyond);
    return { ...piece, [side]: plus(piece[side], step), length: piece.length + end.beyond };
  };
  return pieces.map((piece, index) => {
    const first = index === 0 ? longer(piece, start, 'from') : piece;
    return index === pieces.length - 1 ? longer(first, finish, 'to') : first;
  });
}

/** The tube with its saddles cut; nothing where what is left cannot be the tube. */
function cutTube(member: SolidMember, tube: Tube): Solid | undefined {
  const { body: uncut, section } = sweptTube(lengthened(member), tube);
  let shape: Shape3D = uncut;
  let most = 0;
  for (const end of [member.start, member.finish]) {
    if (end.kind !== 'saddle') continue;
    const axis = minus(end.to, end.from);
    const long = Math.hypot(axis.x, axis.y, axis.z);
    const cutter = makeCylinder(tube.outsideDiameter / 2 + CLEAR, long, triple(end.from), triple(direction(axis)));
    shape = shape.cut(cutter);
    most += end.most;
  }
  const { body, volume } = largestBody(shape);
  const length = lengthOf(member.pieces);
  // the kernel measures the metal at a saddle to a few per cent of a diameter of tube
  const room = section * tube.outsideDiameter;
  return volume < section * length + room && volume > section * (length - most) - room ? body : undefined;
}

/** One member as a body with the name that tells which of its ends are not as they will be. */
function bodyOf(member: SolidMember, tube: Tube): { shape: Solid; name: string; color: string } {
  const saddles = member.start.kind === 'saddle' || member.finish.kind === 'saddle';
  const cut = saddles ? cutTube(member, tube) : undefined;
  const shape = cut ?? sweptTube(member.pieces, tube).body;
  const left = (end: SolidEnd): boolean => end.kind === 'left-square' || (end.kind === 'saddle' && cut === undefined);
  return { shape, name: nameOf(member.name, left(member.start), left(member.finish)), color: COLOUR };
}

function nameOf(member: string, start: boolean, finish: boolean): string {
  if (start && finish) return words('export.both-left-square', { member });
  if (start) return words('export.start-left-square', { member });
  return finish ? words('export.finish-left-square', { member }) : member;
}

/** All members as the bodies of one STEP file (ISO 10303-242, millimetres); the first that cannot be swept is told. */
export async function solidsAsStep(job: SolidJob): Promise<Solids> {
  const bodies: ReturnType<typeof bodyOf>[] = [];
  for (const member of job.members) {
    try {
      bodies.push(bodyOf(member, job));
    } catch (error) {
      return { ok: false, member: member.name, cause: error instanceof Error ? error.message : String(error) };
    }
  }
  const written = await exportSTEP(bodies, { unit: 'MM', modelUnit: 'MM' }).text();
  return { ok: true, step: stepText(written, job.title) };
}
