import type { Units } from '../job/job.ts';
import { formatQuantity } from '../language/quantity-format.ts';
import type { FlatPoint, View, ViewDimension } from '../plan/view.ts';
import { refused, type ExportInput, type Refused } from './export-file.ts';

export type Line = readonly [FlatPoint, FlatPoint];

/** Height of lettering as a share of the drawing's longer side, and at least the 3.5 mm of ISO 3098. Our own choice. */
const LETTERING = { share: 1 / 60, least: 3.5 } as const;

/** Height of the lettering of a drawing [mm at full size]; lines are a tenth of it wide (ISO 3098, type B). */
export const letteringOf = ({ bounds: [left, bottom, right, top] }: View): number =>
  Math.max(LETTERING.least, LETTERING.share * Math.max(right - left, top - bottom));

type Views = { readonly ok: true; readonly views: readonly View[] } | Refused;

/** The views of a plan; of one member alone where one is chosen, without the sizes and marks of the whole frame. */
export function chosenViews({ plan, member }: ExportInput): Views {
  if (plan.frame === null) return refused('frame-not-possible');
  if (member === null) return { ok: true, views: plan.views.map(sizedAsWanted) };
  if (plan.frame.members.every(({ name }) => name !== member)) return refused('no-such-member', member);
  return { ok: true, views: plan.views.map((view) => ofMember(view, member)) };
}

/** Sizes and marks of the frame as wanted alone: those of a frame that came back would lie on top of them. */
const sizedAsWanted = (view: View): View => ({
  ...view,
  dimensions: view.dimensions.filter(({ layer }) => layer === 'wanted'),
  marks: view.marks.filter(({ layer }) => layer === 'wanted'),
});

function ofMember(view: View, member: string): View {
  const layers = view.layers
    .map((layer) => ({ ...layer, members: layer.members.filter((drawn) => drawn.member === member) }))
    .filter((layer) => layer.members.length > 0);
  const points = layers.flatMap((layer) =>
    layer.members.flatMap(({ edges, centreline }) => [...edges.flat(), ...centreline]),
  );
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const bounds: View['bounds'] = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  return { ...view, bounds, layers, dimensions: [], marks: [] };
}

/** A dimension as it is drawn: lines, and its value with the place and the turn of its lettering [degrees, y up]. */
export type DrawnDimension = {
  readonly lines: readonly Line[];
  readonly text: string;
  readonly at: FlatPoint;
  readonly turn: number;
};

/** Lines end in oblique strokes (ISO 129-1); the value stands above its line, readable from below or from the right. */
export function drawnDimension(dimension: ViewDimension, units: Units, lettering: number): DrawnDimension {
  const [start, end] = dimension.line;
  const along = Math.atan2(end[1] - start[1], end[0] - start[0]);
  const flipped = Math.cos(along) < -1e-9 || (Math.abs(Math.cos(along)) <= 1e-9 && Math.sin(along) < 0);
  const turn = flipped ? along + Math.PI : along;
  const half = lettering / 3;
  const stroke = ([x, y]: FlatPoint): Line => {
    const [dx, dy] = [half * Math.cos(turn + Math.PI / 4), half * Math.sin(turn + Math.PI / 4)];
    return [
      [x - dx, y - dy],
      [x + dx, y + dy],
    ];
  };
  const lift = lettering * 0.4;
  const witness: Line[] = dimension.radius
    ? []
    : [
        [dimension.from, start],
        [dimension.to, end],
      ];
  return {
    lines: [...witness, [start, end], ...(dimension.radius ? [] : [stroke(start)]), stroke(end)],
    text: `${dimension.radius ? 'R ' : ''}${formatQuantity(dimension.value, dimension.unit, units)}`,
    at: [(start[0] + end[0]) / 2 - lift * Math.sin(turn), (start[1] + end[1]) / 2 + lift * Math.cos(turn)],
    turn: ((turn * 180) / Math.PI) % 360,
  };
}
