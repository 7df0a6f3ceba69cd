import type { Hoop } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { hoopFrame } from './hoop-frame.ts';
import type { HoopFailure } from './hoop-sizes.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';
import { above, atLeast, atMost, below, wayOut } from './way-out.ts';

/** A hoop drawn, or the stops that say which sizes do not go. */
export function expandHoop(hoop: Hoop, context: ShapeContext): DrawnFrame {
  const drawn = hoopFrame(hoop, context);
  if (!('failure' in drawn)) return { geometry: drawn, findings: [] };
  const failures = [drawn, ...(drawn.also ?? [])];
  return { geometry: null, findings: failures.map((failure) => asFinding(failure, hoop, context)) };
}

/** A failure's limits in the reference that its size was typed in: as far from it as they are centre to centre. */
function typedLimits(failure: HoopFailure, typed: number): { low?: number; high?: number } {
  const turned = (limit: number) => typed + (limit - failure.value);
  return {
    ...(failure.low === undefined ? {} : { low: turned(failure.low) }),
    ...(failure.high === undefined ? {} : { high: turned(failure.high) }),
  };
}

function asFinding(failure: HoopFailure, hoop: Hoop, context: ShapeContext): Finding {
  const typed = typedSize(hoop, failure.field);
  const field = `${context.root}/${failure.field}`;
  const data = { value: typed, ...typedLimits(failure, typed) };
  const mended = mend(failure, hoop, context);
  const most = failure.field === 'crossbar/radius' ? 1_000_000 : 20_000;
  return finding(failure.failure, 'stop', field, data, mended === null ? null : wayOut(field, mended, most));
}

/** How often a mended size may run into the next limit. */
const MOST_TRIES = 3;

/** The nearest easy value at which nothing is left to say against the size; null where there is none. */
function mend(failure: HoopFailure, hoop: Hoop, context: ShapeContext): number | null {
  const { field } = failure;
  let [at, tried]: [HoopFailure, Hoop] = [failure, hoop];
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const value = nearest(at, typedSize(tried, field));
    if (value === null) return null;
    tried = withSize(tried, field, value);
    const drawn = hoopFrame(tried, context);
    if (!('failure' in drawn)) return value;
    const again = [drawn, ...(drawn.also ?? [])].find((other) => other.field === field);
    if (again === undefined) return value;
    at = again;
  }
  return null;
}

/** Nearer to a limit than this a size stands on it [mm]; rounding. */
const ON_LIMIT = 1e-6;

/** The easy value just inside the limit that is passed. */
function nearest(failure: HoopFailure, typed: number): number | null {
  const { low = -Infinity, high = Infinity } = typedLimits(failure, typed);
  if (typed < low + ON_LIMIT) {
    const inside = typed < low - ON_LIMIT ? atLeast(low) : above(low);
    return inside > high ? null : inside;
  }
  if (typed > high - ON_LIMIT) {
    const inside = typed > high + ON_LIMIT ? atMost(high) : below(high);
    return inside < low ? null : inside;
  }
  return null;
}

const crossbarOf = (field: string): number => Number(/^innerCrossbars\/(\d+)\//.exec(field)?.[1] ?? Number.NaN);

/** A typed size by its field below the frame [mm]. */
function typedSize(hoop: Hoop, field: string): number {
  const sizes: Readonly<Record<string, number | undefined>> = {
    'width/value': hoop.width.value,
    'widthAtFeet/value': hoop.widthAtFeet?.value,
    'leftLeg/value': hoop.leftLeg.value,
    'rightLeg/value': hoop.rightLeg.value,
    'crossbar/radius': hoop.crossbar.form === 'crowned' ? hoop.crossbar.radius : undefined,
  };
  return sizes[field] ?? hoop.innerCrossbars[crossbarOf(field)]?.fromFoot.value ?? 0;
}

/** The hoop with one size typed anew. */
function withSize(hoop: Hoop, field: string, value: number): Hoop {
  switch (field) {
    case 'width/value':
      return { ...hoop, width: { ...hoop.width, value } };
    case 'widthAtFeet/value':
      return { ...hoop, widthAtFeet: hoop.widthAtFeet === null ? null : { ...hoop.widthAtFeet, value } };
    case 'leftLeg/value':
      return { ...hoop, leftLeg: { ...hoop.leftLeg, value } };
    case 'rightLeg/value':
      return { ...hoop, rightLeg: { ...hoop.rightLeg, value } };
    case 'crossbar/radius':
      return hoop.crossbar.form === 'straight' ? hoop : { ...hoop, crossbar: { ...hoop.crossbar, radius: value } };
    default:
      return {
        ...hoop,
        innerCrossbars: hoop.innerCrossbars.map((one, index) =>
          index === crossbarOf(field) ? { ...one, fromFoot: { ...one.fromFoot, value } } : one,
        ),
      };
  }
}
