import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Hoop } from '../../server/job/frame.ts';
import type { Reference } from '../../server/job/quantities.ts';
import { readHoop } from './read-hoop.ts';
import { hoopFrame } from '../../server/solver/frame/hoop-frame.ts';
import { placeAt, type Centreline } from '../../server/solver/geometry/centreline.ts';

const sizes = fc.record({
  width: fc.double({ min: 400, max: 2000, noNaN: true }),
  leg: fc.double({ min: 400, max: 1500, noNaN: true }),
  diameter: fc.double({ min: 12, max: 60, noNaN: true }),
  radius: fc.double({ min: 61, max: 190, noNaN: true }),
  crown: fc.option(fc.double({ min: 1100, max: 20_000, noNaN: true }), { nil: null }),
});
type Sizes = typeof sizes extends fc.Arbitrary<infer T> ? T : never;

type Asked = Pick<Hoop, 'width' | 'leftLeg' | 'rightLeg' | 'crossbar'> & Partial<Pick<Hoop, 'widthAtFeet'>>;

const hoopOf = (asked: Asked, context: { outsideDiameter: number; cornerRadius: number }) =>
  hoopFrame({ shape: 'hoop', widthAtFeet: null, innerCrossbars: [], ...asked }, { ...context, root: '/frame' });

function drawn(asked: Asked, context: { outsideDiameter: number; cornerRadius: number }): Centreline {
  const result = hoopOf(asked, context);
  if ('failure' in result) throw new Error(result.failure);
  return result.members[0]!.centreline;
}

function hoopAs(size: Sizes, reference: Reference): Centreline {
  const side = reference === 'outside' ? 1 : reference === 'inside' ? -1 : 0;
  const half = (side * size.diameter) / 2;
  const height = (offset: number) =>
    size.crown === null ? offset : Math.sqrt((size.crown + offset) ** 2 - (size.width / 2 + offset) ** 2);
  const leg = { value: size.leg + height(half) - height(0), reference };
  const crossbar: Hoop['crossbar'] =
    size.crown === null ? { form: 'straight' } : { form: 'crowned', radius: size.crown };
  return drawn(
    { width: { value: size.width + 2 * half, reference }, leftLeg: leg, rightLeg: leg, crossbar },
    { outsideDiameter: size.diameter, cornerRadius: size.radius },
  );
}

describe('a hoop', () => {
  it('typed over the outside, centre to centre and inside to inside is one hoop', () => {
    fc.assert(
      fc.property(sizes, (size) => {
        const centre = hoopAs(size, 'centre');
        for (const reference of ['outside', 'inside'] as const) {
          const other = hoopAs(size, reference);
          expect(other.pieces).toHaveLength(centre.pieces.length);
          for (const [index, piece] of other.pieces.entries()) {
            expect(Math.abs(piece.length - centre.pieces[index]!.length)).toBeLessThan(1e-8);
          }
        }
      }),
    );
  });

  it('ends at the right foot, its legs parallel and as wide as asked', () => {
    fc.assert(
      fc.property(sizes, (size) => {
        const hoop = hoopAs(size, 'centre');
        const foot = placeAt(hoop, hoop.length)!;
        expect(Math.abs(foot.point.x - size.width / 2)).toBeLessThan(1e-8);
        expect(Math.abs(foot.point.y + size.leg)).toBeLessThan(1e-8);
        expect(Math.abs(foot.tangent.y + 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it('with splayed legs measures what was asked where it was asked', () => {
    const splay = fc.tuple(
      sizes,
      fc.double({ min: 0.93, max: 1.15, noNaN: true }),
      fc.double({ min: 1, max: 1.4, noNaN: true }),
    );
    fc.assert(
      fc.property(splay, ([short, share, longer]) => {
        // legs long enough for the splay: below that the answer is a finding
        const size = { ...short, leg: short.leg + 250 };
        const asked: Asked = {
          width: { value: size.width, reference: 'centre' },
          widthAtFeet: { value: size.width * share, reference: 'centre' },
          leftLeg: { value: size.leg, reference: 'centre' },
          rightLeg: { value: size.leg * longer, reference: 'centre' },
          crossbar: size.crown === null ? { form: 'straight' } : { form: 'crowned', radius: size.crown },
        };
        const read = readHoop(drawn(asked, { outsideDiameter: size.diameter, cornerRadius: size.radius }))!;
        expect(Math.abs(read['width-at-corners'] - size.width)).toBeLessThan(1e-8);
        expect(Math.abs(read['width-at-feet'] - size.width * share)).toBeLessThan(1e-8);
        expect(Math.abs(read['left-leg'] - size.leg)).toBeLessThan(1e-8);
        expect(Math.abs(read['right-leg'] - size.leg * longer)).toBeLessThan(1e-8);
      }),
    );
  });
});

describe('a hoop that cannot be', () => {
  const base = { width: { value: 800, reference: 'centre' }, leftLeg: { value: 600, reference: 'centre' } } as const;
  it.each([
    ['width-short-for-bends', { ...base, width: { value: 200, reference: 'centre' } } as const, 200, 240],
    ['leg-short-for-bend', { ...base, leftLeg: { value: 100, reference: 'centre' } } as const, 100, 120],
    ['width-under-tube', { ...base, width: { value: 30, reference: 'outside' } } as const, -8.1, 38.1],
  ])('%s', (failure, sizesAsked, value, low) => {
    const result = hoopOf(
      { ...sizesAsked, rightLeg: base.leftLeg, crossbar: { form: 'straight' } },
      { outsideDiameter: 38.1, cornerRadius: 120 },
    );
    expect(result).toMatchObject({ failure, low });
    expect((result as { value: number }).value).toBeCloseTo(value, 9);
  });
});
