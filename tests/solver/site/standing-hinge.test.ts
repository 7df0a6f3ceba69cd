import { describe, expect, it } from 'vitest';
import { length, subtract } from '../../../server/solver/geometry/vector.ts';
import { framePlace } from '../../../server/solver/site/standing/frame-place.ts';
import { planStanding } from '../../../server/solver/site/standing/plan-standing.ts';
import {
  at,
  place,
  sourceOf,
  stand,
  studyOf,
  AXES,
  HINGE,
  standing,
  slope,
  EDGE,
  EDGE_HINGE,
  codes,
} from './standing-site.ts';

describe('a frame on a hinge', () => {
  const FOOT = at(0, 420, -610);
  const legAt = (angle: number): number => {
    const source = sourceOf(
      { placing: AXES, ...standing({ hinge: EDGE_HINGE, slopes: [slope(at(-1, 0, 0), angle)] }) },
      EDGE,
    );
    const { frame, findings } = stand(source);
    expect(findings).toEqual([]);
    const head = framePlace(frame, source.wanted)(place('finish', { member: 'arm' }))!;
    return length(subtract(head.point, FOOT));
  };

  it('moves the head of a leg as the handbook has it: 762.379 mm, and 6.703 mm for a degree', () => {
    expect(legAt(0).toFixed(3)).toBe('762.379');
    expect((legAt(0.5) - legAt(-0.5)).toFixed(3)).toBe('6.703');
  });

  it('turns right-handed about the hinge, from its first place to its second', () => {
    // about +y, −x rises
    const source = sourceOf(
      { placing: AXES, ...standing({ hinge: EDGE_HINGE, slopes: [slope(at(-1, 0, 0), 10)] }) },
      EDGE,
    );
    const { frame } = stand(source);
    expect(frame!.turn * (180 / Math.PI)).toBeCloseTo(10, 12);
    expect(frame!.hinge!.axis).toEqual(at(0, 1, 0));
    const { standing: plan } = planStanding(studyOf(source));
    expect(plan!.turn!.value).toBeCloseTo(10, 12);
  });

  it('counts a slope against level where it is asked against level', () => {
    const up = at(Math.sin(0.05), 0, Math.cos(0.05));
    const asked = slope(at(-1, 0, 0), 3, 'level');
    const source = sourceOf({ placing: AXES, ...standing({ hinge: EDGE_HINGE, slopes: [asked] }) }, EDGE);
    const { slopes } = planStanding(studyOf(source, { up })).standing!;
    expect(slopes[0]).toMatchObject({ field: '/site/standing/slopes/0', axis: 'asked' });
    expect(slopes[0]!.toLevel.value).toBeCloseTo(3, 10);
    expect(slopes[0]!.toStructure.value).toBeCloseTo(3 + 0.05 * (180 / Math.PI), 10);
    expect(slopes.map(({ axis }) => axis)).toEqual(['asked', 'x', 'y']);
    // its x runs the other way
    expect(slopes[1]!.toLevel.value).toBeCloseTo(-3, 10);
  });

  it('says which slopes and heights it can come to', () => {
    // at 45° to the hinge a direction rises to 45° at the most
    const steep = sourceOf({ ...standing({ hinge: EDGE_HINGE, slopes: [slope(at(-1, 1, 0), 60)] }) }, EDGE);
    const [tooSteep] = stand(steep).findings;
    expect(tooSteep).toMatchObject({ code: 'slope-not-reached', field: '/site/standing/slopes/0/angle' });
    expect(tooSteep!.data).toMatchObject({
      value: 60,
      low: expect.closeTo(-45, 9) as number,
      high: expect.closeTo(45, 9) as number,
    });
    expect(planStanding(studyOf(steep)).standing!.turn).toBeNull();
    const height = {
      at: place('finish', { member: 'arm' }),
      over: at(0, 0, -100),
      value: 700,
      to: 'structure' as const,
    };
    const high = sourceOf({ ...standing({ hinge: EDGE_HINGE, height }) }, EDGE);
    const [tooHigh] = stand(high).findings;
    const reach = Math.hypot(480, 19.05);
    expect(tooHigh).toMatchObject({ code: 'height-not-reached', field: '/site/standing/height/value' });
    expect(tooHigh!.data['low']).toBeCloseTo(100 - reach, 9);
    expect(tooHigh!.data['high']).toBeCloseTo(100 + reach, 9);
  });

  it('has one thing to choose: a second slope and a height are what follows', () => {
    const height = { at: place('finish', { member: 'arm' }), over: at(0, 0, -10), value: 5, to: 'structure' as const };
    const slopes = [slope(at(-1, 0, 0), 30), slope(at(-1, 1, 0), 1)];
    const { findings } = stand(sourceOf({ ...standing({ hinge: EDGE_HINGE, slopes, height }) }, EDGE));
    expect(findings.map(({ code, grade, field }) => [code, grade, field])).toEqual([
      ['slope-needs-no-second', 'caution', '/site/standing/slopes/1'],
      ['height-follows', 'caution', '/site/standing/height'],
    ]);
    expect(findings[0]!.data['value']).toBeCloseTo((Math.asin(0.5 / Math.SQRT2) * 180) / Math.PI, 9);
    // 480 mm out rises by half, 19.05 mm down by the cosine
    expect(findings[1]!.data['value']).toBeCloseTo(240 - 19.05 * Math.cos(Math.PI / 6) + 10, 9);
  });

  it('says so where it could turn either way', () => {
    const upright = sourceOf({ ...standing({ hinge: EDGE_HINGE, slopes: [slope(at(0, 0, 1), 80)] }) }, EDGE);
    const { frame, findings } = stand(upright);
    expect(findings[0]).toMatchObject({ code: 'standing-either-way', grade: 'caution' });
    expect(findings[0]!.data['value']).toBeCloseTo(-10, 9);
    expect(frame!.turn).toBeGreaterThan(0);
  });

  it('needs a hinge with a length, on places that there are', () => {
    const start = place('start');
    expect(codes(sourceOf({ ...standing({ hinge: { from: start, to: place('along', { distance: 0.5 }) } }) }))).toEqual(
      [['hinge-too-short', 'stop', '/site/standing/hinge']],
    );
    expect(codes(sourceOf({ ...standing({ hinge: { from: start, to: place('corner', { number: 3 }) } }) }))).toEqual([
      ['site-place-missing', 'stop', '/site/standing/hinge/to'],
    ]);
    const swing = { from: -10, to: 20 };
    const loose = planStanding(studyOf(sourceOf({ ...standing({ swing }) })));
    expect(loose.findings).toMatchObject([
      { code: 'swing-without-hinge', grade: 'caution', field: '/site/standing/swing' },
    ]);
    expect(planStanding(studyOf(sourceOf({ ...standing({ hinge: HINGE, swing }) }))).findings).toEqual([]);
  });
});
