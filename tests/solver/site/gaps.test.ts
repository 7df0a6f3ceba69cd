import { describe, expect, it } from 'vitest';
import type { Site } from '../../../server/job/site.ts';
import type { LaidThing } from '../../../server/solver/site/laid-site.ts';
import { planGaps } from '../../../server/solver/site/gaps/plan-gaps.ts';
import { formulaValue } from '../formula-value.ts';
import { at, bar, D, DEGREE, gapOf, leg, madeUp, rowsOf, thing } from './gaps-made-up.ts';

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
  });

  it('stand on a plane that their foot lies on, however its surface is typed, and on no other', () => {
    const deck = thing({ shape: 'plane', at: at(0, 0, -600), normal: at(0, 0, 1) }, { name: 'deck' });
    const besideDeck = (foot: number, head: number) => {
      const legs = [leg(at(500, 0, foot), at(500, 0, head))];
      return rowsOf([deck], { legs, site: { legs: [typedLeg('post')] } })[0]!.map(({ name }) => name);
    };
    expect(besideDeck(-600.5, 0)).toEqual(['tube']);
    expect(besideDeck(-597, 0)).toEqual(['leg', 'tube']);
    // it goes into the plane that its foot is on
    expect(besideDeck(-600, -900)).toEqual(['leg', 'tube']);
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
