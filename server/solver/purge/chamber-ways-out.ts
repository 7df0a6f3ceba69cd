import type { Purge } from '../../job/purge.ts';
import type { Finding, FindingCode } from '../../plan/finding.ts';
import { chamberFlows, type ChamberFlow } from './chamber-flow.ts';
import { lookedAt, passingTroubles, troublesOf } from './chamber-troubles.ts';
import { purgeContext, type PurgeContext } from './purge-context.ts';

/** A change of one field of the purge that may help. */
type Change = { readonly wayOut: NonNullable<Finding['wayOut']>; readonly purge: Purge };

/**
 * What is wrong with the chambers of a job, each with the first change that mends it there and makes it worse nowhere,
 * by trying it out.
 *
 * @param troubles findings of each chamber, in their order
 */
export function withWaysOut(
  chambers: readonly ChamberFlow[],
  troubles: readonly (readonly Finding[])[],
  context: PurgeContext,
): Finding[] {
  const all = troubles.flat();
  // one change may mend many chambers: it is tried once
  const tried = new Map<string, Tried>();
  const tryOut = (change: Change): Tried => {
    const key = JSON.stringify(change.wayOut);
    const known = tried.get(key) ?? triedOut(change, context);
    tried.set(key, known);
    return known;
  };
  return chambers.flatMap((chamber, index) =>
    (troubles[index] ?? []).map((found): Finding => {
      const before = all.filter(({ code }) => code === found.code).length;
      const change = changesFor(found.code, chamber, context).find((one) =>
        mends(tryOut(one), found.code, chamber, before),
      );
      return change === undefined ? found : { ...found, wayOut: change.wayOut };
    }),
  );
}

function changesFor(code: FindingCode, { feed, vents }: ChamberFlow, { purge, typed, bore }: PurgeContext): Change[] {
  const drilled: Change = {
    wayOut: { field: '/purge/holes/underSaddles', value: 'all' },
    purge: { ...purge, holes: { ...purge.holes, underSaddles: 'all' } },
  };
  const whole: Change = {
    wayOut: { field: '/purge/extent', value: 'whole-frame' },
    purge: { ...purge, extent: 'whole-frame' },
  };
  switch (code) {
    case 'closed-chamber':
    case 'closed-by-weld':
    case 'one-opening':
    case 'weld-in-dead-leg':
      return [...(purge.holes.underSaddles === 'none' ? [drilled] : []), ...(purge.extent === 'dams' ? [whole] : [])];
    case 'fed-high': {
      const own = (which: 'feed' | 'vent'): Change => ({
        wayOut: { field: `/purge/${which}`, value: null },
        purge: { ...purge, [which]: null },
      });
      return [
        ...(feed !== null && feed === typed.feed ? [own('feed')] : []),
        ...(vents.some((one) => one === typed.vent) ? [own('vent')] : []),
      ];
    }
    case 'bore-by-vent-holes':
      return widerHoles(purge.holes.bore, bore).map((wide) => ({
        wayOut: { field: '/purge/holes/bore', value: wide },
        purge: { ...purge, holes: { ...purge.holes, bore: wide } },
      }));
    default:
      return [];
  }
}

/** How much wider the holes are tried each time; our own choice. */
const WIDER = 1.25;
/** A hole is drilled no wider than this share of the bore, so that the saddle covers it; our own choice. */
const WIDEST = 0.9;

/** Whole millimetres in steps of a quarter, up to what the branch still covers. */
function widerHoles(hole: number, bore: number): number[] {
  const widths: number[] = [];
  for (let width = Math.ceil(WIDER * hole); width <= WIDEST * bore; width = Math.ceil(WIDER * width))
    widths.push(width);
  return widths;
}

/** What is still wrong with each chamber once a change is made: codes of what is found there. */
type Tried = readonly { readonly chamber: ChamberFlow; readonly codes: readonly FindingCode[] }[];

function triedOut({ purge }: Change, { job, frame, welds }: PurgeContext): Tried {
  const changed = purgeContext({ ...job, purge }, frame, welds);
  const { filling } = changed;
  return chamberFlows(changed, purge.extent).map((chamber) => {
    const found =
      filling === null
        ? passingTroubles(chamber, changed)
        : troublesOf(lookedAt(chamber, changed, filling), changed, filling);
    return { chamber, codes: found.map(({ code }) => code) };
  });
}

/** Whether no chamber that shares a bore with this one has that finding any more, and fewer have it in all. */
function mends(tried: Tried, code: FindingCode, chamber: ChamberFlow, before: number): boolean {
  const isSame = (other: ChamberFlow): boolean =>
    other.bores.some(({ member }) => chamber.bores.some((bore) => bore.member === member));
  let left = 0;
  for (const other of tried) {
    const count = other.codes.filter((one) => one === code).length;
    if (count > 0 && isSame(other.chamber)) return false;
    left += count;
  }
  return left < before;
}
