import { doubtKey } from '../../server/solver/site/doubt-key.ts';
import type { WrapTemplate } from '../../server/plan/frame.ts';
import type { Doubt, LegPlan } from '../../server/plan/leg.ts';
import { figure } from './fixture-figure.ts';
import { planeWrap } from './fixture-wrap.ts';

const RADIAN = Math.PI / 180;
const PAPER = 0.1;

/** The mitre of a foot: its long side so far round from the scribed line [degrees]. */
const footWrap = (leg: string, tilt: number, longest: number, diameter: number): WrapTemplate => ({
  ...planeWrap(
    { member: leg, place: 'foot', side: 'B' },
    { station: (diameter / 2) * Math.tan(tilt * RADIAN), offSquare: tilt, longest },
    diameter,
  ),
  key: `${leg} foot`,
});

/** A saddle on a tube of the same diameter, its acute side on the scribed line; ordinates from the head point. */
export function headWrap(leg: string, axisAngle: number, station: number, diameter: number): WrapTemplate {
  const wrapLength = Math.PI * (diameter + PAPER);
  const radius = diameter / 2;
  const at = (angle: number, of: number): number => {
    const [sin, cos] = [Math.sin(axisAngle * RADIAN), Math.cos(axisAngle * RADIAN)];
    const across = of * Math.sin(angle * RADIAN);
    return -(of * Math.cos(angle * RADIAN) * cos + Math.sqrt(Math.max(0, radius * radius - across * across))) / sin;
  };
  const curve = Array.from({ length: 181 }, (_, index): [number, number] => [
    (wrapLength * index) / 180,
    at(index * 2, radius),
  ]);
  const heights = curve.map(([, height]) => height);
  return {
    key: `${leg} head`,
    kind: 'saddle',
    member: leg,
    place: 'head',
    wrapLength,
    low: Math.min(...heights),
    high: Math.max(...heights),
    ringStation: station,
    scrap: 'finish',
    edge: 0,
    stations: Array.from({ length: 16 }, (_, index) => ({
      angle: index * 22.5,
      girth: (wrapLength * index) / 16,
      outer: at(index * 22.5, radius),
      inner: at(index * 22.5, radius - 1.65),
      cut: at(index * 22.5, radius),
      second: null,
    })),
    curve,
    second: null,
    hinge: null,
  };
}

/** The same wrap with its ring so much further along the tube, on the sawn end. */
const ringAt = (wrap: WrapTemplate, by: number, station: number): WrapTemplate => ({
  ...wrap,
  ringStation: station,
  low: wrap.low - by,
  high: wrap.high - by,
  curve: wrap.curve.map(([girth, ordinate]): [number, number] => [girth, ordinate - by]),
  stations: wrap.stations.map((one) => ({
    ...one,
    outer: one.outer - by,
    inner: one.inner - by,
    cut: one.cut - by,
  })),
});

const doubt = (from: Doubt['from'], name: string, plusMinus: number): Doubt => ({
  from,
  words: doubtKey({ from, name, field: '' }),
  name,
  field: '',
  plusMinus: figure(plusMinus, 'mm'),
});

/** A leg whose head is on a tube of the same diameter, at an angle to it that its foot has to its surface too. */
function leg(
  what: Pick<LegPlan, 'number' | 'name' | 'side' | 'order'> & { readonly angle: number; readonly roll: number },
  centre: number,
  diameter: number,
): LegPlan {
  const { number, name, side, order, angle, roll } = what;
  const long = (360 - roll) % 360;
  const foot = footWrap(name, 90 - angle, long, diameter);
  const head = headWrap(name, angle, centre, diameter);
  const takes = -head.high;
  const [plate, longest] = [6, centre - 6 - takes - foot.low];
  const doubts = [doubt('level', '', 1.02), doubt('point', 'transom port', 0.61), doubt('cutting', '', 0.7)];
  return {
    number,
    name,
    field: `/site/legs/${String(number - 1)}`,
    side,
    outsideDiameter: diameter,
    wall: 1.65,
    foot: {
      end: 'mitre',
      tilt: figure(90 - angle, 'deg', 0.1),
      takes: figure(plate, 'mm'),
      rise: figure(2 * foot.high, 'mm'),
      longSide: figure(long, 'deg', 0.2),
      plate,
    },
    head: {
      end: 'saddle',
      member: 'hoop',
      station: figure(240, 'mm'),
      axisAngle: figure(angle, 'deg', 0.1),
      takes: figure(takes, 'mm'),
    },
    footPoint: { x: 0, y: 420, z: -610 },
    headPoint: { x: -480, y: 380, z: -19.05 },
    centreLength: figure(centre, 'mm', 1.4),
    cutLength: figure(longest, 'mm', 1.4),
    middleLength: figure(centre - plate - takes, 'mm'),
    shortest: figure(longest - 2 * foot.high, 'mm'),
    longest: figure(longest - 3, 'mm'),
    mass: figure(1.13, 'kg'),
    roll: figure(roll, 'deg', 0.2),
    rollRound: figure((Math.PI * diameter * roll) / 360, 'mm'),
    templates: [ringAt(foot, foot.low, 0), ringAt(head, head.high, longest)],
    adjust: null,
    perDegree: figure(6.703, 'mm/deg'),
    slopes: [{ axis: 'asked', field: '', perDegree: figure(6.703, 'mm/deg') }],
    doubts,
    measureAgain: null,
    order,
    bandThen: figure(0.9, 'mm'),
  };
}

/** Three legs: listed port, starboard, middle; the middle one, which is square and has a fitting, is cut first. */
export function legs(diameter: number): LegPlan[] {
  const port = leg(
    { number: 1, name: 'port strut', side: 'port', order: 2, angle: 50.98, roll: 62.3 },
    762.379,
    diameter,
  );
  const starboard = leg(
    { number: 2, name: 'starboard strut', side: 'starboard', order: 3, angle: 50.98, roll: -62.3 },
    762.379,
    diameter,
  );
  const middle = leg({ number: 3, name: 'middle post', side: 'middle', order: 1, angle: 90, roll: 0 }, 594.2, diameter);
  return [
    { ...port, measureAgain: port.doubts[0] ?? null },
    {
      ...starboard,
      adjust: {
        by: 'slip',
        least: figure(742.4, 'mm'),
        most: figure(782.4, 'mm'),
        slope: { least: figure(-2.98, 'deg'), most: figure(2.98, 'deg') },
      },
    },
    {
      ...middle,
      foot: {
        end: 'square',
        tilt: figure(2.1, 'deg', 0.1),
        takes: figure(6, 'mm'),
        rise: null,
        longSide: null,
        plate: 0,
      },
      head: { ...middle.head, end: 'eye', takes: figure(45, 'mm') },
      cutLength: figure(543.2, 'mm', 1.4),
      middleLength: figure(543.2, 'mm'),
      shortest: figure(543.2, 'mm'),
      longest: figure(543.2, 'mm'),
      roll: null,
      rollRound: null,
      templates: [],
    },
  ];
}
