import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SiteView } from '../../server/plan/site-view.ts';
import { fit } from '../../web/state/screen.ts';
import { labelsOf, linesOf, pictureHeight, placeLabels, type SiteLabel } from '../../web/state/site-labels.ts';

const view: SiteView = {
  key: 'from-starboard',
  right: { x: 1, y: 0, z: 0 },
  up: { x: 0, y: 0, z: 1 },
  bounds: [0, 0, 1000, 500],
  members: [],
  legs: [
    {
      member: 'port leg',
      edges: [],
      centreline: [
        [100, 100],
        [300, 400],
      ],
    },
  ],
  things: [
    {
      name: 'post',
      swung: false,
      lines: [
        [
          [500, 0],
          [540, 0],
          [540, 400],
          [500, 400],
          [500, 0],
        ],
      ],
    },
    {
      name: 'post',
      swung: true,
      lines: [
        [
          [600, 0],
          [640, 400],
        ],
      ],
    },
    { name: 'unseen', swung: false, lines: [] },
  ],
  points: [{ name: 'foot', at: [100, 100] }],
  feet: [],
  hinge: [
    [800, 450],
    [900, 450],
  ],
  level: [
    [0, 50],
    [1000, 60],
  ],
  gaps: [{ thing: 'post', from: [540, 200], to: [580, 200], value: 40 }],
};
const said = {
  level: 'level',
  hinge: 'hinge',
  gap: (value: number) => `gap ${String(value)}`,
  swung: (name: string) => `${name}, swung`,
};

describe('what is written on the drawing of the site', () => {
  it('names all that is seen, what matters most first', () => {
    const screen = fit(view.bounds, { width: 600, height: 340 }, 20);
    const labels = labelsOf(view, screen, said);
    expect(labels.map(({ text }) => text)).toEqual([
      'gap 40',
      'level',
      'port leg',
      'foot',
      'hinge',
      'post',
      'post, swung',
    ]);
    // the gap stands half way between its ends, the level at the right end of its line
    expect(labels[0]!.at[0]).toBeCloseTo(screen.left + 560 * screen.scale, 9);
    expect(labels[1]!.at).toEqual([screen.left + 1000 * screen.scale, screen.top - 60 * screen.scale]);
    expect(labelsOf({ ...view, level: null, hinge: null }, screen, said).map(({ kind }) => kind)).not.toContain(
      'level',
    );
  });

  it('stands within the picture, and no text on another or on a place that is named', () => {
    const size = { width: 330, height: 260 };
    const at = fc.tuple(fc.integer({ min: 0, max: size.width }), fc.integer({ min: 0, max: size.height }));
    const label = fc.record({
      kind: fc.constant('point' as const),
      text: fc.string({ minLength: 1, maxLength: 14 }),
      at,
    });
    fc.assert(
      fc.property(fc.array(label, { maxLength: 14 }), (labels: SiteLabel[]) => {
        const placed = placeLabels(labels, size, []);
        const boxes = placed.map(({ left, foot, text }) => ({
          left,
          right: left + 7.4 * text.length,
          top: foot - 12,
          bottom: foot + 4,
        }));
        for (const [index, box] of boxes.entries()) {
          expect(box.left >= 0 && box.right <= size.width && box.top >= 0 && box.bottom <= size.height).toBe(true);
          const struck = boxes
            .slice(0, index)
            .filter(
              (other) =>
                box.left < other.right - 1e-9 &&
                other.left < box.right - 1e-9 &&
                box.top < other.bottom &&
                other.top < box.bottom,
            );
          expect(struck).toEqual([]);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('gives up what finds no room, the last first', () => {
    const crowd = Array.from({ length: 40 }, (_, index) => ({
      kind: 'point' as const,
      text: `point ${String(index)}`,
      at: [60, 40] as [number, number],
    }));
    const placed = placeLabels(crowd, { width: 120, height: 80 }, []);
    expect(placed.length).toBeGreaterThan(0);
    expect(placed.length).toBeLessThan(crowd.length);
    expect(placed[0]!.text).toBe('point 0');
  });

  it('keeps off the lines where there is room', () => {
    const foot: SiteLabel = { kind: 'point', text: 'foot', at: [100, 100] };
    const size = { width: 300, height: 200 };
    const [free] = placeLabels([foot], size, []);
    expect(free!.left).toBeGreaterThan(100);
    // a line runs away from the place to the right, where the text would stand
    const [moved] = placeLabels([foot], size, [
      [
        [100, 100],
        [300, 100],
      ],
    ]);
    expect(moved!.left + 7.4 * foot.text.length).toBeLessThan(100);
    const screen = fit(view.bounds, size, 20);
    expect(linesOf(view, screen)).toHaveLength(5);
    expect(linesOf({ ...view, level: null, hinge: null, gaps: [] }, screen)).toHaveLength(2);
  });

  it('is as high as the view, within what a screen shows well', () => {
    expect(pictureHeight([0, 0, 1000, 600], 500)).toBe(300);
    expect(pictureHeight([0, 0, 1000, 10], 500)).toBe(225);
    expect(pictureHeight([0, 0, 10, 1000], 500)).toBe(525);
    expect(pictureHeight([0, 0, 0, 0], 500)).toBe(225);
  });
});
