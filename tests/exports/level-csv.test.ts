import { describe, expect, it } from 'vitest';
import { levelCsv } from '../../server/exports/level-csv.ts';
import { braced, inputOf } from './made-up-frames.ts';
import { onShore, sited, tooThick } from './made-up-site.ts';
import { readCsv } from './read-csv.ts';

describe('what the level must show', () => {
  it('has a row a line, each plane with the side that is higher, or for a steep line leant to', () => {
    const [post, rail] = readCsv(levelCsv(sited()));
    expect(post).toEqual({
      what: 'direction',
      name: 'hand rail post',
      'along it (deg)': '80.6459',
      'along it: plus or minus (deg)': '0.14',
      'off plumb (deg)': '9.3541',
      'fore-and-aft: level shows (deg)': '80.8',
      'fore-and-aft: level shows, plus or minus (deg)': '0.1',
      'fore-and-aft: higher': '',
      'fore-and-aft: off plumb (deg)': '9.2',
      'fore-and-aft: leans to': 'astern',
      'athwart: level shows (deg)': '88.3',
      'athwart: level shows, plus or minus (deg)': '0.1',
      'athwart: higher': '',
      'athwart: off plumb (deg)': '1.7',
      'athwart: leans to': 'starboard',
      'set of readings': '2',
      'taken at': '2026-11-02T10:20',
    });
    expect(rail).toMatchObject({
      what: 'member',
      'fore-and-aft: level shows (deg)': '0',
      'fore-and-aft: higher': '',
      'fore-and-aft: leans to': '',
      'athwart: level shows (deg)': '2.5',
      'athwart: higher': 'port',
      'athwart: leans to': '',
    });
    const [steep, flat] = readCsv(levelCsv(onShore(sited())));
    expect([steep!['side to side: leans to'], flat!['side to side: higher']]).toEqual(['right', 'left']);
    expect(Object.keys(steep!).join()).not.toMatch(/athwart|aft/);
  });

  it('begins with its first head as it is: no byte order mark', () => {
    const made = levelCsv(sited());
    expect(made.ok && made.text).toMatch(/^what,name,/);
  });

  it('names no set where nobody has read a level', () => {
    const { plan } = sited();
    const unread = { ...plan.site!.level, known: false, taken: '' };
    expect(readCsv(levelCsv(sited({ level: unread })))[0]).toMatchObject({ 'set of readings': '', 'taken at': '' });
  });

  it('is of one member where one is chosen, and refused where there is nothing', () => {
    expect(readCsv(levelCsv(sited({}, 'rail'))).map((one) => one['name'])).toEqual(['rail']);
    expect(levelCsv(sited({}, 'square'))).toMatchObject({ ok: false, reason: 'no-level-rows' });
    expect(levelCsv(sited({}, 'nobody'))).toMatchObject({ ok: false, reason: 'no-such-member' });
    expect(levelCsv(sited({ rows: [] }))).toMatchObject({ ok: false, reason: 'no-level-rows' });
    expect(levelCsv(inputOf(braced()))).toMatchObject({ ok: false, reason: 'no-level-rows' });
    expect(levelCsv(tooThick())).toMatchObject({ ok: false, reason: 'frame-not-possible' });
  });
});
