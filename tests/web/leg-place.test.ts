import { describe, expect, it } from 'vitest';
import type { TubePlace } from '../../server/job/tube-place.ts';
import { plan } from '../../server/solver/plan.ts';
import { roughPlace, twinPlace } from '../../web/state/leg-place.ts';
import { hoop } from './made-up-site.ts';

describe('places of a tube and their twins', () => {
  const member = plan(hoop).frame!.members[0]!;
  const at = (spot: TubePlace['spot'], number = 1): TubePlace => ({
    member: member.name,
    spot,
    number,
    distance: 0,
  });

  it('are counted from the other end, and one in the middle has none', () => {
    expect(twinPlace(at('start'), member)).toMatchObject({ spot: 'finish' });
    expect(twinPlace(at('bend-start', 1), member)).toMatchObject({ spot: 'bend-end', number: 2 });
    expect(twinPlace(at('corner', 2), member)).toMatchObject({ spot: 'corner', number: 1 });
    const middle = (member.pieces.length + 1) / 2;
    expect(twinPlace(at('middle', middle), member)).toBeNull();
    expect(twinPlace(at('start'), { ...member, closed: true })).toBeNull();
  });

  it('lie where the frame has them, each the other’s image on a hoop', () => {
    for (const spot of ['start', 'bend-start', 'corner', 'middle'] as const) {
      const place = roughPlace(at(spot), member)!;
      const twin = roughPlace(twinPlace(at(spot), member)!, member)!;
      if (spot !== 'corner') expect(twin.x).toBeCloseTo(-place.x, 6);
      expect(Number.isFinite(twin.y)).toBe(true);
    }
    const along = (distance: number) => roughPlace({ spot: 'along', number: 1, distance }, member)!;
    expect(along(0)).toEqual(roughPlace(at('start'), member));
    expect(along(1e6)).toEqual(roughPlace(at('finish'), member));
    expect(roughPlace(at('bend-end', 9), member)).toBeUndefined();
  });
});
