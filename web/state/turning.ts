import type { FlatPoint } from '../../server/plan/view.ts';
import type { Size } from './screen.ts';
import { dragged, nearer, slid, type Viewpoint } from './viewpoint.ts';

/** A finger or the mouse has moved less than this [px]: it touched, it did not drag. */
const STILL = 5;

/** How much one notch of a wheel [px of scrolling] brings nearer: about a fifth for a notch of 100; our own choice. */
const WHEEL = 0.002;

type Place = { readonly at: FlatPoint; readonly slides: boolean };

/**
 * Fingers and mouse on the view in space: one turns it, two bring it nearer and move it, the mouse moves it with the
 * shift key or another button. Told in places of the picture [px], it answers with the viewpoint that follows.
 */
export class Turning {
  readonly #down = new Map<number, Place>();
  #way = 0;

  press(id: number, at: FlatPoint, slides: boolean): void {
    if (this.#down.size === 0) this.#way = 0;
    this.#down.set(id, { at, slides });
  }

  move(id: number, at: FlatPoint, from: Viewpoint, size: Size): Viewpoint {
    const before = this.#down.get(id);
    if (before === undefined) return from;
    const drag = { right: at[0] - before.at[0], down: at[1] - before.at[1] };
    this.#way += Math.hypot(drag.right, drag.down);
    const other = [...this.#down].find(([one]) => one !== id)?.[1];
    this.#down.set(id, { at, slides: before.slides });
    if (other !== undefined) return pinched(from, { before: before.at, at, other: other.at }, size);
    if (this.#way < STILL) return from;
    return before.slides ? slid(from, drag, size) : dragged(from, drag, size);
  }

  /** Lifts a finger; true where it only touched. */
  lift(id: number): boolean {
    const alone = this.#down.size === 1;
    return this.#down.delete(id) && alone && this.#way < STILL;
  }
}

/** Two fingers: nearer as they part, and along with the place between them. */
function pinched(
  from: Viewpoint,
  { before, at, other }: { before: FlatPoint; at: FlatPoint; other: FlatPoint },
  size: Size,
): Viewpoint {
  const apart = (one: FlatPoint): number => Math.max(1, Math.hypot(one[0] - other[0], one[1] - other[1]));
  const slidBy = { right: (at[0] - before[0]) / 2, down: (at[1] - before[1]) / 2 };
  const middle: FlatPoint = [(at[0] + other[0]) / 2, (at[1] + other[1]) / 2];
  return nearer(slid(from, slidBy, size), apart(at) / apart(before), shareOf(middle, size));
}

/** A place of the picture [px] as shares of its smaller side from its middle, right and up positive. */
function shareOf([x, y]: FlatPoint, { width, height }: Size): { right: number; up: number } {
  const across = Math.max(1, Math.min(width, height));
  return { right: (x - width / 2) / across, up: (height / 2 - y) / across };
}

/** The wheel over a place of the picture: what lies there stays there. */
export const wheeled = (from: Viewpoint, scrolled: number, at: FlatPoint, size: Size): Viewpoint =>
  nearer(from, Math.exp(-scrolled * WHEEL), shareOf(at, size));
