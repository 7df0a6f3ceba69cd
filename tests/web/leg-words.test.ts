import { describe, expect, it } from 'vitest';
import { thenWords } from '../../server/language/then-words.ts';
import { turnWay } from '../../server/language/turn-way.ts';
import { cutOrder, isFolded, legOrder, legSide } from '../../web/state/leg-words.ts';
import { degrees, hoop, millimetres } from './made-up-site.ts';

describe('a leg in words', () => {
  it('is named by its side, unless its name says it', () => {
    expect(legSide({ name: 'leg 1', side: 'port' }, 'boat')).toBe('port side');
    expect(legSide({ name: 'leg 1', side: 'port' }, 'shore')).toBe('left side');
    expect(legSide({ name: 'Port leg', side: 'port' }, 'boat')).toBe('');
    expect(legSide({ name: '', side: 'middle' }, 'boat')).toBe('in the middle');
  });

  it('is cut first, second, or by a number where nobody counts in words', () => {
    expect([legOrder(1, 1), legOrder(1, 2), legOrder(2, 2), legOrder(7, 9)]).toEqual([
      '',
      'cut first',
      'cut second',
      'cut as number 7',
    ]);
  });

  it('is turned one way round, or in line or half round where its ± leaves the way open', () => {
    const roll = (value: number, plusMinus: number) => ({ ...degrees(value), band: { plusMinus, from: [] } });
    expect([turnWay(degrees(-120)), turnWay(degrees(12)), turnWay(degrees(-0.04))]).toEqual([
      'anticlockwise',
      'clockwise',
      'inLine',
    ]);
    expect([turnWay(roll(-0.3, 0.31)), turnWay(roll(-0.3, 0.2))]).toEqual(['inLine', 'anticlockwise']);
    expect([turnWay(roll(179.9, 0.31)), turnWay(roll(-179.9, 0.31)), turnWay(roll(179, 0.31))]).toEqual([
      'half',
      'half',
      'clockwise',
    ]);
  });

  it('says how it fits once others stand, and that it must follow them where that is more than its own ±', () => {
    const leg = (own: number, then: number) => ({
      cutLength: { ...millimetres(780), band: { plusMinus: own, from: [] } },
      bandThen: millimetres(then),
    });
    expect(thenWords(leg(1.77, 1.39), hoop.units)).toMatch(/it fits to ± 1.39 mm there\.$/);
    expect(thenWords(leg(0.79, 1.39), hoop.units)).toMatch(/± 1.39 mm there: more than its own ±/);
    expect(thenWords(leg(1.77, 1.39), { length: 'inch', fraction: 16 })).toContain('± 0.055 in');
  });

  it('stands in the order in which it is cut, folded where there are many', () => {
    const plans = [3, 1].map((order, index) => ({ number: index + 1, order }));
    expect([cutOrder(4, plans), cutOrder(2, [])]).toEqual([
      [1, 0, 2, 3],
      [0, 1],
    ]);
    const folded = (count: number) => Array.from({ length: count }, (_, place) => isFolded(place, count));
    expect([folded(2), folded(3), folded(4)]).toEqual([
      [false, false],
      [false, false, true],
      [true, true, true, true],
    ]);
  });
});
