import { planStrength } from '../../../server/solver/site/strength/plan-strength.ts';
import { carried, type Made } from './carried-frame.ts';

/** The strength of the carried frame and what is found in it. */
export const planned = (made: Made = {}) => planStrength(carried(made));
/** The codes of what is found. */
export const codes = (made: Made = {}) => planned(made).findings.map(({ code }) => code);
