import type { View, ViewGas, ViewMember } from '../plan/view.ts';
import type { SetUp } from './set-up.ts';
import type { SheetInput } from './sheet-input.ts';
import { drawnLength } from './view-places.ts';

/** A view of a set-up: the frame that is welded, the tubes that are filled, and the ways of the gas in them. */
export type SetUpView = {
  readonly view: View;
  readonly layer: ViewGas['layer'];
  readonly filled: readonly ViewMember[];
  readonly others: readonly ViewMember[];
  readonly gas: readonly ViewGas[];
};

/** A second view stands beside the best one where that shows a tube shorter than this share of what another shows. */
const WELL_SEEN = 0.5;

/** A view seen along a main axis is taken before a pictorial one that shows no more than this much more. */
const CLEARLY_MORE = 1.15;

/** The frame that is welded: a new one, or the one that came back. */
function weldedLayer({ plan }: SheetInput, view: View): ViewGas['layer'] {
  const { correction } = plan;
  const isNew = correction === null || correction.chosen === 'new-frame';
  return !isNew && view.layers.some(({ role }) => role === 'came-back') ? 'came-back' : 'wanted';
}

/** A view as a set-up needs it. */
export function setUpView(view: View, { chambers }: SetUp, input: SheetInput): SetUpView {
  const gas = view.gas.filter((one) => chambers.some(({ number }) => number === one.chamber));
  const layer = gas[0]?.layer ?? weldedLayer(input, view);
  const members = view.layers.find(({ role }) => role === layer)?.members ?? [];
  const names = new Set(chambers.flatMap(({ stretches }) => stretches.map(({ member }) => member)));
  return {
    view,
    layer,
    filled: members.filter(({ member }) => names.has(member)),
    others: members.filter(({ member }) => !names.has(member)),
    gas,
  };
}

/** How much of a set-up's tubes a view shows: the length of the gas's ways on it, of the tubes where there are none [mm]. */
const shown = ({ gas, filled }: SetUpView): number =>
  gas.length > 0
    ? gas.reduce((sum, { line }) => sum + drawnLength(line), 0)
    : filled.reduce((sum, { centreline }) => sum + drawnLength(centreline), 0);

/** Whether a view shows one of the tubes much shorter than another view does. */
const hides = (one: SetUpView, all: readonly SetUpView[]): boolean =>
  one.filled.some(({ member, centreline }) => {
    const lengths = all.flatMap(({ filled }) => filled.filter((other) => other.member === member));
    const most = Math.max(...lengths.map((other) => drawnLength(other.centreline)));
    return drawnLength(centreline) < WELL_SEEN * most;
  });

/**
 * The view that shows most of a set-up's tubes; for a frame in space a second one where that hides much of them. The
 * pictorial view is no drawing to measure on, so it comes first only where no other shows nearly as much.
 */
export function viewsOf(setUp: SetUp, input: SheetInput): SetUpView[] {
  const drawn = input.plan.views.map((view) => setUpView(view, setUp, input));
  const flat = input.plan.frame?.planar === true ? drawn.filter(({ view }) => view.key === 'face') : [];
  const [only] = flat;
  if (only !== undefined) return [only];
  const weight = (one: SetUpView): number => shown(one) / (one.view.key === 'pictorial' ? CLEARLY_MORE : 1);
  const [best, ...rest] = drawn.toSorted((one, other) => weight(other) - weight(one));
  if (best === undefined) return [];
  const second = rest.find(({ view }) => view.key === 'pictorial') ?? rest[0];
  return second !== undefined && hides(best, drawn) ? [best, second] : [best];
}
