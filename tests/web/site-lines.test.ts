import { describe, expect, it } from 'vitest';
import { drawnPart, gapPath, levelAcross } from '../../web/state/site-lines.ts';
import { screen, view, WHOLE } from './drawn-site.ts';

describe('the lines of the drawing of the site', () => {
  it('show what is level right across the drawing', () => {
    const [from, to] = levelAcross(view, screen, WHOLE)!;
    expect([from[0], to[0]]).toEqual([expect.closeTo(0, 6), expect.closeTo(600, 6)]);
    // 10 up on 1000, as the view has it
    expect((from[1] - to[1]) / 600).toBeCloseTo(0.01, 6);
    expect(levelAcross({ level: null }, screen, WHOLE)).toBeNull();
    expect(
      levelAcross(
        {
          level: [
            [0, 0],
            [0, 0],
          ],
        },
        screen,
        WHOLE,
      ),
    ).toBeNull();
    expect(
      levelAcross(
        {
          level: [
            [0, 9000],
            [1, 9000],
          ],
        },
        screen,
        WHOLE,
      ),
    ).toBeNull();
  });

  it('show a gap with two arrowheads: between its ends, from outside where it is short, a square where it has no length', () => {
    const path = (to: [number, number]): string => gapPath({ from: [0, 0], to }, { scale: 1, left: 100, top: 100 });
    expect(path([40, 0]).startsWith('M100.0 100.0L140.0 100.0')).toBe(true);
    expect(path([40, 0]).match(/Z/g)).toHaveLength(2);
    // its line begins and ends beyond the gap
    expect(path([10, 0]).startsWith('M82.0 100.0L128.0 100.0')).toBe(true);
    expect(path([10, 0]).match(/Z/g)).toHaveLength(2);
    expect(path([0, 0])).toBe('M97.0 97.0h6v6h-6Z');
  });

  it('are thick for what is typed', () => {
    expect(drawnPart('/site/legs/3/foot/at/x')).toBe('/site/legs/3');
    expect(drawnPart('/site/points/12')).toBe('/site/points/12');
    expect(drawnPart('/site/things/0/shape/diameter')).toBe('/site/things/0');
    expect(drawnPart('/site/level/sets/0/readings/1/angle')).toBe('level');
    expect(drawnPart('/site/standing/hinge/from/member')).toBe('hinge');
    expect([drawnPart('/site/standing/height/value'), drawnPart('/site/placing/origin/x')]).toEqual(['frame', 'frame']);
    expect([drawnPart('/frame/width/value'), drawnPart('/site/legs'), drawnPart('')]).toEqual(['', '', '']);
  });
});
