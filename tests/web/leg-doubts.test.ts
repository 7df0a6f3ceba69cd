import { describe, expect, it } from 'vitest';
import { doubtWords } from '../../server/language/doubt-words.ts';
import type { Doubt } from '../../server/plan/leg.ts';
import { doubtKey } from '../../server/solver/site/doubt-key.ts';
import { fieldToMeasure } from '../../web/state/leg-doubts.ts';
import { valueAt } from '../../web/state/pointer.ts';
import { millimetres } from './made-up-site.ts';
import { demo, demoPlan } from './planned-stage.ts';

function doubt(of: Partial<Omit<Doubt, 'words'>>): Doubt {
  const typed = { from: 'level' as const, name: '', field: '', plusMinus: millimetres(1), ...of };
  return { ...typed, words: doubtKey(typed) };
}

describe('what a leg is doubtful by', () => {
  it('is something that one can point at', () => {
    expect(doubtWords(doubt({}))).toBe('the level');
    expect(doubtWords(doubt({ from: 'point', name: 'aft leg', field: '/site/legs/0/foot/at/z' }))).toBe(
      'the foot of aft leg',
    );
    expect(doubtWords(doubt({ from: 'point', name: 'cleat', field: '/site/points/0/at/point/x' }))).toBe(
      'the point cleat',
    );
    expect(doubtWords(doubt({ from: 'thing', name: 'aft leg', field: '/site/legs/0/foot/surface/port' }))).toBe(
      'the surface under aft leg',
    );
    expect(doubtWords(doubt({ from: 'thing', name: 'wall', field: '/site/things/0' }))).toBe('the thing wall');
    expect(doubtWords(doubt({ from: 'frame', field: '/site/legs/0/head/at' }))).toBe('the mark for the head');
  });

  it('leads to a field that holds a value for everything that is worth measuring again', () => {
    const fields = demoPlan.site!.legs.flatMap(({ doubts }) => doubts.map(({ field }) => field));
    const typed = fields.filter((field) => field !== '').map((field) => valueAt(demo, fieldToMeasure(demo, field)));
    expect(typed.length).toBeGreaterThan(4);
    for (const value of typed) expect(['string', 'number']).toContain(typeof value);
    expect(fieldToMeasure(demo, '/site/level/sets/0/readings/0')).toBe('/site/level/sets/0/readings/0/angle');
  });
});
