import { planStrength } from '../../../server/solver/site/strength/plan-strength.ts';
import { carried, type Made } from './carried-frame.ts';

/** The strength of the carried frame and what is found in it. */
export const planned = (made: Made = {}) => planStrength(carried(made));
/** The force in the first leg under a step on the frame [N]. */
export const stepForce = (made: Made = {}) =>
  planned(made).strength.loads.find(({ key }) => key === 'boarding-step')!.legs[0]!.force;
/** The codes of what is found. */
export const codes = (made: Made = {}) => planned(made).findings.map(({ code }) => code);
