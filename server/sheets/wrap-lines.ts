import type { WrapTemplate } from '../plan/frame.ts';
import { hatch } from './hatch.ts';
import { STROKES, type Role, type Spot, type Stroke } from './ink.ts';
import { NAMES, bottomOf, level, onHinge, quarters } from './wrap-size.ts';

export type Line = { readonly role: Role; readonly points: readonly Spot[]; readonly stroke: Stroke };

/** How far the edges of a hinge are drawn beyond the two lines [mm]. */
const BEYOND = 3;

/** Every line of the wrap in its own millimetres, 0 at the left edge; where its ring is a sawn end, scrap ends there. */
export function wrapLines(template: WrapTemplate, ringIsSawn = false): Line[] {
  const { wrapLength } = template;
  const [top, bottom, ring] = [NAMES, bottomOf(template), level(template, 0)];
  const place = ([girth, ordinate]: readonly [number, number]): Spot => [girth, level(template, ordinate)];
  const curve = template.curve.map(place);
  const second = template.second?.map(place) ?? [];
  const run = (role: Role, points: readonly Spot[], stroke: Stroke): Line => ({ role, points, stroke });
  const frame: Spot[] = [
    [0, top],
    [wrapLength, top],
    [wrapLength, bottom],
    [0, bottom],
    [0, top],
  ];
  const upright = (x: number): Spot[] => [
    [x, top],
    [x, bottom],
  ];
  const ringLine: Spot[] = [
    [0, ring],
    [wrapLength, ring],
  ];
  return [
    ...hatch(scrapOf(template, curve, second, ringIsSawn), 3).map(({ points }) => run('hatch', points, STROKES.faint)),
    run('frame', frame, STROKES.narrow),
    ...quarters(template)
      .filter(({ x }) => x > 1e-6)
      .map(({ x }) => run('centreline', upright(x), STROKES.centreline)),
    ...(ring > top && ring < bottom ? [run('centreline', ringLine, STROKES.hidden)] : []),
    ...hingeEdges(template),
    ...[curve, second].flatMap((points) => cutLines(template, points)),
  ];
}

/** The outline of what is thrown away: to one edge of the strip, between the two lines, or inside the closed one. */
function scrapOf(
  { scrap, wrapLength, ...template }: WrapTemplate,
  curve: readonly Spot[],
  second: readonly Spot[],
  ringIsSawn: boolean,
): Spot[] {
  if (scrap === 'inside') return [...curve];
  if (scrap === 'between') return [...curve, ...second.toReversed()];
  const whole = { scrap, wrapLength, ...template };
  const edge = ringIsSawn ? level(whole, 0) : scrap === 'finish' ? NAMES : bottomOf(whole);
  return [...curve, [wrapLength, edge], [0, edge]];
}

/** A line to cut to; where it runs over a hinge it is dashed, for it is not cut there. */
function cutLines(template: WrapTemplate, points: readonly Spot[]): Line[] {
  const parts: { cut: boolean; points: Spot[] }[] = [];
  for (const [index, point] of points.entries()) {
    const before = points[index - 1];
    if (before === undefined) continue;
    const cut = !onHinge(template, (before[0] + point[0]) / 2);
    const last = parts.at(-1);
    if (last !== undefined && last.cut === cut) last.points.push(point);
    else parts.push({ cut, points: [before, point] });
  }
  return parts.map(({ cut, points: part }) => ({
    role: cut ? 'template' : 'mark',
    points: part,
    stroke: cut ? STROKES.template : STROKES.hidden,
  }));
}

/** The two edges of a dart's hinge, across both lines. */
function hingeEdges(template: WrapTemplate): Line[] {
  const { hinge, wrapLength, curve, second } = template;
  if (hinge === null || second === null) return [];
  const ordinates = [...curve, ...second].filter(([girth]) => onHinge(template, girth)).map(([, ordinate]) => ordinate);
  if (ordinates.length === 0) return [];
  const from = level(template, Math.max(...ordinates)) - BEYOND;
  const to = level(template, Math.min(...ordinates)) + BEYOND;
  return [-1, 1].map((side): Line => {
    const turn = (hinge.girth + (side * hinge.width) / 2) / wrapLength;
    const x = wrapLength * (turn - Math.floor(turn));
    return {
      role: 'mark',
      points: [
        [x, from],
        [x, to],
      ],
      stroke: STROKES.narrow,
    };
  });
}
