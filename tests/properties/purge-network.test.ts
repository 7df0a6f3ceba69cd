// Gas on its way through whole frames: what comes in goes out, pressures agree, and the times hold what a solution of the
// same flow cell by cell says.
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Chamber, PurgePlan } from '../../server/plan/purge.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { dot, type Vector3 } from '../../server/solver/geometry/vector.ts';
import { planPurge } from '../../server/solver/purge/plan-purge.ts';
import { purgeWork } from '../../server/solver/purge/purge-work.ts';
import { purgeCases } from './purge-frames.ts';
import { gapsIn } from './purge-gaps.ts';
import { secondsToClear } from './purge-swept-cells.ts';
import { overlaid, pressuresTold, type SweptNetwork } from './purge-swept-network.ts';
import { workloadOf, type PurgeWorkload } from './purge-workload.ts';

/** Air, gas of grade 5.0, and the target of a new job [ppm]. */
const [AIR, GAS, TARGET] = [209_500, 2, 50];
const LEFT = (TARGET - GAS) / (AIR - GAS);

/** Two of three run a flow of their own: 3 to 15 L/min. */
const FLOWS = [10, 3, 15];

type Planned = { readonly work: PurgeWorkload; readonly purge: PurgePlan };
type Filled = { readonly chamber: Chamber; readonly network: SweptNetwork; readonly work: PurgeWorkload };

let planned: Planned[] = [];
let filled: Filled[] = [];

beforeAll(() => {
  planned = fc.sample(purgeCases, { numRuns: 150, seed: 11 }).flatMap((one, index): Planned[] => {
    const prePurgeFlow = FLOWS[index % FLOWS.length]!;
    const work = workloadOf({ ...one, purge: { ...one.purge, prePurgeFlow } });
    if (work === undefined) throw new Error(`frame ${String(index)} cannot be drawn`);
    const { purge } = planPurge(work.context);
    return purge === null ? [] : [{ work, purge }];
  });
  filled = planned.flatMap(({ work, purge }) =>
    purge.chambers
      .filter(({ paths }) => paths.length > 0)
      .map((chamber) => ({ chamber, work, network: overlaid(chamber, work.frame.members) })),
  );
});

/** A chamber that is fed and vented at one place: a lance carries the gas to where its way begins. */
const byLance = ({ feed, vents }: Chamber): boolean =>
  vents.length === 1 && vents[0]!.member === feed.member && vents[0]!.station === feed.station;

const lengthOf = (stretches: readonly { from: number; to: number }[]): number =>
  stretches.reduce((sum, { from, to }) => sum + Math.abs(to - from), 0);

const boreOf = ({ job }: PurgeWorkload): number => job.tube.outsideDiameter - 2 * job.tube.wall;

describe('gas through a frame', () => {
  it('there is something to look at', () => {
    const count = (what: (one: Chamber) => boolean) => filled.filter(({ chamber }) => what(chamber)).length;
    expect(filled.length).toBeGreaterThan(160);
    expect(count(({ paths }) => paths.length > 1)).toBeGreaterThan(25);
    expect(count(({ deadLegs }) => deadLegs.length > 0)).toBeGreaterThan(40);
    expect(count(byLance)).toBeGreaterThan(30);
    expect(filled.filter(({ network }) => network.holes.length > 0).length).toBeGreaterThan(25);
  });

  it('all of it comes out, by ways that begin at the feed and end at a vent', () => {
    for (const { chamber, network } of filled) {
      const { paths, vents, feed } = chamber;
      expect(paths.reduce((sum, { share }) => sum + share.value, 0)).toBeCloseTo(100, 6);
      for (const { share } of paths) expect(share.value).toBeGreaterThan(0);
      if (!byLance(chamber)) expect(network.feed).toBe(network.named(feed));
      // every vent that is left open lets gas out
      expect(network.outlets.map(({ vent }) => vent).sort()).toEqual([...vents.keys()]);
      for (const { vent, place } of network.outlets) expect(place).toBe(network.named(vents[vent]!));
    }
  });

  it('what comes to a place leaves it, but where it begins its way', () => {
    for (const { network } of filled) {
      const balance = new Map<string, number>();
      const add = (place: string, share: number) => balance.set(place, (balance.get(place) ?? 0) + share);
      add(network.feed, 1);
      for (const { from, to, share } of [...network.pipes, ...network.holes]) {
        add(from, -share);
        add(to, share);
      }
      for (const { place, share } of network.outlets) add(place, -share);
      for (const share of balance.values()) expect(share).toBeCloseTo(0, 9);
    }
  });

  it('every bore is swept once, or told as a dead leg, but for short ends that the stream mixes', () => {
    let short = 0;
    for (const { chamber, network } of filled) {
      const covered = [
        ...network.pipes.map(({ member, begin, end }) => ({ member, from: begin, to: end })),
        ...chamber.deadLegs.flatMap(({ stretches }) => stretches),
      ];
      const left = chamber.length.value - lengthOf(covered);
      expect(left).toBeGreaterThan(-1e-3);
      // three bores and what lies in the tube that it sits on, on either side of where gas passes
      for (const gap of gapsIn(chamber.stretches, covered)) {
        short += 1;
        expect(gap).toBeLessThan(2 * (3 * 34.8 + 38.1));
      }
      if (gapsIn(chamber.stretches, covered).length === 0) expect(left).toBeCloseTo(0, 3);
      expect(lengthOf(chamber.stretches)).toBeCloseTo(chamber.length.value, 6);
      expect(chamber.volume.value / ((Math.PI * 34.8 ** 2 * chamber.length.value) / 4e6)).toBeCloseTo(1, 9);
    }
    expect(short).toBeGreaterThan(5);
  });

  it('it is fed low and let out high, as near as a bore', () => {
    for (const { chamber, work } of filled) {
      const { bore, members, openings } = work.context;
      const own = new Set(chamber.stretches.map(({ member }) => member));
      const inIt = openings.filter(({ member }) => own.has(members[member]!.name));
      const solid = inIt.filter(({ kind }) => kind !== 'gap');
      const heights = (solid.length > 0 ? solid : inIt).map(({ height }) => height);
      const [least, most] = [Math.min(...heights), Math.max(...heights)];
      const { feed, vents, rise } = chamber;
      const heightOf = ({ point }: { point: Vector3 }) => dot(point, work.context.up);
      expect(heightOf(feed) - least).toBeLessThan(bore + 1e-6);
      expect(most - heightOf(vents[0]!)).toBeLessThan(bore + 1e-6);
      expect(rise.value).toBeCloseTo(heightOf(vents[0]!) - heightOf(feed), 6);
      // heights count from the lowest place of the chamber
      const lowest = heightOf(feed) - feed.height;
      for (const stretch of chamber.stretches) {
        const { centreline } = members.find(({ name }) => name === stretch.member)!;
        for (let share = 0; share <= 1; share += 0.05) {
          const station = stretch.from + share * (stretch.to - stretch.from);
          expect(dot(placeAt(centreline, station)!.point, work.context.up)).toBeGreaterThan(lowest - 1e-6);
        }
      }
    }
  });

  it('pressures agree: by every way from a place to the room as much is lost', () => {
    let agreed = 0;
    for (const { chamber, network, work } of filled) {
      const told = pressuresTold(network, {
        bore: boreOf(work),
        holeBore: work.job.purge.holes.bore,
        vents: chamber.vents.map(({ bore }) => bore),
        flow: work.job.purge.prePurgeFlow,
      });
      for (const all of told.values()) {
        const [most, least] = [Math.max(...all), Math.min(...all)];
        if (all.length > 1) agreed += 1;
        expect(most - least).toBeLessThan(1e-6 * most);
      }
    }
    expect(agreed).toBeGreaterThan(40);
  });
});

describe('times of a frame', () => {
  it('plug ≤ long tube ≤ well mixed, and what is printed is one of them', () => {
    for (const { chamber } of filled) {
      const { plug, longTube, wellMixed, printed } = chamber;
      expect(plug.time.value).toBeGreaterThan(0);
      if (longTube !== null) {
        expect(longTube.time.value).toBeGreaterThanOrEqual(plug.time.value);
        expect(longTube.time.value).toBeLessThanOrEqual(wellMixed.time.value * (1 + 1e-12));
      }
      expect(wellMixed.time.value).toBeGreaterThan(plug.time.value);
      expect(printed).toEqual(wellMixed);
    }
  });

  it('gas is flow times time, and volumes are gas over what the chamber holds', () => {
    for (const { chamber, work } of filled)
      for (const one of [chamber.plug, chamber.wellMixed, ...(chamber.longTube === null ? [] : [chamber.longTube])]) {
        expect(one.gas.value / ((work.job.purge.prePurgeFlow * one.time.value) / 60)).toBeCloseTo(1, 12);
        expect(one.volumes.value / (one.gas.value / chamber.volume.value)).toBeCloseTo(1, 12);
      }
  });

  it('the quick numbers of a piece of work are those of its plan', () => {
    for (const { work, purge } of planned) {
      const quick = purgeWork(work.context);
      const [own] = purge.extents.filter(({ extent }) => extent === work.job.purge.extent);
      const wait = purge.setups.reduce((sum, setUp) => sum + setUp.wait.value, 0);
      const { prePurgeFlow, weldingFlow } = work.job.purge;
      // until the last of its set-up is full a chamber that is full has the welding flow
      const before = purge.chambers.reduce((sum, { setup, printed }) => {
        const full = purge.setups.find(({ number }) => number === setup)!.wait.value - printed.time.value;
        return sum + printed.gas.value + (weldingFlow * full) / 60;
      }, 0);
      expect(quick.setups).toBe(purge.setups.length);
      expect(quick.chambers).toBe(purge.chambers.length);
      expect(quick.wait).toBeCloseTo(wait, 6);
      expect(quick.gasBefore).toBeCloseTo(before, 6);
      expect(quick.purgeGas).toBeCloseTo(purge.purgeGas.value, 6);
      expect(quick.jobGas).toBeCloseTo(purge.jobGas.value, 6);
      expect(own?.wait.value).toBeCloseTo(wait, 6);
      expect(own?.gas.value).toBeCloseTo(quick.purgeGas, 6);
      // weld by weld: five times its arc, in as many chambers as its set-up has
      const arcOf = (name: string) => work.welds.find(({ site }) => site.name === name)!.arcTime;
      const kept = purge.setups.reduce(
        (sum, { chambers, welds }) =>
          sum + chambers.length * (5 * welds.reduce((arcs, name) => arcs + arcOf(name), 0) + purge.hold.value),
        0,
      );
      expect(quick.purgeGas).toBeCloseTo(before + (weldingFlow * kept) / 60, 6);
      expect(prePurgeFlow * quick.filling).toBeCloseTo(
        60 * purge.chambers.reduce((sum, { printed }) => sum + printed.gas.value, 0),
        6,
      );
    }
  });

  it('without dead legs well mixed is no less than the whole chamber as one vessel', () => {
    for (const { chamber, work } of filled) {
      if (chamber.deadLegs.length > 0) continue;
      const vessel = ((60 * chamber.volume.value) / work.job.purge.prePurgeFlow) * Math.log(1 / LEFT);
      expect(chamber.wellMixed.time.value).toBeGreaterThan(vessel * (1 - 1e-9));
    }
  });

  it('the long-tube time is no less than the same flow takes cell by cell', () => {
    // the ways part and meet, and mix where they do; half a step of that solution is 0.3 % of its slowest pipe
    let [looked, most] = [0, 0];
    for (const { chamber, network, work } of filled) {
      if (chamber.longTube === null) continue;
      const { value } = chamber.longTube.time;
      const seconds = secondsToClear(network, {
        bore: boreOf(work),
        flow: work.job.purge.prePurgeFlow,
        left: LEFT,
        most: 1.2 * chamber.wellMixed.time.value,
      });
      expect(seconds).toBeDefined();
      expect(value).toBeGreaterThan(0.997 * seconds!);
      most = Math.max(most, value / seconds!);
      looked += 1;
    }
    expect(looked).toBeGreaterThan(40);
    expect(most).toBeLessThan(3);
  });
});
