import { describe, expect, it } from 'vitest';
import { landingStage } from '../../db/demo/landing-stage.ts';
import { barsCsv } from '../../server/exports/bars-csv.ts';
import { cutListCsv } from '../../server/exports/cut-list-csv.ts';
import type { ExportInput } from '../../server/exports/export-file.ts';
import type { StockPlan } from '../../server/plan/stock.ts';
import { makeJob, makePlan } from '../sheets/fixture.ts';
import { bar, piece, SAW, sizeLayout, stock } from '../sheets/fixture-stock.ts';
import { inputOf } from './made-up-frames.ts';
import { readCsv } from './read-csv.ts';

const input = (change: StockPlan | null = stock(), member: string | null = null): ExportInput => ({
  plan: { ...makePlan(), stock: change },
  job: makeJob(),
  member,
});

describe('the cut list as a table', () => {
  it('has a row a piece with its number, size and length as sawn', () => {
    const rows = readCsv(cutListCsv(input()));
    expect(rows.map((row) => [row['number'], row['piece'], row['kind'], row['length to saw (mm)']])).toEqual([
      ['1', 'hoop', 'member', '2080'],
      ['2', 'crossbar 1', 'member', '910'],
      ['3', 'let-in 2', 'the let-in piece', '60'],
      ['4', 'leg 1', 'leg', '640.5'],
    ]);
    expect(rows[3]).toMatchObject({
      'outside diameter (mm)': '25.4',
      'wall (mm)': '1.5',
      grade: '316L',
      'how many': '1',
    });
  });

  it('is of one member where one is chosen, with the numbers of the whole list', () => {
    expect(readCsv(cutListCsv(input(stock(), 'crossbar 1')))).toMatchObject([{ number: '2', piece: 'crossbar 1' }]);
    expect(cutListCsv(input(stock(), 'nobody'))).toMatchObject({ ok: false, reason: 'no-such-member' });
    expect(cutListCsv(input(null))).toMatchObject({ ok: false, reason: 'nothing-to-saw' });
  });

  it('has all pieces of a planned job', () => {
    const made = inputOf(landingStage());
    const rows = readCsv(cutListCsv(made));
    expect(rows.map((row) => row['piece'])).toEqual(made.plan.stock!.pieces.map(({ name }) => name));
    expect(rows.length).toBeGreaterThan(0);
  });
});

describe('the bars as a table', () => {
  const bars = [
    bar(1, 6000, [
      ['hoop', 2080],
      ['crossbar 1', 910],
    ]),
    bar(2, 1200, [['=rail', 1120, 'Gangway']], { stock: 'b1', name: 'rack 3', remnant: true, heat: '@H 4711' }),
  ];
  const plan: StockPlan = {
    pieces: [piece('hoop', 2080), piece('crossbar 1', 910)],
    sizes: [sizeLayout(bars)],
    overlong: [],
    joints: [],
  };

  it('tells every stretch of a bar from its trimmed end; stretches and saw cuts are the whole bar', () => {
    const rows = readCsv(barsCsv(input(plan)));
    expect(rows.map((row) => `${row['bar']} ${row['what']} ${row['piece']}`.trim())).toEqual([
      '1 cut off first',
      '1 piece hoop',
      '1 piece crossbar 1',
      '1 offcut kept',
      '2 cut off first',
      "2 piece '=rail",
      '2 offcut scrap',
    ]);
    const number = (row: Record<string, string>, head: string): number => Number(row[`${head} (mm)`]);
    expect(number(rows[1]!, 'from, off the trimmed end')).toBe(0);
    expect(number(rows[2]!, 'from, off the trimmed end')).toBe(2080 + SAW.kerf);
    for (const { number: of, length, pieces } of bars) {
      const own = rows.filter((row) => row['bar'] === String(of));
      const all = own.reduce((sum, row) => sum + number(row, 'length'), 0);
      expect(all + SAW.kerf * pieces.length).toBeCloseTo(length, 6);
      expect(number(own.at(-1)!, 'to, off the trimmed end') + SAW.endTrim).toBeCloseTo(length, 6);
    }
  });

  it('has bars that are cut alike once, with how many they are', () => {
    const alike = {
      ...plan,
      sizes: [sizeLayout([bar(1, 6000, [['hoop', 2080]], { times: 3 }), bar(4, 3000, [['hoop', 2080]])])],
    };
    const rows = readCsv(barsCsv(input(alike))).filter((row) => row['what'] === 'piece');
    expect(rows.map((row) => [row['bar'], row['bars']])).toEqual([
      ['1', '3'],
      ['4', '1'],
    ]);
  });

  it('says where a bar lies, its heat and for whom a piece is, and lets none of it run as a formula', () => {
    const rows = readCsv(barsCsv(input(plan)));
    expect(rows[5]).toMatchObject({
      'place in stock': 'b1',
      lies: 'rack 3',
      remnant: 'yes',
      heat: "'@H 4711",
      piece: "'=rail",
      'for another job': 'Gangway',
    });
  });

  it('is of the pieces of one member where one is chosen, and says where there is none', () => {
    expect(readCsv(barsCsv(input(plan, 'hoop')))).toMatchObject([{ bar: '1', piece: 'hoop' }]);
    expect(barsCsv(input({ ...plan, sizes: [sizeLayout([], { from: 'none' })] }))).toMatchObject({ reason: 'no-bars' });
    expect(barsCsv(input(null))).toMatchObject({ ok: false, reason: 'no-bars' });
  });

  it('lays each piece of a planned job once for every time that it is wanted', () => {
    const made = inputOf(landingStage());
    const laid = readCsv(barsCsv(made)).filter((row) => row['what'] === 'piece');
    for (const { name, count, length } of made.plan.stock!.pieces) {
      const own = laid.filter((row) => row['piece'] === name);
      expect(own).toHaveLength(count);
      expect(Number(own[0]!['length (mm)'])).toBeCloseTo(length.value, 3);
    }
  });
});
