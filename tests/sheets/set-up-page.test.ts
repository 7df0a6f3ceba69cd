import { describe, expect, it } from 'vitest';
import type { Finding } from '../../server/plan/finding.ts';
import { COLOURS, HEIGHTS } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { planOfThree, planOfTwoSideBySide, planOfWelds, planWith, stopIn, withFindings } from './fixture-set-ups.ts';
import { chamber } from './fixture-gas.ts';
import { makeJob, makePlan } from './fixture.ts';
import { texts } from './layout-faults.ts';
import { ofRole, saidOn, pagesOf as laidPages } from './laid-pages.ts';

const pagesOf = laidPages('weld-and-purge');

const [first] = pagesOf();
const set = saidOn(first!);

describe('a set-up', () => {
  it.each(['a4', 'letter'] as const)('has one page of its own on %s, in both units', (paper) => {
    for (const length of ['mm', 'inch'] as const) {
      const job = makeJob(38.1, paper);
      const said = pagesOf(planOfThree(), { ...job, units: { ...job.units, length } }).map(saidOn);
      for (const number of [1, 2, 3]) {
        expect(said.filter((text) => text.includes(`Set-up ${String(number)} of 3`))).toHaveLength(1);
        expect(said[number - 1]).toContain(`Set-up ${String(number)} of 3`);
      }
      expect(said.join(' ')).not.toContain('continued');
    }
  });

  it.each(['a4', 'letter'] as const)(
    'of six welds is still one page on %s, with a log of four rows at least',
    (paper) => {
      const pages = pagesOf(planOfWelds(6), makeJob(38.1, paper));
      expect(pages.map(saidOn).join(' ')).not.toContain('continued');
      expect(rowsOfLog(pages[0]!)).toBeGreaterThanOrEqual(4);
    },
  );

  it('of many welds goes on on a page that says so, and no letter is smaller than 1.8 mm', () => {
    const pages = pagesOf(planOfWelds(30));
    expect(saidOn(pages[1]!)).toContain('Set-up 1, continued');
    for (const page of pages.slice(0, 2)) {
      const above = texts(page.items).filter(({ at }) => at[1] < page.height - 40);
      expect(Math.min(...above.map(({ height }) => height))).toBeGreaterThanOrEqual(HEIGHTS.small - 1e-9);
    }
  });

  it('says everything in the order in which it is needed', () => {
    const order = [
      'Set-up 1 of 1: welds 1, 2, S1, S2',
      'feed',
      '1 wait at least 3 min 30 s',
      '2 gas flow while you wait 8 L/min',
      '3 meter at the vent shows 50 ppm or less',
      '4 turn down, weld at 4 L/min',
      '5 before the last quarter closes 2.5 L/min',
      '6 keep on after the last arc for 1 min',
      'Feed: hoop, datum end. Vent: hoop, far end',
      'weld place faces gap tacks quarters',
      '142, ground',
      'tacks, weld 1, 2',
      'Log, to be filled in by hand',
      'Cautions',
    ];
    const flowing = set.replace(/\s+/g, ' ');
    const places = order.map((said) => flowing.indexOf(said));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places.toSorted((a, b) => a - b)).toEqual(places);
  });

  it('has a row for each weld: place, faces, gap, tacks, quarters, position, current and hi-lo by its three names', () => {
    expect(set).toContain('hi-lo, mm polish, at most ISO 5817 B, at most');
    expect(set).toContain('1 hoop at 1020.0 mm square, tight 0 mm 3 × 5 mm 2 4 3 1 PH (5G up) 52 A 0.12 0.17 0.83');
    expect(set).toContain('S1 crossbar 1, datum end on hoop saddle 0 mm 4 × 5 mm 2 4 3 1 PH (5G up) 52 A — — —');
    expect(set.replace(/\s+/g, ' ')).toContain(
      'Filler: weld 1, 2 none; weld S1, S2 ER316LSi / W 19 12 3 L Si, Ø 1.6 mm. Torch, butts, saddles: 7.0 L/min, on for 6 s after the arc, electrode Ø 1.6 mm, cup 9.5 mm.',
    );
  });

  it('says what is opened and shut, and that no gas runs through the dead leg', () => {
    const flowing = set.replace(/\s+/g, ' ');
    for (const said of [
      'Vent: hoop, far end, bore 6.0 mm, 140.0 mm over the feed.',
      'Plug: hoop, datum end; hoop, far end; crossbar 1, datum end.',
      'Tape until it is welded, weld: 1; 2.',
      'No gas runs through crossbar 1, 910.0 mm, which points neither up nor down: it clears by itself in 10 h 0 min.',
      'Weld 2 stands in it.',
      'Only the meter at the vent says that the tube is ready.',
      'Never sooner than 25 s (plug flow); long tube 45 s; well mixed 3 min 30 s.',
    ]) {
      expect(flowing).toContain(said);
    }
  });

  it('draws one symbol for each different kind of weld, with the names that it holds for', () => {
    const kinds = (text: string): string[] =>
      [...text.matchAll(/weld (S?\d(?:, S?\d)*) (?=1|outside|weld)/g)].map(String);
    expect(kinds(set).length).toBeGreaterThan(0);
    expect(set).toContain('142, ground weld 1, 2 141 weld S1, S2');
    const aws = makePlan();
    const symbols = aws.welding!.welds.map((one) => ({
      ...one,
      symbol: { ...one.symbol, standard: 'aws-a2-4' as const },
    }));
    const job = makeJob();
    const said = saidOn(
      pagesOf(planWith([chamber()], symbols), { ...job, welding: { ...job.welding, symbols: 'aws-a2-4' } })[0]!,
    );
    expect(said).toContain('GTAW');
    expect(said).toContain('Symbols by AWS A2.4');
    expect(said).not.toContain('ground');
  });
});

const rowsOfLog = (page: Page): number => {
  const levels = ofRole(page, 'log')
    .filter(({ points: [from, to] }) => from![1] === to![1])
    .map(({ points: [from] }) => from![1]);
  return new Set(levels).size - 1;
};

describe('what there is no room for', () => {
  const caution: Finding = {
    code: 'dead-leg',
    grade: 'caution',
    field: '/purge/holes/toAir',
    data: { chamber: 1, member: 'crossbar 1', value: 470, minutes: 678 },
    wayOut: null,
  };
  const notes = Array.from({ length: 8 }, (_, index) => ({
    ...caution,
    data: { ...caution.data, minutes: 600 + index },
  }));
  const said = pagesOf(withFindings(makePlan(), notes)).map(saidOn);

  it('is the notes: they go over, and the page that hangs there says so and keeps its log and cautions', () => {
    expect(said[0]).toContain('There are cautions or notes about this set-up on the next page.');
    expect(said[0]).toContain('Log, to be filled in by hand');
    expect(said[0]).toContain('Argon kills without warning');
    expect(said[0]).not.toContain('CAUTION:');
    expect(said[1]).toContain('Set-up 1, continued CAUTION:');
    expect(said[1]!.match(/CAUTION:/g)).toHaveLength(8);
  });

  it('is nothing where one note fits', () => {
    const [one, next] = pagesOf(withFindings(makePlan(), [caution])).map(saidOn);
    expect(one).toContain('CAUTION:');
    expect(one).not.toContain('on the next page');
    expect(next).not.toContain('continued');
  });
});

describe('chambers that are filled side by side', () => {
  const [page, next] = pagesOf(planOfTwoSideBySide());
  const text = saidOn(page!).replace(/\s+/g, ' ');

  it('are one set-up on one page, with the wait until the last of them is full', () => {
    expect(text).toContain('Set-up 1 of 1: welds 1, 2');
    expect(text).toContain('wait at least 3 min 30 s');
    expect(saidOn(next!)).not.toContain('Set-up');
  });

  it('have a hose, a vent, openings and times each', () => {
    for (const said of [
      'feed 1',
      'vent 1',
      'feed 2',
      'vent 2',
      'Chamber 1: Feed: hoop, datum end.',
      'Chamber 2: Feed: beside the dam',
    ])
      expect(text).toContain(said);
    expect(text).toContain('Each chamber has a hose and a vent of its own');
    expect(text).toContain('turned down to 4.0 L/min');
    expect(text.match(/Chamber \d: Holds 2\.1 L/g)).toHaveLength(2);
  });
});

describe('the log', () => {
  it('has four to six rows to write in and a column for each thing', () => {
    expect(rowsOfLog(first!)).toBeGreaterThanOrEqual(4);
    expect(rowsOfLog(first!)).toBeLessThanOrEqual(6);
    expect(set).toContain('date gas on meter, ppm welds gas off by whom');
  });
});

describe('a stop', () => {
  const plan = withFindings(planOfThree(), [stopIn(2)]);
  const said = pagesOf(plan).map(saidOn);

  it('takes the place of the wait on the page of its set-up, and stands first in a red frame', () => {
    const page = pagesOf(plan)[1]!;
    const text = said[1]!;
    expect(text).toMatch(/DO NOT WELD|DO NOT/);
    expect(text).not.toContain('wait at least');
    expect(text).not.toContain('Only the meter');
    expect(text.indexOf('STOP:')).toBeLessThan(text.indexOf('feed'));
    const big = texts(page.items).filter(({ text: word }) => /DO|NOT|WELD/.test(word) && word === word.toUpperCase());
    expect(big.some(({ height, colour }) => height === HEIGHTS.wall && colour === COLOURS.red)).toBe(true);
    const [frame] = ofRole(page, 'frame').filter(({ stroke }) => stroke?.colour === COLOURS.red);
    expect(Math.min(...frame!.points.map(([, y]) => y))).toBeLessThan(40);
  });

  it('leaves the other set-ups as they are', () => {
    for (const index of [0, 2]) {
      expect(said[index]).toContain('wait at least');
      expect(said[index]).not.toContain('STOP');
    }
  });

  it('that is about no set-up in particular stands on all of them', () => {
    const flow = { ...stopIn(0), code: 'target-below-gas', field: '/purge/targetOxygen', data: {} } as const;
    const all = pagesOf(withFindings(planOfThree(), [flow])).map(saidOn);
    for (const index of [0, 1, 2]) expect(all[index]).not.toContain('wait at least');
  });
});
