import { describe, expect, it } from 'vitest';
import { isLengthField } from '../../web/state/length-fields.ts';
import { wayOutWords } from '../../web/state/way-out-words.ts';
import { withText } from '../../web/state/typed-text.ts';
import { FIRST_ANGLE, levelRead } from './level-read.ts';
import { hoop } from './made-up-site.ts';

describe('fields of the site', () => {
  it('hold a length or an angle by where they stand', () => {
    const lengths = [
      '/site/points/3/at/ahead',
      '/site/points/3/at/distances/2/distance',
      '/site/points/0/at/point/x',
      '/site/level/sets/0/readings/1/height',
      '/site/level/heightAccuracy',
      '/site/things/0/shape/ends/from',
      '/site/legs/1/foot/end/plate',
      '/site/placing/origin/x',
      '/site/legs/0/foot/at/z',
    ];
    expect(lengths.filter((field) => !isLengthField(field))).toEqual([]);
    const plain = [
      '/site/directions/3/direction/ahead',
      '/site/directions/3/direction/vector/x',
      '/site/level/sets/0/readings/1/along/x',
      '/site/standing/slopes/0/angle',
      '/site/standing/swing/from',
      '/site/things/0/swing/to',
      '/site/placing/x/x',
      '/site/level/goodFor',
    ];
    expect(plain.filter(isLengthField)).toEqual([]);
  });

  it('have a way out to a place of a tube in words', () => {
    const at = { member: 'hoop', spot: 'corner' as const, number: 2, distance: 0 };
    expect(wayOutWords({ field: '/site/standing/hinge/from', value: at }, hoop)).toMatch(/^hoop, .*2/);
    const job = withText(levelRead, FIRST_ANGLE, '50', { kind: 'number', mayBeEmpty: false });
    expect(wayOutWords({ field: FIRST_ANGLE, value: 40 }, job)).toBe('40');
  });
});
