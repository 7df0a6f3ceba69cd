import type { Chamber, Stretch } from '../../server/plan/purge.ts';
import type { MemberGeometry } from '../../server/solver/frame/frame-geometry.ts';

type Place = { readonly member: string; readonly station: number };

/** A piece of bore that gas runs through one way, between two places where streams part or meet. */
export type Pipe = {
  readonly from: string;
  readonly to: string;
  readonly member: string;
  /** Stations where it begins and ends, as the gas runs [mm]. */
  readonly begin: number;
  readonly end: number;
  /** Share of the gas. */
  readonly share: number;
};

/** The pipes of a chamber, the place where its gas begins its way, and where it goes out. */
export type SweptNetwork = {
  readonly pipes: readonly Pipe[];
  readonly feed: string;
  /** By the chamber's vents, in their order: where each is, and its share; none for one that no gas leaves by. */
  readonly outlets: readonly { readonly place: string; readonly vent: number; readonly share: number }[];
  /** The name of a place in all of these. */
  readonly named: (place: Place) => string;
  /** Holes that gas passes under saddles, from one bore to another, with their shares. */
  readonly holes: readonly Hole[];
};

/** A hole under a saddle that gas passes, from one place to another, and its share. */
export type Hole = { readonly from: string; readonly to: string; readonly share: number; readonly member?: never };

/** Places this near along a tube are one [mm]. */
const NEAR = 0.2;

type Members = readonly MemberGeometry[];

const memberOf = (members: Members, name: string): MemberGeometry => {
  const member = members.find((one) => one.name === name);
  if (member === undefined) throw new Error(`no member ${name}`);
  return member;
};

/** Names places so that those which are one have one name; of a closed member both sides of the seam. */
function placesOf(members: Members) {
  const known = new Map<string, number[]>();
  return (member: string, station: number): string => {
    const { closed, centreline } = memberOf(members, member);
    const at = closed && centreline.length - station < NEAR ? 0 : station;
    const stations = known.get(member) ?? [];
    known.set(member, stations);
    let index = stations.findIndex((one) => Math.abs(one - at) <= NEAR);
    if (index < 0) index = stations.push(at) - 1;
    return `${member} ${String(index)}`;
  };
}

/** Where a member's end at a station sits; undefined where it is no saddle. */
function seatAt(members: Members, { member: name, station }: Place): Place | undefined {
  const member = memberOf(members, name);
  const { length } = member.centreline;
  const end = Math.abs(station) < NEAR ? member.start : Math.abs(length - station) < NEAR ? member.finish : undefined;
  return end?.kind === 'saddle' ? { member: end.onto, station: end.station } : undefined;
}

/**
 * The places that gas comes to between one bore and the next: none where the one sits on the other, and where both sit on
 * a third tube that one's.
 *
 * @throws where no saddles join the two
 */
function between(members: Members, before: Place, after: Place, placeOf: (member: string, station: number) => string) {
  const named = ({ member, station }: Place) => placeOf(member, station);
  const [under, over] = [seatAt(members, before), seatAt(members, after)];
  if (under !== undefined && named(under) === named(after)) return [];
  if (over !== undefined && named(over) === named(before)) return [];
  if (under !== undefined && over !== undefined && named(under) === named(over)) return [named(under)];
  throw new Error(`a way breaks between ${named(before)} and ${named(after)}`);
}

/**
 * What the ways of the gas say when they are laid over one another: how much runs through each piece of bore.
 *
 * @throws where gas would run both ways through one bore, or where a way has a break
 */
export function overlaid(chamber: Chamber, members: Members): SweptNetwork {
  const placeOf = placesOf(members);
  const named = ({ member, station }: Place) => placeOf(member, station);
  const cuts = new Map<string, number[]>();
  for (const { stretches } of chamber.paths)
    for (const { member, from, to } of stretches) cuts.set(member, [...(cuts.get(member) ?? []), from, to]);
  const found = new Map<string, { pipe: Omit<Pipe, 'share'>; share: number }>();
  const holes = new Map<string, Hole>();
  const outlets = new Map<number, { place: string; vent: number; share: number }>();
  const first = chamber.paths[0]?.stretches[0];
  // a lance carries the gas to where its way begins
  const lance = chamber.vents.length === 1 && named(chamber.feed) === named(chamber.vents[0] ?? chamber.feed);
  const start: Place = lance && first !== undefined ? { member: first.member, station: first.from } : chamber.feed;
  const pass = (before: Place, after: Place, share: number): void => {
    if (named(before) === named(after)) return;
    const through = [named(before), ...between(members, before, after, placeOf), named(after)];
    for (const [index, to] of through.slice(1).entries()) {
      const from = through[index] ?? '';
      const key = `${from} > ${to}`;
      holes.set(key, { from, to, share: (holes.get(key)?.share ?? 0) + share });
    }
  };
  for (const path of chamber.paths) {
    const share = path.share.value / 100;
    let at: Place = start;
    for (const stretch of path.stretches) {
      const begins = { member: stretch.member, station: stretch.from };
      pass(at, begins, share);
      for (const [begin, end] of parts(stretch, cuts.get(stretch.member) ?? [])) {
        const pipe = {
          from: placeOf(stretch.member, begin),
          to: placeOf(stretch.member, end),
          member: stretch.member,
          begin,
          end,
        };
        const [low, high] = [Math.min(begin, end), Math.max(begin, end)].map((one) => one.toFixed(3));
        const key = `${stretch.member} ${low ?? ''} ${high ?? ''}`;
        const before = found.get(key);
        if (before !== undefined && before.pipe.begin > before.pipe.end !== begin > end)
          throw new Error(`gas runs both ways through ${key}`);
        found.set(key, { pipe, share: (before?.share ?? 0) + share });
      }
      at = { member: stretch.member, station: stretch.to };
    }
    const vent = chamber.vents[path.vent];
    if (vent === undefined) throw new Error(`no vent ${String(path.vent)}`);
    pass(at, vent, share);
    const out = outlets.get(path.vent) ?? { place: named(vent), vent: path.vent, share: 0 };
    outlets.set(path.vent, { ...out, share: out.share + share });
  }
  return {
    pipes: [...found.values()].map(({ pipe, share }) => ({ ...pipe, share })),
    feed: named(start),
    outlets: [...outlets.values()],
    named,
    holes: [...holes.values()],
  };
}

/** A stretch cut at every station where any way begins or ends a stretch. */
function parts({ from, to }: Stretch, stations: readonly number[]): [number, number][] {
  const way = from < to ? 1 : -1;
  const within = stations.filter((one) => way * (one - from) > NEAR && way * (to - one) > NEAR);
  const sorted = [from, ...within.sort((a, b) => way * (a - b)), to].filter(
    (one, index, all) => index === 0 || Math.abs(one - (all[index - 1] ?? one)) > NEAR,
  );
  return sorted.slice(1).map((end, index) => [sorted[index] ?? from, end]);
}

/** Bores of the tube, of the holes under saddles, and of the chamber's vents [mm]; the flow [L/min]. */
export type Resisted = {
  readonly bore: number;
  readonly holeBore: number;
  readonly vents: readonly number[];
  readonly flow: number;
};

/** Argon at 20 °C [kg/m³, Pa·s], and what passes a sharp-edged hole of its area. */
const ARGON = { density: 1.6618, viscosity: 22.31e-6 };
const PASSED = 0.61;
const SECONDS = 60_000;

/** Δp of a hole by Bernoulli [Pa]; bore [mm], flow [L/min]. */
const ofHole = (bore: number, flow: number): number =>
  (ARGON.density / 2) * (flow / SECONDS / (PASSED * (Math.PI / 4) * (bore / 1000) ** 2)) ** 2;

/** Δp of a pipe, laminar, by the profile 2 U (1 − r²/a²): 8 µ L U/a² [Pa]. */
const ofPipe = ({ begin, end }: Pipe, bore: number, flow: number): number =>
  ((8 * ARGON.viscosity * Math.abs(end - begin)) / 1000) *
  (flow / SECONDS / (Math.PI * (bore / 2000) ** 2) / (bore / 2000) ** 2);

/**
 * Pressure at every place over the room's [Pa], told once by each way that reaches it: from its vents, and from each place
 * that its gas comes to. Where the flows are right all say the same.
 */
export function pressuresTold(network: SweptNetwork, { bore, holeBore, vents, flow }: Resisted): Map<string, number[]> {
  const told = new Map<string, number[]>();
  const tell = (place: string, pressure: number) => told.set(place, [...(told.get(place) ?? []), pressure]);
  for (const { place, vent, share } of network.outlets) tell(place, ofHole(vents[vent]!, flow * share));
  const left = new Set<Pipe | Hole>([...network.pipes, ...network.holes]);
  while (left.size > 0) {
    const ready = [...left].filter(({ to }) => ![...left].some(({ from }) => from === to));
    if (ready.length === 0) throw new Error('gas runs round in a circle');
    for (const link of ready) {
      left.delete(link);
      const lost =
        link.member !== undefined ? ofPipe(link, bore, flow * link.share) : ofHole(holeBore, flow * link.share);
      for (const after of (told.get(link.to) ?? []).slice(0, 1)) tell(link.from, after + lost);
    }
  }
  return told;
}
