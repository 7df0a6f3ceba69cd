import type { Finding } from '../../plan/finding.ts';
import { finding } from '../finding.ts';
import type { PurgeContext } from './purge-context.ts';

/** Targets that colour charts go by [ppm]. */
const USUAL_TARGETS = [20, 50, 100, 500, 1000] as const;
/** Most oxygen while the weld is hot [ppm]: near the sea, ASSDA 2010 after AWS D18.1 and AS/NZS 1554.6; else common practice, no source. */
const MOST = { nearSea: 50, elsewhere: 1000 } as const;
const FIELD = '/purge/targetOxygen';

/** The next usual target over the oxygen of the gas, up to a limit; undefined where only a purer gas helps. */
const usualOver = (supply: number, most: number): number | undefined =>
  USUAL_TARGETS.find((usual) => usual > supply && usual <= most);

/** A target that the gas itself does not reach; the way out is the next usual target that it does. */
export function targetBelowGas(target: number, supply: number): Finding | null {
  if (target > supply) return null;
  const next = usualOver(supply, MOST.elsewhere);
  const data = { value: target, low: supply, ...(next === undefined ? {} : { next }) };
  return finding('target-below-gas', 'stop', FIELD, data, next === undefined ? null : { field: FIELD, value: next });
}

/** A target at which the root comes out dark, or would not last near the sea. */
export function targetHigh({ purge, job, filling }: PurgeContext): Finding[] {
  const { nearSea } = job.finish;
  const high = nearSea ? MOST.nearSea : MOST.elsewhere;
  if (purge.targetOxygen <= high || filling === null) return [];
  const usual = MOST.nearSea > filling.step.supply ? MOST.nearSea : usualOver(filling.step.supply, high);
  const wayOut = usual === undefined ? null : { field: FIELD, value: usual };
  const data = { value: purge.targetOxygen, high, ...(nearSea ? { sea: MOST.nearSea } : {}) };
  return [finding('target-high', 'caution', FIELD, data, wayOut)];
}
