import { describe, expect, it } from 'vitest';
import { freeToSway } from '../../../server/solver/site/strength/free-to-sway.ts';
import { at, carried, TWO, type Under } from './carried-frame.ts';
import { planned } from './planned-strength.ts';

describe('a head that can go sideways', () => {
  const fixed = (legs: readonly Under[]): Under[] => legs.map((leg) => ({ ...leg, held: ['fixed', 'fixed'] }));

  it('does not where a hinge holds the frame, and does where legs alone do', () => {
    expect(freeToSway(carried().laid)).toEqual([false, false]);
    expect(freeToSway(carried({ hinged: false }).laid)).toEqual([true, true]);
    const { findings, strength } = planned({ hinged: false, legs: fixed(TWO) });
    expect(strength.struts.map(({ factor }) => factor.value)).toEqual([1.2, 1.2]);
    expect(findings.filter(({ code }) => code === 'legs-sway')).toHaveLength(1);
    expect(findings[0]!.data['names']).toBe('leg 1, leg 2');
  });

  it('does where the one leg points at the hinge', () => {
    const pointing: Under = { ...TWO[0]!, foot: at(100, 300, 0) };
    expect(freeToSway(carried({ legs: [pointing] }).laid)).toEqual([true]);
  });

  it('does not where six legs in six ways hold the frame by themselves', () => {
    const leg = (member: string, station: number, x: number, y: number, z: number): Under => ({
      member,
      station,
      foot: at(x, y, z),
      held: ['pinned', 'pinned'],
    });
    const six = [
      leg('port arm', 50, 200, 300, -400),
      leg('port arm', 50, -100, 600, -400),
      leg('starboard arm', 50, 200, -300, -400),
      leg('starboard arm', 50, -300, -300, -400),
      leg('port arm', 450, -450, 600, -400),
      leg('port arm', 450, -450, 100, -400),
    ];
    expect(freeToSway(carried({ hinged: false, legs: six }).laid)).toEqual([false, false, false, false, false, false]);
    expect(freeToSway(carried({ hinged: false, legs: six.slice(1) }).laid)).toContain(true);
  });

  it('leaves nothing to tell of a leg that is pinned at both ends, and says so', () => {
    const { findings, strength } = planned({ hinged: false });
    expect(strength.struts[0]!.factor.value).toBe(1);
    expect(findings.map(({ code }) => code)).toContain('legs-hold-nothing');
    expect(findings.map(({ code }) => code)).not.toContain('legs-sway');
  });
});
