// A leg computed beforehand, printed to 1e-3 mm and 1e-3 mm a degree: hinge on the y axis at the origin, head at
// (−480, 380, −19.05), foot at (0, 420, −610).
import { describe, expect, it } from 'vitest';
import { HINGE, hinged, legOf, planned, sourceOf } from '../solver/site/legs-made-up.ts';

const standing = { hinge: HINGE, slopes: [], height: null, swing: null };
const { legs } = planned(sourceOf(hinged, { legs: [legOf()], standing }));
const leg = legs[0]!;

describe('a leg under a hinged frame', () => {
  it('from foot to head', () => {
    expect(leg.headPoint.x).toBeCloseTo(-480, 9);
    expect(leg.headPoint.y).toBeCloseTo(380, 9);
    expect(leg.headPoint.z).toBeCloseTo(-19.05, 9);
    expect(leg.centreLength.value.toFixed(3)).toBe('762.379');
  });

  it('for one degree of slope', () => {
    expect(leg.perDegree!.value.toFixed(3)).toBe('6.703');
  });

  it('and as much where the frame is turned by a degree and the leg measured again', () => {
    const turned = (degrees: number): number => {
      const angle = (degrees * Math.PI) / 180;
      const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
      const site = {
        legs: [legOf()],
        standing,
        placing: {
          by: 'axes' as const,
          origin: { x: 0, y: 0, z: 0 },
          x: { x: cosine, y: 0, z: -sine },
          y: { x: 0, y: 1, z: 0 },
        },
      };
      return planned(sourceOf(hinged, site)).legs[0]!.centreLength.value;
    };
    expect((turned(0.5) - turned(-0.5)).toFixed(3)).toBe('6.703');
  });
});
