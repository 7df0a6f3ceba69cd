/** Section of a weld, its metal and rod, and arc time: computed beforehand. */
import { describe, expect, it } from 'vitest';
import {
  beadOn,
  bevelArea,
  crownArea,
  filletArea,
  filletLeg,
  fusedArea,
  squareArea,
  THIN_BEAD,
  weldArea,
} from '../../server/solver/welding/weld-section.ts';
import { jobWith, settings, welded } from '../solver/welding-frames.ts';

const { groove } = jobWith({}).welding;

describe('section', () => {
  it('1.65 mm, gap 0.5, cap 4 × 0.5, root 3 × 0.4: 2.96 mm²', () => {
    expect(weldArea({ wall: 1.65, gap: 0.5, preparation: 'square-gap', groove }).toFixed(2)).toBe('2.96');
    expect(squareArea({ wall: 1.65, gap: 0.5 }).toFixed(3)).toBe('0.825');
    expect(crownArea(THIN_BEAD.cap) + crownArea(THIN_BEAD.root)).toBeCloseTo((2 / 3) * (2 + 1.2), 12);
  });
  it('a bead is as printed from 1.65 mm on, and as many walls wide on thinner ones', () => {
    for (const wall of [1.65, 2, 6]) expect(beadOn(wall)).toEqual(THIN_BEAD);
    for (const wall of [0.3, 0.8, 1.2]) {
      const { cap, root } = beadOn(wall);
      expect([cap.width / wall, cap.height / wall]).toEqual([
        expect.closeTo(4 / 1.65, 10),
        expect.closeTo(0.5 / 1.65, 10),
      ]);
      expect([root.width / wall, root.height / wall]).toEqual([
        expect.closeTo(3 / 1.65, 10),
        expect.closeTo(0.4 / 1.65, 10),
      ]);
      expect(fusedArea({ wall, gap: 0, preparation: 'square-tight', groove })).toBeCloseTo(
        (3.5 / 1.65) * wall ** 2,
        10,
      );
    }
  });
  it('V, 4 mm, gap 2, land 1, 60°: 13.2 mm²', () => {
    expect(bevelArea({ wall: 4, gap: 2, land: 1, angle: Math.PI / 3 }).toFixed(1)).toBe('13.2');
  });
  it('V with its cap over both edges and its root, by the sum of its parts', () => {
    const bevel = { wall: 4, gap: 2, preparation: 'bevel', groove: { form: 'bevel', angle: 30, land: 1 } } as const;
    const mouth = 2 + 2 * 3 * Math.tan(Math.PI / 6);
    expect(weldArea(bevel)).toBeCloseTo(2 * 4 + 9 * Math.tan(Math.PI / 6) + (2 / 3) * ((mouth + 2) * 0.5 + 1.2), 10);
    expect(fusedArea(bevel).toFixed(1)).toBe('13.2');
  });
  it('a fillet of equal legs: z²/2, and its throat is z/√2', () => {
    expect(filletArea(3)).toBe(4.5);
    expect(filletLeg(3 / Math.SQRT2)).toBeCloseTo(3, 12);
    expect(filletArea(filletLeg(1.65))).toBeCloseTo(1.65 ** 2, 12);
  });
});

it('38.1 × 1.65 with a gap of 0.5: 114.5 mm, 339 mm³, 2.7 g, 168 mm of 1.6 rod, 76 s at 1.5 mm/s', () => {
  const { works, welding } = welded(
    jobWith({ closing: { gap: 0.5 }, welding: settings('butt', { travelSpeed: 1.5, fillerDiameter: 1.6 }) }),
  );
  const weld = welding.welds[0]!;
  expect(weld.length.value.toFixed(1)).toBe('114.5');
  expect((welding.procedures[0]!.area.value * weld.length.value).toFixed(0)).toBe('339');
  // printed as it lies in the weld; the plan has a fifth more to buy
  expect((weld.fillerMass.value / 1.2).toFixed(1)).toBe('2.7');
  expect((weld.fillerLength.value / 1.2).toFixed(0)).toBe('168');
  expect(weld.arcTime.value.toFixed(0)).toBe('76');
  expect(works[0]).toMatchObject({
    length: weld.length.value,
    arcTime: weld.arcTime.value,
    fillerMass: weld.fillerMass.value,
    fillerLength: weld.fillerLength.value,
  });
});
