import { describe, expect, it } from 'vitest';
import { describeFinding } from '../../../server/language/finding-words.ts';
import { planStrength } from '../../../server/solver/site/strength/plan-strength.ts';
import { at, carried, type Made } from './carried-frame.ts';
import { codes, planned } from './planned-strength.ts';

describe('straight stretches', () => {
  const told = (made: Made = {}) =>
    planned(made).strength.spans.map(({ member, case: kind, from, to }) => [member, kind, from.value, to.value]);

  it('run from what holds a tube to what holds it next, or to its free end; a bend holds nothing', () => {
    expect(told()).toEqual([
      ['port arm', 'beam', 0, 300],
      ['port arm', 'cantilever', 300, 500],
      ['starboard arm', 'beam', 0, 300],
      ['starboard arm', 'cantilever', 300, 500],
      ['bar', 'beam', 0, 600],
    ]);
  });

  it('hang free on both sides of a single hold', () => {
    expect(told({ hinged: false }).filter(([member]) => member === 'port arm')).toEqual([
      ['port arm', 'cantilever', 0, 300],
      ['port arm', 'cantilever', 300, 500],
    ]);
    expect(told({ hinged: false, legs: [] })).toEqual([['bar', 'beam', 0, 600]]);
  });

  it('are held by fixing points as well', () => {
    const study = carried({ legs: [] });
    const pad = {
      fixing: 'pad' as const,
      name: 'pad',
      at: { member: 'port arm', spot: 'finish' as const, number: 1, distance: 0 },
      off: at(0, 0, 0),
      lands: null,
      tolerance: null,
      plate: null,
    };
    const { spans } = planStrength({ ...study, source: { ...study.source, fixing: [pad] } }).strength;
    expect(spans[0]).toMatchObject({ member: 'port arm', case: 'beam', to: { value: 500 } });
  });

  it('have a band from the leg that holds them', () => {
    const [beam] = planned().strength.spans;
    expect(beam!.length.band!.plusMinus).toBeCloseTo(2, 9);
    const { stress, sag } = beam!.loads[0]!;
    expect(stress.band!.plusMinus / stress.value).toBeCloseTo(2 / 300, 9);
    expect(sag.band!.plusMinus / sag.value).toBeCloseTo(6 / 300, 9);
    expect(planned().strength.spans.at(-1)!.length.band).toBeNull();
  });

  it('are told once a member with the smallest load that bends them too far', () => {
    const over = planned().findings.filter(({ code }) => code === 'load-over-proof');
    // 600 mm of 25.4 × 1.65 of 190 MPa stand 667 N at the middle (146 MPa) and no 890 N (194 MPa)
    expect(over.find(({ data }) => data['member'] === 'bar')).toMatchObject({
      grade: 'caution',
      data: { load: 'rail-vessel', high: 190 },
    });
    expect(over.filter(({ data }) => data['member'] === 'port arm')).toHaveLength(1);
    expect(planned({ load: 880 }).findings.find(({ data }) => data['member'] === 'bar')!.data['load']).toBe('own');
    expect(describeFinding(over[0]!, { length: 'mm', fraction: 16 })).toMatch(/local codes and a qualified person/);
  });

  it('are not spoken of where nothing is said of what carries the frame', () => {
    expect(codes({ hinged: false, legs: [] })).toEqual([]);
    expect(codes({ hinged: false, legs: [], load: 1500 })).toEqual(['load-over-proof']);
  });
});
