import type { FlatPoint, View, ViewMark } from '../../server/plan/view.ts';
import type { Handle } from './joint-handles.ts';
import { onScreen, type Screen } from './screen.ts';
import { uncrowded, type Label } from './uncrowded.ts';

/** What belongs to the gas rather than to the frame. */
const OF_GAS: readonly ViewMark['kind'][] = ['feed', 'vent', 'dam', 'plug'];

/** Round the number of a joint, and round one that can be moved along its tube [px]. */
const RING = { weld: 12, handle: 22 };

/** How far from its end the name of a saddle's or a pad's weld stands [px]. */
const BESIDE = 24;

/**
 * Where the name of a weld stands on the screen: on its tube, or, where that ends on another tube or a plate, beside it
 * to the side that the plan says.
 */
export function weldPlace({ label, at, towards }: ViewMark, screen: Screen): FlatPoint {
  const [x, y] = onScreen(at, screen);
  return /^[SP]/.test(label) ? [x + towards[0] * BESIDE, y - towards[1] * BESIDE] : [x, y];
}

/** A label on the screen, and the mark that it is of; null for a joint that can be moved, which draws itself. */
type MarkLabel = Label & { readonly mark: ViewMark | null };

/**
 * The marks of a view that are drawn. Gas and the welds that nobody can move are drawn where they are asked for; names
 * of welds that would lie on each other, or on a joint that can be moved, are left out until the picture is larger.
 */
export function drawnMarks(
  view: View,
  screen: Screen,
  { handles, welding }: { readonly handles: readonly Handle[]; readonly welding: boolean },
): readonly ViewMark[] {
  const welds = view.marks.filter(({ kind }) => kind === 'joint');
  const held: MarkLabel[] = handles.map(({ joint, mark }) => ({
    text: String(joint.number),
    at: onScreen(mark.at, screen),
    ring: RING.handle,
    mark: null,
  }));
  const movable = new Set(handles.map(({ joint }) => String(joint.number)));
  const names = welds
    .filter(({ label, layer }) => !movable.has(label) && (welding || layer === 'corrected'))
    .map((mark): MarkLabel => ({ text: mark.label, at: weldPlace(mark, screen), ring: RING.weld, mark }));
  const shown = uncrowded([...held, ...names]).flatMap(({ mark }) => mark ?? []);
  const others = view.marks.filter(({ kind }) => kind !== 'joint' && (welding || !OF_GAS.includes(kind)));
  return [...others, ...shown];
}
