import { describe, expect, it } from 'vitest';
import { legName, legOrder, legSide, named, turnWords } from '../../web/state/leg-words.ts';
import { degrees, hoop } from './made-up-site.ts';

describe('a leg in words', () => {
  it('is named by its side, unless its name says it', () => {
    expect(legSide({ name: 'leg 1', side: 'port' }, 'boat')).toBe('port side');
    expect(legSide({ name: 'leg 1', side: 'port' }, 'shore')).toBe('left side');
    expect(legSide({ name: 'Port leg', side: 'port' }, 'boat')).toBe('');
    expect(legSide({ name: '', side: 'middle' }, 'boat')).toBe('in the middle');
    expect([legName('', 1), legName('aft', 1), named('')]).toEqual(['leg 2', 'aft', 'no name']);
  });

  it('is cut first, second, or by a number where nobody counts in words', () => {
    expect([legOrder(1, 1), legOrder(1, 2), legOrder(2, 2), legOrder(7, 9)]).toEqual([
      '',
      'cut first',
      'cut second',
      'cut as number 7',
    ]);
  });

  it('is turned by a size and a way round', () => {
    expect(turnWords(degrees(-179.9), hoop.units)).toMatchObject({ size: { value: 179.9 }, way: 'anticlockwise' });
    expect(turnWords(degrees(12), hoop.units).way).toBe('clockwise');
    expect(turnWords(degrees(-1e-9), hoop.units).way).toBe('none');
  });
});
