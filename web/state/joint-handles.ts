import type { CorrectionPlan } from '../../server/plan/correction.ts';
import type { Joint } from '../../server/plan/joint.ts';
import type { FlatPoint, View, ViewMark } from '../../server/plan/view.ts';
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
    const mark = markOf(joint, view);
    const line = pointedLine(view, joint.member);
    if (rank === undefined || mark === null || line === null) return [];
    const stretches = stretchesFor(
      joint,
      correction.members.find(({ name }) => name === joint.member),
    );
    return [{ key: `${rank.member}/${String(rank.rank)}`, rank, joint, mark, line, stretches }];
  });
}

/** The mark of a joint; where new tube is let in, half way between its two welds. */
function markOf({ number }: Joint, { marks }: View): ViewMark | null {
  const named = (label: string) => marks.find((mark) => mark.kind === 'joint' && mark.label === label);
  const alone = named(String(number));
  const [a, b] = [named(`${String(number)}A`), named(`${String(number)}B`)];
  if (alone !== undefined || a === undefined || b === undefined) return alone ?? null;
  const at: FlatPoint = [(a.at[0] + b.at[0]) / 2, (a.at[1] + b.at[1]) / 2];
  return { ...a, label: String(number), at };
}
