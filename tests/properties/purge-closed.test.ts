// Nobody is led into welding a closed tube: bores and their openings are walked here by other means than the solver's.
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Purge } from '../../server/job/purge.ts';
import type { Finding } from '../../server/plan/finding.ts';
import type { Chamber, PurgePlan } from '../../server/plan/purge.ts';
import { planPurge } from '../../server/solver/purge/plan-purge.ts';
import { purgeCases } from './purge-frames.ts';
import { workloadOf, type PurgeWorkload } from './purge-workload.ts';

/** An opening to the air that no weld closes. */
type Open = { readonly member: string; readonly station: number };

/** Every opening that stays open once all is welded: ends without a plate, holes in plates, drilled holes. */
function openings({ job, frame }: PurgeWorkload): Open[] {
  const ends = frame.members.flatMap(({ name, start, finish, centreline }): Open[] =>
    [
      { end: 'start', seat: start, station: 0 },
      { end: 'finish', seat: finish, station: centreline.length },
    ].flatMap(({ end, seat, station }) => {
      const plate = job.fixing.find(
        (point) => point.fixing === 'pad' && point.at.member === name && point.at.spot === end,
      );
      const closed = plate !== undefined && plate.fixing === 'pad' && plate.plate !== null && plate.plate.hole === 0;
      return seat.kind === 'free' && !closed ? [{ member: name, station }] : [];
    }),
  );
  const drilled = job.purge.holes.toAir.flatMap(({ at }): Open[] => {
    const member = frame.members.find(({ name }) => name === at.member);
    return member !== undefined && at.distance <= member.centreline.length
      ? [{ member: at.member, station: at.distance }]
      : [];
  });
  return [...ends, ...drilled];
}

/** Members by the chamber that they are in, each named by all of its members: holes under saddles spread the name. */
function groups({ job, frame }: PurgeWorkload): Map<string, Set<string>> {
  const { underSaddles, except } = job.purge.holes;
  const of = new Map(frame.members.map(({ name }) => [name, new Set([name])]));
  for (const member of frame.members)
    for (const end of ['start', 'finish'] as const) {
      const seat = member[end];
      const excepted = except.some((one) => one.member === member.name && one.end === end);
      if (seat.kind !== 'saddle' || (underSaddles === 'all') === excepted) continue;
      const both = new Set([...of.get(member.name)!, ...of.get(seat.onto)!]);
      for (const name of both) of.set(name, both);
    }
  return of;
}

type Looked = { readonly work: PurgeWorkload; readonly purge: PurgePlan; readonly findings: readonly Finding[] };

const planned = (extent: Purge['extent'], seed: number): Looked[] =>
  fc.sample(purgeCases, { numRuns: 120, seed }).flatMap((one): Looked[] => {
    const work = workloadOf({ ...one, purge: { ...one.purge, extent, damDistance: 120 } });
    if (work === undefined) throw new Error('a frame that cannot be drawn');
    const { purge, findings } = planPurge(work.context);
    return purge === null ? [] : [{ work, purge, findings }];
  });

/** Findings of one chamber that say that it is closed. */
const closedStops = (findings: readonly Finding[], { number }: Chamber): Finding[] =>
  findings.filter(
    ({ code, grade, data }) =>
      (code === 'closed-chamber' || code === 'closed-by-weld') && grade === 'stop' && data['chamber'] === number,
  );

/** Openings apart from one another: gas that goes in by one can come out by the other. */
const apart = (open: readonly Open[], { work }: Looked): number =>
  open.filter(
    (one, index) =>
      !open.slice(0, index).some((other) => {
        const member = work.frame.members.find(({ name }) => name === one.member)!;
        const gap = Math.abs(one.station - other.station);
        const round = member.closed ? member.centreline.length - gap : gap;
        return one.member === other.member && Math.min(gap, round) <= 0.1;
      }),
  ).length;

describe('whole frames', () => {
  let looked: Looked[] = [];
  beforeAll(() => {
    looked = planned('whole-frame', 31);
  });

  it('chambers are the bores that holes connect, each that a weld heats', () => {
    for (const { work, purge } of looked) {
      const of = groups(work);
      const heated = new Set(
        work.welds.flatMap(({ site }) => [site.member, ...(site.kind === 'saddle' ? [site.onto] : [])]),
      );
      const wanted = [...new Set(of.values())].filter((group) => [...group].some((name) => heated.has(name)));
      const found = purge.chambers.map(({ stretches }) => new Set(stretches.map(({ member }) => member)));
      expect(found.map((group) => [...group].sort()).sort()).toEqual(wanted.map((group) => [...group].sort()).sort());
      // and each weld is made while what it heats is full
      for (const { site } of work.welds)
        for (const name of [site.member, ...(site.kind === 'saddle' ? [site.onto] : [])]) {
          const chamber = purge.chambers.find(({ stretches }) => stretches.some(({ member }) => member === name));
          expect(chamber?.welds).toContain(site.name);
        }
    }
  });

  it('one without an opening that stays open is stopped, and no other', () => {
    const seen = { closed: 0, one: 0, more: 0 };
    for (const one of looked) {
      const all = openings(one.work);
      for (const chamber of one.purge.chambers) {
        const members = new Set(chamber.stretches.map(({ member }) => member));
        const open = all.filter(({ member }) => members.has(member));
        const stops = closedStops(one.findings, chamber);
        expect(stops).toHaveLength(open.length === 0 ? 1 : 0);
        const lone = one.findings.filter(
          ({ code, data }) => code === 'one-opening' && data['chamber'] === chamber.number,
        );
        expect(lone).toHaveLength(apart(open, one) === 1 ? 1 : 0);
        if (open.length === 0) seen.closed += 1;
        else if (apart(open, one) === 1) seen.one += 1;
        else seen.more += 1;
      }
    }
    expect(seen.closed).toBeGreaterThan(35);
    expect(seen.one).toBeGreaterThan(25);
    expect(seen.more).toBeGreaterThan(35);
  });

  it('gas is led only through what stays open, where anything does', () => {
    for (const one of looked) {
      const all = openings(one.work);
      for (const chamber of one.purge.chambers) {
        const stops = closedStops(one.findings, chamber);
        if (stops.length > 0) continue;
        expect(chamber.vents.length).toBeGreaterThan(0);
        for (const place of [chamber.feed, ...chamber.vents])
          expect(
            all.some(({ member, station }) => member === place.member && Math.abs(station - place.station) < 0.1),
          ).toBe(true);
      }
    }
  });

  it('every opening of a chamber is fed, vented or plugged, and every gap is taped', () => {
    for (const one of looked) {
      const all = openings(one.work);
      for (const chamber of one.purge.chambers) {
        if (closedStops(one.findings, chamber).length > 0) continue;
        const members = new Set(chamber.stretches.map(({ member }) => member));
        const passing = [chamber.feed, ...chamber.vents];
        for (const { member, station } of all) {
          if (!members.has(member)) continue;
          const used = passing.some((place) => place.member === member && Math.abs(place.station - station) < 0.1);
          const { centreline } = one.work.frame.members.find(({ name }) => name === member)!;
          const end = station === 0 ? 'start' : station === centreline.length ? 'finish' : null;
          const plugged =
            end === null
              ? (chamber.pluggedHoles ?? []).some(
                  (number) => one.work.job.purge.holes.toAir[number - 1]?.at.distance === station,
                )
              : chamber.plugs.some((plug) => plug.member === member && plug.end === end);
          expect(used || plugged).toBe(true);
        }
        const gaps = one.work.welds.filter(({ site }) => site.form === 'butt' && members.has(site.member));
        expect(chamber.taped.map(({ weld }) => weld).sort()).toEqual(gaps.map(({ site }) => site.name).sort());
      }
    }
  });

  it('a weld in a dead leg that diffusion clears later than the wait is a stop, and each dead leg is told', () => {
    let legs = 0;
    for (const { purge, findings } of looked)
      for (const chamber of purge.chambers)
        for (const leg of chamber.deadLegs) {
          legs += 1;
          const late = leg.clears.value > chamber.printed.time.value;
          const told = findings.filter(
            ({ code, data }) =>
              (code === 'dead-leg' || code === 'weld-in-dead-leg') &&
              data['chamber'] === chamber.number &&
              data['value'] === leg.length.value,
          );
          expect(told.length).toBeGreaterThan(0);
          if (leg.welds.length > 0 && late)
            expect(told.some(({ code, grade }) => code === 'weld-in-dead-leg' && grade === 'stop')).toBe(true);
        }
    expect(legs).toBeGreaterThan(50);
  });
});

describe('between dams', () => {
  let looked: Looked[] = [];
  beforeAll(() => {
    looked = planned('dams', 37);
  });

  it('a pocket is stopped where neither it nor its tube beyond a dam stays open', () => {
    const seen = { closed: 0, open: 0 };
    for (const one of looked) {
      const all = openings(one.work);
      for (const chamber of one.purge.chambers) {
        // a hose comes to a dam along the tube from any opening of it on the far side
        const open = all.filter(({ member }) => chamber.stretches.some((stretch) => stretch.member === member));
        const stops = closedStops(one.findings, chamber);
        expect(stops).toHaveLength(open.length === 0 ? 1 : 0);
        if (open.length === 0) seen.closed += 1;
        else seen.open += 1;
        if (stops.length > 0) continue;
        for (const { kind, member } of [chamber.feed, ...chamber.vents]) {
          expect(kind).not.toBe('gap');
          expect(all.some((place) => place.member === member)).toBe(true);
        }
      }
    }
    expect(seen.closed).toBeGreaterThan(35);
    expect(seen.open).toBeGreaterThan(90);
  });
});
