import type { Hoop } from '../../job/frame.ts';
import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import { hoopFrame } from './hoop-frame.ts';
import type { HoopFailure } from './hoop-sizes.ts';
import type { DrawnFrame, ShapeContext } from './shape-context.ts';
import { above, atLeast, atMost, wayOut } from './way-out.ts';

/** A hoop drawn, or the stop that says which size does not go. */
export function expandHoop(hoop: Hoop, context: ShapeContext): DrawnFrame {
  const drawn = hoopFrame(hoop, context);
  if (!('failure' in drawn)) return { geometry: drawn, findings: [] };
  return { geometry: null, findings: [asFinding(drawn, hoop, context.root)] };
}

/** Limits in the reference that the size was typed in: as far from the typed value as from the centre size. */
function asFinding(failure: HoopFailure, hoop: Hoop, root: string): Finding {
  const typed = typedValue(hoop, failure.field) ?? failure.value;
  const turned = (limit: number) => typed + (limit - failure.value);
  const low = failure.low === undefined ? undefined : turned(failure.low);
  const high = failure.high === undefined ? undefined : turned(failure.high);
  const field = `${root}/${failure.field}`;
  const data = { value: typed, ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
  return finding(failure.failure, 'stop', field, data, mended(failure, { field, typed, low, high }));
}

/** The nearest value inside the limits. */
function mended(
  failure: HoopFailure,
  at: { field: string; typed: number; low: number | undefined; high: number | undefined },
): Finding['wayOut'] {
  if (at.low !== undefined && at.high !== undefined && atLeast(at.low) > atMost(at.high)) return null;
  if (at.low !== undefined && at.typed <= at.low) {
    const open = failure.failure === 'width-under-tube' || failure.failure === 'leg-short-for-bend';
    return wayOut(at.field, open ? above(at.low) : atLeast(at.low), mostOf(failure));
  }
  return at.high === undefined ? null : wayOut(at.field, atMost(at.high), mostOf(failure));
}

/** The largest value that the field takes [mm]: as in the Job's schema. */
const mostOf = (failure: HoopFailure): number => (failure.failure === 'crown-radius-too-small' ? 1_000_000 : 20_000);

function typedValue(hoop: Hoop, field: string): number | undefined {
  const index = /^innerCrossbars\/(\d+)\//.exec(field)?.[1];
  if (index !== undefined) return hoop.innerCrossbars[Number(index)]?.fromFoot.value;
  const radius = hoop.crossbar.form === 'crowned' ? hoop.crossbar.radius : undefined;
  const sizes: Readonly<Record<string, number | undefined>> = {
    'width/value': hoop.width.value,
    'widthAtFeet/value': hoop.widthAtFeet?.value,
    'leftLeg/value': hoop.leftLeg.value,
    'rightLeg/value': hoop.rightLeg.value,
    'crossbar/radius': radius,
  };
  return sizes[field];
}
