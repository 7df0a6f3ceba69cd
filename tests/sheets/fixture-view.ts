import type { FlatPoint, View, ViewDimension, ViewLayer } from '../../server/plan/view.ts';

/** Sizes of the made-up hoop [mm]: over the outside 950 wide, legs 600, came back 62 too wide. */
export const HOOP = { width: 950, leg: 600, wrong: 62, corner: 116 } as const;

/** Centreline of a hoop with quarter-round corners [mm]: up the left leg, over, down the right. */
export function hoopLine(width: number): FlatPoint[] {
  const half = width / 2;
  const quarter = (centre: number, from: number): FlatPoint[] =>
    Array.from({ length: 13 }, (_, index): FlatPoint => {
      const angle = ((from - index * 7.5) * Math.PI) / 180;
      return [centre + HOOP.corner * Math.cos(angle), -HOOP.corner + HOOP.corner * Math.sin(angle)];
    });
  return [
    [-half, -HOOP.leg],
    ...quarter(-half + HOOP.corner, 180),
    ...quarter(half - HOOP.corner, 90),
    [half, -HOOP.leg],
  ];
}

/** The line moved sideways, point by point, square to its neighbours. */
const beside = (line: readonly FlatPoint[], by: number): FlatPoint[] =>
  line.map(([x, y], index): FlatPoint => {
    const [x0, y0] = line[Math.max(0, index - 1)]!;
    const [x1, y1] = line[Math.min(line.length - 1, index + 1)]!;
    const length = Math.hypot(x1 - x0, y1 - y0);
    return [x - ((y1 - y0) / length) * by, y + ((x1 - x0) / length) * by];
  });

function layer(role: ViewLayer['role'], width: number, diameter: number): ViewLayer {
  const hoop = hoopLine(width);
  const bar: FlatPoint[] = [
    [-width / 2, -350],
    [width / 2, -350],
  ];
  return {
    role,
    members: [
      { member: 'hoop', edges: [beside(hoop, diameter / 2), beside(hoop, -diameter / 2)], centreline: hoop },
      { member: 'crossbar 1', edges: [beside(bar, diameter / 2), beside(bar, -diameter / 2)], centreline: bar },
    ],
  };
}

function dimension(
  key: string,
  role: ViewDimension['layer'],
  from: FlatPoint,
  to: FlatPoint,
  off: FlatPoint,
): ViewDimension {
  const shift = ([x, y]: FlatPoint): FlatPoint => [x + off[0], y + off[1]];
  return {
    field: '',
    key,
    index: 0,
    layer: role,
    from,
    to,
    line: [shift(from), shift(to)],
    value: Math.hypot(to[0] - from[0], to[1] - from[1]),
    unit: 'mm',
    radius: false,
  };
}

/** The face view of the made-up hoop: wanted, as it came back, two joints, a feed and a vent. */
export function faceView(diameter: number): View {
  const wide = HOOP.width + HOOP.wrong;
  const sizes = (role: ViewDimension['layer'], width: number): ViewDimension[] => {
    const half = width / 2;
    return [
      dimension('width-at-feet', role, [-half, -HOOP.leg], [half, -HOOP.leg], [0, -80]),
      dimension('width-at-corners', role, [-half, -HOOP.corner], [half, -HOOP.corner], [0, 220]),
      dimension('left-leg', role, [-half, -HOOP.leg], [-half, 0], [-90, 0]),
      dimension('right-leg', role, [half, -HOOP.leg], [half, 0], [90, 0]),
    ];
  };
  return {
    key: 'face',
    right: { x: 1, y: 0, z: 0 },
    up: { x: 0, y: 1, z: 0 },
    bounds: [-600, -700, 600, 120],
    layers: [
      layer('wanted', HOOP.width - diameter, diameter),
      layer('came-back', wide - diameter, diameter),
      layer('corrected', HOOP.width - diameter, diameter),
    ],
    dimensions: [...sizes('wanted', HOOP.width), ...sizes('came-back', wide)],
    marks: [
      { kind: 'end', label: 'hoop', layer: 'wanted', at: [-456, -600], towards: [0, -1] },
      { kind: 'joint', label: '1', layer: 'corrected', at: [0, 0], towards: [0, 1] },
      { kind: 'joint', label: '2', layer: 'corrected', at: [0, -350], towards: [0, 1] },
      { kind: 'feed', label: '1', layer: 'came-back', at: [-487, -600], towards: [0, -1] },
      { kind: 'vent', label: '1', layer: 'came-back', at: [487, -600], towards: [0, -1] },
      { kind: 'plug', label: '1', layer: 'came-back', at: [-487, -350], towards: [-1, 0] },
    ],
    gas: [
      { chamber: 1, flows: true, layer: 'came-back', line: hoopLine(wide - diameter) },
      {
        chamber: 1,
        flows: false,
        layer: 'came-back',
        line: [
          [-(wide - diameter) / 2, -350],
          [(wide - diameter) / 2, -350],
        ],
      },
    ],
  };
}
