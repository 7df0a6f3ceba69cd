/** A function of the lean that does not exist everywhere: width at the feet for a lean [mm]. */
export type WidthAtFeet = (lean: number) => number | undefined;

/** The lean that gives the wanted width, or the widths that can be had; null where no lean gives a hoop. */
export type LeanResult = { readonly lean: number } | { readonly reachable: { low: number; high: number } | null };

/** Legs are looked for from lying almost flat to leaning in as far as the bend lets them; steps of one degree. */
const STEPS = 85;
const STEP = Math.PI / 180;

type Sample = { readonly lean: number; readonly width: number };

/**
 * The lean [rad] at which the feet stand as wide apart as wanted; the most upright one where there are several.
 * Looked for in steps, then halved down to the last bit, so that the answer is the same for every way of typing it.
 */
export function solveLean(wanted: number, widthAt: WidthAtFeet): LeanResult {
  const samples = sampled(widthAt);
  let best: number | undefined;
  const take = (lean: number) => {
    if (best === undefined || Math.abs(lean) < Math.abs(best)) best = lean;
  };
  for (const [index, sample] of samples.entries()) {
    if (sample.width === wanted) take(sample.lean);
    const next = samples[index + 1];
    if (next === undefined || next.lean - sample.lean > 1.5 * STEP) continue;
    if (sample.width - wanted > 0 !== next.width - wanted > 0) take(halve(wanted, widthAt, sample, next));
  }
  if (best !== undefined) return { lean: best };
  if (samples.length === 0) return { reachable: null };
  const widths = samples.map((sample) => sample.width);
  return { reachable: { low: Math.min(...widths), high: Math.max(...widths) } };
}

/** Widths at every step where there is one, and at the very ends of each stretch of them. */
function sampled(widthAt: WidthAtFeet): Sample[] {
  const samples: Sample[] = [];
  let before: number | undefined;
  for (let step = -STEPS; step <= STEPS; step += 1) {
    const lean = step * STEP;
    const width = widthAt(lean);
    const edge = step > -STEPS && (width === undefined) !== (before === undefined);
    if (edge) samples.push(...edgeOf(widthAt, width === undefined ? [lean - STEP, lean] : [lean, lean - STEP]));
    if (width !== undefined) samples.push({ lean, width });
    before = width;
  }
  return samples;
}

/** The last lean that still has a width, between one that has and one that has not. */
function edgeOf(widthAt: WidthAtFeet, [has, hasNot]: readonly [number, number]): Sample[] {
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
  const rises = to.width > from.width;
  let [low, high] = [from.lean, to.lean];
  for (let round = 0; round < 80; round += 1) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    const width = widthAt(middle) ?? wanted;
    if (width > wanted === rises) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
