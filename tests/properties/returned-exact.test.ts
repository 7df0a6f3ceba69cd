import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mirrorFrame } from '../../server/solver/frame/mirror-frame.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { moved, turnAbout } from '../../server/solver/geometry/rigid-motion.ts';
import type { Reading } from '../../server/job/came-back.ts';
import {
  came,
  deformed,
  drawn,
  everyPiece,
  everySize,
  fitted,
  hoop,
  members,
  offset,
  piecesApart,
  place,
  readOn,
  rebent,
  ring,
  run,
  shapesApart,
} from './returned-frames.ts';

const frames = [
  ['hoop', drawn(hoop())],
  ['hoop with a straight crossbar', drawn(hoop({ crossbar: { form: 'straight' }, innerCrossbars: [] }))],
  ['offset', drawn(offset)],
  ['run in space', drawn(run)],
] as const;

const share = fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: 60, maxLength: 60 });

describe('exact readings give back the frame that they were taken on', () => {
  it.each(frames)('%s, every piece and every size', (_, wanted) => {
    const bar = wanted.members.find(({ name }) => name === 'crossbar 1');
    const right: Reading[] =
      bar === undefined
        ? []
        : [
            {
              reading: 'distance',
              from: place('hoop', 'finish'),
              to: place(bar.name, 'finish'),
              reference: 'centre',
              value: 1,
              accuracy: null,
            },
          ];
    const readings = [...everyPiece(wanted), ...everySize(wanted), ...right];
    fc.assert(
      fc.property(share, (shares) => {
        const actual = deformed(wanted, (index) => shares[index]!);
        const { returned, fit, findings } = fitted(wanted, came(readOn(wanted, actual, readings)));
        expect(findings).toEqual([]);
        expect(fit.spare).toBeGreaterThan(0);
        expect(fit.misfit.value).toBeLessThan(1e-6);
        expect(piecesApart(returned!.geometry, actual)).toBeLessThan(1e-6);
        expect(shapesApart(returned!.geometry, actual)).toBeLessThan(1e-6);
      }),
      { numRuns: 12 },
    );
  });

  it('one tube bent by another way than the solver’s own', () => {
    const wanted = drawn(offset);
    const actual = rebent(wanted, (index) => ({ length: 7 * index - 9, angle: 0.02 * index - 0.05 }));
    const readings = [...everyPiece(wanted), ...everySize(wanted)];
    const { returned } = fitted(wanted, came(readOn(wanted, actual, readings)));
    expect(piecesApart(returned!.geometry, actual)).toBeLessThan(1e-6);
  });

  it('a hoop that was drawn with other sizes, by its sizes as they are typed', () => {
    const straight = { crossbar: { form: 'straight' as const }, innerCrossbars: [] };
    const wanted = drawn(hoop(straight));
    const other = drawn(
      hoop({
        ...straight,
        width: { value: 981, reference: 'outside' },
        widthAtFeet: { value: 1003, reference: 'outside' },
        leftLeg: { value: 622, reference: 'outside' },
        rightLeg: { value: 655, reference: 'outside' },
      }),
    );
    const readings = other.checks.map(({ key, index, from, to, outsideExtra }): Reading => ({
      reading: 'size',
      check: key,
      index,
      reference: 'outside',
      value: Math.hypot(to.point.x - from.point.x, to.point.y - from.point.y) + outsideExtra,
      accuracy: null,
    }));
    const { returned, fit } = fitted(wanted, came(readings));
    expect(fit.misfit.value).toBeLessThan(1e-6);
    expect(fit.unknowns).toBe(5);
    expect(fit.spare).toBe(readings.length - 5);
    expect(piecesApart(returned!.geometry, other)).toBeLessThan(1e-6);
    returned!.geometry.checks.forEach((check, index) => {
      expect(check.outsideExtra).toBeCloseTo(other.checks[index]!.outsideExtra, 6);
    });
  });

  it('a ring that is no rectangle closes', () => {
    const wanted = drawn(ring);
    fc.assert(
      fc.property(share, (shares) => {
        // angles at three corners and two sides are free: the rest closes it
        const readings = [...everyPiece(wanted), ...everySize(wanted)];
        const [a = 0, b = 0, c = 0, d = 0] = shares;
        const target = fitted(
          wanted,
          came([
            { ...readings[1], value: 90 + 10 * a } as Reading,
            { ...readings[3], value: 90 + 10 * b } as Reading,
            { ...readings[2], value: wanted.members[0]!.centreline.pieces[2]!.length + 40 * c } as Reading,
            { ...readings[4], value: wanted.members[0]!.centreline.pieces[4]!.length + 40 * d } as Reading,
          ]),
        ).returned!.geometry;
        const line = target.members[0]!.centreline;
        const [start, finish] = [placeAt(line, 0)!, placeAt(line, line.length)!];
        expect(Math.hypot(start.point.x - finish.point.x, start.point.y - finish.point.y)).toBeLessThan(1e-5);
        expect(Math.hypot(start.tangent.x - finish.tangent.x, start.tangent.y - finish.tangent.y)).toBeLessThan(1e-7);
        const { returned, fit } = fitted(wanted, came(readOn(wanted, target, readings)));
        expect(fit.misfit.value).toBeLessThan(1e-4);
        expect(piecesApart(returned!.geometry, target)).toBeLessThan(1e-4);
      }),
      { numRuns: 10 },
    );
  });

  it('members in space with a rail, a bent rail and a branch', () => {
    const wanted = drawn(members);
    const ends = wanted.members.flatMap(({ name }) => [place(name, 'start'), place(name, 'finish')]);
    const more = [
      place('left', 'corner'),
      place('right', 'corner'),
      place('bow', 'corner', 1),
      place('bow', 'corner', 2),
    ];
    const places = [...ends, ...more];
    const distances = places.flatMap((from, first) =>
      places
        .slice(first + 1)
        .map((to): Reading => ({ reading: 'distance', from, to, reference: 'centre', value: 1, accuracy: null })),
    );
    const readings = [...everyPiece(wanted), ...distances];
    fc.assert(
      fc.property(share, (shares) => {
        const actual = deformed(wanted, (index, what) => (what.startsWith('turn') ? 0.3 : 1) * shares[index]!);
        const { returned, fit } = fitted(wanted, came(readOn(wanted, actual, readings)));
        expect(fit.misfit.value).toBeLessThan(1e-6);
        expect(shapesApart(returned!.geometry, actual)).toBeLessThan(1e-6);
      }),
      { numRuns: 8 },
    );
  });

  it('points in axes of their own, with levels', () => {
    const wanted = drawn(run);
    const actual = deformed(wanted, (index) => Math.sin(3 * index + 1) / 4);
    const pose = turnAbout({ x: 0, y: 0, z: 0 }, { x: 0.4, y: -1.1, z: 2 }, { x: 1500, y: -700, z: 90 });
    const spots = [
      place('run', 'start'),
      place('run', 'finish'),
      ...[1, 2, 3].flatMap((n) => [
        place('run', 'corner', n),
        place('run', 'bend-start', n),
        place('run', 'bend-end', n),
      ]),
    ];
    const line = actual.members[0]!.centreline;
    let station = 0;
    const stations = line.pieces.map(({ length }) => {
      station += length;
      return station;
    });
    const pointAt = (spot: (typeof spots)[number]) => {
      const before = stations[2 * (spot.number - 1)]!;
      if (spot.spot === 'corner') return actual.corners[spot.number - 1]!.point;
      if (spot.spot === 'start') return placeAt(line, 0)!.point;
      if (spot.spot === 'finish') return placeAt(line, line.length)!.point;
      return placeAt(line, spot.spot === 'bend-start' ? before : stations[2 * spot.number - 1]!)!.point;
    };
    const readings = spots.map((spot): Reading => ({
      reading: 'point',
      at: spot,
      ...moved(pose, pointAt(spot)),
      accuracy: null,
    }));
    const { returned, fit, findings } = fitted(wanted, came(readings));
    expect(findings).toEqual([]);
    expect(fit.readings).toHaveLength(33);
    expect(fit.misfit.value).toBeLessThan(1e-6);
    expect(piecesApart(returned!.geometry, actual)).toBeLessThan(1e-6);
  });

  it('the mirrored frame has the mirrored answer', () => {
    const wanted = drawn(run);
    const actual = deformed(wanted, (index) => Math.cos(2 * index) / 5);
    const readings = everyPiece(wanted);
    const measured = readOn(wanted, actual, readings);
    const mirrored = mirrorFrame(wanted);
    const turned = measured.map((one) =>
      one.reading === 'turn' && one.what === 'rotation' ? { ...one, value: -one.value! } : one,
    );
    const [plain, other] = [fitted(wanted, came(measured)), fitted(mirrored, came(turned))];
    expect(shapesApart(mirrorFrame(plain.returned!.geometry), other.returned!.geometry)).toBeLessThan(1e-6);
    const [p, q] = [mirrorFrame(plain.returned!.geometry), other.returned!.geometry];
    p.feet.forEach(({ point }, index) => {
      expect(q.feet[index]!.point.x).toBeCloseTo(point.x, 5);
      expect(q.feet[index]!.point.z).toBeCloseTo(point.z, 5);
    });
  });

  it.each([...frames, ['ring', drawn(ring)], ['members', drawn(members)]] as const)(
    '%s read as wanted came back as wanted',
    (_, wanted) => {
      const readings = [...everyPiece(wanted), ...everySize(wanted)];
      const { returned, fit } = fitted(wanted, came(readOn(wanted, wanted, readings)));
      expect(fit.misfit.value).toBeLessThan(1e-9);
      expect(piecesApart(returned!.geometry, wanted)).toBeLessThan(1e-9);
      expect(shapesApart(returned!.geometry, wanted)).toBeLessThan(1e-9);
      returned!.geometry.feet.forEach(({ point, station }, index) => {
        const foot = wanted.feet[index]!;
        expect(Math.hypot(point.x - foot.point.x, point.y - foot.point.y, point.z - foot.point.z)).toBeLessThan(1e-8);
        expect(station).toBeCloseTo(foot.station, 8);
      });
    },
  );
});
