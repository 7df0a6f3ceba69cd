import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Units } from '../../server/job/job.ts';
import { formatInOtherUnit, formatLength, lengthForField } from '../../server/language/length-format.ts';
import { LENGTH_PROBLEMS, parseLength, type LengthUnit } from '../../server/language/length-text.ts';
import { hasWords } from '../../server/language/words.ts';

const read = (text: string, unit: LengthUnit = 'mm'): number | string => {
  const result = parseLength(text, unit);
  return result.ok ? result.mm : result.code;
};

const mm: Units = { length: 'mm', fraction: 16 };
const inch: Units = { length: 'inch', fraction: 16 };

describe('a length as a person types it', () => {
  it.each<[string, LengthUnit, number]>([
    ['38.1', 'mm', 38.1],
    ['38,1 mm', 'inch', 38.1],
    ['1 1/2', 'inch', 38.1],
    ['1-1/2', 'inch', 38.1],
    ['1½', 'inch', 38.1],
    ['½', 'inch', 12.7],
    ['1 1/2 in', 'mm', 38.1],
    ['1 1/2"', 'mm', 38.1],
    ['1.5in', 'mm', 38.1],
    ['3\' 1 1/4"', 'mm', 946.15],
    ["3' 1-1/4", 'mm', 946.15],
    ['3\'-1 1/4"', 'inch', 946.15],
    ['3′ 1 1/4″', 'inch', 946.15],
    ['3 ft 1.25 in', 'mm', 946.15],
    ["2'", 'mm', 609.6],
    ['1.2 m', 'inch', 1200],
    ['4.5 cm', 'mm', 45],
    ['.5', 'inch', 12.7],
    ['0,375', 'inch', 9.525],
    ['-12.5', 'mm', -12.5],
    ['\u22123/8', 'inch', -9.525],
    ['-1 1/2', 'inch', -38.1],
    ['+7', 'mm', 7],
    ['1 000', 'mm', Number.NaN],
    ['0', 'mm', 0],
    ['-0', 'mm', 0],
  ])('reads %s (%s) as %d mm', (text, unit, expected) => {
    expect(read(text, unit)).toBe(Number.isNaN(expected) ? 'not-a-length' : expected);
  });

  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['abc', 'not-a-length'],
    ['1/0', 'zero-denominator'],
    ['1 1/00 in', 'zero-denominator'],
    ['38 mm in', 'two-units'],
    ['1 in 5 mm', 'two-units'],
    ["3' 20 mm", 'two-units'],
    ['12 furlongs', 'unknown-unit'],
    ['1,500', 'comma-unclear'],
    ['1,500.5', 'comma-unclear'],
    ['1,5.5', 'not-a-length'],
    ['1 2 3', 'not-a-length'],
    ['--3', 'not-a-length'],
    ['1/2/3', 'not-a-length'],
    ['1e3', 'unknown-unit'],
    ['NaN', 'not-a-length'],
  ])('refuses %j with %s', (text, code) => {
    expect(read(text)).toBe(code);
  });

  it('never throws, whatever is typed', () => {
    fc.assert(fc.property(fc.string({ maxLength: 40 }), (text) => typeof read(text) !== 'undefined'));
  });

  it('has words for every problem', () => {
    for (const code of LENGTH_PROBLEMS) expect(hasWords(`length.${code}`), code).toBe(true);
  });
});

describe('a length shown', () => {
  it('is in millimetres to 0.1 or in inches to the finest fraction', () => {
    expect(formatLength(38.1, mm)).toBe('38.1 mm');
    expect(formatLength(1000.04, mm)).toBe('1000.0 mm');
    expect(formatLength(-0.04, mm)).toBe('0.0 mm');
    expect(formatLength(38.1, inch)).toBe('1 1/2 in');
    expect(formatLength(-9.525, inch)).toBe('\u22123/8 in');
    expect(formatLength(25.3, inch)).toBe('1 in');
    expect(formatLength(1, { length: 'inch', fraction: 64 })).toBe('3/64 in');
    expect(formatInOtherUnit(38.1, mm)).toBe('1 1/2 in');
    expect(formatInOtherUnit(1.65, mm)).toBe('0.065 in');
    expect(formatInOtherUnit(38.1, inch)).toBe('38.1 mm');
  });

  it('reads back within half of what it was rounded to', () => {
    const length = fc.double({ min: -20_000, max: 20_000, noNaN: true });
    const fraction = fc.constantFrom<Units['fraction']>(8, 16, 32, 64);
    fc.assert(
      fc.property(length, fraction, (value, finest) => {
        const inches = parseLength(formatLength(value, { length: 'inch', fraction: finest }), 'mm');
        const metric = parseLength(formatLength(value, mm), 'inch');
        return (
          inches.ok &&
          Math.abs(inches.mm - value) <= 12.7 / finest + 1e-9 &&
          metric.ok &&
          Math.abs(metric.mm - value) <= 0.05 + 1e-9
        );
      }),
    );
  });

  it('stands in a field so that nothing is lost by reading it again', () => {
    const length = fc.double({ min: 0.001, max: 20_000, noNaN: true });
    fc.assert(
      fc.property(length, fc.constantFrom<LengthUnit>('mm', 'inch'), (value, unit) => {
        const back = parseLength(lengthForField(value, { length: unit, fraction: 16 }), unit);
        return back.ok && Math.abs(back.mm - value) <= 0.0005 + 1e-9;
      }),
    );
    expect(lengthForField(42.16, mm)).toBe('42.16');
    expect(lengthForField(1000, mm)).toBe('1000');
    expect(lengthForField(38.1, inch)).toBe('1 1/2');
    expect(lengthForField(3.56, inch)).toBe('0.14016');
  });

  it('keeps every sixty-fourth of an inch exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 64_000 }), (steps) => {
        const value = (steps * 25.4) / 64;
        const back = parseLength(lengthForField(value, { length: 'inch', fraction: 64 }), 'inch');
        return back.ok && Math.abs(back.mm - value) < 1e-9;
      }),
    );
  });
});
