import { isDieBend } from '../../geometry/centreline.ts';
import { DEGREES } from '../../geometry/angle.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { SetUp } from '../../bending/set-up.ts';
import { finding } from '../../finding.ts';
import type { CorrectionWork } from '../correction-work.ts';
import { bentTube } from '../bent-tube.ts';
import { rebendRows } from '../rebend-rows.ts';
import type { BendTurn } from '../rebend.ts';
import { MOST_OPENING } from '../turn-limits.ts';
import type { SplicedWay } from './splice-way.ts';
import type { TurnedHinge } from './splice-rebend.ts';

/** The frame whose bends are turned, and the machine. */
type BendContext = { readonly work: CorrectionWork; readonly machine: SetUp };

/** A bend that is turned, as rows and steps name it. */
function turnsOf(turned: readonly TurnedHinge[], { work }: BendContext): BendTurn[] {
  return turned.flatMap(({ hinge, turn }) => {
    const member = work.actual.members[hinge.member];
    if (member === undefined) return [];
    const bend = member.centreline.pieces.slice(0, hinge.piece + 1).filter(isDieBend).length;
    return [{ member: member.name, piece: hinge.piece, made: 'die' as const, bend, turn }];
  });
}

/** Bends that are opened: hardened tube wrinkles there. */
export const opened = (turned: readonly TurnedHinge[], source: BendContext): Finding[] =>
  turnsOf(turned, source).flatMap(({ member, bend, turn }) =>
    turn < 0
      ? [
          finding('rebend-opens-bend', 'caution', '/closing/way', {
            member,
            bend,
            value: -turn * DEGREES,
            high: MOST_OPENING * DEGREES,
          }),
        ]
      : [],
  );

/** A splice with its bends: rows, the bender's steps, and that the frame goes away for it. */
export function withBends(spliced: SplicedWay, turned: readonly TurnedHinge[], source: BendContext): SplicedWay {
  const { work, machine } = source;
  const turns = turnsOf(turned, source);
  const { way } = spliced;
  const close = way.steps.findIndex(({ key }) => key === 'close-and-tack');
  const bends = turns.map(({ member, bend, turn }) => ({
    key: turn > 0 ? 'rebend' : 'rebend-open',
    joint: 0,
    data: { member, bend, value: Math.abs(turn) * DEGREES },
  }));
  return {
    ...spliced,
    way: {
      ...way,
      rebends: rebendRows(work.actual, turns, machine),
      steps: [...way.steps.slice(0, close), ...bends, ...way.steps.slice(close)],
      effort: {
        ...way.effort,
        bends: way.effort.bends + turns.length,
        bentTube: way.effort.bentTube + bentTube(work.actual, turns),
      },
    },
  };
}
