import { describe, expect, it } from 'vitest';
import { centrelineFromChain } from '../../../server/solver/geometry/centreline.ts';
import { moved } from '../../../server/solver/geometry/rigid-motion.ts';
import { length } from '../../../server/solver/geometry/vector.ts';
import { framePlace } from '../../../server/solver/site/standing/frame-place.ts';
import { planStanding } from '../../../server/solver/site/standing/plan-standing.ts';
import { at, place, sourceOf, stand, studyOf, AXES, EDGE, codes } from './standing-site.ts';

describe('where a frame is placed', () => {
  it('by its axes: y is squared to x, the origin where it is typed', () => {
    const source = sourceOf({ placing: { by: 'axes', origin: at(10, 20, 30), x: at(0, 5, 0), y: at(-3, 4, 0) } });
    const { frame } = stand(source);
    expect(moved(frame!.motion, at(1, 2, 3))).toEqual({ x: 10 - 2, y: 20 + 1, z: 33 });
  });

  it('says what is missing to place it, and leaves it out', () => {
    const pairs = [
      { at: place('start'), point: 'A' },
      { at: place('corner', { number: 7 }), point: 'B' },
      { at: place('finish'), point: 'nobody' },
    ];
    const source = sourceOf({ placing: { by: 'points', pairs } });
    const points = { A: at(0, 0, 0), B: at(1, 0, 0) };
    expect(stand(source, { points }).frame).toBeNull();
    expect(codes(source, { points })).toEqual([
      ['site-place-missing', 'stop', '/site/placing/pairs/1/at'],
      ['site-name-missing', 'stop', '/site/placing/pairs/2/point'],
    ]);
    const origin = sourceOf({ placing: { ...AXES, origin: { named: 'nobody' } } });
    expect(codes(origin)[0]![0]).toBe('site-name-missing');
  });

  it('cannot be told by axes in line, or without a length', () => {
    const inLine = stand(sourceOf({ placing: { ...AXES, y: at(100, 1, 0) } }));
    expect(inLine.frame).toBeNull();
    expect(inLine.findings[0]).toMatchObject({ code: 'placing-no-axes', field: '/site/placing/y' });
    expect(inLine.findings[0]!.data['value']).toBeCloseTo(0.573, 3);
    expect(codes(sourceOf({ placing: { ...AXES, x: at(0, 0, 0) } }))[0]).toEqual([
      'placing-no-axes',
      'stop',
      '/site/placing/x',
    ]);
  });

  it('cannot be told by places, or by points, in one line', () => {
    const spots = ['start', 'middle', 'finish'] as const;
    const straight = spots.map((spot) => ({ at: place(spot, { member: 'edge' }), point: spot }));
    const points = { start: at(0, 0, 0), middle: at(500, 300, 0), finish: at(1000, 0, 0) };
    const source = sourceOf({ placing: { by: 'points', pairs: straight } }, EDGE);
    expect(stand(source, { points }).findings[0]).toMatchObject({ code: 'placing-in-line', data: { value: 0 } });
    const hoop = sourceOf({
      placing: {
        by: 'points',
        pairs: (['start', 'corner', 'finish'] as const).map((spot) => ({ at: place(spot), point: spot })),
      },
    });
    // 9 mm off a line of 1000 mm: a tape of ± 2 mm would not tell which way the frame lies
    const flat = { start: at(0, 0, 0), corner: at(500, 9, 0), finish: at(1000, 0, 0) };
    expect(stand(hoop, { points: flat }).findings[0]).toMatchObject({ code: 'placing-in-line', data: { value: 9 } });
    expect(stand(hoop, { points: { ...flat, corner: at(500, 11, 0) } }).findings).toEqual([]);
  });

  it('tells how far each place is from its point, and finds more than three accuracies of the tape', () => {
    const found = stand(sourceOf()).frame!;
    const line = framePlace(found, sourceOf().wanted);
    const pairs = (['start', 'corner', 'finish'] as const).map((spot) => ({ at: place(spot), point: spot }));
    const points = Object.fromEntries(pairs.map(({ at: of, point }) => [point, line(of)!.point]));
    const source = sourceOf({ placing: { by: 'points', pairs }, tapeAccuracy: 2 });
    const exact = planStanding(studyOf(source, { points }));
    expect(exact.findings).toEqual([]);
    expect(exact.standing!.misfits.map(({ name, field }) => [name, field])[2]).toEqual([
      'finish',
      '/site/placing/pairs/2',
    ]);
    const { x, y, z } = points['finish']!;
    const off = planStanding(studyOf(source, { points: { ...points, finish: at(x + 40, y, z) } }));
    expect(off.findings.map(({ code }) => code)).toContain('placing-misfit');
    const sum = off.standing!.misfits.reduce((total, { misfit }) => total + misfit.value ** 2, 0);
    // the best lay shares 40 mm out: less than leaving it where it was, more than none
    expect(sum).toBeLessThan(1600);
    expect(sum).toBeGreaterThan(100);
  });
});

describe('a place on the frame as it stands', () => {
  it('keeps its station where the tube is as wanted, and is the nearest place where it is not', () => {
    const source = sourceOf({ placing: { ...AXES, origin: at(100, 0, 0) } });
    const on = framePlace(stand(source).frame, source.wanted);
    expect(on(place('along', { distance: 123 }))).toMatchObject({ member: 'hoop', station: 123 });
    expect(length(on(place('start'))!.tangent)).toBeCloseTo(1, 12);
    expect(on(place('start', { member: 'nobody' }))).toBeUndefined();
    expect(framePlace(null, source.wanted)(place('start'))).toBeUndefined();
    // the left leg alone, 7 mm to the right of where it was wanted and 50 mm shorter at its foot
    const { start, direction } = source.made[0]!.centreline.pieces[0]!;
    const begins = at(start.x + 7 + 50 * direction.x, start.y + 50 * direction.y, start.z);
    const leg = centrelineFromChain({ point: begins, direction, normal: at(0, 0, 1) }, [
      { kind: 'straight', length: 400 },
    ]);
    const made = [{ name: 'hoop', closed: false, centreline: leg }];
    const moved = framePlace(stand({ ...source, made }).frame, source.wanted);
    expect(moved(place('along', { distance: 123 }))!.station).toBeCloseTo(73, 9);
    expect(moved(place('start'))!.station).toBe(0);
    expect(moved(place('start'))!.point.x).toBeCloseTo(begins.x + 100, 9);
  });
});
