import type { Figure } from '../../server/plan/figure.ts';
import type { Chamber, PurgePlan } from '../../server/plan/purge.ts';
import type { QuoteLine, QuotePlan } from '../../server/plan/quote.ts';
import { figure } from './fixture-figure.ts';

export function purge(): PurgePlan {
  const time = (volumes: number) => ({
    volumes: figure(volumes, 'ratio'),
    time: figure(volumes * 25, 's'),
    gas: figure(volumes * 2.1, 'L'),
  });
  const point = { x: 0, y: 0, z: 0 };
  const chamber: Chamber = {
    number: 1,
    stretches: [{ member: 'hoop', from: 0, to: 2200 }],
    joints: [1, 2],
    volume: figure(2.1, 'L'),
    length: figure(2200, 'mm'),
    plug: time(1),
    longTube: time(1.8),
    wellMixed: time(8.38),
    printed: time(8.38),
    feed: { member: 'hoop', station: 0, point },
    vent: { member: 'hoop', station: 2200, point },
    dams: [],
    plugs: [{ member: 'crossbar 1', end: 'start', point }],
  };
  return {
    gasOxygen: figure(5, 'ppm'),
    targetOxygen: figure(50, 'ppm'),
    chambers: [chamber],
    prePurgeFlow: figure(8, 'L/min'),
    weldingFlow: figure(4, 'L/min'),
    ventPressure: figure(103, 'Pa'),
    ventBoreFor100Pa: figure(5, 'mm'),
    leakLimit: figure(1.8, 'mL/min'),
    reynolds: figure(360, 'ratio'),
    hold: figure(60, 's'),
    purgeGas: figure(40, 'L'),
    torchGas: figure(60, 'L'),
    jobGas: figure(100, 'L'),
    bottleContents: figure(4290, 'L'),
    bottleShare: figure(0.02, 'ratio'),
    roomOxygenStill: figure(20.7, 'percent'),
    roomOxygenFan: figure(20.8, 'percent'),
    timeToAlarm: null,
    airToStaySafe: figure(139, 'L/min'),
  };
}

export function quote(): QuotePlan {
  const line = (key: QuoteLine['key'], quantity: Figure | null, rate: number | null): QuoteLine => ({
    key,
    quantity,
    rate,
    rateField: '/rates/tubePerMetre',
    amount: quantity === null || rate === null ? null : Math.round(quantity.value * rate),
  });
  const lines = [
    line('tube', figure(3.1, 'm'), 1450),
    line('gas', figure(0.1, 'm3'), 1100),
    line('filler', figure(0.004, 'kg'), null),
    line('weld', figure(0.5, 'h'), 6200),
    line('finish', null, 5800),
  ];
  return {
    scope: 'splice-fewest',
    currency: 'EUR',
    minorDigits: 2,
    date: '2026-11-02',
    lines,
    subtotal: lines.reduce((sum, { amount }) => sum + (amount ?? 0), 0),
    open: ['filler', 'finish'],
  };
}
