import { describe, expect, it } from 'vitest';
import { newJob } from '../../../server/job/default-job.ts';
import type { LegPlan } from '../../../server/plan/leg.ts';
import { figure } from '../../../server/solver/figure.ts';
import type { EffortPiece } from '../../../server/solver/correction/outcome.ts';
import { cutList } from '../../../server/solver/stock/cut-list.ts';

const length = (value: number) => figure(value, 'mm', 'L', [], ['geometry']);

const piece = (kind: EffortPiece['kind'], of: string, part = 1, parts = 1, value = 100): EffortPiece => ({
  kind,
  of,
  part,
  parts,
  length: length(value),
});

const legOf = (number: number, name: string): LegPlan =>
  ({
    number,
    name,
    field: `/site/legs/${String(number - 1)}`,
    outsideDiameter: 30,
    wall: 2,
    cutLength: length(400),
  }) as LegPlan;

const { tube } = newJob('hoop');

describe('the cut list', () => {
  it('calls pieces by what they are, and no two alike', () => {
    const list = cutList({
      effort: {
        pieces: [
          piece('member', 'rail'),
          piece('length', 'hoop', 1, 2),
          piece('length', 'hoop', 2, 2),
          piece('let-in', '2'),
          piece('member', 'rail'),
        ],
      },
      legs: [legOf(1, 'rail'), legOf(2, '')],
      tube,
    });
    expect(list.map(({ name }) => name)).toEqual([
      'rail',
      'hoop 1 of 2',
      'hoop 2 of 2',
      'let-in 2',
      'rail (2)',
      'rail (3)',
      'leg 2',
    ]);
    expect(list.every(({ count }) => count === 1)).toBe(true);
  });

  it('gives a leg its own size and the grade of the frame', () => {
    const own = { ...tube, grade: { from: 'own', name: 'bronze', density: 8000 } as typeof tube.grade };
    const [rail, leg] = cutList({ effort: { pieces: [piece('member', 'rail')] }, legs: [legOf(1, 'stay')], tube: own });
    expect(rail).toMatchObject({ outsideDiameter: 38.1, wall: 1.65, grade: 'bronze', field: '/frame' });
    expect(leg).toMatchObject({ kind: 'leg', outsideDiameter: 30, wall: 2, grade: 'bronze', field: '/site/legs/0' });
  });

  it('leaves out what has no length', () => {
    const pieces = [piece('member', 'a', 1, 1, 0), piece('member', 'b', 1, 1, -5), piece('member', 'c', 1, 1, 0.001)];
    expect(cutList({ effort: { pieces }, legs: [], tube }).map(({ name }) => name)).toEqual(['c']);
  });
});
