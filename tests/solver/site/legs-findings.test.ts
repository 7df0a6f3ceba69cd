import { describe, expect, it } from 'vitest';
import type { Leg } from '../../../server/job/leg.ts';
import type { Site } from '../../../server/job/site.ts';
import { describeFinding } from '../../../server/language/finding-words.ts';
import type { Finding } from '../../../server/plan/finding.ts';
import type { SiteSource } from '../../../server/solver/site/laid-site.ts';
import { along, HINGE, hinged, legOf, planned, sourceOf } from './legs-made-up.ts';

const standing = { hinge: HINGE, slopes: [], height: null, swing: null };

function told(changes: Partial<Leg>, site: Partial<Site> = {}, more: Partial<SiteSource> = {}) {
  const { legs, findings } = planned(sourceOf(hinged, { legs: [legOf(changes)], standing, ...site }, more));
  const of = (code: Finding['code']): Finding => {
    const found = findings.find((one) => one.code === code);
    if (found === undefined) throw new Error(`${code} is not among ${findings.map((one) => one.code).join(', ')}`);
    return found;
  };
  return { legs, of, codes: findings.map(({ code }) => code) };
}
const at = (x: number, y: number, z: number): Leg['foot'] => ({ ...legOf().foot, at: { x, y, z } });
const words = (finding: Finding): string => describeFinding(finding, { length: 'mm', fraction: 16 });

describe('a leg that cannot be laid', () => {
  it('without a length', () => {
    const { legs, of } = told({ foot: at(-480, 380, -19.05) });
    expect(of('leg-no-length')).toMatchObject({ grade: 'stop', field: '/site/legs/0', data: { value: 0 } });
    expect(legs).toEqual([]);
  });

  it('with a head on a tube or a point that is not there', () => {
    const missing = told({ head: { ...legOf().head, at: along('boom', 3) } });
    expect(missing.of('site-place-missing').field).toBe('/site/legs/0/head/at');
    expect(missing.legs).toEqual([]);
    const unnamed = told({ head: { ...legOf().head, at: { named: 'nowhere' } } });
    expect(unnamed.of('site-name-missing').field).toBe('/site/legs/0/head/at/named');
  });

  it('with every reason at once', () => {
    const { codes } = told({
      foot: { ...legOf().foot, at: { named: 'nowhere' }, surface: { by: 'thing', thing: 'no wall' } },
      head: { ...legOf().head, at: along('boom', 3) },
    });
    expect(codes.filter((code) => code === 'site-name-missing')).toHaveLength(2);
    expect(codes).toContain('site-place-missing');
  });
});

describe('a head at a point of the site', () => {
  const point = (x: number, y: number, z: number): Partial<Site> => ({
    points: [{ name: 'mark', at: { by: 'typed', point: { x, y, z }, accuracy: null } }],
  });
  const head = { ...legOf().head, at: { named: 'mark' } };

  it('is the nearest place of a tube’s axis', () => {
    const { legs, codes } = told({ head }, point(-480 + 12, 300, -19.05));
    expect(legs[0]!.headPoint).toEqual({ x: -480, y: 300, z: -19.05 });
    expect(legs[0]!.head).toMatchObject({ member: 'rail' });
    expect(legs[0]!.head.station.value).toBeCloseTo(700, 9);
    expect(codes).not.toContain('leg-head-off-tube');
    // along the tube it is as doubtful as the point and where the frame is placed, 2 mm each
    expect(legs[0]!.head.station.band!.plusMinus).toBeCloseTo(Math.hypot(2, 2), 9);
  });

  it('off every tube is told with the nearest place as a way out, which mends it', () => {
    const { legs, of } = told({ head }, point(-480, 300, 40));
    expect(legs).toEqual([]);
    const finding = of('leg-head-off-tube');
    expect(finding.data).toMatchObject({ member: 'rail', high: 19.05 });
    expect(finding.data['value']).toBeCloseTo(59.05, 9);
    expect(finding.wayOut).toEqual({ field: '/site/legs/0/head/at', value: along('rail', 700) });
    expect(told({ head: { ...head, at: along('rail', 700) } }).legs).toHaveLength(1);
  });
});

describe('a leg that cannot be cut', () => {
  it('its surface runs along it', () => {
    const surface = { by: 'axes', vector: { x: 1, y: 0, z: 0.8 } } as const;
    const { legs, of } = told({ foot: { ...legOf().foot, surface } });
    expect(of('leg-along-surface')).toMatchObject({
      grade: 'stop',
      field: '/site/legs/0/foot/surface',
      data: { low: 10 },
    });
    expect(of('leg-along-surface').data['value']).toBeLessThan(10);
    expect(legs).toEqual([]);
  });

  it('the tube runs along it', () => {
    const foot = at(-480, -600, 0);
    expect(told({ foot }).of('leg-head-flat').data['value']).toBeCloseTo((Math.atan(19.05 / 980) * 180) / Math.PI, 9);
    // a fitting turns where it likes
    const eye = { ...legOf().head, end: { end: 'eye', takes: 30 } } as const;
    const surface = { by: 'axes', vector: { x: 0, y: 1, z: 0 } } as const;
    expect(told({ foot: { ...foot, surface }, head: eye }).legs).toHaveLength(1);
  });

  it('its tube is wider than the other', () => {
    const { legs, of } = told({ tube: { outsideDiameter: 48.3, wall: 2 } });
    const field = '/site/legs/0/tube/outsideDiameter';
    expect(of('leg-too-wide')).toMatchObject({
      field,
      data: { value: 48.3, high: 38.1 },
      wayOut: { field, value: 38.1 },
    });
    expect(legs).toEqual([]);
    expect(told({ tube: { outsideDiameter: 38.1, wall: 2 } }).legs).toHaveLength(1);
  });

  it('its tube has no bore', () => {
    const { legs, of } = told({ tube: { outsideDiameter: 20, wall: 10 } });
    expect(of('wall-over-half-diameter').field).toBe('/site/legs/0/tube/wall');
    expect(legs).toEqual([]);
  });

  it('nothing is left of it, or of its adjustment', () => {
    const short = told({ foot: at(-480, 380, -34) });
    expect(short.of('leg-short')).toMatchObject({ grade: 'stop', field: '/site/legs/0' });
    expect(short.of('leg-short').data['value']).toBeLessThan(0);
    expect(short.legs).toEqual([]);
    const long = told({ adjust: { by: 'thread', adds: 800, travel: 10 } });
    expect(long.of('leg-adjust-long')).toMatchObject({ grade: 'stop', data: { value: 800 } });
    expect(long.of('leg-adjust-long').data['high']).toBeLessThan(800);
    expect(long.legs).toEqual([]);
  });

  it('its adjustment is to go further in than it adds', () => {
    const { legs, of } = told({ adjust: { by: 'slip', adds: 20, travel: 30 } });
    const field = '/site/legs/0/adjust/travel';
    expect(of('leg-adjust-travel')).toMatchObject({
      grade: 'stop',
      field,
      data: { value: 30, high: 20 },
      wayOut: { field, value: 20 },
    });
    expect(legs).toEqual([]);
    expect(told({ adjust: { by: 'slip', adds: 0, travel: 1 } }).of('leg-adjust-travel').wayOut).toBeNull();
    const right = told({ adjust: { by: 'slip', adds: 20, travel: 20 } });
    expect(right.legs).toHaveLength(1);
  });

  it('is called as another: both are cut, and it is told at the second’s name', () => {
    const { legs, of, codes } = told({}, { legs: [legOf(), legOf({ name: 'other' }), legOf()] });
    expect(of('site-name-twice')).toMatchObject({ field: '/site/legs/2/name', data: { name: 'leg' } });
    expect(codes.filter((code) => code === 'site-name-twice')).toHaveLength(1);
    expect(legs).toHaveLength(3);
  });
});

describe('a leg that is to be looked at', () => {
  it('shorter than it is wide', () => {
    const { legs, of } = told({ foot: at(-480, 380, -65) });
    expect(of('leg-stubby')).toMatchObject({ grade: 'caution', field: '/site/legs/0', data: { low: 38.1 } });
    expect(words(of('leg-stubby'))).not.toContain('adjustment takes');
    expect(legs).toHaveLength(1);
  });

  it('shorter than it is wide by its adjustment, which is named', () => {
    const adds = told({}).legs[0]!.shortest.value - 20;
    const { legs, of } = told({ adjust: { by: 'thread', adds, travel: 10 } });
    expect(of('leg-stubby')).toMatchObject({ field: '/site/legs/0/adjust/adds', data: { adds, low: 38.1 } });
    expect(of('leg-stubby').data['value']).toBeCloseTo(legs[0]!.shortest.value, 9);
    expect(words(of('leg-stubby'))).toMatch(/Its adjustment takes \d+\.\d mm of it\./);
  });

  it('rocks on a square foot, and is mended by a mitre', () => {
    const foot = { ...legOf().foot, end: { end: 'square', plate: 0 } } as const;
    const { legs, of } = told({ foot });
    const finding = of('leg-square-rocks');
    expect(finding.data['value']).toBeCloseTo(38.1 * Math.sin((legs[0]!.foot.tilt.value * Math.PI) / 180), 9);
    expect(finding.wayOut).toEqual({ field: '/site/legs/0/foot/end/end', value: 'mitre' });
    expect(told({}).codes).not.toContain('leg-square-rocks');
    expect(told({ foot: { ...foot, at: { x: -480, y: 380, z: -610 } } }).codes).not.toContain('leg-square-rocks');
  });

  it('hangs over the end of its tube', () => {
    const head = (distance: number): Partial<Leg> => ({
      foot: at(-480, distance - 400, -610),
      head: { ...legOf().head, at: along('rail', distance) },
    });
    expect(told(head(890)).of('leg-over-end').data['value']).toBeCloseTo(9.05, 9);
    expect(told(head(5)).of('leg-over-end').data['value']).toBeCloseTo(14.05, 9);
    expect(told(head(880)).codes).not.toContain('leg-over-end');
    // slanting, its acute side reaches further: towards the start where the leg leans away from it
    const leaning = { ...head(30), foot: at(-480, -700, -350) };
    expect(told(leaning).codes).toContain('leg-over-end');
    expect(told({ ...leaning, foot: at(-480, -40, -350) }).codes).not.toContain('leg-over-end');
  });

  it('is known too badly for its adjustment, and says what to measure again', () => {
    const adjust = { by: 'thread', adds: 30, travel: 1 } as const;
    const { legs, of } = told({ adjust }, { tapeAccuracy: 0.01, ...badlyKnown });
    const [leg] = legs;
    expect(of('leg-outside-adjustment').data).toMatchObject({ high: 1, value: leg!.cutLength.band!.plusMinus });
    const again = of('leg-measure-again');
    expect(again).toMatchObject({ grade: 'caution', data: { doubt: 'point-named', which: 'pile', high: 1 } });
    expect(leg!.measureAgain).toMatchObject({ from: 'point', name: 'pile', field: '/site/points/0/at/point/z' });
    expect(words(again)).toMatch(/Cut leg at 7\d\d\.\d mm, ± 5\.06 mm; the point pile accounts for/);
    expect(words(again)).toContain('The ± is 5.06 mm; at most 1.00 mm.');
    // known well, nothing is said
    expect(told({ adjust }, { tapeAccuracy: 0.01 }).codes).not.toContain('leg-measure-again');
  });

  it('is not on the weld and purge sheet, which is said once of all that have a weld', () => {
    const { legs, codes, of } = told({}, { legs: [legOf(), legOf()] });
    expect(legs).toHaveLength(2);
    expect(codes.filter((code) => code === 'legs-not-purged')).toHaveLength(1);
    expect(of('legs-not-purged').data).toEqual({ value: 2 });
    expect(told({}, { legs: [] }).codes).not.toContain('legs-not-purged');
    const eye = legOf({ head: { ...legOf().head, end: { end: 'eye', takes: 20 } } });
    expect(told({}, { legs: [eye] }).codes).not.toContain('legs-not-purged');
  });
});

/** A foot on a point that was measured to 5 mm. */
const badlyKnown: Partial<Site> = {
  points: [{ name: 'pile', at: { by: 'typed', point: { x: 0, y: 420, z: -610 }, accuracy: 5 } }],
  legs: [
    legOf({
      foot: { ...legOf().foot, at: { named: 'pile' } },
      adjust: { by: 'thread', adds: 30, travel: 1 },
    }),
  ],
};
