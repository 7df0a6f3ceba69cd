import { describe, expect, it } from 'vitest';
import { bandName } from '../../../server/language/en/inputs.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import type { LaidSite, SiteDoubt } from '../../../server/solver/site/laid-site.ts';
import {
  bandOfParts,
  doubtOf,
  doubtParts,
  readEach,
  signedChanges,
  siteBand,
  type SiteStudy,
  type VariedSite,
} from '../../../server/solver/site/site-study.ts';
import { sizeBand } from '../../../server/solver/site/size-band.ts';
import { faultsOf } from '../figures-in.ts';
import { sourceOf, studyOf } from './standing-site.ts';

const plain = studyOf(sourceOf());

type Off = Partial<SiteDoubt> & { readonly to: number | null; readonly off?: number };

/** A study of one number, which each doubtful value takes elsewhere; null: that site lacks it. */
function numbered(exact: number, ...all: readonly Off[]) {
  const values = new Map<LaidSite, number | null>([[plain.laid, exact]]);
  const varied = all.map(({ to, off, ...of }, index): VariedSite => {
    const doubt = { field: `/it/${String(index)}`, plusMinus: 2, from: 'point' as const, name: 'A', ...of };
    const laid = { ...plain.laid };
    values.set(laid, to);
    return { doubt, off: off ?? doubt.plusMinus, laid };
  });
  const study: SiteStudy = { ...plain, varied };
  return { study, pick: (laid: LaidSite) => values.get(laid) ?? undefined, values };
}

describe('the ± of a number', () => {
  it('is the root of the sum of the squared changes', () => {
    const { study, pick } = numbered(10, { to: 13 }, { to: 6, from: 'level', name: '' });
    expect(siteBand(study, pick)).toEqual({ plusMinus: 5, from: ['site-level', 'site-point'] });
  });

  it('is none where it is rounding', () => {
    const { study, pick } = numbered(10, { to: 10 + 9e-7 });
    expect(siteBand(study, pick)).toBeNull();
    expect(bandOfParts([])).toBeNull();
  });

  it('names what makes up a thousandth of it, and the foot of a leg for what it is', () => {
    const foot = { from: 'point' as const, name: 'leg', field: '/site/legs/0/foot/at/x' };
    const { study, pick } = numbered(0, { to: 1, ...foot }, { to: 5e-4, from: 'level' }, { to: 0.01, from: 'thing' });
    expect(siteBand(study, pick)!.from).toEqual(['site-foot', 'site-thing']);
    expect(bandName('site-foot')).toBe('where the legs stand');
    const surface = { from: 'thing' as const, field: '/site/legs/0/foot/surface/ahead' };
    const other = numbered(0, { to: 1, ...surface });
    expect(siteBand(other.study, other.pick)!.from).toEqual(['site-surface']);
  });

  it('does not take for sure what the varied site lacks: the other way is asked', () => {
    const { study, pick, values } = numbered(10, { to: null });
    const laid = { ...plain.laid };
    values.set(laid, 7);
    const varied = study.varied.map((one) => ({ ...one, otherWay: () => ({ off: -2, laid }) }));
    expect(siteBand({ ...study, varied }, pick)!.plusMinus).toBe(3);
    expect(readEach({ ...study, varied }, pick)).toMatchObject([{ value: 7, off: -2 }]);
    // off downwards by 2 it is 3 less
    expect(signedChanges({ ...study, varied }, pick)).toEqual([3]);
  });

  it('says that something is left out where both ways lack it', () => {
    const { study, pick } = numbered(10, { to: null }, { to: 12, from: 'level' });
    expect(siteBand(study, pick)).toEqual({ plusMinus: 2, from: ['site-level', 'site-left-out'] });
    const alone = numbered(10, { to: null });
    expect(siteBand(alone.study, alone.pick)).toEqual({ plusMinus: 0, from: ['site-left-out'] });
    expect(bandName('site-left-out')).toBe('less what cannot be told');
  });

  it('is given what a value was taken off by', () => {
    const { study } = numbered(0, { to: 1, off: -2, field: '/it' });
    expect(readEach(study, (_, off) => off('/it'))).toMatchObject([{ value: -2 }]);
    expect(readEach(study, (_, off) => off('/other'))).toMatchObject([{ value: 0 }]);
  });
});

describe('a part of a ±', () => {
  const { study, pick } = numbered(0, { to: 3, unit: 'deg' }, { to: -4, field: '/most' }, { to: 12, from: 'level' });
  const [level, point] = doubtParts(study, pick);

  it('is one for each source, with the value that does most, largest first', () => {
    expect(level).toMatchObject({ from: 'level', plusMinus: 12 });
    expect(point).toMatchObject({ from: 'point', name: 'A', plusMinus: 5, field: '/most' });
  });

  it('comes with what each value moves the number by, which its formula adds up to', () => {
    const { plusMinus } = doubtOf(point!, 'mm');
    expect(plusMinus.working.formula).toBe('± = √(c₁² + c₂²), c₁ by q₁, c₂ by q₂');
    expect(plusMinus.working.inputs.map(({ symbol, value, unit }) => [symbol, value, unit])).toEqual([
      ['c₁', 4, 'mm'],
      ['q₁', 2, 'mm'],
      ['c₂', 3, 'mm'],
      ['q₂', 2, 'deg'],
    ]);
    expect(plusMinus.working.sources).toEqual(['site-first-order']);
    expect(faultsOf(plusMinus)).toEqual([]);
  });

  it('lists the largest of many, and the others together', () => {
    const many = numbered(0, ...[1, 2, 3, 4, 5, 6].map((to) => ({ to })));
    const { plusMinus } = doubtOf(doubtParts(many.study, many.pick)[0]!, 'mm');
    const terms = plusMinus.working.inputs.filter(({ symbol }) => symbol !== 'r' && symbol.startsWith('c'));
    expect(terms.map(({ value }) => value)).toEqual([6, 5, 4, 3]);
    const rest = plusMinus.working.inputs.find(({ symbol }) => symbol === 'r')!;
    expect(Math.hypot(rest.value, ...terms.map(({ value }) => value))).toBeCloseTo(plusMinus.value, 12);
    expect(faultsOf(plusMinus)).toEqual([]);
  });

  it('that is no value of the site is its own', () => {
    const { plusMinus } = doubtOf({ from: 'cutting', name: '', field: '', plusMinus: 0.8 }, 'mm');
    expect(plusMinus.working.inputs).toMatchObject([{ symbol: 'c₁', value: 0.8 }]);
    expect(faultsOf(plusMinus)).toEqual([]);
  });
});

describe('the ± of a size', () => {
  /** A vector that each doubtful value moves by one of these. */
  const moved = (exact: Vector3, ...changes: readonly Vector3[]) => {
    const vectors = new Map<LaidSite, Vector3>([[plain.laid, exact]]);
    const varied = changes.map((change, index): VariedSite => {
      const laid = { ...plain.laid };
      vectors.set(laid, { x: exact.x + change.x, y: exact.y + change.y, z: exact.z + change.z });
      const doubt = { field: `/it/${String(index)}`, plusMinus: 1, from: 'point' as const, name: '' };
      return { doubt, off: 1, laid };
    });
    return sizeBand({ ...plain, varied }, (laid) => vectors.get(laid))?.plusMinus;
  };
  const at = (x: number, y = 0, z = 0): Vector3 => ({ x, y, z });

  it.each([0, 0.01, 0.1, 0.19, 0.21, 1, 90])('does not shrink where it is %d', (size) =>
    expect(moved(at(size), at(-0.2))).toBeCloseTo(0.2, 12),
  );

  it('is along the way of the doubts where they are larger', () =>
    expect(moved(at(0.001), at(0, 0.3), at(0, 0, 0.1))).toBeCloseTo(0.3, 12));

  it('of a long one is what its length changes by', () => expect(moved(at(12), at(0, 5))).toBeCloseTo(1, 12));
});
