import { boxesApart, finenessOf, halves, leastDistance, type Stretch } from '../geometry/least-distance.ts';
import { clearStretches } from './clear-length.ts';
import type { MemberGeometry } from './frame-geometry.ts';

type Part = { readonly from: number; readonly to: number; readonly stretch: Stretch };

/**
 * Least distance at which a member comes back to itself, where that is below a limit [mm], else the limit.
 *
 * Two points s apart along a curve of no less radius than r are at least 2 r sin(s / 2r) apart in space, for s up to
 * 2πr (Schur's comparison theorem, 1921). So a chord below D belongs either to neighbours, s < s₀ = 2r asin(D / 2r),
 * or to a true return, s > 2πr − s₀: only the latter are looked at.
 */
export function selfDistance(member: MemberGeometry, outsideDiameter: number, limit: number): number {
  const arcs = member.centreline.pieces.flatMap((piece) => (piece.kind === 'arc' ? [piece] : []));
  const turn = arcs.reduce((sum, arc) => sum + arc.angle, 0);
  const radius = Math.max(outsideDiameter / 2, Math.min(...arcs.map((arc) => arc.radius)));
  // a path that turns by half a turn in all never comes back nearer than its two legs stand
  if (arcs.length === 0 || turn <= Math.PI + 1e-9) return limit;
  const neighbours = 2 * radius * Math.asin(outsideDiameter / (2 * radius));
  const away = 2 * Math.PI * radius - neighbours;
  const whole = member.closed ? member.centreline.length : Infinity;
  const parts = clearStretches(member, outsideDiameter).map(({ station, stretch }): Part => {
    return { from: station, to: station + stretch.piece.length, stretch };
  });
  const fine = finenessOf(outsideDiameter, member.centreline.length);
  let best = limit;
  const open: [Part, Part][] = parts.flatMap((a, index) => parts.slice(index + 1).map((b): [Part, Part] => [a, b]));
  for (let pair = open.pop(); pair !== undefined; pair = open.pop()) {
    const [a, b] = pair;
    if (best <= fine) break;
    const least = b.from - a.to;
    const most = b.to - a.from;
    if (most <= away || whole - least <= away) continue;
    if (least >= neighbours && whole - most >= neighbours) {
      best = leastDistance(a.stretch, b.stretch, best, fine);
      continue;
    }
    if (boxesApart(a.stretch, b.stretch, best)) continue;
    const longer = a.to - a.from > b.to - b.from ? a : b;
    if (longer.to - longer.from < outsideDiameter / 8) continue;
    for (const half of halvesOf(longer)) open.push(longer === a ? [half, b] : [a, half]);
  }
  return best;
}

function halvesOf(part: Part): Part[] {
  const middle = (part.from + part.to) / 2;
  return halves(part.stretch).map((stretch, index) =>
    index === 0 ? { from: part.from, to: middle, stretch } : { from: middle, to: part.to, stretch },
  );
}
