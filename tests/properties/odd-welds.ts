import fc from 'fast-check';
import { Finish } from '../../server/job/finish.ts';
import type { Job } from '../../server/job/job.ts';
import type { AirHole, EndOfMember, GasPlace, Purge } from '../../server/job/purge.ts';
import { PLACES, type TubePlace } from '../../server/job/tube-place.ts';
import { WeldSettings, type Welding, type WeldTurn } from '../../server/job/welding.ts';
import { between } from './plans-compared.ts';
import { valuesOf } from './schema-values.ts';

/** Half of them the first, half of them anything else. */
const mostly = <T>(usual: T, ...others: readonly T[]): fc.Arbitrary<T> =>
  fc.oneof(fc.constant(usual), fc.constantFrom(...others));

/** A member of the frame, or one that it does not have. */
const memberOf = ({ frame }: Job): fc.Arbitrary<string> =>
  fc.constantFrom(
    ...(frame.shape === 'members'
      ? frame.members.map(({ name }) => name)
      : [frame.shape === 'straight' ? 'tube' : frame.shape, 'crossbar 1']),
    'nobody',
  );

const vector = (size: number) => {
  const part = fc.oneof(between(-size, size), fc.constant(0));
  return fc.record({ x: part, y: part, z: part });
};

/** Any direction: along an axis, none at all, far too small or far too large to be drawn, and any other. */
const up = fc.oneof(
  fc.constantFrom(
    { x: 0, y: 0, z: 0 },
    { x: 0, y: 1, z: 0 },
    { x: 0, y: -1, z: 0 },
    { x: 1e-12, y: 0, z: 0 },
    { x: Number.MIN_VALUE, y: 0, z: 0 },
    { x: 50_000, y: -50_000, z: 50_000 },
  ),
  vector(1),
);

const endOf = (job: Job): fc.Arbitrary<EndOfMember> =>
  fc.record({ member: memberOf(job), end: fc.constantFrom('start' as const, 'finish' as const) });

const placeOf = (job: Job): fc.Arbitrary<TubePlace> =>
  fc.record({
    member: memberOf(job),
    spot: fc.constantFrom(...PLACES),
    number: mostly(1, 2, 3, 120),
    distance: fc.oneof(between(0, 2500), fc.constantFrom(0, 50_000)),
  });

const gasPlaceOf = (job: Job): fc.Arbitrary<GasPlace | null> =>
  fc.oneof(
    fc.constant(null),
    endOf(job),
    fc.integer({ min: 1, max: 4 }).map((hole): GasPlace => ({ hole })),
  );

const airHoleOf = (job: Job): fc.Arbitrary<AirHole> =>
  fc.record({ at: placeOf(job), bore: fc.constantFrom(0.001, 4, 6, 50) });

const purgeOf = (job: Job): fc.Arbitrary<Purge> =>
  fc
    .record({
      up,
      feed: gasPlaceOf(job),
      vent: gasPlaceOf(job),
      extent: fc.constantFrom('whole-frame' as const, 'dams' as const),
      damDistance: mostly(150, 0.001, 40, 900, 5000),
      prePurgeFlow: mostly(10, 1e-9, 0.2, 100),
      weldingFlow: mostly(5, 1e-9, 100),
      targetOxygen: mostly(50, 1e-9, 2, 1000, 100_000),
      ventBore: mostly(6, 0.001, 200),
      model: fc.constantFrom('well-mixed' as const, 'long-tube' as const),
      hold: mostly<number | null>(null, 0, 20, 3600),
      holes: fc.record({
        underSaddles: fc.constantFrom('none' as const, 'all' as const),
        except: fc.array(endOf(job), { maxLength: 3 }),
        bore: mostly(6, 0.001, 50),
        toAir: fc.array(airHoleOf(job), { maxLength: 4 }),
      }),
      meter: fc.array(
        fc.record({
          chamber: mostly(1, 2, 3, 200),
          minutes: fc.oneof(between(0, 60), fc.constantFrom(0, 1440)),
          oxygen: fc.oneof(between(0, 2000), fc.constantFrom(0, 2, 250_000)),
        }),
        { maxLength: 3 },
      ),
      room: fc.record({
        volume: mostly(30, 1e-9, 1_000_000),
        lowVolume: mostly<number | null>(null, 1e-9, 0.5, 1_000_000),
        fanFlow: mostly(0, 1e-9, 200, 1_000_000),
        fanWay: fc.constantFrom('in' as const, 'out' as const),
        receives: fc.constantFrom('all' as const, 'torch' as const),
      }),
      bottle: fc.record({
        waterVolume: mostly(20, 1e-9, 500),
        gaugePressure: mostly(150, 0, 5, 300),
        temperature: fc.constantFrom(5, 15, 35),
        reserve: mostly(10, 0, 300),
        gaugeNow: mostly<number | null>(null, 0, 120, 300),
      }),
    })
    .map((odd) => ({ ...job.purge, ...odd }));

const QUARTERS: WeldTurn['first'][] = [1, 2, 3, 4];
const WAYS: WeldTurn['way'][] = ['opposed', 'opposed-back', 'round', 'round-back'];

/** Settings all left to the plan, one of them typed, or any of them. */
const settings = (usual: WeldSettings): fc.Arbitrary<WeldSettings> =>
  fc.oneof(
    fc.constant(usual),
    fc
      .constantFrom<Partial<WeldSettings>>(
        { process: '142', provedOn: 'test piece 4' },
        { process: '141', fillerDiameter: 0.3 },
        { current: 1, voltage: 5, travelSpeed: 50 },
        { current: 500, voltage: 40, travelSpeed: 0.05 },
        { runs: 30, interpass: 10, electrode: 0.3, cup: 3, torchFlow: 0.1, preFlow: 0, postFlow: 0 },
      )
      .map((typed) => ({ ...usual, ...typed })),
    valuesOf(WeldSettings) as fc.Arbitrary<WeldSettings>,
  );

const weldingOf = ({ welding: usual }: Job): fc.Arbitrary<Welding> =>
  fc.record({
    butt: settings(usual.butt),
    saddle: settings(usual.saddle),
    pad: settings(usual.pad),
    groove: fc.record({
      form: mostly<Welding['groove']['form']>(null, 'square', 'bevel'),
      angle: fc.constantFrom(5, 32.5, 60),
      land: fc.constantFrom(0, 1.5, 20),
    }),
    backing: fc.constantFrom('purge' as const, 'sleeve' as const),
    sleeve: fc.record({ wall: mostly(1.5, 0.001, 20), length: mostly<number | null>(null, 0.001, 1000) }),
    quality: fc.constantFrom('B' as const, 'C' as const, 'D' as const),
    symbols: fc.constantFrom('iso-2553' as const, 'aws-a2-4' as const),
    pull: fc.oneof(between(0, 2), fc.constantFrom(0, 10)),
    order: fc.array(
      fc.record({
        weld: fc.constantFrom('1', '2', '2A', '2B', 'S1', 'S2', 'C1', 'P1', '', 'none'),
        first: fc.constantFrom(...QUARTERS),
        way: fc.constantFrom(...WAYS),
      }),
      { maxLength: 6 },
    ),
  });

type Pad = Job['fixing'][number];

/** Pads with plates: at ends and where no end is, with a hole and without. */
const padsOf = (job: Job): fc.Arbitrary<Pad[]> =>
  fc.array(
    fc.record({
      fixing: fc.constant('pad' as const),
      name: fc.constantFrom('', 'pad', 'left'),
      at: fc.oneof(
        endOf(job).map(({ member, end }): TubePlace => ({ member, spot: end, number: 1, distance: 0 })),
        placeOf(job),
      ),
      off: vector(20),
      lands: fc.constant(null),
      tolerance: fc.constant(null),
      plate: fc.oneof(
        fc.constant(null),
        fc.record({ thickness: mostly(5, 0.001, 100), hole: mostly(10, 0, 0.001, 200) }),
      ),
    }),
    { maxLength: 4 },
  );

const shrinkage = fc.oneof(fc.constant(null), fc.constantFrom(0, 0.5, 10));
const gap = mostly(0, 0.4, 1.5, 10);

/** A job held, fed, welded, plated and finished in any way: what its welds and its gas make of it must still be a plan. */
export const withOddWelds = (job: Job): fc.Arbitrary<Job> =>
  fc
    .record({
      purge: purgeOf(job),
      welding: weldingOf(job),
      finish: valuesOf(Finish) as fc.Arbitrary<Finish>,
      pads: padsOf(job),
      shrinkage,
      gap,
    })
    .map(({ pads, shrinkage: pulled, gap: root, ...parts }) => ({
      ...job,
      ...parts,
      fixing: [...job.fixing, ...pads],
      closing: { ...job.closing, shrinkage: pulled, gap: root },
    }));
