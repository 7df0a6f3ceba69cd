import { describe, expect, it } from 'vitest';
import type { Site } from '../../../server/job/site.ts';
import type { LaidLeg, LaidThing } from '../../../server/solver/site/laid-site.ts';
import { planGaps } from '../../../server/solver/site/gaps/plan-gaps.ts';
import { formulaValue } from '../formula-value.ts';
import { at, bar, D, madeUp, thing } from './gaps-made-up.ts';

/** The one tube of these frames runs from the origin 1000 mm along x. */
const rowsOf = (things: readonly LaidThing[], more: Parameters<typeof madeUp>[0] = {}) =>
  planGaps(madeUp({ things, ...more })).gaps.map(({ rows }) => rows);
const gapOf = (one: LaidThing, more: Parameters<typeof madeUp>[0] = {}) => rowsOf([one], more)[0]![0]!;
const DEGREE = Math.PI / 180;

const leg = (foot: { x: number; y: number; z: number }, head: typeof foot, more: Partial<LaidLeg> = {}): LaidLeg => ({
  field: '/site/legs/0',
  name: 'leg',
  foot,
  surface: at(0, 0, 1),
  head,
  member: 'tube',
  station: 0,
  outsideDiameter: 30,
  wall: 1.5,
  ...more,
});

/** A leg as it is typed, of which only what it stands on counts here. */
const typedLeg = (stands: string): Site['legs'][number] => ({
  name: 'leg',
  foot: {
    at: at(500, 0, -600),
    surface: { by: 'thing', thing: stands },
    end: { end: 'mitre', plate: 0 },
    held: 'pinned',
  },
  head: {
    at: { member: 'tube', spot: 'along', number: 1, distance: 500 },
    end: { end: 'saddle' },
    held: 'pinned',
  },
  tube: null,
  adjust: null,
});

describe('the gap from surface to surface', () => {
  it('to a cylinder across the tube is the distance of the axes less both radii', () => {
    const row = gapOf(thing(bar(at(400, 100, 7))));
    expect(row).toMatchObject({ of: 'member', name: 'tube', thingSwing: null, frameSwing: null });
    expect(row.gap.value).toBeCloseTo(100 - 30 - D / 2, 9);
    expect(row.station.value).toBeCloseTo(400, 9);
    expect(row.onTube).toEqual({ x: 400, y: 0, z: 0 });
    expect(row.onThing.y).toBeCloseTo(100, 9);
    expect(row.onThing.z).toBeCloseTo(0, 9);
    expect(formulaValue(row.gap)).toBeCloseTo(row.gap.value, 9);
  });

  it('to a leaning cylinder is the common perpendicular of the axes', () => {
    // it leans in the plane y = 100, which stays 100 mm from the tube
    const axis = at(Math.sin(0.3), 0, Math.cos(0.3));
    expect(gapOf(thing(bar(at(400, 100, 700), { axis }))).gap.value).toBeCloseTo(100 - 30 - D / 2, 9);
  });

  it('beyond the end of the tube is told to its round end, which is on the safe side', () => {
    expect(gapOf(thing(bar(at(1090, 30, 0)))).gap.value).toBeCloseTo(Math.hypot(90, 30) - 30 - D / 2, 9);
  });

  it('to a cylinder that ends is told over its flat end and its rim', () => {
    const stub = (to: number, x: number) => thing(bar(at(x, 0, -500), { ends: { from: 0, to } }));
    // 40 mm below the middle of the tube
    expect(gapOf(stub(460, 400)).gap.value).toBeCloseTo(40 - D / 2, 4);
    // past the end of the tube: off the rim
    expect(gapOf(stub(460, 1060)).gap.value).toBeCloseTo(Math.hypot(30, 40) - D / 2, 4);
    // as long as it is thick and the tube through it
    expect(gapOf(stub(1000, 400)).gap.value).toBeCloseTo(-30 - D / 2, 4);
  });

  it('to a plane is the distance of the nearer end, and negative behind it', () => {
    const wall = (x: number) => thing({ shape: 'plane', at: at(x, 9, 9), normal: at(-1, 0, 0) });
    expect(gapOf(wall(1100)).gap.value).toBeCloseTo(100 - D / 2, 9);
    expect(gapOf(wall(1100)).onThing).toEqual({ x: 1100, y: 0, z: 0 });
    expect(gapOf(wall(950)).gap.value).toBeCloseTo(-50 - D / 2, 9);
    expect(gapOf(wall(950)).station.value).toBeCloseTo(1000, 9);
  });

  it('to a point is the distance less its radius', () => {
    const ball = thing({ shape: 'point', at: at(200, 60, 80), radius: 12 });
    expect(gapOf(ball).gap.value).toBeCloseTo(100 - 12 - D / 2, 9);
    expect(gapOf(ball).onThing).toEqual({ x: 200, y: 60, z: 80 });
  });

  it('grows with everything', () => {
    for (const size of [1e-3, 1e3]) {
      const frame = {
        lines: [
          {
            name: 'tube',
            closed: false,
            centreline: {
              pieces: [{ kind: 'straight' as const, start: at(0, 0, 0), direction: at(1, 0, 0), length: 1000 * size }],
              length: 1000 * size,
            },
          },
        ],
      };
      const row = gapOf(thing(bar(at(400 * size, 100 * size, 0), { radius: 30 * size })), { frame });
      expect((row.gap.value + D / 2) / size).toBeCloseTo(70, 6);
    }
  });
});

describe('legs', () => {
  it('are held against every thing as straight tubes of their own, but for what they stand on', () => {
    const deck = thing({ shape: 'plane', at: at(0, 0, -600), normal: at(0, 0, 1) }, { name: 'deck' });
    const post = thing(bar(at(500, 45, 0)), { name: 'post', field: '/site/things/1' });
    const legs = [leg(at(500, 0, -600), at(500, 0, 0))];
    const stands = (by: string): { readonly site: Partial<Site> } => ({ site: { legs: [typedLeg(by)] } });
    const [onDeck, besidePost] = rowsOf([deck, post], { legs, ...stands('deck') });
    expect(onDeck!.map(({ name }) => name)).toEqual(['tube']);
    expect(besidePost!.map(({ of, name }) => [of, name])).toEqual([
      ['member', 'tube'],
      ['leg', 'leg'],
    ]);
    expect(besidePost![1]!.gap.value).toBeCloseTo(45 - 30 - 15, 9);
    expect(rowsOf([deck], { legs, ...stands('post') })[0]!.map(({ name }) => name)).toEqual(['leg', 'tube']);
  });

  it('stay where they are while the frame swings', () => {
    const post = thing(bar(at(500, 200, 0)));
    const legs = [leg(at(500, 0, -600), at(500, 0, 0))];
    const frame = { hinge: { at: at(0, 0, 0), axis: at(0, 0, 1) } };
    const site = { standing: { hinge: null, slopes: [], height: null, swing: { from: 0, to: 40 } } };
    const [tube, carrying] = rowsOf([post], { legs, frame, site })[0]!;
    expect(carrying!.frameSwing).toBeNull();
    expect(carrying!.gap.value).toBeCloseTo(200 - 30 - 15, 9);
    // the tube swings through the post
    expect(tube!.gap.value).toBeCloseTo(-30 - D / 2, 2);
    expect(tube!.frameSwing!.value).toBeCloseTo(Math.atan2(200, 500) / DEGREE, 1);
  });
});

describe('what swings', () => {
  /** A rod along y that hangs from the point (400, 0, −300) and turns about x. */
  const rod = (from: number, to: number, more: Partial<LaidThing> = {}) =>
    thing(bar(at(400, 0, -300), { axis: at(0, 1, 0), radius: 10, ends: { from: 20, to: 250 } }), {
      swing: { about: at(400, 0, -300), axis: at(1, 0, 0), from: from * DEGREE, to: to * DEGREE },
      ...more,
    });

  it('is told where it comes nearest on its way, with how far it has swung', () => {
    // where its rim comes under the middle of the tube
    const row = gapOf(rod(0, 170));
    expect(row.gap.value).toBeCloseTo(300 - Math.hypot(250, 10) - D / 2, 2);
    expect(row.thingSwing!.value).toBeGreaterThan(80);
    expect(row.thingSwing!.value).toBeLessThan(100);
    expect(row.onThing.x).toBeCloseTo(400, 6);
    expect(row.onThing.z).toBeCloseTo(-300 + 250 * Math.cos(Math.atan2(10, 250)), 1);
    // stopped before that, it is nearest at its last place: its upper rim
    const short = gapOf(rod(0, 60));
    const [rise, out] = [250 * Math.sin(60 * DEGREE) + 10 * Math.cos(60 * DEGREE), 0];
    expect(short.gap.value).toBeGreaterThan(300 - rise - D / 2 + out);
    expect(short.thingSwing!.value).toBeCloseTo(60, 6);
  });

  it('goes through the same places from first to last and from last to first', () => {
    expect(gapOf(rod(170, 0)).gap.value).toBeCloseTo(gapOf(rod(0, 170)).gap.value, 9);
    // and it comes from where it stands
    expect(gapOf(rod(120, 170)).gap.value).toBeCloseTo(gapOf(rod(0, 170)).gap.value, 9);
  });

  it('by nothing stays where it is', () => {
    const row = gapOf(rod(0, 0));
    const still = gapOf({ ...rod(0, 0), swing: null });
    expect(row.gap.value).toBe(still.gap.value);
    expect(row.thingSwing).toBeNull();
    expect(gapOf(rod(30, 30)).thingSwing!.value).toBeCloseTo(30, 6);
  });

  it('about its own axis stays where it is', () => {
    const post = thing(bar(at(400, 100, 0)), {
      swing: { about: at(400, 100, -50), axis: at(0, 0, -1), from: -3, to: 3 },
    });
    expect(gapOf(post)).toMatchObject({ thingSwing: null });
    const level = thing(
      { shape: 'plane', at: at(0, 0, -100), normal: at(0, 0, 1) },
      { swing: { about: at(7, 8, 9), axis: at(0, 0, 1), from: 0, to: 1 } },
    );
    expect(gapOf(level)).toMatchObject({ thingSwing: null });
    expect(gapOf(level).gap.value).toBeCloseTo(100 - D / 2, 9);
  });

  it('twice over is told where both come nearest', () => {
    const frame = { hinge: { at: at(0, 0, 0), axis: at(0, 1, 0) } };
    // the frame's far end swings down to z = −1000 sin 15° and more
    const site = { standing: { hinge: null, slopes: [], height: null, swing: { from: 0, to: 15 } } };
    const post = thing(bar(at(900, 0, -500), { axis: at(1, 0, 0), radius: 5, ends: { from: 0, to: 100 } }), {
      swing: { about: at(900, 0, -500), axis: at(0, -1, 0), from: 0, to: 90 * DEGREE },
    });
    const row = gapOf(post, { frame, site });
    // upright at x = 900 it reaches up to −400; the tube comes down to −900 tan 15° there
    expect(row.gap.value).toBeLessThan(500 - 100 - 900 * Math.tan(15 * DEGREE) - D / 2);
    expect(row.gap.value).toBeGreaterThan(120);
    expect(row.frameSwing!.value).toBeCloseTo(15, 6);
    expect(row.thingSwing!.value).toBeGreaterThan(60);
  });
});

describe('what is said of gaps', () => {
  const said = (...args: Parameters<typeof madeUp>) =>
    planGaps(madeUp(...args)).findings.map(({ code, grade, field, data }) => ({ code, grade, field, data }));
  const ball = (y: number, more: Partial<LaidThing> = {}) =>
    thing({ shape: 'point', at: at(500, y, 0), radius: 30 }, { name: 'rudder head', ...more });

  it('is once for a thing, of the tube that comes nearest', () => {
    expect(said({ things: [ball(30)] })).toEqual([
      {
        code: 'gap-struck',
        grade: 'stop',
        field: '/site/things/0',
        data: { name: 'tube', thing: 'rudder head', value: expect.closeTo(20, 6) as number },
      },
    ]);
    expect(said({ things: [ball(54)] })).toMatchObject([
      { code: 'gap-under', grade: 'caution', data: { value: expect.closeTo(4, 6) as number, low: 10 } },
    ]);
    expect(said({ things: [ball(60)] })).toEqual([]);
    // two tubes, one finding
    const legs = [leg(at(500, 0, -600), at(500, 0, 0), { outsideDiameter: 50 })];
    expect(said({ things: [ball(30)], legs })).toMatchObject([
      { data: { name: 'leg', value: expect.closeTo(25, 6) as number } },
    ]);
  });

  it('has how far it has swung', () => {
    const swing = { about: at(500, 0, -200), axis: at(1, 0, 0), from: 0, to: Math.PI / 2 };
    const [one] = said({ things: [thing({ shape: 'point', at: at(500, 200, -200), radius: 30 }, { swing })] });
    expect(one!.data['swung']).toBeCloseTo(90, 0);
  });

  it('is left to the frame itself where the wanted one has too little room for a post at rest', () => {
    expect(said({ things: [thing(bar(at(500, 45, 0)))] })).toEqual([]);
    // not where it swings in
    const swing = { about: at(500, 300, 0), axis: at(0, 0, 1), from: -Math.PI / 2, to: 0 };
    expect(said({ things: [thing(bar(at(800, 300, 0)), { swing })] })).toMatchObject([
      { code: 'gap-struck', data: { swung: expect.closeTo(-90, 0) as number } },
    ]);
    // not of a leg, and not where only the frame as it will be made has too little
    const legs = [leg(at(300, 100, -600), at(300, 100, 600))];
    expect(said({ things: [thing(bar(at(300, 150, 0)))], legs })).toMatchObject([{ data: { name: 'leg' } }]);
    const study = madeUp({ things: [thing(bar(at(500, 65, 0)))] });
    const lines = study.laid.frame!.lines.map((line) => ({
      ...line,
      centreline: {
        ...line.centreline,
        pieces: line.centreline.pieces.map((piece) => ({ ...piece, start: at(0, 10, 0) })),
      },
    }));
    const frame = { ...study.laid.frame!, lines };
    expect(planGaps(study).findings).toEqual([]);
    expect(planGaps({ ...study, laid: { ...study.laid, frame } }).findings).toMatchObject([{ code: 'gap-under' }]);
  });

  it('is nothing of a thing that asks for no room, and of a frame that is not laid', () => {
    expect(planGaps(madeUp({ things: [ball(0, { clearance: null })] }))).toEqual({ gaps: [], findings: [] });
    const study = madeUp({ things: [ball(0)] });
    expect(planGaps({ ...study, laid: { ...study.laid, frame: null } })).toMatchObject({
      findings: [],
      gaps: [{ rows: [] }],
    });
  });
});

describe('the band of a gap', () => {
  const doubt = { field: '/site/things/0/shape/at/y', plusMinus: 2, from: 'thing' as const, name: 'post' };
  it('is what the place of the thing leaves open, square to both', () => {
    const things = [thing(bar(at(400, 100, 0)))];
    const moved = (x: number, y: number) => [thing(bar(at(400 + x, 100 + y, 0)))];
    const row = gapOf(things[0]!, {
      varied: [
        { doubt, things: moved(0, 2) },
        { doubt: { ...doubt, field: '/site/things/0/shape/at/x' }, things: moved(2, 0) },
      ],
    });
    // along the tube it changes nothing but what is of second order
    expect(row.gap.band!.plusMinus).toBeCloseTo(2, 3);
    expect(row.gap.band!.from).toEqual(['site-thing']);
    expect(gapOf(things[0]!).gap.band).toBeNull();
  });
});

describe('the ellipse of a cylinder in the plane of the frame', () => {
  const ellipseOf = (one: LaidThing) => planGaps(madeUp({ things: [one] })).gaps[0]!.ellipse;

  it('is as wide as it is thick, and longer by the tilt', () => {
    const tilt = 12 * DEGREE;
    const ellipse = ellipseOf(
      thing(bar(at(400, 100, 0), { axis: at(0, -Math.sin(tilt), Math.cos(tilt)), radius: 30.15 })),
    )!;
    expect(ellipse.tilt.value).toBeCloseTo(12, 9);
    expect(ellipse.short.value).toBeCloseTo(60.3, 9);
    expect(ellipse.long.value).toBeCloseTo(60.3 / Math.cos(tilt), 9);
    expect(ellipse.long.value.toFixed(2)).toBe('61.65');
  });

  it('is none along the plane, where it ends before it, and of other things', () => {
    expect(ellipseOf(thing(bar(at(400, 100, 0), { axis: at(1, 0, 0) })))).toBeNull();
    expect(ellipseOf(thing(bar(at(400, 100, -90), { ends: { from: 0, to: 80 } })))).toBeNull();
    expect(ellipseOf(thing(bar(at(400, 100, -90), { ends: { from: 0, to: 95 } })))).not.toBeNull();
    expect(ellipseOf(thing({ shape: 'point', at: at(0, 0, 0), radius: 1 }))).toBeNull();
  });
});
