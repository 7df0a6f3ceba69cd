/** A point of the picture [px], y down. */
type Place = { readonly x: number; readonly y: number };
type Tick = { readonly at: number; readonly value: number };

/** Test bends and the line through them, ready to be painted into a box of `size`. */
export type FitPicture = {
  readonly points: readonly Place[];
  readonly line: readonly [Place, Place];
  readonly across: readonly Tick[];
  readonly up: readonly Tick[];
  /** Where the two axes lie [px]. */
  readonly frame: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
};

/** Room for the numbers and the names of the axes beside them [px]. */
const MARGIN = { left: 44, right: 14, top: 28, bottom: 42 };

/** Steps of 1, 2 or 5 and tens of them, at least `least` of them over a span: numbers that a person counts in. */
function roundStep(span: number, most: number): number {
  const rough = span / most;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((each) => each * ten >= rough * (1 - 1e-9)) ?? 10;
  return factor * ten;
}

/** An axis from nothing (or below it) to past the largest value, ended at a round number. */
function axisOver(values: readonly number[], most: number): { low: number; high: number; ticks: number[] } {
  const low = Math.min(0, ...values);
  const high = Math.max(0, ...values);
  const step = roundStep(Math.max(high - low, 1e-6), most);
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(Math.ceil(high / step - 1e-9), first + 1);
  const ticks = Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  );
  return { low: first * step, high: last * step, ticks };
}

/**
 * Lays out the picture of a springback line.
 *
 * @param bends angle bent to and springback of each test bend [degrees]
 * @param line springback on the line at an angle bent to [degrees]; the plan's own figures
 * @param size of the box [px]
 */
export function fitPicture(
  bends: readonly { readonly commanded: number; readonly springback: number }[],
  line: (commanded: number) => number,
  size: { readonly width: number; readonly height: number },
): FitPicture {
  const angles = bends.map(({ commanded }) => commanded);
  const ends = [Math.min(...angles), Math.max(...angles)] as const;
  const across = axisOver(angles, 6);
  const up = axisOver([...bends.map(({ springback }) => springback), ...ends.map(line)], 5);
  const frame = {
    left: MARGIN.left,
    right: size.width - MARGIN.right,
    top: MARGIN.top,
    bottom: size.height - MARGIN.bottom,
  };
  const x = (value: number): number =>
    frame.left + ((value - across.low) / (across.high - across.low)) * (frame.right - frame.left);
  const y = (value: number): number =>
    frame.bottom - ((value - up.low) / (up.high - up.low)) * (frame.bottom - frame.top);
  const onLine = (angle: number): Place => ({ x: x(angle), y: y(line(angle)) });
  return {
    points: bends.map(({ commanded, springback }) => ({ x: x(commanded), y: y(springback) })),
    line: [onLine(ends[0]), onLine(ends[1])],
    across: across.ticks.map((value) => ({ at: x(value), value })),
    up: up.ticks.map((value) => ({ at: y(value), value })),
    frame,
  };
}
