import type { Tube } from '../../job/tube.ts';
import type { BendRow } from '../../plan/bending.ts';
import { band, figure, input } from '../figure.ts';
import { flatteningGuidance, mandrelAdvice } from './forming.ts';
import type { PlannedArc } from './planned-arc.ts';
import { outerElongation, wallInside, wallOutside, wallShared } from './wall.ts';

/** What forming does to the tube at one arc, on the die (where the radius is smaller than after release). */
export function formingFigures(
  arc: PlannedArc,
  { tube }: { readonly tube: Tube },
): Pick<BendRow, 'elongation' | 'wallOutside' | 'wallInside' | 'flatteningGuidance' | 'mandrel'> {
  const { outsideDiameter, wall } = tube;
  const bent = { outsideDiameter, wall, radius: arc.dieRadius };
  const inputs = [input('D', 'outside-diameter', outsideDiameter, 'mm'), input('R', 'die-radius', arc.dieRadius, 'mm')];
  const wallInput = input('t', 'wall', wall, 'mm');
  const outer = wallOutside(bent);
  const inner = wallInside(bent);
  const ratio = arc.dieRadius / outsideDiameter;
  return {
    elongation: figure(outerElongation(bent) * 100, 'percent', 'x = 100 D / (2 R)', inputs, ['geometry']),
    wallOutside: figure(
      outer,
      'mm',
      't_o = t R / (R + D / 2)',
      [wallInput, ...inputs],
      ['bend-wall'],
      band(wallShared(bent, 'outside') - outer, 'bend-wall-model'),
    ),
    wallInside: figure(
      inner,
      'mm',
      't_i = t R / (R − D / 2)',
      [wallInput, ...inputs],
      ['bend-wall'],
      band(inner - wallShared(bent, 'inside'), 'bend-wall-model'),
    ),
    flatteningGuidance: figure(flatteningGuidance(ratio), 'percent', ratio <= 4 ? 'f = 20 D / R' : 'f = 5', inputs, [
      'u-tube-flattening',
    ]),
    mandrel:
      arc.piece.made === 'rolled'
        ? 'not-needed'
        : mandrelAdvice({ wallFactor: outsideDiameter / wall, bendRatio: ratio }),
  };
}
