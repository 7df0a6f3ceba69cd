import type { Band, Figure, WorkingInput } from '../../plan/figure.ts';
import type { PurgePlan } from '../../plan/purge.ts';
import type { Purge } from '../../job/purge.ts';
import { band, figure, input } from '../figure.ts';
import { FLOOR_DOUBT, floorTime, OPERATING_FACTOR } from '../welding/operating-factor.ts';
import { FORMS, weldSetting } from '../welding/settings.ts';
import { STARTS } from '../welding/weld-work.ts';
import { FORM_SIGNS } from '../welding/welding-totals.ts';
import type { PurgeContext } from './purge-context.ts';
import type { PurgeWork } from './purge-work.ts';

/** How much of the time of welding an arc burns, as it goes into a formula. */
export const FACTOR = input('f', 'operating-factor', OPERATING_FACTOR.middle, 'ratio');

/** The ± of what goes on while somebody welds, by how much of that time an arc burns. */
export const floorBand = (floorPart: number): Band | null =>
  floorPart > 0 ? band(FLOOR_DOUBT * floorPart, 'operating-factor') : null;

/** Chambers filled at the pre-purge flow, and those that are full first kept at the welding flow. */
const BEFORE = 'Q_p P + Q_w D';

const beforeInputs = ({ prePurgeFlow, weldingFlow }: Purge, { filling, ready }: PurgeWork): WorkingInput[] => [
  input('Q_p', 'pre-purge-flow', prePurgeFlow, 'L/min'),
  input('P', 'filling-of-all-chambers', filling, 's'),
  input('Q_w', 'welding-flow', weldingFlow, 'L/min'),
  input('D', 'turned-down-until-the-others-of-a-set-up-are-full', ready, 's'),
];

/** Purge gas until the last chamber of each set-up is full. */
export const gasBeforeFigure = (purge: Purge, work: PurgeWork): Figure =>
  figure(work.gasBefore, 'L', `V_pre = (${BEFORE})/60`, beforeInputs(purge, work), ['gas-network', 'typed']);

/** Purge gas of all set-ups: every chamber is kept at the welding flow through all welding of its set-up and the hold. */
export const purgeGasFigure = (purge: Purge, work: PurgeWork): Figure =>
  figure(
    work.purgeGas,
    'L',
    `V_p = (${BEFORE} + Q_w (A/f + N h))/60`,
    [
      ...beforeInputs(purge, work),
      input('A', 'arc-time-for-each-chamber-kept-full', work.arcsPurged, 's'),
      FACTOR,
      input('N', 'chambers', work.chambers, 'count'),
      input('h', 'hold', work.hold, 's'),
    ],
    ['gas-network', 'operating-factor', 'typed'],
    weldingBand(purge, work),
  );

const weldingBand = ({ weldingFlow }: Purge, { arcsPurged }: PurgeWork): Band | null =>
  floorBand((weldingFlow * floorTime(arcsPurged)) / 60);

/** Gas of the purge, of the torch, and of the job. */
export const gasFigures = (
  context: PurgeContext,
  work: PurgeWork,
): Pick<PurgePlan, 'purgeGas' | 'torchGas' | 'jobGas'> => ({
  purgeGas: purgeGasFigure(context.purge, work),
  torchGas: torchGasFigure(context, work),
  jobGas: figure(
    work.jobGas,
    'L',
    'V = V_p + V_t',
    [input('V_p', 'purge-gas', work.purgeGas, 'L'), input('V_t', 'torch-gas', work.torchGas, 'L')],
    ['geometry'],
    weldingBand(context.purge, work),
  ),
});

/** Gas of the torch, form by form: it flows while the arc burns, and before and after it at each start. */
function torchGasFigure({ job, welds }: PurgeContext, { torchGas }: PurgeWork): Figure {
  const forms = FORMS.filter((form) => welds.some(({ site }) => site.form === form));
  const starts = input('k', 'starts-of-a-run', STARTS, 'count');
  const parts = forms.map((form) => {
    const own = welds.filter(({ site }) => site.form === form);
    const { torchFlow, runs, preFlow, postFlow } = weldSetting(form, {
      welding: job.welding,
      tube: job.tube,
      gap: job.closing.gap,
    });
    const sign = FORM_SIGNS[form];
    const of = (symbol: string, name: string, value: number, unit: WorkingInput['unit']): WorkingInput =>
      input(symbol + sign, `${name}-of-${form}-welds`, value, unit);
    return {
      formula: `Q${sign} (T${sign} + k n${sign} r${sign} (t₁${sign} + t₂${sign}))`,
      inputs: [
        of('Q', 'torch-flow', torchFlow, 'L/min'),
        of(
          'T',
          'arc-time',
          own.reduce((sum, { arcTime }) => sum + arcTime, 0),
          's',
        ),
        of('n', 'number', own.length, 'count'),
        of('r', 'runs', runs, 'count'),
        of('t₁', 'gas-before-the-arc', preFlow, 's'),
        of('t₂', 'gas-after-the-arc', postFlow, 's'),
      ],
    };
  });
  return figure(
    torchGas,
    'L',
    `V_t = (${parts.map(({ formula }) => formula).join(' + ')})/60`,
    [starts, ...parts.flatMap(({ inputs }) => inputs)],
    ['arc-starts', 'geometry', 'typed'],
  );
}
