import type { Job } from '../../job/job.ts';
import type { Grade } from '../../job/tube.ts';
import { SHRINKAGE_DOUBT } from '../correction/weld-limits.ts';
import { AUSTENITIC, DUPLEX, type HeatProperties } from '../tube/heat-properties.ts';
import { isDuplex } from './filler.ts';
import { weldSetting } from './settings.ts';
import { fusedArea } from './weld-section.ts';

/** Stainless over carbon steel in published forms: Capel's 22.7 over 17.4, from memory. */
export const STAINLESS = 1.3;
/** More is never reckoned than can be typed [mm]. */
export const MOST = 10;

/** Shrinkage across a wall that one run heats through [mm], S = (α/ρc) H/t: heat [J/mm], wall [mm]. Okerblom's form. */
export const heatShrinkage = (
  heat: number,
  wall: number,
  { growth, heatCapacity }: HeatProperties = AUSTENITIC,
): number =>
  // 10⁹ mm³ in a m³
  (1e9 * growth * heat) / (heatCapacity * wall);

/** Published form for carbon steel [mm]: 0.2 Aw/t + 0.05 d, weld metal [mm²], wall and opening [mm]. AWS, from memory. */
export const awsShrinkage = (weld: { readonly area: number; readonly wall: number; readonly gap: number }): number =>
  (0.2 * weld.area) / weld.wall + 0.05 * weld.gap;

/** Published lower bound [mm]: 0.10 Aw/t, a tenth of the mean width. Blodgett. */
export const blodgettShrinkage = (weld: { readonly area: number; readonly wall: number }): number =>
  (0.1 * weld.area) / weld.wall;

/**
 * What a gap adds [mm]. It closes first, by nothing at least and by itself at most; the published form has
 * (0.2 + 0.05) × 1.3 of it. The cut already takes a gap out of the tube and gives the shrinkage back (g − s), so this
 * is only by how much the faces come nearer than they were tacked: nothing is counted twice.
 */
export const gapShrinkage = (gap: number): number => STAINLESS * (0.2 + 0.05) * gap;

/** Shrinkage of a butt as it is reckoned, its ± and what it is made of [mm]. */
export type ReckonedShrinkage = {
  readonly value: number;
  readonly plusMinus: number;
  readonly heat: number;
  readonly wall: number;
  readonly gap: number;
  readonly expansion: HeatProperties;
};

/**
 * What one butt pulls in, from its heat and its gap. Of several runs the heat of one is taken: the later ones find the
 * wall held by the first. The band is half of it, or as far as the published forms and a gap that closes wholly are.
 */
export function reckonedShrinkage(work: {
  readonly heat: number;
  readonly wall: number;
  readonly gap: number;
  /** Metal that pulls [mm²]. */
  readonly area: number;
  readonly grade: Grade;
}): ReckonedShrinkage {
  const { heat, wall, gap, area } = work;
  const expansion = isDuplex(work.grade) ? DUPLEX : AUSTENITIC;
  const ofHeat = heatShrinkage(heat, wall, expansion);
  const value = Math.min(MOST, ofHeat + gapShrinkage(gap));
  const others = [STAINLESS * awsShrinkage({ area, wall, gap }), blodgettShrinkage({ area, wall }), ofHeat + gap];
  const furthest = Math.max(...others.map((other) => Math.abs(Math.min(MOST, other) - value)));
  return { value, plusMinus: Math.max(SHRINKAGE_DOUBT * value, furthest), heat, wall, gap, expansion };
}

/** Shrinkage of the job's butts as reckoned. */
export function shrinkageOf({ welding, tube, closing }: Pick<Job, 'welding' | 'tube' | 'closing'>): ReckonedShrinkage {
  const { wall, grade } = tube;
  const { gap } = closing;
  const { heat, preparation } = weldSetting('butt', { welding, tube, gap });
  const area = fusedArea({ wall, gap, preparation, groove: welding.groove });
  return reckonedShrinkage({ heat, wall, gap, area, grade });
}

/** What one butt pulls in [mm]: typed, or reckoned where nothing is. */
export const settledShrinkage = (job: Pick<Job, 'welding' | 'tube' | 'closing'>): number =>
  job.closing.shrinkage ?? shrinkageOf(job).value;

/** What a saddle pulls its branch in [mm]: TWI's 0.8 mm of a fillet; ± half, and used beyond its leg of 3/4 t. */
export const SADDLE_SHRINKAGE = { value: 0.8, plusMinus: 0.4 } as const;
