import type { Chamber, GasSpot, PurgePlan } from '../../server/plan/purge.ts';
import { figure } from './fixture-figure.ts';
import { HOOP } from './fixture-view.ts';

/** Centreline of the made-up hoop as it came back: half its width [mm]. */
export const halfWidth = (diameter: number): number => (HOOP.width + HOOP.wrong - diameter) / 2;

const time = (volumes: number) => ({
  volumes: figure(volumes, 'ratio'),
  time: figure(volumes * 25, 's'),
  gas: figure(volumes * 2.1, 'L'),
});

/** An end of the hoop's legs that gas passes. */
function foot(end: 'start' | 'finish', diameter: number): GasSpot {
  const half = halfWidth(diameter);
  return {
    member: 'hoop',
    station: end === 'start' ? 0 : 2080,
    point: { x: end === 'start' ? -half : half, y: -HOOP.leg, z: 0 },
    kind: 'end',
    bore: 6,
    name: '',
    height: end === 'start' ? 0 : 140,
  };
}

/** The whole made-up frame as one chamber: fed at one foot, vented at the other, no gas through the crossbar. */
export function chamber(diameter = 38.1): Chamber {
  const half = halfWidth(diameter);
  const bar = { member: 'crossbar 1', station: 460, point: { x: 0, y: -350, z: 0 } };
  const crown = { member: 'hoop', station: 1020, point: { x: 0, y: 0, z: 0 } };
  const stretch = { member: 'hoop', from: 0, to: 2080 };
  return {
    number: 1,
    setup: 1,
    stretches: [stretch, { member: 'crossbar 1', from: 0, to: 910 }],
    welds: ['1', '2', 'S1', 'S2'],
    volume: figure(2.1, 'L'),
    length: figure(2990, 'mm'),
    plug: time(1),
    longTube: time(1.8),
    wellMixed: time(8.38),
    printed: time(8.38),
    feed: foot('start', diameter),
    vents: [foot('finish', diameter)],
    rise: figure(140, 'mm'),
    taped: [
      { ...crown, weld: '1' },
      { ...bar, weld: '2' },
    ],
    dams: [],
    plugs: [
      { member: 'hoop', end: 'start', point: foot('start', diameter).point },
      { member: 'hoop', end: 'finish', point: foot('finish', diameter).point },
      { member: 'crossbar 1', end: 'start', point: { x: -half, y: -350, z: 0 } },
    ],
    pluggedHoles: [],
    ventShares: [],
    paths: [{ stretches: [stretch], vent: 0, share: figure(100, 'percent') }],
    deadLegs: [
      {
        stretches: [{ member: 'crossbar 1', from: 0, to: 910 }],
        length: figure(910, 'mm'),
        clears: figure(36_000, 's'),
        points: 'level',
        welds: ['2'],
      },
    ],
  };
}

/** A pocket between two dams of one member, either side of a weld. */
export function pocket(number: number, weld: string, diameter = 38.1): Chamber {
  const at = (x: number): { member: string; station: number; point: { x: number; y: number; z: number } } => ({
    member: 'crossbar 1',
    station: 460 + x,
    point: { x, y: -350, z: 0 },
  });
  const opening = (x: number): GasSpot => ({ ...at(x), kind: 'dam', bore: 6, name: '', height: 0 });
  const whole = chamber(diameter);
  return {
    ...whole,
    number,
    setup: number,
    welds: [weld],
    stretches: [{ member: 'crossbar 1', from: 310, to: 610 }],
    length: figure(300, 'mm'),
    longTube: null,
    feed: opening(-150),
    vents: [opening(150)],
    taped: [{ ...at(0), weld }],
    dams: [at(-150), at(150)],
    plugs: [],
    paths: [],
    deadLegs: [],
  };
}

/** A set-up for each chamber, or one for all of them. */
export const setUpsFor = (chambers: readonly Chamber[], together = false): PurgePlan['setups'] =>
  (together ? [chambers] : chambers.map((one) => [one])).map((several, index) => ({
    number: index + 1,
    chambers: several.map(({ number }) => number),
    welds: [...new Set(several.flatMap(({ welds }) => welds))],
    wait: figure(Math.max(...several.map(({ printed }) => printed.time.value)), 's'),
  }));

export function purge(diameter = 38.1): PurgePlan {
  return {
    gasOxygen: figure(5, 'ppm'),
    targetOxygen: figure(50, 'ppm'),
    colour: figure(3, 'count'),
    chambers: [chamber(diameter)],
    setups: setUpsFor([chamber(diameter)]),
    prePurgeFlow: figure(8, 'L/min'),
    weldingFlow: figure(4, 'L/min'),
    closingFlow: figure(2.5, 'L/min'),
    ventPressure: figure(103, 'Pa'),
    ventBoreFor100Pa: figure(5, 'mm'),
    leakLimit: figure(1.8, 'mL/min'),
    reynolds: figure(360, 'ratio'),
    hold: figure(60, 's'),
    cooling: figure(48, 's'),
    damRise: figure(59, 'K'),
    damPeak: figure(2940, 's'),
    extents: (['whole-frame', 'dams'] as const).map((extent, index) => ({
      extent,
      setups: figure(1 + 3 * index, 'count'),
      wait: figure(210 + 600 * index, 's'),
      gasBefore: figure(28 + 40 * index, 'L'),
      gas: figure(40 + 50 * index, 'L'),
      minutes: figure(31 + 22 * index, 'min'),
      stops: index === 0 ? [] : ['dam-in-bend'],
    })),
    meters: [
      {
        field: '/purge/meter/0',
        chamber: 1,
        minutes: 3,
        oxygen: 900,
        wellMixed: figure(120, 'ppm'),
        longTube: figure(5, 'ppm'),
        remaining: figure(110, 's'),
        leak: figure(34, 'mL/min'),
        verdict: 'later',
      },
    ],
    purgeGas: figure(40, 'L'),
    torchGas: figure(60, 'L'),
    jobGas: figure(100, 'L'),
    bottle: {
      contents: figure(3200, 'L'),
      usable: figure(2980, 'L'),
      share: figure(0.034, 'ratio'),
      bottles: figure(0.034, 'count'),
      gaugeAfter: figure(145, 'bar'),
      taken: null,
      left: null,
    },
    room: {
      oxygenStill: figure(20.7, 'percent'),
      oxygenFan: figure(20.8, 'percent'),
      alarmStill: figure(7200, 's'),
      alarmFan: null,
      leftOn: figure(17.2, 'percent'),
      bottleOut: figure(18.4, 'percent'),
      airToStaySafe: figure(139, 'L/min'),
      recovers: null,
      low: { alarm: figure(1260, 's'), oxygen: figure(16.9, 'percent') },
    },
  };
}
