import { words, wordsOf } from '../language/words.ts';
import type { WrapTemplate } from '../plan/frame.ts';
import { arrowhead } from './dimension.ts';
import { freest } from './free-place.ts';
import { COLOURS, HEIGHTS, STROKES, line, shape, write, type Item, type Spot, type Written } from './ink.ts';
import type { Line } from './wrap-lines.ts';
import { NAMES, bottomOf, level, quarters } from './wrap-size.ts';

const SMALL = { height: HEIGHTS.small, weight: 600 } as const;

/** Places along the girth where a name is tried, as shares of the wrap: the first that is free is taken. */
const TRIED = Array.from({ length: 32 }, (_, index) => index / 32);

/** The leg that a wrap belongs to, and which end of it the wrap is for. */
export type LegWrap = { readonly name: string; readonly end: 'foot' | 'head' };

/** Everything that is written on a wrap, clear of its lines. */
export function wrapNames(template: WrapTemplate, lines: readonly Line[], leg?: LegWrap): Item[] {
  const items: Item[] = lines
    .filter(({ role }) => role !== 'hatch')
    .map(({ role, points, stroke }) => line(role, points, stroke));
  const names: Item[] = [...generatorNames(template, leg), ...datumArrow(template, leg)];
  for (const candidates of leg === undefined ? lineNames(template) : legLineNames(template)) {
    const free = freest(candidates, [...items, ...names], {
      left: 0.5,
      top: NAMES + 0.5,
      width: template.wrapLength - 1,
      height: bottomOf(template) - NAMES - 1,
    });
    if (free !== undefined) names.push(free);
  }
  return names;
}

/**
 * Names of the four generators: on a saddle they count from the side where the two axes make the acute angle, on a leg
 * from the line that both of its wraps lie on.
 */
const quarterNames = ({ kind }: WrapTemplate, leg: LegWrap | undefined): string[] =>
  leg !== undefined
    ? [words('sheet.scribed-line'), '90°', '180°', '270°']
    : kind === 'saddle'
      ? [words('sheet.acute-side'), '90°', '180°', '270°']
      : (['outside', 'top', 'inside', 'bottom'] as const).map((key) => wordsOf('generator', key));

/** Names above the strip; a filled triangle stands at the first, to lay on the tube's own mark. */
function generatorNames(template: WrapTemplate, leg: LegWrap | undefined): Item[] {
  const names = quarterNames(template, leg);
  return quarters(template).flatMap(({ index, x }): Item[] => {
    const name = write([x + 1.5, NAMES - 3.4], names[index] ?? '', SMALL);
    // a generator near the right edge is named to its left
    const fits = x + 1.5 + name.width <= template.wrapLength;
    const placed = fits ? name : write([x - 1.5, NAMES - 3.4], names[index] ?? '', { ...SMALL, align: 'right' });
    const tip: Spot[] = [
      [x, NAMES],
      [x + (fits ? 2.4 : -2.4), NAMES - 2.6],
      [x, NAMES - 2.6],
    ];
    return index === 0 ? [placed, shape('mark', tip, { stroke: null, fill: COLOURS.black })] : [placed];
  });
}

function datumArrow(template: WrapTemplate, leg: LegWrap | undefined): Item[] {
  const said =
    leg === undefined
      ? words('sheet.towards-datum', { member: template.member })
      : words('sheet.towards-foot', { leg: leg.name });
  const bottom = bottomOf(template);
  const shaft: Spot[] = [
    [6, bottom + 1.5],
    [6, bottom + 7.5],
  ];
  return [
    line('mark', shaft, STROKES.narrow),
    arrowhead([6, bottom + 8], { x: 0, y: 1 }),
    write([9, bottom + 6], said, SMALL),
  ];
}

/** What stands at the lines: A below its own line, B above its own, and the hinge's name under it; nothing on a single face. */
function lineNames(template: WrapTemplate): Written[][] {
  const { curve, second, hinge, wrapLength } = template;
  if (second === null) return [];
  const at = (points: WrapTemplate['curve'], girth: number): number =>
    points.reduce((best, point) => (Math.abs(point[0] - girth) < Math.abs(best[0] - girth) ? point : best))[1];
  const widest = TRIED.map((share) => share * wrapLength).toSorted(
    (one, other) => at(second, other) - at(curve, other) - (at(second, one) - at(curve, one)),
  );
  const big = { height: HEIGHTS.head, weight: 600, align: 'middle' } as const;
  const above = (girth: number): Written =>
    write([girth, level(template, at(second, girth)) - 2], words('sheet.face-b'), big);
  const below = (girth: number): Written =>
    write([girth, level(template, at(curve, girth)) + 5.5], words('sheet.face-a'), big);
  const named = [widest.map(below), widest.map(above)];
  if (hinge === null) return named;
  const near = widest
    .map((girth) => girth)
    .toSorted((one, other) => Math.abs(one - hinge.girth) - Math.abs(other - hinge.girth));
  const low = level(template, Math.min(...curve.map(([, ordinate]) => ordinate)));
  const said = near.flatMap((girth) =>
    [7, 10].map((down) => write([girth, low + down], words('sheet.hinge'), { ...SMALL, align: 'middle' })),
  );
  return [...named, said];
}

/** On a leg: which line is cut to, and that the ring is the sawn end. */
function legLineNames(template: WrapTemplate): Written[][] {
  const { curve, scrap, wrapLength } = template;
  const how = { ...SMALL, align: 'middle' } as const;
  // the piece that stays lies above the line at the foot, below it at the head
  const [stays, beyond] = scrap === 'start' ? [-1.2, 3.2] : [3.2, -1.2];
  const shares = TRIED.map((share) => share * wrapLength);
  const onCurve = curve.flatMap(([girth, ordinate]) =>
    [0, 2, 4, 6].map((off) =>
      write([girth, level(template, ordinate) + stays + Math.sign(stays) * off], words('sheet.cut-curve'), how),
    ),
  );
  return [shares.map((girth) => write([girth, level(template, 0) + beyond], words('sheet.sawn-end'), how)), onCurve];
}
