import type { Job } from '../job/job.ts';
import { formatFigure } from '../language/quantity-format.ts';
import { formatClosely } from '../language/length-format.ts';
import { words } from '../language/words.ts';
import type { LegPlan } from '../plan/leg.ts';
import { dimensionLines, dimensionText, type Dimension } from './dimension.ts';
import { HEIGHTS, STROKES, line, write, type Item, type Rectangle, type Spot } from './ink.ts';
import { legEnds, roundTo, type LegEnd } from './leg-wraps.ts';
import { largestOfAll, type Scale } from './scale.ts';
import { breakAt } from './straight-tube.ts';
import type { Block } from './text-block.ts';

/** So thick at the most the tube may be drawn, the first where the page has room for it [mm on paper]. */
export const THICKNESSES = [26, 18, 12, 9] as const;
/** So much of it is whole beside each end [mm on paper]. */
const WHOLE = 16;
/** Room at both sides for what lies beyond the ends, and the least that is left for a break [mm]. */
const SIDE = 14;
const BREAK = 14;
/** What the words of the ends take above the tube, and a dimension of a length [mm]. */
const ABOVE = 6.5;
const APART = 7;

/** A dimension shorter than this has no room for what is said beside its length [mm]. */
const SAID = 100;

/** Where a leg may be drawn [mm], and how large. */
export type LegRoom = { readonly width: number; readonly scale: Scale };

/** How a leg lies on paper: where a distance from its sawn foot end is drawn [mm]. */
type Laid = {
  readonly scale: Scale;
  readonly broken: boolean;
  readonly at: (distance: number) => number;
  readonly middle: number;
  readonly radius: number;
};

/** How much of each end its line takes up along the tube [mm]. */
const endLengths = (ends: readonly LegEnd[]): number =>
  ends.reduce((sum, { template }) => sum + template.high - template.low, 0);

/** The largest scale at which all legs of a job can be drawn, none of them thicker: so that two of a pair look alike. */
export const legScale = (legs: readonly LegPlan[], width: number, thickest: number): Scale =>
  largestOfAll((factor) => legs.every((leg) => fits(leg, factor, width - 2 * SIDE, thickest)));

const fits = (leg: LegPlan, factor: number, room: number, thickest: number): boolean =>
  leg.outsideDiameter * factor <= thickest &&
  (leg.cutLength.value * factor <= room || endLengths(legEnds(leg)) * factor + 2 * WHOLE + BREAK <= room);

function laidOut(leg: LegPlan, { width, scale }: LegRoom): Laid {
  const room = width - 2 * SIDE;
  const cut = leg.cutLength.value;
  const whole = cut * scale.factor;
  const broken = whole > room;
  const drawn = broken ? room : whole;
  const left = (width - drawn) / 2;
  const radius = (leg.outsideDiameter * scale.factor) / 2;
  return {
    scale,
    broken,
    // what is left out of a broken tube lies in its middle: each end is drawn from its own side
    at: (distance) => left + (distance > cut / 2 ? drawn - (cut - distance) * scale.factor : distance * scale.factor),
    middle: ABOVE + radius,
    radius,
  };
}

/** The leg with its scribed line on top, the foot left, to scale but for its break, with its lengths and rings. */
export function legPicture(leg: LegPlan, { units }: Job, room: LegRoom): Block {
  const { width } = room;
  const ends = legEnds(leg);
  const laid = laidOut(leg, room);
  const items: Item[] = [...outline(leg, ends, laid), ...ends.flatMap((end) => ring(end, laid))];
  const dimensions = lengthDimensions(leg, ends, laid, units);
  for (const dimension of dimensions) items.push(...dimensionLines(dimension));
  items.push(...endWords(leg, ends, units, width));
  const below = dimensions.flatMap(({ line: run }) => run.map(([, y]) => y));
  const height = Math.max(laid.middle + laid.radius, ...below) + 3;
  const area: Rectangle = { left: 0, top: 0, width, height };
  for (const dimension of dimensions) items.push(...dimensionText(dimension, items, area));
  return { height, items, scales: [laid.scale.text] };
}

/** Both edges, the scribed line being the upper one, the ends as they are cut, and the tube's middle. */
function outline(leg: LegPlan, ends: readonly LegEnd[], laid: Laid): Item[] {
  const { middle, radius, at } = laid;
  const [top, bottom] = [middle - radius, middle + radius];
  const foot = ends.find((one) => one.at === 'foot');
  const head = ends.find((one) => one.at === 'head');
  const cut = leg.cutLength.value;
  const edgeAt = (end: LegEnd | undefined, degrees: number, sawn: number): number =>
    end === undefined ? at(sawn) : at(end.template.ringStation + ordinateAt(end, degrees));
  const run = (y: number, degrees: number): Item =>
    line(
      'edge',
      [
        [edgeAt(foot, degrees, 0), y],
        [edgeAt(head, degrees, cut), y],
      ],
      STROKES.edge,
    );
  const axis: Spot[] = [
    [edgeAt(foot, 90, 0), middle],
    [edgeAt(head, 90, cut), middle],
  ];
  return [
    run(top, 0),
    run(bottom, 180),
    line('centreline', axis, STROKES.centreline),
    ...endOutline(foot, 0, laid),
    ...endOutline(head, cut, laid),
    ...(laid.broken ? breakAt((at(0) + at(cut)) / 2, top, bottom) : []),
  ];
}

/** The ordinate of a wrap's line on a generator, round from the scribed line [mm]. */
function ordinateAt({ template }: LegEnd, degrees: number): number {
  const off = (girth: number): number => {
    const apart = Math.abs(roundTo(template, girth) - degrees) % 360;
    return Math.min(apart, 360 - apart);
  };
  const { curve } = template;
  return curve.reduce((best, one) => (off(one[0]) < off(best[0]) ? one : best), curve[0] ?? [0, 0])[1];
}

/** How an end is cut: what faces the reader whole, what lies behind dashed; square where it has no wrap. */
function endOutline(end: LegEnd | undefined, sawn: number, { at, middle, radius }: Laid): Item[] {
  if (end === undefined) {
    const x = at(sawn);
    return [
      line(
        'edge',
        [
          [x, middle - radius],
          [x, middle + radius],
        ],
        STROKES.edge,
      ),
    ];
  }
  const { template } = end;
  const along = template.ringStation;
  const parts: { near: boolean; points: Spot[] }[] = [];
  let before: Spot | undefined;
  for (const [girth, ordinate] of template.curve) {
    const angle = (roundTo(template, girth) * Math.PI) / 180;
    const spot: Spot = [at(along + ordinate), middle - radius * Math.cos(angle)];
    const near = Math.sin(angle) >= -1e-9;
    const last = parts.at(-1);
    if (last?.near === near) last.points.push(spot);
    else parts.push({ near, points: before === undefined ? [spot] : [before, spot] });
    before = spot;
  }
  return parts
    .filter(({ points }) => points.length > 1)
    .map(({ near, points }) => line('edge', points, near ? STROKES.edge : STROKES.hidden));
}

/** The ring of a wrap, which is the sawn end, with the tube up to there dashed: that is cut away. */
function ring({ at: end, template }: LegEnd, { at, middle, radius }: Laid): Item[] {
  const x = at(template.ringStation);
  const edge = (y: number, degrees: number): Item =>
    line(
      'mark',
      [
        [x, y],
        [at(template.ringStation + ordinateAt({ at: end, template }, degrees)), y],
      ],
      STROKES.hidden,
    );
  return [
    line(
      'mark',
      [
        [x, middle - radius - 1.5],
        [x, middle + radius + 1.5],
      ],
      STROKES.hidden,
    ),
    edge(middle - radius, 0),
    edge(middle + radius, 180),
  ];
}

/** Below the tube: what is sawn off, and from foot point to head where both lie on the paper. */
function lengthDimensions(leg: LegPlan, ends: readonly LegEnd[], laid: Laid, units: Job['units']): Dimension[] {
  const { at, middle, radius, scale } = laid;
  const cut = leg.cutLength.value;
  const foot = ends.find((one) => one.at === 'foot');
  // the foot's face at the middle of the tube lies halfway between its long and its short side
  const face = foot === undefined ? 0 : foot.template.ringStation + (foot.template.low + foot.template.high) / 2;
  const beyond = (takes: number): boolean => Math.abs(takes) * scale.factor <= SIDE - 2;
  const footPoint = at(face) - leg.foot.takes.value * scale.factor;
  const headPoint = at(cut) + leg.head.takes.value * scale.factor;
  const fits = beyond(leg.foot.takes.value - face) && beyond(leg.head.takes.value);
  const level = (from: number, to: number, place: number, text: string): Dimension => {
    const y = middle + radius + 1 + APART * place;
    return {
      from: [from, middle + radius],
      to: [to, middle + radius],
      line: [
        [from, y],
        [to, y],
      ],
      text,
      radius: false,
    };
  };
  const rings = ends.length === 2 ? 'sheet.cut-is-rings' : ends.length === 1 ? 'sheet.cut-is-ring' : 'sheet.cut-is';
  const cutKey = at(cut) - at(0) < SAID ? 'sheet.cut-is' : rings;
  const said = (key: typeof cutKey | 'sheet.centre-is', figure: LegPlan['cutLength']): string =>
    words(key, { length: formatFigure(figure, units) });
  return [
    level(at(0), at(cut), 1, said(cutKey, leg.cutLength)),
    ...(fits ? [level(footPoint, headPoint, 2, said('sheet.centre-is', leg.centreLength))] : []),
  ];
}

/** What each end is, over it, and where the line is that the wraps lie on. */
function endWords(leg: LegPlan, ends: readonly LegEnd[], units: Job['units'], width: number): Item[] {
  const how = { height: HEIGHTS.text, weight: 600 } as const;
  const { plate } = leg.foot;
  const end = words(`sheet.foot-end.${leg.foot.end}`);
  const foot = plate === 0 ? end : words('sheet.foot-on-plate', { foot: end, plate: formatClosely(plate, units) });
  const head = words(`sheet.head-end.${leg.head.end}`, { member: leg.head.member });
  return [
    write([0, 3.5], foot, how),
    ...(ends.length === 0 ? [] : [write([width / 2 + 10, 3.5], words('sheet.line-on-top'), { align: 'middle' })]),
    write([width, 3.5], head, { ...how, align: 'right' }),
  ];
}
