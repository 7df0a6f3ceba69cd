import { describe, expect, it } from 'vitest';
import { freshName, placesOfName, withName } from '../../web/state/site-names.ts';
import { freshSitePoint, nameOptions } from '../../web/state/site-points.ts';
import { withSite } from './made-up-site.ts';
import { namedSite, typedPoint } from './named-site.ts';

describe('names of the site', () => {
  it('take along what names them, and nothing that only sounds alike', () => {
    const places = placesOfName(namedSite, 'point', 'A');
    expect(places).toEqual([
      '/site/points/2/at/distances/0/from',
      '/site/things/0/shape/at/named',
      '/site/things/0/shape/axis/from',
      '/site/things/1/shape/plane/points/2',
    ]);
    const renamed = withName(namedSite, ['/site/points/0/name', ...places], 'step');
    expect(placesOfName(renamed, 'point', 'step')).toEqual(places);
    expect([renamed.site.directions[0]!.name, renamed.site.things[2]!.name]).toEqual(['A', 'A']);
    expect(placesOfName(namedSite, 'thing', 'post')).toEqual([
      '/site/points/2/at/on',
      '/site/directions/0/direction/thing',
    ]);
  });

  it('leave everything as it is where two bear the name', () => {
    const twice = withSite({ points: [...namedSite.site.points, { name: 'A', at: typedPoint(1, 1, 1) }] }, namedSite);
    expect(placesOfName(twice, 'point', 'A')).toEqual([]);
  });

  it('are new ones for new rows', () => {
    expect(freshName('point', ['point 1', 'point 3', 'mast'])).toBe('point 2');
    expect(freshSitePoint(namedSite.site).name).toBe('point 1');
    expect(nameOptions(['A', 'B'], 'gone').map(({ value }) => value)).toEqual(['gone', 'A', 'B']);
  });
});
