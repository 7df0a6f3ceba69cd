import { describe, expect, it } from 'vitest';
import type { Reading } from '../../server/job/came-back.ts';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { placeAt } from '../../server/solver/geometry/centreline.ts';
import { turnAbout, turned } from '../../server/solver/geometry/rigid-motion.ts';
import {
  R,
  came,
  deformed,
  drawn,
  everyPiece,
  fitted,
  hoop,
  offset,
  place,
  readOn,
  ring,
  run,
  shapesApart,
  sized,
} from '../properties/returned-frames.ts';

const straightHoop = drawn(hoop({ crossbar: { form: 'straight' }, innerCrossbars: [] }));

describe('angles', () => {
  it('a bevel between the two legs says by how much they lean', () => {
    const bevel: Reading = {
      reading: 'bevel',
      from: place('hoop', 'start'),
      to: place('hoop', 'finish'),
      value: 177,
      accuracy: null,
    };
    const { returned, fit } = fitted(straightHoop, came([bevel]));
    const { pieces } = returned!.geometry.members[0]!.centreline;
    const angles = pieces.flatMap((piece) => (piece.kind === 'arc' ? [(piece.angle * 180) / Math.PI] : []));
    expect(angles[0]! + angles[1]!).toBeCloseTo(177, 6);
    expect(angles[0]).toBeCloseTo(angles[1]!, 6);
    expect(fit.unknowns).toBe(1);
  });

  it('which way they lean is for a width to say', () => {
    const bevel: Reading = {
      reading: 'bevel',
      from: place('hoop', 'start'),
      to: place('hoop', 'finish'),
      value: 177,
      accuracy: null,
    };
    for (const [feet, sum] of [
      [980, 177],
      [920, 183],
    ] as const) {
      const { returned } = fitted(
        straightHoop,
        came([bevel, sized('width-at-corners', 0, 950), sized('width-at-feet', 0, feet)]),
      );
      const { pieces } = returned!.geometry.members[0]!.centreline;
      const turns = pieces.reduce((all, piece) => all + (piece.kind === 'arc' ? (piece.angle * 180) / Math.PI : 0), 0);
      expect(Math.abs(turns - sum)).toBeLessThan(0.5);
    }
  });

  it('levels on both legs find a frame that is wound, whatever way up it stood', () => {
    const wound = 2.5;
    const wanted = drawn(hoop({ crossbar: { form: 'straight' }, innerCrossbars: [] }));
    // the frame lay flat: the left leg level, the right one rising by what the crossbar is wound, and the bar level
    const level = (at: TubePlace, value: number): Reading => ({ reading: 'level', at, value, accuracy: 0.1 });
    const readings = [
      level(place('hoop', 'start'), 0),
      level(place('hoop', 'middle', 3), 0),
      level(place('hoop', 'finish'), wound),
    ];
    const { returned, fit, findings } = fitted(wanted, came(readings));
    expect(findings).toEqual([]);
    expect(fit.misfit.value).toBeLessThan(1e-4);
    expect(returned!.geometry.planeNormal).toBeNull();
    const [first, second] = returned!.geometry.members[0]!.centreline.pieces.filter(({ kind }) => kind === 'arc');
    if (first?.kind !== 'arc' || second?.kind !== 'arc') throw new Error('a hoop has two bends');
    const cosine =
      first.normal.x * second.normal.x + first.normal.y * second.normal.y + first.normal.z * second.normal.z;
    expect((Math.acos(cosine) * 180) / Math.PI).toBeCloseTo(wound, 1);
  });

  it('levels are met on a frame that stood any way, with all its pieces measured', () => {
    const wanted = drawn(run);
    const actual = deformed(wanted, (index) => Math.sin(4 * index) / 6);
    const pose = turnAbout({ x: 0, y: 0, z: 0 }, { x: 0.9, y: 0.3, z: -0.4 }, { x: 0, y: 0, z: 0 });
    const line = actual.members[0]!.centreline;
    const pieces = readOn(wanted, actual, everyPiece(wanted));
    let station = 0;
    const levels = line.pieces.map((piece, index): Reading => {
      const { tangent } = placeAt(line, station + piece.length / 2)!;
      station += piece.length;
      const value = (Math.asin(turned(pose, tangent).z) * 180) / Math.PI;
      return { reading: 'level', at: place('run', 'middle', index + 1), value, accuracy: null };
    });
    const { returned, fit } = fitted(wanted, came([...pieces, ...levels]));
    expect(fit.misfit.value).toBeLessThan(1e-6);
    expect(shapesApart(returned!.geometry, actual)).toBeLessThan(1e-6);
    const { solved } = fitted(wanted, came([...pieces, ...levels]));
    solved.predictAll(actual).forEach((value, index) => {
      expect(value).toBeCloseTo(solved.readings[index]!.measured, 4);
    });
  });

  it('a rotation read on a flat frame takes it out of its plane', () => {
    const wanted = drawn(offset);
    const readings = readOn(wanted, wanted, everyPiece(wanted));
    const rotation: Reading = {
      reading: 'turn',
      what: 'rotation',
      member: 'offset',
      piece: 4,
      value: 176,
      accuracy: null,
    };
    const name = wanted.members[0]!.name;
    const { returned, fit } = fitted(wanted, came([...readings, { ...rotation, member: name }]));
    expect(fit.misfit.value).toBeLessThan(1e-6);
    expect(returned!.geometry.planeNormal).toBeNull();
    const flat = fitted(wanted, came(readings)).returned!;
    expect(flat.geometry.planeNormal).toEqual(wanted.planeNormal);
  });

  it('a die bend keeps the radius of its die unless that was measured', () => {
    const wanted = drawn(offset);
    const radius: Reading = {
      reading: 'piece',
      what: 'radius',
      member: wanted.members[0]!.name,
      piece: 2,
      value: 110,
      accuracy: null,
    };
    const radii = (readings: Reading[]) =>
      fitted(wanted, came(readings)).returned!.geometry.members[0]!.centreline.pieces.flatMap((piece) =>
        piece.kind === 'arc' ? [piece.radius] : [],
      );
    expect(radii([radius])).toEqual([expect.closeTo(110, 6) as number, R]);
    expect(radii([sized('offset', 0, 320)])).toEqual([R, R]);
  });
});

describe('what others ask of a frame', () => {
  it('a frame with other members or pieces has no readings', () => {
    const { solved } = fitted(straightHoop, came([sized('left-leg', 0)]));
    expect(solved.predictAll(drawn(ring))).toEqual([undefined]);
    expect(solved.readings[0]!.predict(drawn(hoop({ innerCrossbars: [] })))).toBeUndefined();
  });

  it('an inner crossbar goes with its legs, and its seats are where it is', () => {
    const wanted = drawn(hoop());
    const read = [sized('left-leg', 0, 640), sized('crossbar-from-foot', 1, 300)];
    const { returned } = fitted(
      wanted,
      came(read.map((one) => ({ ...one, reference: one === read[1] ? 'centre' : 'outside' }) as Reading)),
    );
    const [frame, bar] = returned!.geometry.members;
    if (bar?.start.kind !== 'saddle' || bar.finish.kind !== 'saddle') throw new Error('a crossbar has two saddles');
    expect(bar.start.station).toBeCloseTo(300, 5);
    for (const [end, station] of [
      [bar.start, 0],
      [bar.finish, bar.centreline.length],
    ] as const) {
      const [on, own] = [placeAt(frame!.centreline, end.station)!.point, placeAt(bar.centreline, station)!.point];
      expect(Math.hypot(on.x - own.x, on.y - own.y)).toBeLessThan(1e-9);
    }
    const check = returned!.geometry.checks.find(({ key }) => key === 'crossbar-from-foot')!;
    expect(Math.hypot(check.to.point.x - check.from.point.x, check.to.point.y - check.from.point.y)).toBeCloseTo(
      300,
      5,
    );
  });
});
