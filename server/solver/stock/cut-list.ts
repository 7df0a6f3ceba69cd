import type { Tube } from '../../job/tube.ts';
import type { LegPlan } from '../../plan/leg.ts';
import type { CutPiece } from '../../plan/stock.ts';
import type { Effort, EffortPiece } from '../correction/outcome.ts';

/** What the stock calls a grade: the key of the catalogue, or the name of the shop's own. */
export const gradeNameOf = ({ grade }: Pick<Tube, 'grade'>): string =>
  grade.from === 'catalogue' ? grade.key : grade.name;

/**
 * Everything that is sawn off bars for one frame: the new tube of the work that is shown, then the legs. Lengths are as
 * sawn [mm]: with what the machine holds, what is trimmed after bending, what faces are dressed from. Every piece is one
 * by itself, with a name that no other has.
 *
 * @param work new tube of the work, legs, and the frame's tube; a leg has a size of its own where one is typed, and always
 *   the frame's grade
 */
export function cutList(work: {
  readonly effort: Pick<Effort, 'pieces'>;
  readonly legs: readonly LegPlan[];
  readonly tube: Tube;
}): CutPiece[] {
  const { effort, legs, tube } = work;
  const grade = gradeNameOf(tube);
  const { outsideDiameter, wall } = tube;
  const nameOf = uniqueNames();
  const all = [
    ...effort.pieces.map((piece): CutPiece => ({
      ...piece,
      name: nameOf(usualName(piece)),
      field: FIELDS[piece.kind],
      outsideDiameter,
      wall,
      grade,
      count: 1,
    })),
    ...legs.map((leg): CutPiece => ({
      kind: 'leg',
      of: leg.name,
      part: 1,
      parts: 1,
      name: nameOf(leg.name === '' ? `leg ${String(leg.number)}` : leg.name),
      field: leg.field,
      outsideDiameter: leg.outsideDiameter,
      wall: leg.wall,
      grade,
      length: leg.cutLength,
      count: 1,
    })),
  ];
  // what has no length cannot be made, and something else stops it
  return all.filter(({ length }) => length.value > 0);
}

/** Where a person changes a piece. */
const FIELDS: Readonly<Record<EffortPiece['kind'], string>> = {
  member: '/frame',
  length: '/stock/joints',
  'let-in': '/closing/way',
  leg: '/site/legs',
};

const usualName = ({ kind, of, part, parts }: EffortPiece): string => {
  if (kind === 'let-in') return `let-in ${of}`;
  return kind === 'length' ? `${of} ${String(part)} of ${String(parts)}` : of;
};

/** Gives a name that is taken already the next free number: a leg may be called what a member is called. */
function uniqueNames(): (name: string) => string {
  const taken = new Set<string>();
  return (name) => {
    let own = name;
    for (let number = 2; taken.has(own); number += 1) own = `${name} (${String(number)})`;
    taken.add(own);
    return own;
  };
}
