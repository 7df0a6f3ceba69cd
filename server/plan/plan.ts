import { Type, type Static } from 'typebox';
import { SpringbackPlan, TubePlan } from './bending.ts';
import { CorrectionPlan } from './correction.ts';
import { FinishPlan } from './finish.ts';
import { Finding } from './finding.ts';
import { FramePlan } from './frame.ts';
import { PurgePlan } from './purge.ts';
import { QuotePlan } from './quote.ts';
import { SitePlan } from './site.ts';
import { StockPlan } from './stock.ts';
import { View } from './view.ts';
import { WeldingPlan } from './welding.ts';

/**
 * Everything that can be said about one Job. Parts that the job does not allow (a wall over half the diameter,
 * a leg too short for its bend) are null, and a finding of grade stop says why. Figures are in millimetres,
 * degrees, litres, pascals, seconds; the unit stands in each.
 */
export const Plan = Type.Object({
  version: Type.Literal(1),
  findings: Type.Array(Finding),
  tube: Type.Union([TubePlan, Type.Null()]),
  springback: Type.Union([SpringbackPlan, Type.Null()]),
  frame: Type.Union([FramePlan, Type.Null()]),
  correction: Type.Union([CorrectionPlan, Type.Null()]),
  purge: Type.Union([PurgePlan, Type.Null()]),
  welding: Type.Union([WeldingPlan, Type.Null()]),
  finish: Type.Union([FinishPlan, Type.Null()]),
  site: Type.Union([SitePlan, Type.Null()]),
  stock: Type.Union([StockPlan, Type.Null()]),
  quote: Type.Union([QuotePlan, Type.Null()]),
  views: Type.Array(View),
});
export type Plan = Static<typeof Plan>;
