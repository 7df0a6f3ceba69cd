import type { Band, Figure, WorkingInput } from '../../plan/figure.ts';
import type { Procedure } from '../../plan/welding.ts';
import { band, figure, input } from '../figure.ts';
import type { SettingWork, WeldSetting } from './settings.ts';
import { beadOn, beadShare, OVER } from './weld-section.ts';

/** The bead's size is a guess by half either way; our own judgement. */
const BEAD_DOUBT = 0.5;

/** The ± of what is as uncertain as the bead's size. */
export const beadDoubt = (value: number): Band | null => (value > 0 ? band(BEAD_DOUBT * value, 'bead-size') : null);

/** Area of the metal that is fed, and the leg of a fillet. */
export function sectionFigures(
  setting: WeldSetting,
  { welding, tube, gap }: SettingWork,
): Pick<Procedure, 'area' | 'leg'> {
  const { area, leg, preparation, process } = setting;
  const thickness = input('t', 'wall', tube.wall, 'mm');
  if (process === '142') return { area: figure(0, 'mm2', 'A = 0', [], ['geometry']), leg: null };
  if (leg !== null)
    return {
      area: figure(area, 'mm2', 'A = z²/2', [input('z', 'fillet-leg', leg, 'mm')], ['full-throat'], beadDoubt(area)),
      leg: figure(leg, 'mm', 'z = √2 t', [thickness], ['full-throat'], beadDoubt(leg)),
    };
  const { cap, root } = beadOn(tube.wall);
  const opening = input('b', 'gap', gap, 'mm');
  const crowns = [
    input('h_c', 'cap-height', cap.height, 'mm'),
    input('w_r', 'root-width', root.width, 'mm'),
    input('h_r', 'root-height', root.height, 'mm'),
  ];
  const ofBevel = [
    input('c', 'land', Math.min(welding.groove.land, tube.wall), 'mm'),
    input('β', 'bevel-of-each-side', welding.groove.angle, 'deg'),
    input('o', 'cap-over-each-edge', OVER * beadShare(tube.wall), 'mm'),
  ];
  const bead = (formula: string, inputs: readonly WorkingInput[]): Figure =>
    figure(
      area,
      'mm2',
      formula,
      [opening, thickness, ...inputs, ...crowns],
      ['weld-metal', 'bead-size'],
      beadDoubt(area),
    );
  return {
    area:
      preparation === 'bevel'
        ? bead('A = b t + (t − c)² tan β + ⅔ ((b + 2 (t − c) tan β + 2 o) h_c + w_r h_r)', ofBevel)
        : bead('A = b t + ⅔ (w_c h_c + w_r h_r)', [input('w_c', 'cap-width', cap.width, 'mm')]),
    leg: null,
  };
}
