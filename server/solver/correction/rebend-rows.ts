import type { Way } from '../../plan/correction.ts';
import type { Figure } from '../../plan/figure.ts';
import type { SetUp } from '../bending/set-up.ts';
import { band, figure, input } from '../figure.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { DEGREES } from '../geometry/angle.ts';
import type { BendTurn } from './rebend.ts';

/** The bends that are turned and the crowns that are rolled again, as the plan shows them. */
export const rebendRows = (
  actual: FrameGeometry,
  turns: readonly BendTurn[],
  { angleScatter }: Pick<SetUp, 'angleScatter'>,
): Way['rebends'] =>
  turns.flatMap(({ member, made, bend, piece, turn }) => {
    const arc = actual.members.find(({ name }) => name === member)?.centreline.pieces[piece];
    if (arc?.kind !== 'arc') return [];
    const [from, by] = [arc.angle * DEGREES, turn * DEGREES];
    const inputs = [input('θ', 'angle-as-it-came-back', from, 'deg'), input('δ', 'turn', by, 'deg')];
    const scatter = band(angleScatter, 'angle-scatter');
    const angle = (value: number, formula: string, off: typeof scatter | null): Figure =>
      figure(value, 'deg', formula, inputs, ['turns-fit', 'path-model'], off);
    const length = input('s', 'arc-length', arc.length, 'mm');
    const radius = (value: number, turned: number): Figure =>
      figure(value, 'mm', 'R = s / θ', [length, input('θ', 'angle', turned, 'deg')], ['geometry']);
    const rolled = made === 'rolled';
    return [
      {
        member,
        made,
        bend,
        turn: angle(by, 'δ', scatter),
        from: angle(from, 'θ', null),
        to: angle(from + by, 'θ + δ', scatter),
        radiusFrom: rolled ? radius(arc.radius, from) : null,
        radiusTo: rolled ? radius(arc.length / (arc.angle + turn), from + by) : null,
      },
    ];
  });
