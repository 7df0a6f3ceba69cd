import { type Rectangle, type Spot } from './ink.ts';

/** The part of a piece of line that lies in a rectangle (Liang and Barsky), or undefined. */
function clipPiece([x0, y0]: Spot, [x1, y1]: Spot, area: Rectangle): readonly [Spot, Spot] | undefined {
  let enter = 0;
  let leave = 1;
  const sides: readonly (readonly [number, number])[] = [
    [x0 - x1, x0 - area.left],
    [x1 - x0, area.left + area.width - x0],
    [y0 - y1, y0 - area.top],
    [y1 - y0, area.top + area.height - y0],
  ];
  for (const [speed, room] of sides) {
    if (speed === 0) {
      if (room < 0) return undefined;
    } else if (speed < 0) enter = Math.max(enter, room / speed);
    else leave = Math.min(leave, room / speed);
  }
  if (enter > leave) return undefined;
  const at = (share: number): Spot =>
    share === 0 ? [x0, y0] : share === 1 ? [x1, y1] : [x0 + (x1 - x0) * share, y0 + (y1 - y0) * share];
  return [at(enter), at(leave)];
}

const same = (a: Spot | undefined, b: Spot): boolean => a !== undefined && a[0] === b[0] && a[1] === b[1];

/** The parts of an open line that lie in a rectangle. */
export function clipLine(points: readonly Spot[], area: Rectangle): Spot[][] {
  const parts: Spot[][] = [];
  for (let index = 0; index + 1 < points.length; index += 1) {
    const from = points[index];
    const to = points[index + 1];
    if (from === undefined || to === undefined) continue;
    const piece = clipPiece(from, to, area);
    if (piece === undefined) continue;
    const last = parts.at(-1);
    if (last !== undefined && same(last.at(-1), piece[0])) last.push(piece[1]);
    else parts.push([...piece]);
  }
  return parts;
}
