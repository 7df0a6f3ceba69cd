import type { RunPoint } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { DEGREES } from '../geometry/angle.ts';
import type { PathProblem } from '../geometry/path-through.ts';
import { atMost, wayOut } from './way-out.ts';

/** The largest radius that the Job takes [mm]. */
const MOST_RADIUS = 1_000_000;

/**
 * What is wrong with the points of a path, at the point that causes it. Points are told by their number from 1.
 *
 * @param field JSON pointer of the list of points
 * @param named data that tell which member it is
 * @param least smallest radius that is worth naming [mm]
 */
export function pathFindings(
  problems: readonly PathProblem[],
  points: readonly RunPoint[],
  field: string,
  named: { member?: string } = {},
  least = 0,
): Finding[] {
  return problems.map((problem): Finding => {
    switch (problem.problem) {
      case 'points-coincide': {
        const second = { ...named, first: problem.first + 1, second: problem.second + 1 };
        return finding(problem.problem, 'stop', `${field}/${String(problem.second)}`, second);
      }
      case 'bend-angle-straight-back':
        return finding(problem.problem, 'stop', `${field}/${String(problem.at)}`, {
          ...named,
          point: problem.at + 1,
          value: problem.angle * DEGREES,
        });
      case 'bend-angle-zero':
        return finding(problem.problem, 'note', `${field}/${String(problem.at)}`, {
          ...named,
          point: problem.at + 1,
          value: problem.angle * DEGREES,
        });
      case 'straight-negative':
        return finding(
          problem.problem,
          'stop',
          `${field}/${String(problem.second)}`,
          {
            ...named,
            first: problem.first + 1,
            second: problem.second + 1,
            value: problem.between,
            low: problem.needed,
            shortage: problem.needed - problem.between,
            ...fittingRadius(problem, least),
          },
          smallerRadius(problem, points, field),
        );
    }
  });
}

/** The radius that leaves room, where one at both bends, or at the only one, does and a tube can be bent to it [mm]. */
function fittingRadius(
  { between, slopes }: Extract<PathProblem, { problem: 'straight-negative' }>,
  least: number,
): { bothRadii?: number; oneRadius?: number } {
  const radius = atMost(between / (slopes.first + slopes.second));
  if (radius < least) return {};
  return slopes.first > 0 && slopes.second > 0 ? { bothRadii: radius } : { oneRadius: radius };
}

/** A typed radius beside the straight that, made smaller, leaves room for both bends. */
function smallerRadius(
  problem: Extract<PathProblem, { problem: 'straight-negative' }>,
  points: readonly RunPoint[],
  field: string,
): Finding['wayOut'] {
  const shortage = problem.needed - problem.between;
  const ends = [
    { at: problem.first, slope: problem.slopes.first },
    { at: problem.second, slope: problem.slopes.second },
  ];
  for (const { at, slope } of ends) {
    const radius = points[at]?.radius ?? null;
    if (radius === null || slope === 0) continue;
    const smaller = atMost(radius - shortage / slope);
    if (smaller > 0) return wayOut(`${field}/${String(at)}/radius`, smaller, MOST_RADIUS);
  }
  return null;
}
