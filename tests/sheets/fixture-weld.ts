import type { FinishPlan } from '../../server/plan/finish.ts';
import type { Procedure, Weld, WeldingPlan } from '../../server/plan/welding.ts';
import { figure } from './fixture-figure.ts';

type Spec = Pick<Weld, 'name' | 'kind' | 'form' | 'member' | 'station' | 'point'> & Partial<Weld>;

/** A weld made up from where it is; whatever else it says may be given. */
export function weld(spec: Spec): Weld {
  const butt = spec.form === 'butt';
  return {
    joint: 0,
    onto: '',
    preparation: butt ? 'square-tight' : spec.form === 'saddle' ? 'saddle' : 'fillet',
    gap: figure(0, 'mm'),
    bevel: null,
    land: null,
    endAngle: null,
    squareness: figure(0.25, 'mm'),
    backing: 'purge',
    length: figure(114.5, 'mm'),
    position: { code: 'PH', american: '5G up', steep: figure(0, 'deg') },
    tacks: { count: figure(3, 'count'), length: figure(5, 'mm'), angles: [0, 120, 240] },
    misfit: butt
      ? {
          hiLo: figure(0.12, 'mm', 0.1),
          kink: figure(0.74, 'deg'),
          standard: figure(0.83, 'mm'),
          polish: figure(0.17, 'mm'),
          kinkLimit: figure(1, 'deg'),
          grade: 'good',
        }
      : null,
    runs: figure(1, 'count'),
    arcTime: figure(76, 's'),
    fillerLength: figure(120, 'mm'),
    fillerMass: figure(2, 'g'),
    shrinkage: figure(0.5, 'mm'),
    symbol: {
      standard: 'iso-2553',
      elementary: butt ? 'square' : spec.form === 'saddle' ? 'flare-bevel' : 'fillet',
      allRound: true,
      flush: butt,
      angle: null,
      gap: null,
      leg: spec.form === 'pad' ? 2.3 : null,
      process: butt ? '142' : '141',
    },
    ...spec,
  };
}

/** Two splices and the two ends of the crossbar. */
export const welds = (): Weld[] => [
  weld({
    name: '1',
    kind: 'splice',
    form: 'butt',
    joint: 1,
    member: 'hoop',
    station: 1020,
    point: { x: 0, y: 0, z: 0 },
  }),
  weld({
    name: '2',
    kind: 'splice',
    form: 'butt',
    joint: 2,
    member: 'crossbar 1',
    station: 460,
    point: { x: 0, y: -350, z: 0 },
  }),
  weld({
    name: 'S1',
    kind: 'saddle',
    form: 'saddle',
    member: 'crossbar 1',
    station: 0,
    onto: 'hoop',
    point: { x: -487, y: -350, z: 0 },
    tacks: { count: figure(4, 'count'), length: figure(5, 'mm'), angles: [0, 180, 90, 270] },
  }),
  weld({
    name: 'S2',
    kind: 'saddle',
    form: 'saddle',
    member: 'crossbar 1',
    station: 910,
    onto: 'hoop',
    point: { x: 487, y: -350, z: 0 },
    tacks: { count: figure(4, 'count'), length: figure(5, 'mm'), angles: [0, 180, 90, 270] },
  }),
];

export function procedure(form: Procedure['form']): Procedure {
  const butt = form === 'butt';
  return {
    form,
    proved: '',
    process: butt ? '142' : '141',
    currentLow: figure(41, 'A'),
    currentHigh: figure(64, 'A'),
    current: figure(52, 'A'),
    voltage: figure(10.5, 'V'),
    travelSpeed: figure(1.5, 'mm/s'),
    electrode: figure(1.6, 'mm'),
    electrodeCode: 'WLa 15',
    cup: figure(9.5, 'mm'),
    torchFlow: figure(7, 'L/min'),
    preFlow: figure(2, 's'),
    postFlow: figure(6, 's'),
    filler: butt ? '' : 'ER316LSi / W 19 12 3 L Si',
    fillerDiameter: butt ? null : figure(1.6, 'mm'),
    runs: figure(1, 'count'),
    interpass: figure(150, 'degC'),
    heatInput: figure(0.218, 'kJ/mm'),
    arcEnergy: figure(0.364, 'kJ/mm'),
    area: figure(2.96, 'mm2'),
    leg: form === 'pad' ? figure(2.3, 'mm') : null,
  };
}

export function welding(): WeldingPlan {
  const all = welds();
  const order = all.map(({ name }, index) => ({
    weld: name,
    quarters: index % 2 === 0 ? [2, 4, 3, 1] : [1, 3, 2, 4],
  }));
  const worst = all.map(({ name }) => ({ weld: name, quarters: [1, 2, 3, 4] }));
  const check = (key: string, pulls: number, given: number, most: number) => ({
    key,
    index: 0,
    shrinkage: figure(pulls, 'mm'),
    given: figure(given, 'mm'),
    proposed: figure(given, 'mm'),
    worst: figure(most, 'mm'),
  });
  return {
    welds: all,
    procedures: (['butt', 'saddle', 'pad'] as const).map(procedure),
    sleeve: null,
    weldLength: figure(458, 'mm'),
    arcTime: figure(305, 's'),
    floorTime: figure(1525, 's'),
    count: figure(4, 'count'),
    fillerMass: figure(4, 'g'),
    fillerLength: figure(250, 'mm'),
    shrinkage: figure(0.5, 'mm', 0.25),
    reckonedShrinkage: figure(0.53, 'mm', 0.26),
    order,
    proposed: order,
    movement: {
      checks: [check('width-at-corners', -0.5, 0.2, 3.1), check('width-at-feet', -0.5, -1.4, -6.2)],
      off: { given: figure(1.1, 'mm'), proposed: figure(1.1, 'mm'), worst: figure(7.4, 'mm') },
      largestGiven: figure(1.4, 'mm'),
      largestProposed: figure(1.4, 'mm'),
      largestWorst: figure(6.2, 'mm'),
      worst,
    },
  };
}

export function finish(): FinishPlan {
  return {
    treatment: 'flush',
    surface: 'satin',
    designation: '1K/2K',
    american: 'No. 4',
    roughness: figure(0.4, 'um', 0.1),
    reinforcement: figure(0.5, 'mm'),
    leftProud: figure(0.15, 'mm', 0.05),
    steps: [
      { key: 'knock-down', welds: 'all', gritFrom: 40, gritTo: 60 },
      { key: 'flush', welds: 'all', gritFrom: 80, gritTo: 80 },
      { key: 'cross', welds: 'all', gritFrom: 120, gritTo: 120 },
      { key: 'cross', welds: 'all', gritFrom: 180, gritTo: 180 },
      { key: 'satin-along', welds: 'all', gritFrom: 240, gritTo: 320 },
    ],
    minutes: welds().map(({ name }) => ({ weld: name, flush: figure(4.5, 'min', 1.5), surface: figure(9, 'min', 3) })),
    total: figure(54, 'min', 18),
    cleaning: {
      key: 'citric-3',
      temperatureLow: figure(21, 'degC'),
      temperatureHigh: figure(49, 'degC'),
      timeLeast: figure(20, 'min'),
      timeMost: null,
    },
    notes: ['own-abrasives', 'no-chlorides', 'sea-rinse'],
  };
}
