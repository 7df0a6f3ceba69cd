import { describe, expect, it } from 'vitest';
import { planGaps } from '../../../server/solver/site/gaps/plan-gaps.ts';
import { at, bar, leg, madeUp, thing } from './gaps-made-up.ts';

describe('what is said of gaps', () => {
  const said = (...args: Parameters<typeof madeUp>) =>
    planGaps(madeUp(...args)).findings.map(({ code, grade, field, data }) => ({ code, grade, field, data }));
  it('is once for a thing, of the tube that comes nearest', () => {
    const under = [leg(at(500, 0, -600), at(500, 0, -300)), leg(at(510, 0, -600), at(510, 0, -300))];
    const ball = (x: number) =>
      thing({ shape: 'point', at: at(500 - x, 0, -400), radius: 30 }, { name: 'rudder head', field: '/site/things/3' });
    const beside = (x: number) => said({ things: [ball(x)], legs: under });
    expect(beside(25)).toEqual([
      {
        code: 'gap-struck',
        grade: 'stop',
        field: '/site/things/3',
        data: { name: 'leg', thing: 'rudder head', value: expect.closeTo(20, 6) as number },
      },
    ]);
    expect(beside(49)).toMatchObject([
      { code: 'gap-under', grade: 'caution', data: { value: expect.closeTo(4, 6) as number, low: 10 } },
    ]);
    expect(beside(55)).toEqual([]);
  });

  it('has how far it has swung, to a tenth of a degree', () => {
    const swing = { about: at(500, 0, -200), axis: at(1, 0, 0), from: 0, to: 1.23456 };
    const [one] = said({ things: [thing({ shape: 'point', at: at(500, 200, -200), radius: 150 }, { swing })] });
    expect(one!.data['swung']).toBe(70.7);
  });

  it('is left to the frame itself where the wanted one has too little room for a post at rest', () => {
    expect(said({ things: [thing(bar(at(500, 45, 0)))] })).toEqual([]);
    expect(said({ things: [thing({ shape: 'point', at: at(500, 45, 0), radius: 30 })] })).toEqual([]);
    expect(said({ things: [thing({ shape: 'plane', at: at(0, 0, -15), normal: at(0, 0, 1) })] })).toEqual([]);
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
    expect(planGaps(madeUp({ things: [thing(bar(at(500, 0, 0)), { clearance: null })] }))).toEqual({
      gaps: [],
      findings: [],
    });
    const study = madeUp({ things: [thing(bar(at(500, 0, 0)))] });
    expect(planGaps({ ...study, laid: { ...study.laid, frame: null } })).toMatchObject({
      findings: [],
      gaps: [{ rows: [] }],
    });
  });
});
