import { describe, expect, it } from 'vitest';
import type { Job } from '../../server/job/job.ts';
import type { Plan } from '../../server/plan/plan.ts';
import { COLOURS, HEIGHTS, type Drawn, type Spot } from '../../server/sheets/ink.ts';
import type { Page } from '../../server/sheets/page.ts';
import { layoutSheet, renderSheet } from '../../server/sheets/render-sheet.ts';
import { heldWith, planOfThree, planOfWelds, planWith, stopIn, withFindings } from './fixture-set-ups.ts';
import { chamber } from './fixture-gas.ts';
import { weld } from './fixture-weld.ts';
import { makeJob, makePlan } from './fixture.ts';
import { lines, texts } from './layout-faults.ts';
import { readPdf } from './read-pdf.ts';

function pagesOf(plan: Plan = makePlan(), job: Job = makeJob()): readonly Page[] {
  const sheet = layoutSheet('weld-and-purge', { plan, job, revision: null });
  if (!sheet.ok) throw new Error(sheet.reason);
  return sheet.pages;
}

const saidOn = (page: Page): string =>
  texts(page.items)
    .map(({ text }) => text)
    .join(' ');

const [first] = pagesOf();
const set = saidOn(first!);

/** Everything of one role on a page. */
const ofRole = (page: Page, role: Drawn['role']): Drawn[] => lines(page.items).filter((one) => one.role === role);

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
    expect(set).toContain('Filler: weld 1, 2 none; weld S1, S2 ER316LSi / W 19 12 3 L Si, Ø 1.6 mm.');
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

describe('the picture of a set-up', () => {
  it('is to scale: the hoop measured back from the file is 1012 mm over the outside', async () => {
    const sheet = await renderSheet('weld-and-purge', { plan: makePlan(), job: makeJob(), revision: null });
    if (!sheet.ok) throw new Error(sheet.reason);
    const [page] = await readPdf(sheet.pdf);
    const factor = Number(/scale 1:(\d+(?:\.\d+)?)\./.exec(page!.texts.join(' '))?.[1]);
    // the two edges of the hoop are the only lines of so many points that are drawn so wide
    const edges = page!.paths.filter(({ points, width }) => points.length === 28 && Math.abs(width - 0.5) < 1e-3);
    expect(edges).toHaveLength(2);
    const across = edges.map(({ points }) => {
      const xs = points.map(([x]) => x);
      return factor * (Math.max(...xs) - Math.min(...xs));
    });
    expect(Math.max(...across)).toBeCloseTo(1012, 0);
    expect(Math.min(...across)).toBeCloseTo(1012 - 2 * 38.1, 0);
  });

  it('has dots and arrows along the hoop, crosses along the crossbar where no gas runs', () => {
    const gas = ofRole(first!, 'gas');
    const dots = gas.filter(({ fill, points }) => fill !== null && points.length === 10);
    const arrows = gas.filter(({ fill, points }) => fill !== null && points.length === 3);
    const strokes = gas.filter(({ fill }) => fill === null);
    expect(dots.length).toBeGreaterThan(40);
    expect(arrows.length).toBeGreaterThanOrEqual(3);
    expect(strokes.length).toBeGreaterThan(10);
    const level = strokes.map(({ points }) => (points[0]![1] + points[1]![1]) / 2);
    expect(Math.max(...level) - Math.min(...level)).toBeLessThan(1e-6);
    // up the left leg from the feed, down the right one to the vent
    const [up, down] = [arrows[0]!, arrows.at(-1)!];
    expect(up.points[0]![1]).toBeLessThan(up.points[1]![1]);
    expect(down.points[0]![1]).toBeGreaterThan(down.points[1]![1]);
  });

  it('has a solid bar in each plugged end and a hatched band over each taped gap', () => {
    const bars = ofRole(first!, 'mark').filter(({ fill, points }) => fill === COLOURS.black && points.length === 4);
    expect(bars).toHaveLength(3);
    const bands = ofRole(first!, 'mark').filter(({ fill, points }) => fill === COLOURS.white && points.length === 4);
    expect(bands).toHaveLength(2);
    const pocketed = pagesOf(planOfThree())[1]!;
    const dams = ofRole(pocketed, 'mark').filter(
      ({ fill, points, stroke }) => fill === COLOURS.white && points.length === 4 && stroke?.width === 0.25,
    );
    expect(dams).toHaveLength(2);
    expect(saidOn(pocketed)).toContain('dam');
  });

  it('draws a pocket larger than the frame that it is in', () => {
    const scale = (page: Page): number => Number(/scale 1:([\d.]+)\./.exec(saidOn(page))?.[1]);
    const [whole, small] = pagesOf(planOfThree());
    expect(scale(small!)).toBeLessThanOrEqual(scale(whole!) / 2);
  });
});

describe('which way is up', () => {
  const saidWhen = (x: number, y: number, z: number): string => saidOn(pagesOf(makePlan(), heldWith({ x, y, z }))[0]!);

  it('is told where it points at the reader or away', () => {
    expect(saidWhen(0, 0, 3)).toContain('UP points at you: this is seen from above.');
    expect(saidWhen(0, 0, -0.2)).toContain('UP points away from you: this is seen from below.');
    expect(saidWhen(0, 0, 3)).not.toContain('UP leans');
  });

  it.each([
    ['to the right', 1, 0, [1, 0]],
    ['to the left', -2, 0, [-1, 0]],
    ['upwards', 0, 1, [0, -1]],
    ['downwards', 0, -5, [0, 1]],
  ] as const)('is an arrow %s where it lies in the drawing', (_, x, y, way) => {
    const page = pagesOf(makePlan(), heldWith({ x, y, z: 0 }))[0]!;
    expect(saidOn(page)).not.toMatch(/UP (points|leans)/);
    const word = texts(page.items).find(({ text }) => text === 'UP')!;
    const heads = ofRole(page, 'mark').filter(({ points, fill }) => points.length === 3 && fill === COLOURS.black);
    const [head] = heads.toSorted((a, b) => far(a, word.at) - far(b, word.at));
    const [tip, left, right] = head!.points;
    const base: Spot = [(left![0] + right![0]) / 2, (left![1] + right![1]) / 2];
    const size = Math.hypot(tip![0] - base[0], tip![1] - base[1]);
    expect((tip![0] - base[0]) / size).toBeCloseTo(way[0], 6);
    expect((tip![1] - base[1]) / size).toBeCloseTo(way[1], 6);
  });

  it('is both where it leans, and nothing where no way is up', () => {
    const leaning = saidWhen(0, 1, 1);
    expect(leaning).toContain('UP leans towards you too.');
    expect(leaning).toMatch(/\bUP\b(?! leans)/);
    expect(saidWhen(0, 1, -1)).toContain('UP leans away from you too.');
    expect(saidWhen(0, 0, 0)).not.toMatch(/\bUP\b/);
  });
});

const far = ({ points }: Drawn, [x, y]: Spot): number =>
  Math.min(...points.map(([px, py]) => Math.hypot(px - x, py - y)));

describe('the quarters of a tube', () => {
  const tacked = (angles: number[]): Page => {
    const one = weld({
      name: '1',
      kind: 'splice',
      form: 'butt',
      member: 'hoop',
      station: 900,
      point: { x: 0, y: 0, z: 0 },
    });
    const own = { ...one, tacks: { ...one.tacks, angles } };
    return pagesOf(planWith([{ ...chamber(), welds: ['1'] }], [own]))[0]!;
  };
  const page = tacked([0, 90, 180, 270]);
  const [ring] = ofRole(page, 'quarter').filter(({ closed }) => closed);
  const centre: Spot = [
    ring!.points.reduce((sum, [x]) => sum + x, 0) / ring!.points.length,
    ring!.points.reduce((sum, [, y]) => sum + y, 0) / ring!.points.length,
  ];
  /** Which way a word stands from the middle of the tube. */
  const towards = (word: string, near = 30): string[] =>
    texts(page.items)
      .filter(({ text, at }) => text === word && Math.hypot(at[0] - centre[0], at[1] - centre[1]) < near)
      .map(({ at, align, width, height }) => {
        const x = at[0] + (align === 'left' ? width / 2 : align === 'right' ? -width / 2 : 0) - centre[0];
        const y = at[1] - height / 2 - centre[1];
        return `${Math.abs(y) < 1 ? '' : y < 0 ? 'up' : 'down'} ${Math.abs(x) < 1 ? '' : x < 0 ? 'left' : 'right'}`.trim();
      });

  it('go round clockwise from the outside, seen along the tube: the outside left, the top on top', () => {
    expect(towards('1', 8)).toEqual(['up left']);
    expect(towards('2', 8)).toEqual(['up right']);
    expect(towards('3', 8)).toEqual(['down right']);
    expect(towards('4', 8)).toEqual(['down left']);
    expect(towards('outside')).toEqual(['left']);
    expect(towards('top')).toEqual(['up']);
    expect(towards('inside')).toEqual(['right']);
    expect(towards('bottom')).toEqual(['down']);
  });

  it('have the tacks at their angles, numbered as they are set', () => {
    expect(['T1', 'T2', 'T3', 'T4'].flatMap((name) => towards(name))).toEqual(['left', 'up', 'right', 'down']);
  });

  it('are drawn once more where other welds are tacked at other places', () => {
    const count = (one: Page): number => ofRole(one, 'quarter').filter(({ closed }) => closed).length;
    expect(count(page)).toBe(2);
    expect(count(first!)).toBe(4);
  });
});
