import { describe, expect, it } from 'vitest';
import type { Leg } from '../../../server/job/leg.ts';
import type { Frame } from '../../../server/job/frame.ts';
import type { Vector3 } from '../../../server/solver/geometry/vector.ts';
import { legCrossings } from '../../../server/solver/site/gaps/leg-crossings.ts';
import type { LaidLeg } from '../../../server/solver/site/laid-site.ts';
import { at, D, leg, madeUp } from './gaps-made-up.ts';

const typed = (head: Leg['head']['end']): Leg => ({
  name: 'leg',
  foot: {
    at: at(0, 0, -600),
    surface: { by: 'axes', vector: at(0, 0, 1) },
    end: { end: 'mitre', plate: 0 },
    held: 'pinned',
  },
  head: { at: { member: 'tube', spot: 'along', number: 1, distance: 0 }, end: head, held: 'pinned' },
  tube: null,
  adjust: null,
});

/** What is said of legs under a straight tube of 1000 mm along x, or under another frame. */
function said(legs: readonly LaidLeg[], shape?: Frame, head: Leg['head']['end'] = { end: 'saddle' }) {
  const site = { legs: legs.map(() => typed(head)) };
  return legCrossings(madeUp({ legs, site, ...(shape === undefined ? {} : { shape }) }));
}

const under = (x: number, foot: Vector3, more: Partial<LaidLeg> = {}) =>
  leg(foot, at(x, 0, 0), { station: x, ...more });
const centre = (value: number) => ({ value, reference: 'centre' as const });

/** 800 mm wide, its legs along y, a crossbar between them at y = −300. */
const hoop: Frame = {
  shape: 'hoop',
  width: centre(800),
  widthAtFeet: null,
  leftLeg: centre(600),
  rightLeg: centre(600),
  crossbar: { form: 'straight' },
  innerCrossbars: [{ fromFoot: centre(300) }],
};
/** On the left leg of the hoop, from its foot. */
const onLeft = (station: number, foot: Vector3, more: Partial<LaidLeg> = {}) => {
  const frame = madeUp({ shape: hoop }).laid.frame!;
  const { start } = frame.lines[0]!.centreline.pieces[0]!;
  const head = at(start.x, start.y + station, 0);
  return leg(at(head.x + foot.x, head.y + foot.y, foot.z), head, { member: 'hoop', station, ...more });
};

describe('a leg that runs into something', () => {
  it('is not one that sits on its tube, however flat, upright or with a fitting', () => {
    for (const lean of [0, 100, 600, 900]) expect(said([under(500, at(500 + lean, 0, -300))])).toEqual([]);
    expect(said([under(500, at(500, 0, -300))], undefined, { end: 'eye', takes: 30 })).toEqual([]);
    expect(said([onLeft(150, at(0, 0, -500)), onLeft(550, at(0, 0, -500))], hoop)).toEqual([]);
  });

  it('is one through another tube of the frame', () => {
    // from beyond the crossbar, past the middle of its axis by 5 mm, up to the left leg
    const station = 150;
    const { head } = onLeft(station, at(0, 0, -500));
    const foot = at(head.x + 800, head.y + 300, -10);
    const [one] = said([leg(foot, head, { member: 'hoop', station })], hoop);
    expect(one).toMatchObject({ code: 'leg-strikes', grade: 'stop', field: '/site/legs/0' });
    expect(one!.data).toMatchObject({ name: 'leg', other: 'crossbar 1' });
    expect(one!.data['value']).toBeGreaterThan((D + 30) / 2 - 6);
    expect(one!.data['value']).toBeLessThan((D + 30) / 2);
  });

  it('is one through a further stretch of the tube that it sits on', () => {
    // past the middle of the right leg by 20 mm
    const [one] = said([onLeft(150, at(1600, 0, -40))], hoop);
    expect(one).toMatchObject({ code: 'leg-strikes', data: { other: 'hoop' } });
    expect(one!.data['value']).toBeCloseTo((D + 30) / 2 - 20 * Math.cos(Math.atan2(20, 800)), 1);
    expect(said([onLeft(150, at(1600, 0, -100))], hoop)).toEqual([]);
  });

  it('is told as near where it only passes close by', () => {
    const beside = (gap: number) => said([onLeft(150, at(1600, 0, -2 * ((D + 30) / 2 + gap)))], hoop);
    expect(beside(3)).toMatchObject([{ code: 'leg-near', grade: 'note', data: { other: 'hoop', low: 5 } }]);
    expect(beside(3)[0]!.data['value']).toBeCloseTo(3, 0);
    expect(beside(6)).toEqual([]);
  });

  it('is one through another leg, told with the later of the two', () => {
    const first = under(300, at(700, 0, -400), { name: 'first' });
    const across = (y: number) =>
      leg(at(300, y, -400), at(700, 0, 0), { name: 'second', field: '/site/legs/1', station: 700 });
    expect(said([first, across(0)])).toMatchObject([
      { code: 'leg-strikes', field: '/site/legs/1', data: { name: 'second', other: 'first' } },
    ]);
    expect(said([first, across(200)])).toEqual([]);
    // two that stand on one place run into each other there
    const near = under(340, at(700, 0, -400), { name: 'second', field: '/site/legs/1' });
    expect(said([first, near])).toMatchObject([{ code: 'leg-strikes', data: { other: 'first' } }]);
  });

  it('is none of a frame that is not laid', () => {
    const study = madeUp({ legs: [under(500, at(500, 0, -300))], site: { legs: [typed({ end: 'saddle' })] } });
    expect(legCrossings({ ...study, laid: { ...study.laid, frame: null } })).toEqual([]);
  });
});
