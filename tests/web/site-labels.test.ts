import { describe, expect, it } from 'vitest';
import type { SiteView } from '../../server/plan/site-view.ts';
import { labelsOf, linesOf, writtenOn } from '../../web/state/site-labels.ts';
import { siteSeen } from '../../web/state/site-seen.ts';
import { said, screen, view, WHOLE } from './drawn-site.ts';

describe('what is written on the drawing of the site', () => {
  it('names all that is seen, what matters most first', () => {
    const labels = labelsOf(view, screen, said, { area: WHOLE, numbered: false });
    expect(labels.map(({ text }) => text)).toEqual([
      'gap 40',
      'level',
      'port leg',
      'hinge',
      'foot',
      'post',
      'post, swung',
    ]);
    // the gap stands half way between its ends; the word at what is level at the right end of a line across it all
    expect(labels[0]!.anchors[0]![0]).toBeCloseTo(screen.left + 560 * screen.scale, 9);
    expect(labels[1]!.anchors[0]![0]).toBeGreaterThan(560);
    expect(labels[1]!.anchors[1]![0]).toBeLessThan(40);
    const bare = labelsOf({ ...view, level: null, hinge: null }, screen, said, { area: WHOLE, numbered: false });
    expect(bare.map(({ kind }) => kind)).toEqual(['gap', 'leg', 'point', 'thing', 'thing']);
    const numbers = labelsOf(view, screen, said, { area: WHOLE, numbered: true });
    expect(numbers.filter(({ kind }) => kind === 'leg').map(({ text }) => text)).toEqual(['1']);
  });

  it('calls what has no name by what the page calls it, and a swung tube by its own name', () => {
    const called = (field: string, name: string): string => (name === '' ? `nameless at ${field}` : name);
    const nameless = { ...view, points: [{ name: '', field: '/site/points/4', at: [100, 100] as [number, number] }] };
    const swung = {
      name: 'hoop',
      field: '',
      swung: true,
      lines: [[[0, 0] as [number, number], [9, 9] as [number, number]]],
    };
    const texts = labelsOf(
      { ...nameless, things: [swung] },
      screen,
      { ...said, called },
      { area: WHOLE, numbered: false },
    );
    expect(texts.map(({ text }) => text)).toContain('nameless at /site/points/4');
    expect(texts.map(({ text }) => text)).toContain('hoop, swung');
  });

  it('gives legs their names where each stands beside its leg, else their numbers, and says what is left out', () => {
    const legs = (count: number, name: string): SiteView['legs'] =>
      Array.from({ length: count }, (_, index) => ({
        member: `${name} ${String(index + 1)}`,
        field: `/site/legs/${String(index)}`,
        edges: [-8, 8].map((by) => [
          [100 + 40 * index + by, 100],
          [140 + 40 * index + by, 400],
        ]),
        centreline: [
          [100 + 40 * index, 100],
          [140 + 40 * index, 400],
        ],
      }));
    const bare = { ...view, things: [], gaps: [], points: [], hinge: null };
    const roomy = { area: WHOLE, taken: [], few: false };
    const two = writtenOn({ ...bare, legs: legs(2, 'leg') }, screen, said, roomy);
    expect(two).toMatchObject({ numbered: false, leftOut: [] });
    const twelve = writtenOn({ ...bare, legs: legs(12, 'a leg with a long name') }, screen, said, roomy);
    expect(twelve.numbered).toBe(true);
    expect(twelve.placed.map(({ label }) => label.text)).toEqual(
      expect.arrayContaining(Array.from({ length: 12 }, (_, index) => String(index + 1))),
    );
    // a small picture leaves out points and things, and tells which
    const small = writtenOn({ ...view, legs: legs(2, 'leg') }, screen, said, { ...roomy, few: true });
    expect(small.leftOut).toEqual(['hinge', 'foot', 'post', 'post, swung']);
    expect(small.placed.map(({ label }) => label.kind)).not.toContain('point');
  });

  it('keeps off every line of the view', () => {
    expect(linesOf(view, screen)).toHaveLength(4);
    expect(linesOf({ ...view, hinge: null, gaps: [] }, screen)).toHaveLength(2);
  });
});

describe('the drawing of the site', () => {
  it('is told in words to somebody who does not see them', () => {
    const spoken = siteSeen(
      { ...view, members: [{ member: 'hoop', edges: [], centreline: [] }] },
      said,
      'from starboard',
    );
    expect(spoken).toBe(
      'Drawing of the site, from starboard. Frame: hoop. Legs: port leg. Points: foot. What stands there: post. ' +
        'Least room: gap 40 to post. The hinge. What is level now, a line across',
    );
    const bare = { ...view, legs: [], points: [], things: [], gaps: [], hinge: null, level: null };
    expect(siteSeen(bare, said, 'from above')).toBe('Drawing of the site, from above');
  });
});
