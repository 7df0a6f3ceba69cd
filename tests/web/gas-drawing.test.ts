import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FlatPoint, View, ViewMark } from '../../server/plan/view.ts';
import { drawnMarks, weldPlace } from '../../web/state/drawn-marks.ts';
import { arrowsAlong, crossesAlong, placesAlong } from '../../web/state/gas-line.ts';
import { handlesOf } from '../../web/state/joint-handles.ts';

const screen = { scale: 1, left: 0, top: 0 };

const mark = (kind: ViewMark['kind'], label: string, at: FlatPoint, layer: ViewMark['layer'] = 'wanted'): ViewMark => ({
  kind,
  label,
  layer,
  at,
  towards: [0, 1],
});
const viewOf = (marks: ViewMark[]): View => ({
  key: 'face',
  right: { x: 1, y: 0, z: 0 },
  up: { x: 0, y: 1, z: 0 },
  bounds: [0, 0, 100, 100],
  layers: [],
  dimensions: [],
  marks,
  gas: [],
});

/** How far a point lies off a line between two others. */
function offSegment([x, y]: FlatPoint, [ax, ay]: FlatPoint, [bx, by]: FlatPoint): number {
  const size = Math.max(1e-9, (bx - ax) ** 2 + (by - ay) ** 2);
  const share = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / size));
  return Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay));
}

describe('a way of the gas on the screen', () => {
  it('has its signs evenly along it and on it', () => {
    const point = fc.tuple(fc.integer({ min: 0, max: 800 }), fc.integer({ min: 0, max: 800 }));
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 2, maxLength: 8 }),
        fc.integer({ min: 5, max: 200 }),
        (line, spacing) => {
          const length = line.slice(1).reduce((sum, [x, y], index) => {
            const [a, b] = line[index]!;
            return sum + Math.hypot(x - a, y - b);
          }, 0);
          const places = placesAlong(line, spacing);
          expect(Math.abs(places.length - length / spacing)).toBeLessThanOrEqual(0.5 + 1e-6);
          for (const { at, along } of places) {
            expect(Math.hypot(...along)).toBeCloseTo(1, 9);
            expect(Math.min(...line.slice(1).map((to, index) => offSegment(at, line[index]!, to)))).toBeCloseTo(0, 6);
          }
        },
      ),
    );
    expect(
      placesAlong(
        [
          [0, 0],
          [100, 0],
        ],
        50,
      ),
    ).toEqual([
      { at: [25, 0], along: [1, 0] },
      { at: [75, 0], along: [1, 0] },
    ]);
  });

  it('has one arrow at least where it is short, and none where it is nothing', () => {
    const arrows = (line: readonly FlatPoint[]): number => arrowsAlong(line).split('Z').length - 1;
    expect(
      arrows([
        [0, 0],
        [30, 0],
      ]),
    ).toBe(1);
    expect(
      arrows([
        [0, 0],
        [0, 700],
      ]),
    ).toBe(5);
    expect([
      arrows([
        [3, 3],
        [3, 3],
      ]),
      arrows([]),
    ]).toEqual([0, 0]);
  });

  it('shows alike where two ways begin alike', () => {
    const trunk: FlatPoint[] = [
      [0, 0],
      [300, 0],
    ];
    const branch = arrowsAlong([...trunk, [300, 900]]);
    expect(branch.startsWith(arrowsAlong(trunk))).toBe(true);
  });

  it('is crossed out where no gas runs', () => {
    expect(
      crossesAlong(
        [
          [0, 0],
          [10, 0],
        ],
        10,
        2,
      ),
    ).toBe('M3.0 -2.0L7.0 2.0M3.0 2.0L7.0 -2.0');
  });
});

describe('marks on the drawing', () => {
  const view = viewOf([
    mark('end', 'hoop', [0, 0]),
    mark('feed', '1', [0, 0]),
    mark('joint', '1', [50, 50], 'corrected'),
    mark('joint', 'S1', [200, 50]),
    mark('joint', 'S2', [204, 50]),
  ]);
  const kinds = (welding: boolean): string[] =>
    drawnMarks(view, screen, { handles: [], welding }).map(({ kind, label }) => `${kind} ${label}`);

  it('show gas and other welds where these are asked for, and none on another', () => {
    expect(kinds(false)).toEqual(['end hoop', 'joint 1']);
    expect(kinds(true)).toEqual(['end hoop', 'feed 1', 'joint 1', 'joint S1']);
  });

  it('name a saddle beside its tube and a splice on it', () => {
    expect(weldPlace(mark('joint', 'S1', [10, 0]), screen)).toEqual([10, -24]);
    expect(weldPlace(mark('joint', '2A', [10, 5]), screen)).toEqual([10, -5]);
  });
});

describe('a joint with new tube let in', () => {
  it('is taken hold of half way between its two welds', () => {
    const drawn = {
      member: 'hoop',
      edges: [],
      centreline: [
        [0, 0],
        [100, 0],
      ] as FlatPoint[],
      stations: [0, 100],
    };
    const view = {
      ...viewOf([mark('joint', '1A', [40, 0], 'corrected'), mark('joint', '1B', [60, 0], 'corrected')]),
      layers: [{ role: 'came-back' as const, members: [drawn] }],
    };
    const joint = { number: 1, member: 'hoop', place: 50, range: { from: 10, to: 90 } };
    const correction = {
      chosen: 'splice-fewest',
      ways: [{ key: 'splice-fewest', joints: [joint] }],
      members: [{ name: 'hoop', free: [{ from: 0, to: 100 }], pieces: [], closed: false }],
    };
    const handles = handlesOf(view, correction as unknown as Parameters<typeof handlesOf>[1]);
    expect(handles.map(({ mark: { label, at } }) => [label, at])).toEqual([['1', [50, 0]]]);
    const drawnToo = drawnMarks(view, { scale: 10, left: 0, top: 0 }, { handles, welding: true });
    expect(drawnToo.map(({ label }) => label)).toEqual(['1A', '1B']);
    expect(drawnMarks(view, screen, { handles, welding: true })).toEqual([]);
  });
});
