import { describe, expect, it } from 'vitest';
import { coordinatesOf, placeOptions } from '../../web/state/leg-site-place.ts';
import { demoPlan } from './planned-stage.ts';

describe('a place of the site', () => {
  it('goes from a name to the coordinates that it has', () => {
    const site = demoPlan.site!;
    expect(coordinatesOf({ named: 'port cleat' }, site)).toEqual({ x: 0, y: 420, z: 0 });
    expect(coordinatesOf({ named: 'gone' }, site)).toEqual({ x: 0, y: 0, z: 0 });
    const names = [{ value: 'A', words: 'A' }];
    expect(placeOptions(names, 'gone').map(({ value }) => value)).toEqual([null, 'gone', 'A']);
    expect(placeOptions(names, null).map(({ value }) => value)).toEqual([null, 'A']);
  });
});
