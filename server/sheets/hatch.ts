import { STROKES, line, type Drawn, type Spot } from './ink.ts';

/** Hatching at 45 degrees inside a closed outline (ISO 128-3), `pitch` [mm] from line to line. */
export function hatch(outline: readonly Spot[], pitch = 1): Drawn[] {
  // Along a hatch line x + y is constant; walk those lines and pair up where they meet the outline.
  const sums = outline.map(([x, y]) => x + y);
  const low = Math.min(...sums);
  const high = Math.max(...sums);
  const drawn: Drawn[] = [];
  for (let index = Math.floor(low / pitch) + 1; index * pitch < high; index += 1) {
    const sum = index * pitch;
    const met: number[] = [];
    for (const [place, [x, y]] of outline.entries()) {
      const next = outline[(place + 1) % outline.length];
      if (next === undefined) continue;
      const here = x + y - sum;
      const there = next[0] + next[1] - sum;
      if (here < 0 === there < 0) continue;
      met.push(x + ((next[0] - x) * here) / (here - there));
    }
    met.sort((a, b) => a - b);
    for (let pair = 0; pair + 1 < met.length; pair += 2) {
      const from = met[pair];
      const to = met[pair + 1];
      if (from === undefined || to === undefined) continue;
      drawn.push(
        line(
          'hatch',
          [
            [from, sum - from],
            [to, sum - to],
          ],
          STROKES.thin,
        ),
      );
    }
  }
  return drawn;
}
