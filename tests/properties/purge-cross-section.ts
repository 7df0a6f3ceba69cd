/**
 * Gas in a round tube ring by ring and cell by cell: it runs 2 U (1 − r²/a²) fast along the axis, and air diffuses
 * across and along it. Nothing is said about dispersion: the profile and the diffusion make it. Lengths are shares of
 * the tube's and of its radius, time is in volumes of gas.
 */
export type CrossSection = {
  /** τ = D (L/U)/a²: how often diffusion gets across while the gas passes. */
  readonly across: number;
  /** D/(U L): the same along the tube. */
  readonly along: number;
};

/** Largest share of a cell that gas on the axis passes in one step; below 1 the steps are stable. */
const COURANT = 0.9;

/** Change of a cell by diffusion in half a step, ring by ring: tridiagonal and the same everywhere, factored once. */
function exchangeOf(across: number, areas: Float64Array, halfStep: number) {
  const rings = areas.length;
  // τ · 2 ρ/Δρ of the face outside ring i, for areas that add up to 1
  const face = Float64Array.from({ length: rings }, (_, ring) => (ring === rings - 1 ? 0 : 2 * across * (ring + 1)));
  const inner = (ring: number) => (ring === 0 ? 0 : (halfStep * face[ring - 1]!) / areas[ring]!);
  const outer = (ring: number) => (halfStep * face[ring]!) / areas[ring]!;
  const lower = new Float64Array(rings);
  const pivot = new Float64Array(rings);
  for (let ring = 0; ring < rings; ring += 1) {
    if (ring > 0) lower[ring] = -inner(ring) / pivot[ring - 1]!;
    pivot[ring] = 1 + inner(ring) + outer(ring) + (ring === 0 ? 0 : lower[ring]! * outer(ring - 1));
  }
  const change = new Float64Array(rings);
  return (air: Float64Array, cell: number, cells: number): void => {
    for (let ring = 0; ring < rings; ring += 1) {
      const here = air[ring * cells + cell]!;
      const out = ring === rings - 1 ? 0 : outer(ring) * (air[(ring + 1) * cells + cell]! - here);
      const into = ring === 0 ? 0 : inner(ring) * (air[(ring - 1) * cells + cell]! - here);
      change[ring] = 2 * (out + into) - (ring === 0 ? 0 : lower[ring]! * change[ring - 1]!);
    }
    for (let ring = rings - 1; ring >= 0; ring -= 1) {
      change[ring] = (change[ring]! + (ring === rings - 1 ? 0 : outer(ring) * change[ring + 1]!)) / pivot[ring]!;
      air[ring * cells + cell]! += change[ring]!;
    }
  };
}

/** One ring moves along by a share of a cell: second order with van Leer's limiter, and diffusion along it. */
function moveAlong(
  air: Float64Array,
  start: number,
  cells: number,
  { moved, spread }: { moved: number; spread: number },
) {
  let into = 0;
  let before = 0;
  for (let cell = 0; cell < cells; cell += 1) {
    const here = air[start + cell]!;
    const after = cell < cells - 1 ? air[start + cell + 1]! : here;
    const [rise, next] = [here - before, after - here];
    const slope = rise * next > 0 ? (2 * rise * next) / (rise + next) : 0;
    const out = moved * (here + ((1 - moved) / 2) * slope) - spread * next;
    air[start + cell] = here + into - out;
    into = out;
    before = here;
  }
}

/**
 * Volumes until the air left at the far end falls to each of some shares: the mean of what comes out, and at the wall.
 *
 * @param shares of what was there at first, the largest first
 */
export function volumesThrough(
  { across, along }: CrossSection,
  shares: readonly number[],
  { rings, cells }: { readonly rings: number; readonly cells: number },
): { mean: number[]; wall: number[] } {
  const within = (ring: number) => 2 * (ring / rings) ** 2 - (ring / rings) ** 4;
  const areas = Float64Array.from({ length: rings }, (_, ring) => (2 * ring + 1) / rings ** 2);
  const flows = areas.map((_, ring) => within(ring + 1) - within(ring));
  const step = COURANT / (2 * cells);
  const exchange = exchangeOf(across, areas, step / 2);
  const air = new Float64Array(rings * cells).fill(1);
  const found = { mean: [] as number[], wall: [] as number[] };
  const last = { mean: 1, wall: 1 };
  const spread = along * step * cells ** 2;
  for (let volumes = 0; found.wall.length < shares.length || found.mean.length < shares.length; volumes += step) {
    for (let ring = 0; ring < rings; ring += 1)
      moveAlong(air, ring * cells, cells, { moved: (flows[ring]! / areas[ring]!) * step * cells, spread });
    for (let cell = 0; cell < cells; cell += 1) exchange(air, cell, cells);
    const out = (ring: number) => air[ring * cells + cells - 1]!;
    const now = { mean: flows.reduce((sum, flow, ring) => sum + flow * out(ring), 0), wall: out(rings - 1) };
    for (const where of ['mean', 'wall'] as const) {
      for (let share = shares[found[where].length]; share !== undefined && now[where] <= share;) {
        found[where].push(volumes + (step * Math.log(last[where] / share)) / Math.log(last[where] / now[where]));
        share = shares[found[where].length];
      }
      last[where] = now[where];
    }
  }
  return found;
}
