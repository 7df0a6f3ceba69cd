import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import {
  freeName,
  freshName,
  isNameWanted,
  nameAtField,
  nameOptions,
  namesIn,
  placesOfName,
  siteName,
  withName,
} from '../../web/state/site-names.ts';
import { freshSitePoint } from '../../web/state/site-points.ts';
import { withSite } from './made-up-site.ts';
import { namedSite, typedPoint } from './named-site.ts';
import { demo } from './planned-stage.ts';

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
    expect(freeName('port leg', ['leg 1'])).toBe('port leg');
    expect(freeName('port leg', ['port leg', 'port leg 2'])).toBe('port leg 3');
    const names = namesIn('points', namedSite.site, (index) => index < 2);
    expect(nameOptions(names, 'gone').map(({ value }) => value)).toEqual(['gone', 'A', 'B']);
  });

  it('are the kind and the number of what bears none, wherever it is spoken of', () => {
    const [leg] = demo.site.legs;
    const { site } = withSite(
      {
        points: [...demo.site.points, { name: '', at: typedPoint(0, 0, 0) }],
        legs: [leg!, { ...leg!, name: '' }],
      },
      demo,
    );
    const last = site.points.length;
    expect([siteName('legs', '', 1), siteName('things', 'pile', 1)]).toEqual(['leg 2', 'pile']);
    expect(namesIn('points', site).at(-1)).toEqual({ value: '', words: `point ${String(last)}` });
    expect(nameAtField(site, `/site/points/${String(last - 1)}/at/point/x`)).toBe(`point ${String(last)}`);
    expect([nameAtField(site, '/site/legs/0/foot/at'), nameAtField(site, '/site/level/sets/0')]).toEqual([
      leg!.name,
      '',
    ]);
    for (const { words } of nameOptions(namesIn('points', site), 'gone')) expect(words).not.toBe('');
    expect(nameOptions([], '')[0]!.words).toBe('not chosen');
  });

  it('are asked for where something refers to what has none', () => {
    const points = [{ name: '', at: typedPoint(0, 0, 0) }];
    const alone = withSite({ points });
    const used = withSite({
      points,
      placing: { ...alone.site.placing, origin: { named: '' } } as Job['site']['placing'],
    });
    expect([isNameWanted(alone, 'point'), isNameWanted(used, 'point'), isNameWanted(used, 'thing')]).toEqual([
      false,
      true,
      false,
    ]);
  });
});
