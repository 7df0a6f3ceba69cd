import fc from 'fast-check';
import { TubeTolerance } from '../../server/job/tube.ts';
import type { Bending, MemberBending } from '../../server/job/bending.ts';
import type { Job } from '../../server/job/job.ts';
import type { Die, Machine, TestBend } from '../../server/job/machine.ts';
import { between } from './plans-compared.ts';

/** Half of them the first, half of them anything else. */
const mostly = <T>(usual: T, ...others: readonly T[]): fc.Arbitrary<T> =>
  fc.oneof(fc.constant(usual), fc.constantFrom(...others));

/** Heats of the tube and of what was test bent; with white space as people leave it. */
const HEATS = ['', 'A17', ' A17', 'B4'] as const;

/** The diameter of the job's tube, the same printed otherwise, and others. */
const diameters = (own: number) => mostly(own, own + 0.06, own + 0.3, 25.4, 48.3);

const die = (own: number): fc.Arbitrary<Die> =>
  fc.record({
    name: fc.constant(''),
    tubeDiameter: diameters(own),
    radius: fc.oneof(between(1.5 * own, 4 * own), fc.constantFrom(own / 2, 3 * own, 3 * own, 5000)),
    gripLength: fc.constantFrom(0, 40, 76.2, 900),
    pressureDieLength: fc.constantFrom(0, 114.3, 800),
    largestAngle: fc.constantFrom(45, 95, 180, 360),
    tooling: fc.constantFrom<Die['tooling'][]>('none', 'plug', 'mandrel', 'mandrel-and-wiper', 'unknown'),
  });

/** Test bends of this tube and die and of others, that spring back as steel does and as none can. */
const testBend = ({ outsideDiameter, wall }: Job['tube'], dies: readonly Die[]): fc.Arbitrary<TestBend> =>
  fc
    .record({
      commandedAngle: fc.oneof(between(10, 170), fc.constantFrom(90, 360)),
      kept: fc.oneof(
        { weight: 6, arbitrary: between(0.9, 1) },
        { weight: 1, arbitrary: between(0.3, 1.2) },
        // bent and not yet measured
        { weight: 1, arbitrary: fc.constant(null) },
      ),
      grown: mostly<number | null>(null, 1, 1.02, 1.4),
      scribed: mostly<number | null>(null, 100, 400),
      stretched: mostly<number | null>(2, null, -1, 40),
      tubeDiameter: diameters(outsideDiameter),
      wall: mostly(wall, 1.02 * wall, 1.2 * wall),
      dieRadius: fc.constantFrom(...dies.map(({ radius }) => radius)),
      heat: fc.constantFrom(...HEATS),
    })
    .map(({ commandedAngle, kept, grown, scribed, stretched, ...of }) => ({
      ...of,
      commandedAngle,
      measuredAngle: kept === null ? null : Math.min(360, commandedAngle * kept),
      measuredRadius: grown === null ? null : of.dieRadius * grown,
      scribedBefore: scribed,
      scribedAfter: scribed === null || stretched === null ? null : scribed + stretched,
    }));

/** The same bends, each told the same angle. */
const atOneAngle = (bends: readonly TestBend[]): TestBend[] =>
  bends.map((bend) => ({ ...bend, commandedAngle: 90, measuredAngle: 87, tubeDiameter: bends[0]!.tubeDiameter }));

const machine = ({ tube, machine: usual }: Job): fc.Arbitrary<Machine> =>
  fc
    .tuple(fc.array(die(tube.outsideDiameter), { maxLength: 3 }), fc.boolean())
    .map(([others, first]) => (first ? [usual.dies[0]!, ...others] : [...others, usual.dies[0]!]))
    .chain((dies) =>
      fc.record({
        dies: fc.constant(dies),
        // the usual one, any of the list, or one that the list does not have
        die: fc.oneof(
          { weight: 6, arbitrary: fc.constant(dies.indexOf(usual.dies[0]!)) },
          { weight: 2, arbitrary: fc.nat(dies.length - 1) },
          { weight: 1, arbitrary: fc.constantFrom(dies.length, 59) },
        ),
        springback: fc.record({
          method: mostly<Machine['springback']['method']>('test-bends', 'theory'),
          bends: fc.array(testBend(tube, dies), { maxLength: 7 }).chain((bends) => mostly(bends, atOneAngle(bends))),
        }),
        leastStraight: fc.constantFrom(0, usual.leastStraight, 2000),
        trimAllowance: fc.constantFrom(0, 30, 2000),
        stretchPerBend: fc.constantFrom(0, 1.5, -2),
        rotationSign: fc.constantFrom<Machine['rotationSign'][]>(1, -1),
        accuracy: fc.record({
          angleScatter: fc.constantFrom(0, 0.3, 10),
          planeScatter: fc.constantFrom(0, 0.5, 10),
          markAccuracy: fc.constantFrom(0, 0.5, 20),
        }),
        surroundings: fc.record({
          bedBelow: fc.oneof(fc.constant(null), between(0, 1200), fc.constant(700)),
          dieHeight: fc.constantFrom(0, 76.2, 2000),
          clampReach: fc.constantFrom(0, 76.2, 2000),
          side: fc.constantFrom<Machine['surroundings']['side'][]>('right', 'left', 'both'),
        }),
      }),
    )
    .map((changed) => ({ ...usual, ...changed }));

/** Members that the frames of these jobs have, and one that none has. */
const MEMBERS = ['hoop', 'crossbar 1', 'ring', 'offset', 'straight', 'run', 'tube', 'post', 'rail', 'loop', 'nobody'];

const member: fc.Arbitrary<MemberBending> = fc.record({
  member: fc.constantFrom(...MEMBERS),
  from: fc.constantFrom<MemberBending['from'][]>('finish', 'finish', 'start'),
  side: fc.constantFrom<MemberBending['side'][]>('usual', 'other'),
  closingStraight: fc.oneof(fc.constant(null), fc.integer({ min: 1, max: 6 }), fc.constant(400)),
});

const bending: fc.Arbitrary<Bending> = fc.record({
  hand: fc.constantFrom<Bending['hand'][]>('as-drawn', 'mirrored'),
  toleranceClass: fc.constantFrom<Bending['toleranceClass'][]>('A', 'B', 'C', 'D'),
  members: fc.array(member, { minLength: 4, maxLength: 14 }),
});

/** Every standard that a tube can be bought to, and the shop's own limits down to none. */
const STANDARDS = TubeTolerance.anyOf[0].properties.standard.anyOf.map(({ const: name }) => name);
const tolerance: fc.Arbitrary<TubeTolerance> = fc.oneof(
  fc.constantFrom(...STANDARDS).map((standard) => ({ by: 'standard' as const, standard })),
  fc.record({ by: fc.constant('own' as const), outsideDiameter: between(0, 2), wall: fc.constantFrom(0, 0.2, 20) }),
);

/** The same job in a shop with other dies, another record, another machine and other wishes. */
export const inOddShop = (job: Job): fc.Arbitrary<Job> =>
  fc
    .record({ machine: machine(job), bending, tolerance, heat: fc.constantFrom(...HEATS) })
    .map(({ tolerance: bought, heat, ...changed }) => ({
      ...job,
      ...changed,
      tube: { ...job.tube, tolerance: bought, heat },
    }));
