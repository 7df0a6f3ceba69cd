/** Sharp-edged hole with Cd 0.61 and argon of 1.6618 kg/m³; a balance of oxygen; a plane source of heat: all computed beforehand. */
import { describe, expect, it } from 'vitest';
import { peakRise, peakTime } from '../../server/solver/purge/dam-heat.ts';
import { leakLimit, ventBore, ventPressure } from '../../server/solver/purge/vent.ts';

describe('vent', () => {
  it.each([
    [5, [310, 98, 40, 19, 6], '4.0'],
    [8, [795, 251, 103, 50, 16], '5.0'],
    [10, [1241, 393, 161, 78, 25], '5.6'],
    [15, [2793, 884, 362, 175, 55], '6.9'],
  ] as const)('%d L/min through 3, 4, 5, 6, 8 mm', (flow, row, bore) => {
    expect([3, 4, 5, 6, 8].map((hole) => Math.round(ventPressure({ flow, bore: hole })))).toEqual(row);
    expect(ventBore({ flow, pressure: 100 }).toFixed(1)).toBe(bore);
  });
  it('10 L/min: 160.9 Pa through 5 mm, 100 Pa through 5.63 mm', () => {
    expect(ventPressure({ flow: 10, bore: 5 }).toFixed(1)).toBe('160.9');
    expect(ventBore({ flow: 10, pressure: 100 }).toFixed(2)).toBe('5.63');
  });
  it('a bore of 1.78 √Q gives 100 Pa', () => {
    expect(ventBore({ flow: 1, pressure: 100 }).toFixed(2)).toBe('1.78');
  });
});

describe('leak', () => {
  it.each([
    [50, 5, '1.15'],
    [50, 10, '2.29'],
    [100, 8, '3.7'],
    [20, 8, '0.69'],
  ])('%d ppm at %d L/min bears %s mL/min', (target, flow, printed) => {
    const leak = leakLimit({ flow, target, supply: 2 });
    expect(leak.toFixed(printed.split('.')[1]?.length)).toBe(printed);
    // where gas and leak mix: (Q Cᵢ + q C_air)/(Q + q)
    expect((2 * flow + 209.5 * leak) / (flow + leak / 1000)).toBeCloseTo(target, 8);
  });
});

describe('heat at a dam', () => {
  it.each([
    [20, '446', '53', 1],
    [50, '178', '5.5', 60],
    [100, '89', '22', 60],
    [150, '59', '49', 60],
  ])('240 J/mm on 1.65 mm: %d mm away %s K', (distance, rise, time, second) => {
    const got = peakRise({ heat: 240, wall: 1.65 }, distance);
    expect(got.toFixed(0)).toBe(rise);
    expect((peakTime(distance) / second).toFixed(time.includes('.') ? 1 : 0)).toBe(time);
  });
});
