/** How much wider holes are tried each time; our own choice. */
const WIDER = 1.25;
/** A hole is drilled no wider than this share of the bore, so that the saddle covers it; our own choice. */
export const WIDEST_HOLE = 0.9;

/** Whole millimetres in steps of a quarter, up to what the branch still covers. */
export function widerHoles(hole: number, bore: number): number[] {
  const widths: number[] = [];
  for (let width = Math.ceil(WIDER * hole); width <= WIDEST_HOLE * bore; width = Math.ceil(WIDER * width))
    widths.push(width);
  return widths;
}
