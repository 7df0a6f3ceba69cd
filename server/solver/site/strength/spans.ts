import type { TubePlace } from '../../../job/tube-place.ts';
import { dot } from '../../geometry/vector.ts';
import type { LaidSite, MadeLine, SiteSource } from '../laid-site.ts';
import { framePlace } from '../standing/frame-place.ts';
import type { BeamCase } from './beam.ts';

/** A place where a tube is held, and what holds it: 'start', 'leg 2', 'hinge from'. */
type Hold = { readonly by: string; readonly station: number };

/** A straight stretch between two holds, or from one to a free end [mm from the member's datum end]. */
export type Span = {
  /** Its member and what holds it: the same on every site that is laid from one job. */
  readonly key: string;
  readonly member: string;
  readonly case: BeamCase;
  readonly from: number;
  readonly to: number;
};

/** Two pieces run in one line where the cosine between them lacks less than this: a kink of 0.03 degrees, our own choice. */
const IN_LINE = 1e-7;

/** Rounding of stations [mm]. */
const NOTHING = 1e-6;

/**
 * The simple cases among the straight stretches of the frame as made. What holds a tube are its ends that sit on others,
 * heads of legs, hinge places and fixing points, up to half the tube's diameter into a bend beside the stretch (our own choice). A bend
 * holds nothing. A stretch that runs through the closing weld of a ring is left out, and one that is shorter than the
 * tube is thick, which is no beam.
 */
export function spansOf(source: SiteSource, laid: LaidSite): readonly Span[] {
  if (laid.frame === null) return [];
  const shortest = source.tube.outsideDiameter;
  const holds = holdsOf(source, laid);
  return laid.frame.lines.flatMap((line) => {
    const held = [...(holds.get(line.name) ?? [])].sort((a, b) => a.station - b.station);
    const free = freeEnds(line, held);
    return straightsOf(line).flatMap((straight) =>
      spansIn(line.name, widened(straight, shortest / 2), held, free).filter(({ from, to }) => to - from > shortest),
    );
  });
}

type Stretch = { readonly from: number; readonly to: number };

const widened = ({ from, to }: Stretch, by: number): Stretch => ({ from: from - by, to: to + by });

/** Stretches of a tube without a bend or a kink in them. */
function straightsOf({ centreline: { pieces } }: MadeLine): Stretch[] {
  const found: Stretch[] = [];
  let station = 0;
  for (const [index, piece] of pieces.entries()) {
    const from = station;
    station += piece.length;
    if (piece.kind !== 'straight') continue;
    const before = pieces[index - 1];
    const last = found.at(-1);
    const goesOn = before?.kind === 'straight' && dot(before.direction, piece.direction) > 1 - IN_LINE;
    if (goesOn && last !== undefined) found[found.length - 1] = { from: last.from, to: station };
    else found.push({ from, to: station });
  }
  return found;
}

/** Ends of a tube that nothing holds, as stations; a closed one has none. */
function freeEnds({ closed, centreline }: MadeLine, held: readonly Hold[]): Hold[] {
  if (closed) return [];
  const ends = [
    { by: 'start', station: 0 },
    { by: 'finish', station: centreline.length },
  ];
  return ends.filter(({ station }) => held.every((hold) => Math.abs(hold.station - station) > NOTHING));
}

function spansIn(member: string, { from, to }: Stretch, held: readonly Hold[], free: readonly Hold[]): Span[] {
  const within = ({ station }: Hold): boolean => station >= from && station <= to;
  const holds = held.filter(within);
  const span = (kind: BeamCase, a: Hold, b: Hold): Span => ({
    key: `${member}: ${a.by} - ${b.by}`,
    member,
    case: kind,
    from: a.station,
    to: b.station,
  });
  const beams = holds.slice(1).map((hold, index) => span('beam', holds[index] ?? hold, hold));
  const [first, last] = [holds[0], holds.at(-1)];
  const overhangs = free.filter(within).flatMap((end) => {
    if (first === undefined || last === undefined) return [];
    return [end.station < first.station ? span('cantilever', end, first) : span('cantilever', last, end)];
  });
  return [...beams, ...overhangs];
}

/** What holds each tube, by its name. */
function holdsOf({ site, wanted, fixing = [] }: SiteSource, { frame, legs }: LaidSite): Map<string, Hold[]> {
  const holds = new Map<string, Hold[]>();
  const add = (member: string, hold: Hold): void => {
    const known = holds.get(member) ?? [];
    // two at one place hold it once
    if (known.some(({ station }) => Math.abs(station - hold.station) < NOTHING)) return;
    holds.set(member, [...known, hold]);
  };
  for (const { name, start, finish } of wanted.members) {
    const line = frame?.lines.find((one) => one.name === name);
    if (start.kind === 'saddle') add(name, { by: 'start', station: 0 });
    if (finish.kind === 'saddle' && line !== undefined) {
      add(name, { by: 'finish', station: line.centreline.length });
    }
  }
  const onFrame = framePlace(frame, wanted);
  const addPlace = (at: TubePlace, by: string): void => {
    const place = onFrame(at);
    if (place !== undefined) add(place.member, { by, station: place.station });
  };
  const { hinge } = site.standing;
  if (hinge !== null) {
    addPlace(hinge.from, 'hinge from');
    addPlace(hinge.to, 'hinge to');
  }
  for (const [index, { at }] of fixing.entries()) addPlace(at, `fixing ${String(index + 1)}`);
  for (const [index, leg] of legs.entries())
    if (leg !== null) add(leg.member, { by: `leg ${String(index + 1)}`, station: leg.station });
  return holds;
}
