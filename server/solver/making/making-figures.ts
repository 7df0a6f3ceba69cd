import type { Figure } from '../../plan/figure.ts';
import type { Making, MakingProblem, Split } from '../../plan/making.ts';
import { figure, input } from '../figure.ts';
import { DEGREES } from '../geometry/angle.ts';
import type { SplitMember } from './split-member.ts';
import type { MakingMachine, WayProblem, WayToBend } from './way-to-bend.ts';

/** One way to bend a member as the plan shows it. */
export function makingFigures(way: WayToBend, machine: MakingMachine): Making {
  const { nearest } = way;
  return {
    key: way.key,
    possible: way.possible,
    problems: way.problems.map(problemOf),
    extraFirst: figure(
      way.extraAtStart,
      'mm',
      'g = max(0, G − Y₁)',
      [input('G', 'grip-length', machine.gripLength, 'mm')],
      ['geometry'],
    ),
    extraLast: figure(
      way.extraAtEnd,
      'mm',
      'z = max(trim, S − Y_n)',
      [
        input('S', 'least-straight', machine.leastStraight, 'mm'),
        input('trim', 'trim-allowance', machine.trimAllowance, 'mm'),
      ],
      ['geometry'],
    ),
    clearance:
      nearest === null
        ? null
        : {
            obstacle: nearest.obstacle,
            while: nearest.while,
            bend: nearest.bend,
            distance: figure(
              nearest.clearance,
              'mm',
              'a',
              [
                input('s', 'station', nearest.station, 'mm'),
                input('t', nearest.while === 'bending' ? 'swing' : 'turn', nearest.swing * DEGREES, 'deg'),
              ],
              ['machine-envelope'],
            ),
          },
  };
}

const problemOf = ({ code, bend, value, low, high, obstacle }: WayProblem): MakingProblem => {
  const angle = code === 'angle-over-machine' ? DEGREES : 1;
  const limit = low ?? high;
  return { code, bend, value: value * angle, low: limit === null ? null : limit * angle, obstacle };
};

/** Two pieces with a joint, told from the member's start whichever end it is bent from. */
export function splitFigures(split: SplitMember, from: 'start' | 'finish', whole: number): Split {
  const [near, far] = split.halves;
  const [first, second] = from === 'start' ? [near, far] : [far, near];
  const station = from === 'start' ? split.station : whole - split.station;
  const length = (half: typeof near): Figure =>
    figure(half.length, 'mm', 'L', [input('L', 'developed-length', half.length, 'mm')], ['geometry']);
  return {
    station: figure(station, 'mm', 's', [input('L', 'developed-length', whole, 'mm')], ['geometry', 'closing-rule']),
    clear: figure(split.margin, 'mm', 'a', [input('s', 'station', station, 'mm')], ['geometry', 'closing-rule']),
    first: { length: length(first), way: first.way.key },
    second: { length: length(second), way: second.way.key },
  };
}
