/** A function of the lean that does not exist everywhere: width at the feet for a lean [mm]. */
export type WidthAtFeet = (lean: number) => number | undefined;

/** The lean that gives the wanted width, or the widths that can be had; null where no lean gives a hoop. */
export type LeanResult = { readonly lean: number } | { readonly reachable: { low: number; high: number } | null };

/** Legs are looked for from upright to almost flat, either way, in steps of one degree. */
const STEPS = 85;
const STEP = Math.PI / 180;

type Sample = { readonly lean: number; readonly width: number };

/**
 * The lean [rad] at which the feet stand as wide apart as wanted; the most upright one where there are several.
 * Looked for in steps, then halved down to the last bit, so that the answer is the same for every way of typing it.
 */
export function solveLean(wanted: number, widthAt: WidthAtFeet): LeanResult {
  const seen: number[] = [];
  for (let step = 0; step < STEPS; step += 1) {
    for (const side of [1, -1]) {
      const ends = sampledStep(widthAt, side * step * STEP, side * (step + 1) * STEP);
      const [near, far] = ends;
      if (near === undefined || far === undefined) continue;
      if (near.width === wanted) return { lean: near.lean };
      if (near.width < wanted !== far.width < wanted) return { lean: halve(wanted, widthAt, near, far) };
      seen.push(near.width, far.width);
    }
  }
  return { reachable: seen.length === 0 ? null : { low: Math.min(...seen), high: Math.max(...seen) } };
}

/** Both ends of a step, drawn in to where there is a width; none where there is none at either end. */
function sampledStep(widthAt: WidthAtFeet, near: number, far: number): Sample[] {
  const widths = { near: widthAt(near), far: widthAt(far) };
  if (widths.near !== undefined && widths.far !== undefined)
    return [
      { lean: near, width: widths.near },
      { lean: far, width: widths.far },
    ];
  if (widths.near !== undefined) return [{ lean: near, width: widths.near }, ...edgeOf(widthAt, near, far)];
  if (widths.far !== undefined) return [...edgeOf(widthAt, far, near), { lean: far, width: widths.far }];
  return [];
}

/** The last lean that still has a width, between one that has and one that has not. */
function edgeOf(widthAt: WidthAtFeet, has: number, hasNot: number): Sample[] {
  let [inside, outside] = [has, hasNot];
  for (let round = 0; round < 60; round += 1) {
    const middle = (inside + outside) / 2;
    if (widthAt(middle) === undefined) outside = middle;
    else inside = middle;
  }
  const width = widthAt(inside);
  return width === undefined ? [] : [{ lean: inside, width }];
}

/** Halves a stretch at whose ends the width stands on either side of the wanted one. */
function halve(wanted: number, widthAt: WidthAtFeet, from: Sample, to: Sample): number {
  const below = from.width < wanted;
  let [near, far] = [from.lean, to.lean];
  for (let round = 0; round < 80; round += 1) {
    const middle = (near + far) / 2;
    if (middle === near || middle === far) break;
    const width = widthAt(middle) ?? wanted;
    if (width < wanted === below) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
}
