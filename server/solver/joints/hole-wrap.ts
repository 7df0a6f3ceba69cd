import type { Purge } from '../../job/purge.ts';
import type { Tube } from '../../job/tube.ts';
import type { TemplateStation, WrapTemplate } from '../../plan/frame.ts';
import type { EndGeometry, MemberGeometry } from '../frame/frame-geometry.ts';
import { opensUnder } from '../frame/opens-under.ts';
import { DEGREES } from '../geometry/angle.ts';
import { placeAt } from '../geometry/centreline.ts';
import { arcCentre } from '../geometry/slice.ts';
import { add, cross, dot, scale, subtract, type Vector3 } from '../geometry/vector.ts';
import { generatorRuns, type GeneratorRun } from './generators.ts';
import { middleOf, outsideAt } from './outside.ts';
import { saddleReach, saddleSeat } from './saddle-wrap.ts';
import { CURVE_POINTS } from './wrap.ts';

/** What holes are laid out with: tube [mm], paper [mm], stations, the members of the frame by name, and which are drilled. */
export type HoleContext = {
  readonly tube: Pick<Tube, 'outsideDiameter' | 'wall'>;
  readonly paperThickness: number;
  readonly templateStations: 16 | 24;
  readonly partners: ReadonlyMap<string, MemberGeometry>;
  readonly holes: Pick<Purge['holes'], 'underSaddles' | 'except' | 'bore'>;
};

/** A branch that sits on a main. */
export type Branch = {
  readonly member: MemberGeometry;
  readonly end: 'start' | 'finish';
  readonly seat: Extract<EndGeometry, { kind: 'saddle' }>;
};

/** A wrap round the main for each hole under a saddle that sits on it, never wider than the branch's bore. */
export function holeWraps(main: MemberGeometry, context: HoleContext): WrapTemplate[] {
  const middle = middleOf(context.partners.values());
  const radii = {
    main: context.tube.outsideDiameter / 2,
    branch: Math.min(context.holes.bore / 2, context.tube.outsideDiameter / 2 - context.tube.wall),
  };
  return branchesOn(main, context.partners).flatMap((branch, index) => {
    if (!opensUnder(context.holes, branch.member.name, branch.end)) return [];
    const wrap = holeWrap(main, branch, { ...context, number: index + 1, middle, radii });
    return wrap === undefined ? [] : [wrap];
  });
}

/** In the order of their stations on the main. */
function branchesOn(main: MemberGeometry, members: ReadonlyMap<string, MemberGeometry>): Branch[] {
  const found: Branch[] = [];
  for (const member of members.values()) {
    for (const end of ['start', 'finish'] as const) {
      const seat = member[end];
      if (seat.kind === 'saddle' && seat.onto === main.name) found.push({ member, end, seat });
    }
  }
  return found.sort((a, b) => a.seat.station - b.seat.station);
}

/** One hole: its number on the main, the middle of the frame, the main's outer radius and the hole's own round the branch's axis. */
type HoleSetting = Pick<HoleContext, 'paperThickness' | 'templateStations'> & {
  readonly number: number;
  readonly middle: Vector3 | null;
  readonly radii: { readonly main: number; readonly branch: number };
};

/**
 * The hole in a main under one saddle. On a straight main it is girth R ψ with sin ψ = (e + r sin φ) / R and
 * x = z cos β + r cos φ sin β (derived), r the hole's own radius. Every
 * point is where a generator of that radius comes out of the main's outer surface, so that a bent main has its own.
 * The left edge of the paper lies opposite the branch, so that the line never runs over it.
 *
 * @returns undefined where the branch's bore misses the main somewhere
 */
export function holeWrap(
  main: MemberGeometry,
  { member, end, seat }: Branch,
  { number, middle, radii, ...paper }: HoleSetting,
): WrapTemplate | undefined {
  const read = saddleSeat(member, { end, seat }, main, middle);
  const here = placeAt(member.centreline, end === 'start' ? 0 : member.centreline.length);
  const there = placeAt(main.centreline, seat.station);
  if (read === undefined || here === undefined || there === undefined) return undefined;
  const away = end === 'start' ? here.tangent : scale(here.tangent, -1);
  const square = subtract(away, scale(there.tangent, dot(away, there.tangent)));
  const across = scale(square, 1 / Math.hypot(square.x, square.y, square.z));
  const outside = outsideAt(main, seat.station, middle) ?? across;
  const facing = Math.atan2(dot(across, cross(there.tangent, outside)), dot(across, outside));
  const radius = radii.branch;
  const seated = { ...read, mainRadius: radii.main };
  const runs = generatorRuns(main.centreline, seat.station, outside);
  const wrapLength = Math.PI * (2 * radii.main + paper.paperThickness);
  let missed = false;
  const pointAt = (angle: number): { girth: number; ordinate: number } => {
    const along = saddleReach(seated, radius, angle);
    if (along === undefined) {
      missed = true;
      return { girth: 0, ordinate: 0 };
    }
    const side = scale(read.acuteSide, radius * Math.cos(angle));
    const quarter = scale(cross(away, read.acuteSide), radius * Math.sin(angle));
    const point = add(add(here.point, scale(away, along)), add(side, quarter));
    const { angle: around, ordinate } = onMain(runs, seat.station, point);
    const turn = (around - facing) / (2 * Math.PI);
    return { girth: wrapLength * (turn - Math.round(turn) + 0.5), ordinate };
  };
  const stations = Array.from({ length: paper.templateStations }, (_, index): TemplateStation => {
    const share = index / paper.templateStations;
    const { girth, ordinate } = pointAt(2 * Math.PI * share);
    return { angle: 360 * share, girth, outer: ordinate, inner: ordinate, cut: ordinate, second: null };
  });
  const curve = Array.from({ length: CURVE_POINTS }, (_, index): [number, number] => {
    const { girth, ordinate } = pointAt((2 * Math.PI * index) / (CURVE_POINTS - 1));
    return [girth, ordinate];
  });
  if (missed) return undefined;
  const ordinates = [...curve.map(([, ordinate]) => ordinate), ...stations.map(({ cut }) => cut)];
  const edge = (facing + Math.PI) * DEGREES;
  return {
    key: `${main.name} hole ${String(number)}`,
    kind: 'hole',
    member: main.name,
    place: `hole ${String(number)}`,
    wrapLength,
    low: Math.min(...ordinates),
    high: Math.max(...ordinates),
    ringStation: seat.station,
    scrap: 'inside',
    edge: edge - 360 * Math.floor(edge / 360),
    stations,
    curve,
    second: null,
    hinge: null,
  };
}

/** Where a point of the main's surface lies: generator, and length along it from the ring at a station [rad, mm]. */
function onMain(runs: readonly GeneratorRun[], ring: number, point: Vector3): { angle: number; ordinate: number } {
  const run = runs.find(({ to }) => ring <= to);
  if (run === undefined) return { angle: 0, ordinate: 0 };
  const { piece, begin } = run;
  if (piece.kind === 'straight') {
    const from = subtract(point, piece.start);
    const angle = Math.atan2(dot(from, run.quarter), dot(from, run.outside));
    return { angle, ordinate: dot(from, piece.direction) - (ring - begin) };
  }
  const out = cross(piece.direction, piece.normal);
  const from = subtract(point, arcCentre(piece));
  const reach = Math.hypot(dot(from, out), dot(from, piece.direction));
  const turn = Math.atan2(dot(from, piece.direction), dot(from, out)) - (ring - begin) / piece.radius;
  const nearest = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  return {
    angle: Math.atan2(-dot(from, piece.normal), reach - piece.radius) - run.lead,
    ordinate: reach * nearest,
  };
}
