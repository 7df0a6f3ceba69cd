import { describe, expect, it } from 'vitest';
import type { LaidThing } from '../../../server/solver/site/laid-site.ts';
import { at, bar, D, DEGREE, gapOf, thing } from './gaps-made-up.ts';

// the one tube of these frames runs from the origin 1000 mm along x
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
