import { describe, expect, it } from 'vitest';
import { measureCheck } from '../../server/solver/frame/frame-geometry.ts';
import { slipPairs } from '../../server/solver/correction/slip-pairs.ts';
import { scoreSlips } from '../../server/solver/correction/slips.ts';
import { CROWNED, DIAMETER, draw, find, off, RADIUS, readingsFrom, SHOP, slipCase, U } from './slip-shop.ts';

describe('the made frame', () => {
  const made = slipCase(CROWNED);

  it('has the members and pieces of the wanted one, its crossbar cut to what is between the legs', () => {
    for (const { slips, made: one } of made.found) {
      if (one === null) continue;
      const frame = one.frame();
      expect(frame.members.map(({ name }) => name)).toEqual(made.wanted.members.map(({ name }) => name));
      for (const [place, { centreline }] of frame.members.entries())
        expect(centreline.pieces.map(({ kind }) => kind)).toEqual(
          made.wanted.members[place]!.centreline.pieces.map(({ kind }) => kind),
        );
      expect(
        frame.checks.map(({ key }) => key),
        slips[0].key,
      ).toEqual(made.wanted.checks.map(({ key }) => key));
      const { start } = frame.members[1]!;
      expect(start.kind === 'saddle' && start.offset, slips[0].key).toBeLessThan(1e-6);
      // set out from the left foot as drawn; straight to the bar, as a tape is held, a lean adds a little
      expect(Math.abs(off(made, slips[0].key)['crossbar-from-foot']!), slips[0].key).toBeLessThan(1e-6);
    }
  });

  it('is recognised whether its crossbar was set out from the feet or from the corners', () => {
    const one = find(made, 'apex-as-start').made!;
    const fromBends = one.frame('bends');
    const bar = fromBends.checks.find(({ key }) => key === 'crossbar-from-foot')!;
    const bend = made.wanted.members[0]!.centreline.pieces[1]!;
    // as far up as the corner went: by T
    expect(measureCheck(bar)).toBeCloseTo(250 + RADIUS * Math.tan(bend.length / RADIUS / 2), 6);
    for (const frame of [fromBends, one.frame('ends')])
      expect(scoreSlips(made.found, readingsFrom(made.wanted, frame), made.wanted)[0]).toMatchObject({
        keys: ['apex-as-start'],
        explains: true,
      });
  });
});

describe('two slips together', () => {
  const made = slipCase(U);

  it('are bent one on top of the other', () => {
    // a width too wide by D, and a crossbar that has what each bend did not draw in
    const both = off(made, 'outside-read-as-centre', 'springback-left-out');
    const alone = off(made, 'springback-left-out');
    expect(both['width-at-corners']).toBeCloseTo(DIAMETER + alone['width-at-corners']!, 6);
    // marks laid for one die, bent on another: the first leg grows by its tangent, the crossbar by the rest
    const die = off(made, 'apex-as-start', 'other-die');
    const other = SHOP.otherDies[0]!.leaves;
    expect(die['left-leg']).toBeCloseTo(other, 6);
    expect(die['width-at-corners']).toBeCloseTo(2 * other - (Math.PI / 2) * other, 6);
  });

  it('are looked at only where none explains by itself, and never when both are of one kind', () => {
    const frame = find(made, 'outside-read-as-centre', 'springback-left-out').made!.frame();
    const scores = scoreSlips(made.found, readingsFrom(made.wanted, frame), made.wanted);
    expect(scores[0]).toMatchObject({
      keys: ['outside-read-as-centre', 'springback-left-out'],
      fields: ['/frame/width'],
      explains: true,
    });
    expect(scores.filter(({ keys }) => keys.length === 2).every(({ explains }) => explains)).toBe(true);
    const single = find(made, 'springback-left-out').made!.frame();
    for (const { keys } of scoreSlips(made.found, readingsFrom(made.wanted, single), made.wanted))
      expect(keys).toHaveLength(1);
    const pairs = [...slipPairs(made.found)];
    expect(pairs.length).toBeGreaterThan(40);
    expect(pairs.length).toBeLessThanOrEqual(120);
    for (const { slips } of pairs)
      expect(slips.map(({ key }) => key).join()).not.toMatch(
        /apex-as.*apex-as|springback.*springback|stretch.*stretch/,
      );
  });
});

describe('scores', () => {
  it('are none where the frame came back as wanted', () => {
    const { wanted, found } = slipCase(CROWNED);
    const off = (place: number) => (place % 2 === 0 ? 0.9 : -0.9);
    expect(scoreSlips(found, readingsFrom(wanted, wanted, off), wanted)).toEqual([]);
    const wider = draw({ ...CROWNED, width: { value: 953, reference: 'outside' } })!;
    expect(scoreSlips(found, readingsFrom(wanted, wider), wanted)).not.toEqual([]);
  });

  it('show each reading as predicted beside what was measured', () => {
    const made = slipCase(CROWNED);
    const frame = find(made, 'cut-to-apexes').made!.frame();
    const readings = readingsFrom(made.wanted, frame, () => 0.5);
    const [best] = scoreSlips(made.found, readings, made.wanted);
    expect(best!.keys).toEqual(['cut-to-apexes']);
    expect(best!.predicted).toHaveLength(readings.readings.length);
    for (const { value, measured } of best!.predicted) expect(measured - value).toBeCloseTo(0.5, 6);
    expect(best!.misfit.value).toBeCloseTo(0.5, 9);
  });
});
