import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeLabels, type Area, type Label } from '../../web/state/label-places.ts';
import { area } from './drawn-site.ts';

const boxOf = ({ left, foot, label: { text } }: { left: number; foot: number; label: Label }): Area => ({
  left,
  right: left + 7.4 * text.length,
  top: foot - 12,
  bottom: foot + 4,
});

describe('where names stand on a drawing', () => {
  it('stands within the area, and no text on another, on a place that is named, or where nothing may be', () => {
    const within: Area = { left: 10, top: 20, right: 330, bottom: 260 };
    const corner: Area = { left: 250, top: 220, right: 330, bottom: 260 };
    const at = fc.tuple(fc.integer({ min: 10, max: 330 }), fc.integer({ min: 20, max: 260 }));
    const label = fc.record({ text: fc.string({ minLength: 1, maxLength: 14 }), anchors: fc.tuple(at) });
    fc.assert(
      fc.property(fc.array(label, { maxLength: 14 }), (labels: Label[]) => {
        const placed = placeLabels(labels, within, { lines: [], taken: [corner] });
        const boxes = [corner, ...placed.map(boxOf)];
        for (const [index, box] of boxes.entries()) {
          expect(box.left >= 10 && box.right <= 330 + 1e-9 && box.top >= 20 && box.bottom <= 260).toBe(true);
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
      text: `P${String(index)}`,
      anchors: [[200, 150] as [number, number]],
    }));
    const placed = placeLabels(crowd, area(400, 300), { lines: [] });
    expect(placed.length).toBeGreaterThan(3);
    expect(placed.length).toBeLessThan(crowd.length);
    expect(placed.map(({ label }) => label.text)).toEqual(crowd.slice(0, placed.length).map(({ text }) => text));
    expect(placed[0]).toMatchObject({ leader: null, cost: 0 });
  });

  it('leads to its place where it cannot stand beside', () => {
    const foot: Label = { text: 'foot', anchors: [[200, 150]] };
    // a thicket of lines, 60 wide and high
    const lines = Array.from({ length: 13 }, (_, index): [number, number][] => [
      [170, 120 + 5 * index],
      [230, 120 + 5 * index],
    ]);
    const [placed] = placeLabels([foot], area(400, 300), { lines });
    const [from, to] = placed!.leader!;
    const box = boxOf(placed!);
    expect(from).toEqual([200, 150]);
    // to the nearest place of the text, which stands beyond the thicket
    expect(to[0] === box.left || to[0] === box.right || to[1] === box.top || to[1] === box.bottom).toBe(true);
    expect(box.left >= 230 || box.right <= 170 || box.top >= 180 || box.bottom <= 120).toBe(true);
    // no leader goes through another text
    const wall = { left: 0, top: 182, right: 400, bottom: 300 };
    const others = [wall, { ...wall, top: 0, bottom: 118 }, { ...wall, right: 168 }];
    const [right] = placeLabels([foot], area(400, 300), { lines, taken: others });
    expect(boxOf(right!).left).toBeGreaterThanOrEqual(230);
    expect(
      placeLabels([foot], area(400, 300), { lines, taken: [{ left: 150, top: 100, right: 250, bottom: 200 }] }),
    ).toEqual([]);
  });

  it('keeps off the lines where there is room', () => {
    const foot: Label = { text: 'foot', anchors: [[100, 100]] };
    const room = area(300, 200);
    const [free] = placeLabels([foot], room, { lines: [] });
    expect(free!.left).toBeGreaterThan(100);
    // a line runs away from the place to the right, where the text would stand
    const away: [number, number][] = [
      [100, 100],
      [300, 100],
    ];
    const [moved] = placeLabels([foot], room, { lines: [away] });
    expect(moved!.left + 7.4 * foot.text.length).toBeLessThan(100);
  });
});
