import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import { randomSource } from '../properties/returned-scatter.ts';
import {
  came,
  deformed,
  drawn,
  everyPiece,
  everySize,
  fitted,
  hoop,
  offset,
  place,
  readOn,
  ring,
  run,
  sized,
} from '../properties/returned-frames.ts';

const { normal, uniform } = randomSource(41);

const spread = (from: string, member: string, to: ReturnType<typeof place>[]): Reading[] =>
  to.map((one) => ({
    reading: 'distance',
    from: place(member, from as 'start'),
    to: one,
    reference: 'centre',
    value: 1,
    accuracy: null,
  }));

const offsetFrame = drawn(offset);
const runFrame = drawn(run);
const hoopFrame = drawn(hoop({ innerCrossbars: [] }));
const corners = (member: string, count: number) =>
  Array.from({ length: count }, (_, index) => place(member, 'corner', index + 1));

const enough = [
  ['offset', offsetFrame, [...everyPiece(offsetFrame), ...everySize(offsetFrame)]],
  // nothing but its own two readings tells a crown's radius to a millimetre
  [
    'hoop',
    hoopFrame,
    [...everyPiece(hoopFrame), ...everySize(hoopFrame)].filter(
      (one) => !(one.reading === 'piece' && one.what === 'radius'),
    ),
  ],
  [
    'run in space',
    runFrame,
    [
      ...everyPiece(runFrame),
      ...everySize(runFrame),
      ...spread('start', 'run', [...corners('run', 3), place('run', 'finish')]),
      ...spread('finish', 'run', corners('run', 3)),
    ],
  ],
] as const;

/** A gross error is this many accuracies: a slip of a tape by a centimetre where it is read to a millimetre. */
const GROSS = 12;

describe('the reading that disagrees is named', () => {
  it.each(enough)('%s: 95 of 100 gross errors among readings that scatter', (_, wanted, once) => {
    // everything is measured twice, by two people say, beside what the other readings tell of it
    const readings = [...once, ...once];
    let [tried, named, wrong] = [0, 0, 0];
    for (let round = 0; round < 50; round += 1) {
      const shares = Array.from({ length: 40 }, () => 0.2 * (2 * uniform() - 1));
      const actual = deformed(wanted, (index) => shares[index]!);
      const bad = Math.floor(uniform() * readings.length);
      const sign = uniform() < 0.5 ? -1 : 1;
      const clean = readOn(wanted, actual, [...readings], () => normal());
      // a reading that nothing else checks cannot be found wrong by anybody
      const without = fitted(wanted, came(clean.filter((_one, index) => index !== bad)));
      const all = fitted(wanted, came(clean));
      if (all.fit.unknowns > without.fit.unknowns) continue;
      const accuracy = all.solved.readings[bad]!.accuracy;
      const measured = clean.map((one, index) =>
        index === bad && one.reading !== 'point' ? { ...one, value: one.value! + sign * GROSS * accuracy } : one,
      );
      const { fit } = fitted(wanted, came(measured));
      const off = fit.readings.filter(({ disagrees }) => disagrees).map(({ field }) => field);
      tried += 1;
      if (off.includes(`/cameBack/readings/${String(bad)}`)) named += 1;
      else if (off.length > 0) wrong += 1;
    }
    expect(tried).toBeGreaterThan(25);
    expect(named / tried).toBeGreaterThanOrEqual(0.95);
    expect(wrong).toBeLessThanOrEqual(1);
  });

  it('with leaving it out as the way out, the value that the others give it told, and the frame is that of the others', () => {
    const wanted = hoopFrame;
    const readings = readOn(wanted, wanted, [...everyPiece(wanted), ...everySize(wanted)]);
    const bad = readings.findIndex((one) => one.reading === 'size' && one.check === 'diagonal' && one.index === 2);
    const right = (readings[bad] as Extract<Reading, { reading: 'size' }>).value!;
    const measured = readings.map((one, index) => (index === bad ? ({ ...one, value: right + 25 } as Reading) : one));
    const { findings, returned, fit } = fitted(wanted, came(measured));
    const field = `/cameBack/readings/${String(bad)}/value`;
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code: 'reading-disagrees', grade: 'caution', field });
    expect(findings[0]!.wayOut).toEqual({ field, value: null });
    expect(findings[0]!.data['high']).toBeCloseTo(right, 1);
    expect(fit.doubt).toEqual({ key: 'doubt.diagonals-differ', data: { difference: 25 } });
    expect(fit.misfit.value).toBeLessThan(1e-6);
    expect(fit.readings[bad]!.residual.value).toBeCloseTo(25, 6);
    returned!.geometry.corners.forEach(({ point }, index) => {
      const corner = wanted.corners[index]!.point;
      expect(Math.hypot(point.x - corner.x, point.y - corner.y)).toBeLessThan(1e-5);
    });
    const mended = readings.map((one, index) => (index === bad ? ({ ...one, value: null } as Reading) : one));
    expect(fitted(wanted, came(mended)).findings).toEqual([]);
  });

  it('two diagonals that differ on a frame that is alike on both sides: out of square, or one was misread', () => {
    const wanted = drawn(ring);
    const read = readOn(wanted, wanted, everySize(wanted));
    const racked = read.map((one) =>
      one.reading === 'size' && one.check === 'diagonal'
        ? { ...one, value: one.value! + (one.index === 1 ? 3 : -3) }
        : one,
    );
    const { fit, findings, returned } = fitted(wanted, came(racked));
    expect(fit.doubt).toEqual({ key: 'doubt.diagonals-differ', data: { difference: 6 } });
    expect(findings).toEqual([]);
    // out of square: the corners turn by as much as the diagonals say
    const [first, second] = returned!.geometry.members[0]!.centreline.pieces.filter(({ kind }) => kind === 'arc');
    if (first?.kind !== 'arc' || second?.kind !== 'arc') throw new Error('a ring has arcs');
    expect(Math.abs(first.angle - second.angle)).toBeGreaterThan(0.005);
    const square = fitted(wanted, came(read));
    expect(square.fit.doubt).toBeNull();
  });
});

describe('what the readings leave', () => {
  it('counts what is decided and what is spare, and names what nobody measured', () => {
    const wanted = drawn(hoop({ innerCrossbars: [] }));
    const some = readOn(wanted, wanted, [sized('width-at-corners', 0), sized('left-leg', 0), sized('left-leg', 0)]);
    const { fit } = fitted(wanted, came(some));
    expect([fit.unknowns, fit.spare]).toEqual([2, 1]);
    const keys = fit.notMeasured.map(({ key }) => key);
    expect(keys).toContain('right-leg');
    expect(keys).toContain('width-at-feet');
    expect(keys).not.toContain('left-leg');
    expect(keys).not.toContain('width-at-corners');
  });

  it('says measured less fitted, in accuracies, each with the names of what was measured', () => {
    const wanted = drawn(hoop({ innerCrossbars: [] }));
    const [once, again] = readOn(wanted, wanted, [sized('left-leg', 0), sized('left-leg', 0)]);
    const apart = [
      { ...once, value: 601, accuracy: 0.5 },
      { ...again, value: 603, accuracy: 1 },
    ] as Reading[];
    const { fit } = fitted(wanted, came(apart));
    // weights 4 and 1: the mean is 601.4
    expect(fit.readings.map(({ fitted: { value } }) => value)).toEqual([
      expect.closeTo(601.4, 6) as number,
      expect.closeTo(601.4, 6) as number,
    ]);
    expect(fit.readings.map(({ accuracies }) => accuracies)).toEqual([
      expect.closeTo(-0.8, 6) as number,
      expect.closeTo(1.6, 6) as number,
    ]);
    expect(fit.misfit.value).toBeCloseTo(Math.sqrt((0.64 + 2.56) / 2), 6);
    expect(fit.readings[0]!.name).toEqual({ key: 'check.left-leg', data: { index: 0 } });
  });
});
