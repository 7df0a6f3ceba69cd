import { describe, expect, it } from 'vitest';
import type { LevelRow, PlaneReading } from '../../server/plan/site.ts';
import { LEVEL_SETS } from '../../web/state/level-readings.ts';
import { isSteep, tellingResiduals } from '../../server/language/site-rules.ts';
import { nearestPlane, residualAt, rowGroups } from '../../web/state/level-rows.ts';
import { rowName, setWords, sided, wayWords } from '../../web/state/level-words.ts';
import { uprightLean } from '../../web/state/site-directions.ts';
import { FIRST_ANGLE, readSet } from './level-read.ts';
import { degrees, hoop, withSite } from './made-up-site.ts';

const plane = (of: Partial<PlaneReading>): PlaneReading => ({
  plane: 'fore-and-aft',
  shows: degrees(80.8),
  rises: 'ahead',
  offPlumb: degrees(9.2),
  leans: 'back',
  ...of,
});
const row = (of: Partial<LevelRow>): LevelRow => ({
  of: 'direction',
  name: 'mast',
  field: '/site/directions/0',
  direction: { x: 0, y: 0, z: 1 },
  along: degrees(80.65),
  offPlumb: degrees(9.35),
  planes: [],
  differs: true,
  ...of,
});

describe('what the level must show, in words', () => {
  it('says which way a post leans and which side of a rail is up, as boat or shore call it', () => {
    expect([isSteep(row({})), isSteep(row({ along: degrees(45) }))]).toEqual([true, false]);
    expect(wayWords('boat', plane({}), true)).toBe('leans astern');
    expect(wayWords('shore', plane({ leans: 'starboard' }), true)).toBe('leans to the right');
    expect(wayWords('boat', plane({ rises: 'port' }), false)).toBe('port up');
    expect([wayWords('boat', plane({ leans: null }), true), wayWords('boat', plane({ rises: null }), false)]).toEqual([
      'plumb',
      'level',
    ]);
  });

  it('sets beside each other the two that are taken for each other', () => {
    const athwart = plane({ plane: 'athwart', shows: degrees(88.3) });
    expect(nearestPlane(row({ planes: [athwart, plane({})] }))?.plane).toBe('fore-and-aft');
    expect(nearestPlane(row({}))).toBeUndefined();
  });

  it('has the hinge and legs before what stands there anyway', () => {
    const rows = (['direction', 'member', 'leg', 'thing', 'hinge'] as const).map((of) =>
      row({ of, name: of, field: '' }),
    );
    const { set, asStands } = rowGroups(rows);
    expect([set.map(({ of }) => of), asStands.map(({ of }) => of)]).toEqual([
      ['leg', 'hinge'],
      ['member', 'thing'],
    ]);
    expect(rows.map((one) => rowName(hoop.site, one))).toEqual(['direction', 'tube member', 'leg', 'thing', 'hinge']);
    const { site } = withSite({ directions: [{ name: '', direction: uprightLean }] });
    expect(rowName(site, { of: 'direction', name: '', field: '/site/directions/0' })).toBe('line 1');
  });

  it('has many legs apart, so that the hinge is not lost among them', () => {
    const legs = Array.from({ length: 4 }, () => row({ of: 'leg' }));
    const groups = rowGroups([...legs, row({ of: 'hinge' })]);
    expect([groups.legs.length, groups.set.map(({ of }) => of)]).toEqual([4, ['hinge']]);
    expect(rowGroups(legs.slice(1)).legs).toEqual([]);
  });

  it('has a size and the end that is up instead of a sign', () => {
    const { units } = hoop;
    expect(sided(degrees(-0.8), 'fore-and-aft', units)).toMatchObject({ size: { value: 0.8 }, side: 'back' });
    expect(sided(degrees(1.7), 'athwart', units)).toMatchObject({ size: { value: 1.7 }, side: 'port' });
    expect(sided(degrees(-1e-9), 'athwart', units).side).toBeNull();
  });

  it('finds what a reading is off by', () => {
    const residual = { field: FIRST_ANGLE, measured: degrees(1), residual: degrees(0.1), disagrees: false };
    expect(residualAt([residual], `${LEVEL_SETS}/0/readings/0`)).toBe(residual);
    expect(residualAt([residual], `${LEVEL_SETS}/0/readings/01`)).toBeNull();
    const none = { ...residual, residual: degrees(-1e-12) };
    expect([tellingResiduals([none, none]), tellingResiduals([none, residual])]).toEqual([[], [none, residual]]);
    expect(setWords({ ...readSet('two-levels'), taken: '' }, 1)).toBe('Set 2');
  });
});
