import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { legsCsv } from '../../server/exports/legs-csv.ts';
import { newJob } from '../../server/job/default-job.ts';
import type { Finding } from '../../server/plan/finding.ts';
import { inputOf } from './made-up-frames.ts';
import { onShore, sited, tooThick } from './made-up-site.ts';
import { readCsv } from './read-csv.ts';

const ROLL = 'roll, foot (long side) to head (deepest cut), clockwise from the foot positive (deg)';

describe('the legs', () => {
  it('have a row each with how they are cut, its unit in the head', () => {
    expect(readCsv(legsCsv(sited()))).toEqual([
      {
        number: '1',
        leg: 'port leg',
        side: 'port',
        'outside diameter (mm)': '25.4',
        'wall (mm)': '1.65',
        'centre length (mm)': '762.379',
        'cut length (mm)': '748.1235',
        'cut length: plus or minus (mm)': '3.25',
        'shortest line along it (mm)': '735',
        'longest line along it (mm)': '748',
        foot: 'mitred, along the surface',
        'plate welded under the foot (mm)': '6',
        'tilt at the foot (deg)': '31.5',
        'ring of the foot wrap from the sawn foot end (mm)': '0',
        head: 'saddle',
        'head on': 'rail',
        'head from the start of that tube (mm)': '480',
        'angle to the tube at the head (deg)': '77.25',
        'ring of the head wrap from the sawn foot end (mm)': '748.1235',
        [ROLL]: '-12.5',
        'roll round the outside, clockwise from the foot positive (mm)': '-2.77',
        'length for a degree of slope (mm/deg)': '6.703',
        'cannot be cut': '',
      },
      expect.objectContaining({
        number: '2',
        side: 'middle',
        'cut length: plus or minus (mm)': '',
        [ROLL]: '',
        'roll round the outside, clockwise from the foot positive (mm)': '',
        'length for a degree of slope (mm/deg)': '',
        'head on': 'square',
      }),
    ]);
  });

  it('begin with their first head as it is: no byte order mark', () => {
    const made = legsCsv(sited());
    expect(made.ok && made.text).toMatch(/^number,leg,side,/);
  });

  it('call their sides as the job does', () => {
    expect(readCsv(legsCsv(onShore(sited())))[0]!['side']).toBe('left');
  });

  it('are those under one member where one is chosen', () => {
    expect(readCsv(legsCsv(sited({}, 'square'))).map((one) => one['leg'])).toEqual(['middle leg']);
    expect(legsCsv(sited({}, 'slanting'))).toMatchObject({ ok: false, reason: 'no-legs' });
    expect(legsCsv(sited({}, 'nobody'))).toMatchObject({ ok: false, reason: 'no-such-member', member: 'nobody' });
  });

  it('have a row without numbers for one that cannot be cut, with why', () => {
    const whole = sited();
    const { legs } = whole.plan.site!;
    const stop: Finding = {
      code: 'leg-no-length',
      grade: 'stop',
      field: '/site/legs/0',
      data: { name: 'starboard leg', value: 0 },
      wayOut: null,
    };
    const input = {
      ...whole,
      job: { ...whole.job, site: landingStage().site },
      plan: { ...whole.plan, site: { ...whole.plan.site!, legs: legs.slice(1) }, findings: [stop] },
    };
    const [first, second, ...rest] = readCsv(legsCsv(input));
    expect(rest).toEqual([]);
    expect(first).toMatchObject({ number: '1', leg: 'starboard leg', 'cut length (mm)': '', side: '' });
    expect(first!['cannot be cut']).toContain('The foot and the head of this leg are one place');
    expect(second).toMatchObject({ number: '2', 'cut length (mm)': '500', 'cannot be cut': '' });
  });

  it('are refused where there are none, or no frame', () => {
    expect(legsCsv(sited({ legs: [] }))).toMatchObject({ ok: false, reason: 'no-legs' });
    expect(legsCsv(inputOf(newJob('straight')))).toMatchObject({ ok: false, reason: 'no-legs' });
    expect(legsCsv(tooThick())).toMatchObject({ ok: false, reason: 'frame-not-possible' });
  });
});
