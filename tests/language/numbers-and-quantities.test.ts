import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Units } from '../../server/job/job.ts';
import { numberForField } from '../../server/language/length-format.ts';
import { NUMBER_PROBLEMS, parseMoney, parseNumber } from '../../server/language/number-text.ts';
import {
  formatBand,
  formatMoney,
  formatQuantity,
  plusMinusParts,
  shownBand,
} from '../../server/language/quantity-format.ts';
import { hasWords } from '../../server/language/words.ts';
import { figure } from '../../server/solver/figure.ts';

const mm: Units = { length: 'mm', fraction: 16 };
const inch: Units = { length: 'inch', fraction: 16 };

describe('plain numbers', () => {
  it.each<[string, number | string]>([
    ['90', 90],
    ['90°', 90],
    ['8,5', 8.5],
    ['8.5 L/min', 8.5],
    ['-3', -3],
    ['\u22123', -3],
    ['1e3', 1000],
    ['', 'empty'],
    ['ninety', 'not-a-number'],
    ['1 2', 'not-a-number'],
    ['1,500', 'comma-unclear'],
    ['0,375', 0.375],
  ])('reads %j as %s', (text, expected) => {
    const result = parseNumber(text);
    expect(result.ok ? result.value : result.code).toBe(expected);
  });

  it('reads back what it shows in a field', () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        const back = parseNumber(numberForField(value));
        return back.ok && Math.abs(back.value - value) <= 5e-7 + 1e-9;
      }),
    );
  });

  it('has words for every problem', () => {
    for (const code of NUMBER_PROBLEMS) expect(hasWords(`number.${code}`), code).toBe(true);
  });
});

describe('money', () => {
  it.each<[string, number, number | string]>([
    ['12.50', 2, 1250],
    ['12,5', 2, 1250],
    ['12', 2, 1200],
    ['0.07', 2, 7],
    ['12.500', 2, 1250],
    ['12,505', 2, 'comma-unclear'],
    ['12.505', 2, 'too-many-digits'],
    ['12.505', 3, 12505],
    ['1200', 0, 1200],
    ['EUR 4.10', 2, 410],
    ['-5', 2, 'not-a-number'],
    ['', 2, 'empty'],
  ])('reads %j with %d digits as %s', (text, digits, expected) => {
    const result = parseMoney(text, digits);
    expect(result.ok ? result.value : result.code).toBe(expected);
  });

  it('reads every amount back exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.constantFrom(0, 2, 3), (minor, digits) => {
        const shown = formatMoney(minor, 'EUR', digits).replaceAll(',', '');
        const back = parseMoney(shown, digits);
        return back.ok && back.value === minor;
      }),
    );
  });
});

describe('quantities', () => {
  it('show each unit with the decimals that a shop can use', () => {
    expect(formatQuantity(1.1841, 'deg', mm)).toBe('1.18°');
    expect(formatQuantity(90, 'deg', mm)).toBe('90.0°');
    expect(formatQuantity(270, 's', mm)).toBe('4 min 30 s');
    expect(formatQuantity(45.2, 's', mm)).toBe('46 s');
    expect(formatQuantity(3900, 's', mm)).toBe('1 h 5 min');
    expect(formatQuantity(38.1, 'mm', inch)).toBe('1 1/2 in');
    expect(formatQuantity(2, 'count', mm)).toBe('2');
    expect(formatQuantity(1.65, 'mm', mm)).toBe('1.65 mm');
    expect(formatQuantity(0.012, 'mm', mm)).toBe('0.012 mm');
    expect(formatQuantity(0.2047, 'kJ/mm', mm)).toBe('0.205 kJ/mm');
    expect(formatQuantity(1.5, 'kJ/mm', mm)).toBe('1.500 kJ/mm');
    expect(formatQuantity(10.5, 'V', mm)).toBe('10.5 V');
    expect(formatQuantity(0.48, 'um', mm)).toBe('0.48 µm');
    expect(formatQuantity(177.6, 'K', mm)).toBe('178 K');
    expect(formatQuantity(3.8e-6, 'm2/s', mm)).toBe('0.0000038 m²/s');
    expect(formatQuantity(1.72e-5, '1/K', mm)).toBe('0.0000172 1/K');
    expect(formatBand({ plusMinus: 1, from: ['tape'] }, 'mm', inch)).toBe('± 0.039 in');
    expect(formatBand({ plusMinus: 1, from: ['tape'] }, 'mm', mm)).toBe('± 1.00 mm');
  });

  it('leave out a band that the digits shown do not know', () => {
    const of = (value: number, plusMinus: number, unit: 'mm' | 'deg' | 'count' = 'mm') =>
      figure(value, unit, 'x = y', [], ['first-order'], { plusMinus, from: ['tape'] });
    expect([shownBand(of(7.76, 0), mm), shownBand(of(7.76, 0.0004), mm), shownBand(of(7.76, 0.0006), mm)]).toEqual([
      '',
      '',
      '± 0.001 mm',
    ]);
    expect([shownBand(of(773.2, 0.004), mm), shownBand(of(773.2, 0.006), mm)]).toEqual(['', '± 0.006 mm']);
    expect([shownBand(of(90, 1e-4, 'deg'), mm), shownBand(of(90, 0.1, 'deg'), mm)]).toEqual(['', '± 0.10°']);
    expect([shownBand(of(38.1, 0.001), inch), shownBand(of(38.1, 1), inch)]).toEqual(['', '± 0.039 in']);
    expect(shownBand(figure(1, 'mm', 'x = y', [], ['first-order']), mm)).toBe('');
  });

  it('tell the size of a band and a length for a degree in inches by decimals alone', () => {
    const of = (value: number, unit: 'mm' | 'mm/deg') => figure(value, unit, 'x = y', [], ['first-order']);
    expect(plusMinusParts(of(1.39, 'mm'), inch)).toEqual({ number: '0.055', unit: 'in' });
    expect(plusMinusParts(of(1.39, 'mm'), mm)).toEqual({ number: '1.39', unit: 'mm' });
    expect(formatQuantity(6.69, 'mm/deg', inch)).toBe('0.263 in/°');
  });
});
