import { describe, expect, it } from 'vitest';
import { legsCsv } from '../../server/exports/legs-csv.ts';
import { newJob } from '../../server/job/default-job.ts';
import { inputOf } from './made-up-frames.ts';
import { onShore, sited, tooThick } from './made-up-site.ts';
import { readCsv } from './read-csv.ts';

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
        'tilt at the foot (deg)': '31.5',
        'angle to the tube at the head (deg)': '77.25',
        'roll, foot to head (deg)': '-12.5',
        'roll round the outside (mm)': '-2.77',
        'length for a degree of slope (mm/deg)': '6.703',
        'sits on': 'rail',
        'station (mm)': '480',
      },
      expect.objectContaining({
        number: '2',
        side: 'middle',
        'cut length: plus or minus (mm)': '',
        'roll, foot to head (deg)': '',
        'roll round the outside (mm)': '',
        'length for a degree of slope (mm/deg)': '',
        'sits on': 'square',
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

  it('are refused where there are none, or no frame', () => {
    expect(legsCsv(sited({ legs: [] }))).toMatchObject({ ok: false, reason: 'no-legs' });
    expect(legsCsv(inputOf(newJob('straight')))).toMatchObject({ ok: false, reason: 'no-legs' });
    expect(legsCsv(tooThick())).toMatchObject({ ok: false, reason: 'frame-not-possible' });
  });
});
