import type { Finish } from '../../job/finish.ts';
import type { WeldForm } from '../../job/welding.ts';
import type { FinishStep } from '../../plan/finish.ts';

type Surface = Finish['surface'];
type Treatment = Finish['treatment'];

/** The bead over the wall after it is knocked down [mm]; common practice, no source. */
export const KNOCKED_DOWN = { low: 0.1, high: 0.2 } as const;

type Step = Omit<FinishStep, 'welds'>;

const step = (key: string, gritFrom: number, gritTo = gritFrom): Step => ({ key, gritFrom, gritTo });
/** A step without a grit has 0. */
const bare = (key: string): Step => step(key, 0);

const BRUSH = step('brush', 120, 180);
const ALONG = step('satin-along', 240, 320);
const BUFF = [bare('sisal'), bare('cotton'), bare('wipe')];

/**
 * From a weld that is level under grit 120 to its surface; each grit crosses the scratches of the one before, and none
 * is skipped by more than 1.5 to 2 times: common practice, no source.
 */
const TO_SURFACE: Readonly<Record<Surface, readonly Step[]>> = {
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
const BESIDE_BEAD: Readonly<Record<Surface, readonly Step[]>> = {
  'as-delivered': [],
  brushed: [BRUSH],
  satin: [ALONG],
  mirror: BUFF,
};

/** Whether welds round a tube are ground level with it. */
export const isFlush = (treatment: Treatment): boolean => treatment === 'flush' || treatment === 'pit-free';

/** Steps that belts and discs do along and round a tube: in a corner they are done by hand, in whatever way gets there. */
const BY_HAND: readonly string[] = ['cross', 'brush', 'satin-round'];

/**
 * The bead in the corner of a saddle or a pad is dressed and stays: nothing there can be level with a tube. The grits of
 * the surface are kept; that they hold by hand is our own choice.
 */
const inCorner = (surface: Surface): Step[] =>
  TO_SURFACE[surface].flatMap((one) => {
    if (one === ALONG) return [];
    return [BY_HAND.includes(one.key) ? { ...one, key: 'corner' } : one];
  });

/** Of a weld round a tube. */
function buttSteps({ treatment, surface }: Pick<Finish, 'treatment' | 'surface'>): Step[] {
  if (!isFlush(treatment)) return [bare('colour'), step('ripple', 120), ...TO_SURFACE[surface]];
  return [
    step('knock-down', 40, 60),
    step('flush', 80),
    ...(treatment === 'pit-free' ? [bare('pits')] : []),
    step('cross', 120),
    ...TO_SURFACE[surface],
  ];
}

/** Of a weld in a corner, dressed alike whether the others are ground flush or not. */
const cornerSteps = ({ treatment, surface }: Pick<Finish, 'treatment' | 'surface'>): Step[] => [
  bare('colour'),
  ...(treatment === 'pit-free' ? [bare('corner-pits')] : []),
  step('ripple', 120),
  ...inCorner(surface),
];

/** Which kinds of weld there are: round a tube, and in the corner of a saddle or a pad. */
export type WeldKinds = { readonly butts: boolean; readonly corners: boolean };

export const weldKinds = (welds: readonly { readonly site: { readonly form: WeldForm } }[]): WeldKinds => ({
  butts: welds.some(({ site }) => site.form === 'butt'),
  corners: welds.some(({ site }) => site.form !== 'butt'),
});

/** Grinding and polishing, coarse to fine, by how far a weld is taken, what it is blended into, and where it is. */
export function finishSteps(
  finish: Pick<Finish, 'treatment' | 'surface'>,
  { butts, corners }: WeldKinds,
): FinishStep[] {
  const { treatment, surface } = finish;
  const both = butts && corners;
  const of = (steps: readonly Step[], welds: FinishStep['welds']): FinishStep[] =>
    steps.map((one) => ({ ...one, welds: both ? welds : 'all' }));
  if (treatment === 'none') return [];
  if (treatment === 'colour') return of([bare('colour'), ...BESIDE_BEAD[surface]], 'all');
  return [...(butts ? of(buttSteps(finish), 'butts') : []), ...(corners ? of(cornerSteps(finish), 'corners') : [])];
}
