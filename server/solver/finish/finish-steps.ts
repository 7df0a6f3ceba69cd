import type { Finish } from '../../job/finish.ts';
import type { FinishStep } from '../../plan/finish.ts';

type Surface = Finish['surface'];
type Treatment = Finish['treatment'];

/** The bead over the wall after it is knocked down [mm]; common practice, no source. */
export const KNOCKED_DOWN = { low: 0.1, high: 0.2 } as const;

const step = (key: string, gritFrom: number, gritTo = gritFrom): FinishStep => ({ key, gritFrom, gritTo });
/** A step without a grit has 0. */
const bare = (key: string): FinishStep => step(key, 0);

const BRUSH = step('brush', 120, 180);
const ALONG = step('satin-along', 240, 320);
const BUFF = [bare('sisal'), bare('cotton'), bare('wipe')];

/**
 * From a weld that is level under grit 120 to its surface; each grit crosses the scratches of the one before, and none
 * is skipped by more than 1.5 to 2 times: common practice, no source.
 */
const TO_SURFACE: Readonly<Record<Surface, readonly FinishStep[]>> = {
  'as-delivered': [step('cross', 180), step('match', 240)],
  brushed: [BRUSH],
  satin: [step('cross', 180), step('satin-round', 240, 320), ALONG],
  mirror: [
    step('cross', 180),
    step('cross', 240),
    step('cross', 320),
    step('cross', 400),
    step('cross', 600, 800),
    ...BUFF,
  ],
};

/** What blends in the tube beside a bead that stays: the last of its surface alone. */
const BESIDE_BEAD: Readonly<Record<Surface, readonly FinishStep[]>> = {
  'as-delivered': [],
  brushed: [BRUSH],
  satin: [ALONG],
  mirror: BUFF,
};

/** A weld that is ground level with the tube. */
export const isFlush = (treatment: Treatment): boolean => treatment === 'flush' || treatment === 'pit-free';

/** Grinding and polishing, coarse to fine, by how far a weld is taken and what it is blended into. */
export function finishSteps({ treatment, surface }: Pick<Finish, 'treatment' | 'surface'>): FinishStep[] {
  switch (treatment) {
    case 'none':
      return [];
    case 'colour':
      return [bare('colour'), ...BESIDE_BEAD[surface]];
    case 'ripple':
      return [bare('colour'), step('ripple', 120), ...TO_SURFACE[surface]];
    case 'flush':
    case 'pit-free':
      return [
        step('knock-down', 40, 60),
        step('flush', 80),
        ...(treatment === 'pit-free' ? [bare('pits')] : []),
        step('cross', 120),
        ...TO_SURFACE[surface],
      ];
  }
}
