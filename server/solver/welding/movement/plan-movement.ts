import type { WeldTurn } from '../../../job/welding.ts';
import type { Finding } from '../../../plan/finding.ts';
import type { Joint } from '../../../plan/joint.ts';
import type { OrderedWeld, WeldMovement } from '../../../plan/welding.ts';
import { finding } from '../../finding.ts';
import { measureCheck, type FrameGeometry } from '../../frame/frame-geometry.ts';
import { linearTolerance } from '../../frame/general-tolerances.ts';
import type { Vector3 } from '../../geometry/vector.ts';
import type { WeldSite } from '../weld-sites.ts';
import { largestFigure, pulledBy, pullFigure, shapeFigure, shrinkageFigure } from './movement-figures.ts';
import { ownOrder } from './own-order.ts';
import { placedWelds } from './placed-welds.ts';
import { balancedOrder, worstOrder } from './proposed-order.ts';
import { quartersOf } from './quarters.ts';
import { weldInfluences, type FrameInfluences } from './weld-influences.ts';
import { holdsFrame, weldSequence } from './weld-sequence.ts';

/**
 * A size that the given order moves by this much more than the proposed one is clearly worse [mm]; our own choice: a
 * tape shows it.
 */
const CLEARLY = 0.5;

/**
 * How a frame moves from tacked to welded, at its sizes, and the order that balances it.
 *
 * All joints are tacked, so that the frame is whole: every weld then shortens the tube at its place by its shrinkage,
 * and turns it towards the part that is welded last. The frame follows as a linear-elastic one that nothing holds;
 * what welds do adds up, so that how far a size moves hangs on the quarters alone, not on which weld comes first. Pads
 * do not move it, nor do joints between bars, which are welded before there is a frame. A saddle acts where the axes meet, half a diameter from its weld.
 *
 * @param work wanted frame; tube [mm]; pull of one joint that is welded once round [rad]; away from the ground; welds
 *   of the frame that is welded with what each pulls in [mm]; cut joints; the job's own order
 * @returns movement null where nothing moves: only pads or joints between bars, no sizes, or neither pull nor shrinkage
 */
export function planMovement(work: {
  readonly wanted: FrameGeometry;
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly pull: number;
  readonly up: Vector3;
  readonly welds: readonly { readonly site: WeldSite; readonly shrinkage: number }[];
  readonly joints: readonly Joint[];
  readonly order: readonly WeldTurn[];
}): {
  order: OrderedWeld[];
  proposed: OrderedWeld[];
  movement: WeldMovement | null;
  findings: Finding[];
} {
  const { wanted, pull, up, welds, joints } = work;
  const placed = placedWelds(welds, wanted, joints);
  const influences = weldInfluences(wanted, work, placed.filter(holdsFrame));
  const sequence = weldSequence(placed, wanted);
  const known = balancedOrder(sequence, influences, up);
  // a weld on a member that the wanted frame does not have is welded all the same
  const strange = welds.filter(({ site }) => placed.every(({ name }) => name !== site.name));
  const others = strange.map(({ site }): OrderedWeld => ({
    weld: site.name,
    quarters: quartersOf({ first: 1, way: 'opposed' }),
  }));
  const proposed = [...known, ...others];
  const own = ownOrder(work.order, proposed);
  const moves = pull > 0 || influences.welds.some(({ weld }) => weld.shrinkage > 0);
  if (!moves || influences.checks.length === 0 || influences.welds.length === 0)
    return { order: own.order, proposed, movement: null, findings: own.findings };
  const orders = { given: own.order, proposed, worst: [...worstOrder(sequence, influences, up), ...others] };
  const movement = movementOf(influences, orders, pull);
  const told = work.order.length === 0 ? [] : pullsMore(movement);
  return {
    order: own.order,
    proposed,
    movement,
    findings: [...own.findings, ...told, ...outOfSize(movement, influences)],
  };
}

type Orders = Readonly<Record<'given' | 'proposed' | 'worst', OrderedWeld[]>>;

function movementOf({ checks, welds }: FrameInfluences, orders: Orders, pull: number): WeldMovement {
  const given = pulledBy(orders.given);
  const proposed = pulledBy(orders.proposed);
  const worst = pulledBy(orders.worst);
  const rows = checks.map(({ key, index }, check) => ({
    key,
    index,
    shrinkage: shrinkageFigure(welds, check),
    given: pullFigure(welds, check, given, pull),
    proposed: pullFigure(welds, check, proposed, pull),
    worst: pullFigure(welds, check, worst, pull),
  }));
  return {
    checks: rows,
    off: {
      given: shapeFigure(welds, orders.given, pull),
      proposed: shapeFigure(welds, orders.proposed, pull),
      worst: shapeFigure(welds, orders.worst, pull),
    },
    largestGiven: largestFigure(rows.map(({ given }) => given)),
    largestProposed: largestFigure(rows.map(({ proposed }) => proposed)),
    largestWorst: largestFigure(rows.map(({ worst }) => worst)),
    worst: orders.worst,
  };
}

/** The size that the given order moves furthest beyond the proposed one, where it is clearly further. */
function pullsMore({ checks }: WeldMovement): Finding[] {
  let most: { row: WeldMovement['checks'][number]; more: number } | undefined;
  for (const row of checks) {
    const more = Math.abs(row.given.value) - Math.abs(row.proposed.value);
    if (more > (most?.more ?? CLEARLY)) most = { row, more };
  }
  if (most === undefined) return [];
  const { key, index, given, proposed } = most.row;
  const data = { check: key, index, value: Math.abs(given.value), high: Math.abs(proposed.value) };
  return [finding('order-pulls-more', 'note', '/welding/order', data)];
}

/**
 * The size that even the proposed order moves furthest beyond what general tolerances of welded work allow: ISO 13920,
 * class B, which is asked of welded frames where nobody says finer; our own choice of the limit.
 */
function outOfSize({ checks }: WeldMovement, influences: FrameInfluences): Finding[] {
  let most: { row: WeldMovement['checks'][number]; high: number; times: number } | undefined;
  for (const [number, row] of checks.entries()) {
    const check = influences.checks[number];
    const high = check === undefined ? undefined : linearTolerance('iso-13920-b', measureCheck(check))?.plusMinus;
    if (high === undefined) continue;
    const times = Math.abs(row.proposed.value) / high;
    if (times > (most?.times ?? 1)) most = { row, high, times };
  }
  if (most === undefined) return [];
  const { key, index, proposed } = most.row;
  const data = { check: key, index, value: Math.abs(proposed.value), high: most.high };
  return [finding('pull-out-of-size', 'caution', '/welding/pull', data)];
}
