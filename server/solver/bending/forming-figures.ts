import type { Tube } from '../../job/tube.ts';
import type { BendRow } from '../../plan/bending.ts';
import { band, figure, input } from '../figure.ts';
import { flatteningGuidance, mandrelAdvice } from './forming.ts';
import type { PlannedArc, TubeDoubt } from './planned-arc.ts';
import { outerElongation, wallInside, wallOutside, wallShared } from './wall.ts';

/** What forming does to the tube at one arc, on the die (where the radius is smaller than after release). */
export function formingFigures(
  arc: PlannedArc,
  { tube, tolerance }: { readonly tube: Tube; readonly tolerance: TubeDoubt },
): Pick<BendRow, 'bendRatio' | 'elongation' | 'wallOutside' | 'wallInside' | 'flatteningGuidance' | 'mandrel'> {
  const { outsideDiameter, wall } = tube;
  const bent = { outsideDiameter, wall, radius: arc.dieRadius };
  const inputs = [input('D', 'outside-diameter', outsideDiameter, 'mm'), input('R', 'die-radius', arc.dieRadius, 'mm')];
  const wallInput = input('t', 'wall', wall, 'mm');
  const outer = wallOutside(bent);
  const inner = wallInside(bent);
  const ratio = arc.dieRadius / outsideDiameter;
  // x and f go with D, the wall with t
  const ofDiameter = (value: number) =>
    tolerance === null ? null : band((value * tolerance.outsideDiameter) / outsideDiameter, 'tube-tolerance');
  const ofWall = (value: number, model: number) =>
    tolerance === null
      ? band(model, 'bend-wall-model')
      : band(Math.hypot(model, (value * tolerance.wall) / wall), 'bend-wall-model', 'tube-tolerance');
  const elongation = outerElongation(bent) * 100;
  const flattening = flatteningGuidance(ratio);
  return {
    bendRatio: figure(ratio, 'ratio', 'k = R / D', inputs, ['geometry'], ofDiameter(ratio)),
    elongation: figure(elongation, 'percent', 'x = 100 D / (2 R)', inputs, ['geometry'], ofDiameter(elongation)),
    wallOutside: figure(
      outer,
      'mm',
      't_o = t R / (R + D / 2)',
      [wallInput, ...inputs],
      ['bend-wall'],
      ofWall(outer, wallShared(bent, 'outside') - outer),
    ),
    wallInside: figure(
      inner,
      'mm',
      't_i = t R / (R − D / 2)',
      [wallInput, ...inputs],
      ['bend-wall'],
      ofWall(inner, inner - wallShared(bent, 'inside')),
    ),
    flatteningGuidance: figure(
      flattening,
      'percent',
      ratio <= 4 ? 'f = 20 D / R' : 'f = 5',
      inputs,
      ['u-tube-flattening'],
      ratio <= 4 ? ofDiameter(flattening) : null,
    ),
    mandrel:
      arc.piece.made === 'rolled'
        ? 'not-needed'
        : mandrelAdvice({ wallFactor: outsideDiameter / wall, bendRatio: ratio }),
  };
}
