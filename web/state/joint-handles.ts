import type { CorrectionPlan } from '../../server/plan/correction.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { View, ViewMark } from '../../server/plan/view.ts';
import { pointedLine, stretchesFor, type PointedLine, type Stretch } from './joint-places.ts';
import { ranksOf, type JointOfMember } from './placed-joints.ts';

/** A joint that can be taken hold of on a drawing. */
export type Handle = {
  /** Its member and its rank there: the same while it is moved, whatever number it has. */
  readonly key: string;
  readonly rank: JointOfMember;
  readonly joint: Joint;
  readonly mark: ViewMark;
  readonly line: PointedLine;
  readonly stretches: readonly Stretch[];
};

/** The joints of the way that is shown, where the view shows their tubes as they came back. */
export function handlesOf(view: View, correction: CorrectionPlan): readonly Handle[] {
  const joints = correction.ways.find(({ key }) => key === correction.chosen)?.joints ?? [];
  const ranks = ranksOf(joints.map(({ member, place }) => ({ member, station: place })));
  return joints.flatMap((joint, index): Handle[] => {
    const rank = ranks[index];
    const mark = view.marks.find(({ kind, label }) => kind === 'joint' && label === String(joint.number));
    const line = pointedLine(view, joint.member);
    if (rank === undefined || mark === undefined || line === null) return [];
    const stretches = stretchesFor(
      joint,
      correction.members.find(({ name }) => name === joint.member),
    );
    return [{ key: `${rank.member}/${String(rank.rank)}`, rank, joint, mark, line, stretches }];
  });
}
