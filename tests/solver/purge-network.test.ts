import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { networkFlow, type Resistance } from '../../server/solver/purge/network-flow.ts';
import { boreResistance } from '../../server/solver/purge/gas-network.ts';
import { onSomeWay } from '../../server/solver/purge/swept-bores.ts';
import { ventPressure } from '../../server/solver/purge/vent.ts';
import { holes, hoopJob, purged } from './purge-frames.ts';

const tube = (a: number, b: number, linear: number): Resistance => ({ a, b, linear, square: 0 });
const hole = (a: number, b: number, square: number): Resistance => ({ a, b, linear: 0, square });

describe('two ways side by side', () => {
  it('tubes share the gas by their lengths', () => {
    const [short, long] = networkFlow(2, [tube(0, 1, 1), tube(1, 0, 3)], { from: 0, to: 1, flow: 8 });
    expect([short, long]).toEqual([expect.closeTo(6, 12), expect.closeTo(-2, 12)]);
  });

  it('vents share it by their areas', () => {
    const square = (bore: number) => ventPressure({ flow: 1, bore });
    const [wide, narrow] = networkFlow(2, [hole(0, 1, square(6)), hole(0, 1, square(3))], { from: 0, to: 1, flow: 10 });
    expect([wide, narrow]).toEqual([expect.closeTo(8, 10), expect.closeTo(2, 10)]);
  });

  it('a tube beside a tube with a hole: a quadratic', () => {
    // r₁ (Q − q) = r₂ q + k q²
    const [r1, r2, k, flow] = [0.02, 0.01, 0.3, 10];
    const q = (Math.sqrt((r1 + r2) ** 2 + 4 * k * r1 * flow) - (r1 + r2)) / (2 * k);
    const made = networkFlow(3, [tube(0, 2, r1), tube(0, 1, r2), hole(1, 2, k)], { from: 0, to: 2, flow });
    expect(made).toEqual([flow - q, q, q].map((one) => expect.closeTo(one, 10) as number));
  });

  it('a crossbar of a hoop with holes of 6 mm, by hand from printed constants', () => {
    const job = hoopJob([300], holes({ underSaddles: 'all' }));
    const [chamber] = purged(job).purge!.chambers;
    // 128 µ L/(π d⁴) for each L/min: argon 22.31 µPa·s, bore 34.8 mm
    const perMetre = (128 * 22.31e-6) / (Math.PI * 0.0348 ** 4) / 60_000;
    const bar = 0.8619 * perMetre;
    const crown = (chamber!.length.value / 1000 - 0.8619 - 0.6) * perMetre;
    const hole6 = 310.36 * (3 / 6) ** 4 * (1 / 5) ** 2; // 310 Pa for 5 L/min through 3 mm
    const q = (Math.sqrt((bar + crown) ** 2 + 8 * hole6 * crown * 10) - (bar + crown)) / (4 * hole6);
    const across = chamber!.paths.find(({ stretches }) => stretches.length > 1);
    expect(Math.abs(across!.share.value / (10 * q) - 1)).toBeLessThan(1e-4);
    expect(boreResistance({ length: 1000, bore: 34.8 })).toBeCloseTo(perMetre, 12);
  });
});

/** Ten orders of magnitude between them: tubes of a millimetre and of 50 m, vents of 0.5 and of 100 mm. */
const sizes = fc.double({ min: -5, max: 5, noNaN: true }).map((power) => 10 ** power);
const networks = fc.integer({ min: 2, max: 12 }).chain((nodes) =>
  fc.record({
    nodes: fc.constant(nodes),
    flow: fc.constantFrom(1e-3, 1, 10, 100),
    edges: fc.array(
      fc.record({
        a: fc.nat(nodes - 1),
        b: fc.nat(nodes - 1),
        size: sizes,
        kind: fc.constantFrom('tube', 'hole', 'both'),
      }),
      { minLength: 1, maxLength: 24 },
    ),
  }),
);

describe('any network', () => {
  it('balances at every place, and pressure is lost alike by every way', () => {
    let connected = 0;
    fc.assert(
      fc.property(networks, ({ nodes, flow, edges }) => {
        const resistances = edges.map(({ a, b, size, kind }): Resistance => ({
          a,
          b,
          linear: kind === 'hole' ? 0 : size,
          square: kind === 'tube' ? 0 : size,
        }));
        const flows = networkFlow(nodes, resistances, { from: 0, to: nodes - 1, flow });
        const swept = onSomeWay(nodes, resistances, 0, nodes - 1);
        const balance = new Array<number>(nodes).fill(0);
        for (const [edge, { a, b }] of resistances.entries()) {
          balance[a]! -= flows[edge]!;
          balance[b]! += flows[edge]!;
          if (!swept[edge]) expect(Math.abs(flows[edge]!)).toBeLessThanOrEqual(1e-12 * flow);
        }
        const isThrough = swept.includes(true);
        if (isThrough) connected += 1;
        balance[0]! += isThrough ? flow : 0;
        balance[nodes - 1]! -= isThrough ? flow : 0;
        for (const left of balance) expect(Math.abs(left)).toBeLessThan(1e-9 * flow);
        agree(nodes, resistances, flows);
      }),
      { numRuns: 300 },
    );
    expect(connected).toBeGreaterThan(100);
  });

  /** Pressures worked out from the feed along one way hold along all others. */
  function agree(nodes: number, resistances: readonly Resistance[], flows: readonly number[]): void {
    const lost = ({ linear, square }: Resistance, flow: number) => flow * (linear + square * Math.abs(flow));
    const pressure = new Array<number | undefined>(nodes).fill(undefined);
    pressure[0] = 0;
    for (let round = 0; round < nodes; round += 1)
      for (const [edge, one] of resistances.entries()) {
        const loss = lost(one, flows[edge]!);
        if (pressure[one.a] !== undefined) pressure[one.b] ??= pressure[one.a]! - loss;
        else if (pressure[one.b] !== undefined) pressure[one.a] = pressure[one.b]! + loss;
      }
    const largest = Math.max(...resistances.map((one, edge) => Math.abs(lost(one, flows[edge]!))));
    for (const [edge, one] of resistances.entries()) {
      const [a, b] = [pressure[one.a], pressure[one.b]];
      if (a === undefined || b === undefined || one.a === one.b) continue;
      expect(Math.abs(a - b - lost(one, flows[edge]!))).toBeLessThanOrEqual(1e-6 * largest);
    }
  }

  it('dead ends carry nothing at all', () => {
    const flows = networkFlow(4, [tube(0, 1, 1), tube(1, 2, 1), tube(2, 3, 1), tube(3, 3, 1)], {
      from: 0,
      to: 1,
      flow: 7,
    });
    expect(flows).toEqual([7, 0, 0, 0]);
  });

  it('a bridge between two ways that balance carries nothing', () => {
    const square = [tube(0, 1, 1), tube(0, 2, 1), tube(1, 2, 5), tube(1, 3, 2), tube(2, 3, 2)];
    const flows = networkFlow(4, square, { from: 0, to: 3, flow: 10 });
    for (const [edge, wanted] of [5, 5, 0, 5, 5].entries()) expect(flows[edge]).toBeCloseTo(wanted, 12);
  });

  it('without a way there is no flow', () => {
    expect(networkFlow(3, [tube(0, 1, 1)], { from: 0, to: 2, flow: 10 })).toEqual([0]);
  });
});
