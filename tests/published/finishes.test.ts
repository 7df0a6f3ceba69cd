/**
 * Surfaces: EN 10088-2, table 6 (quoted by a stockholder); ASTM A480 (from memory); roughness of a 240 grit belt (trade
 * article). Minutes for a joint: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { Finish } from '../../server/job/finish.ts';
import { newJob } from '../../server/job/default-job.ts';
import { roughestOf, ROUGHEST_BY_THE_SEA, surfaceOf } from '../../server/solver/finish/surfaces.ts';
import { finishMinutes } from '../../server/solver/finish/finish-minutes.ts';
import { weldSite } from '../solver/made-up-welds.ts';

it.each([
  ['brushed', '1J/2J', 'No. 4', '0.2', '1.0'],
  ['satin', '1K/2K', 'No. 4', '0.3', '0.5'],
  ['mirror', '1P/2P', 'No. 8', '0.0', '0.1'],
] as const)('%s is %s, %s, Ra %s to %s', (key, designation, american, low, high) => {
  const surface = surfaceOf(key);
  expect([surface.designation, surface.american]).toEqual([designation, american]);
  const { value, band, unit } = surface.roughness!;
  expect(unit).toBe('um');
  expect((value - band!.plusMinus).toFixed(1)).toBe(low);
  expect((value + band!.plusMinus).toFixed(1)).toBe(high);
  expect(roughestOf(key)?.toFixed(1)).toBe(high);
});
it('a tube as it came has no roughness of its own', () => {
  expect(surfaceOf('as-delivered')).toEqual({ designation: '', american: '', roughness: null });
});
it('0.5 µm is the most near the sea, which satin keeps and brushed may not', () => {
  expect(ROUGHEST_BY_THE_SEA).toBe(0.5);
  expect(roughestOf('satin')).toBeLessThanOrEqual(ROUGHEST_BY_THE_SEA);
  expect(roughestOf('brushed')).toBeGreaterThan(ROUGHEST_BY_THE_SEA);
});

describe('minutes for a butt, blending twice for a saddle, which is not ground flush', () => {
  const range = (surface: Finish['surface'], form: 'butt' | 'saddle', kind: 'flush' | 'surface') => {
    const finish: Finish = { ...newJob('hoop').finish, treatment: 'flush', surface };
    const { value, band } = finishMinutes(finish, [{ site: weldSite('1', form) }]).minutes[0]![kind];
    const open = band?.plusMinus ?? 0;
    return [value - open, value + open];
  };
  it.each([
    ['flush', 'satin', 3, 6],
    ['surface', 'satin', 6, 12],
    ['surface', 'mirror', 15, 30],
  ] as const)('%s, %s: %d to %d', (kind, surface, low, high) => {
    expect(range(surface, 'butt', kind)).toEqual([low, high]);
    expect(range(surface, 'saddle', 'surface')).toEqual(range(surface, 'butt', 'surface').map((time) => 2 * time));
    expect(range(surface, 'saddle', 'flush')).toEqual([0, 0]);
  });
});
