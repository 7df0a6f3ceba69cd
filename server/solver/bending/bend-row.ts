import type { BendRow } from '../../plan/bending.ts';
import type { Band, Figure } from '../../plan/figure.ts';
import { band, figure, input } from '../figure.ts';
import { DEGREES } from '../geometry/angle.ts';
import { cornerTangent, hasCorner, tangentLength } from '../geometry/bend-table.ts';
import { formingFigures } from './forming-figures.ts';
import { radiusBand, setbackFactor, withTape, type BendContext, type PlannedArc } from './planned-arc.ts';
import type { SpringbackLaw } from './springback-law.ts';

/** One row of the bend table. `before` is the arc before it; `check` is made by the caller, who sees the neighbours. */
export function bendRow(
  arc: PlannedArc,
  before: PlannedArc | undefined,
  context: BendContext,
  check: Figure | null,
): BendRow {
  const { tube, machine } = context;
  const rotation = arc.rotation * machine.rotationSign || 0; // never −0
  const { radius, angle } = arc.piece;
  const rotationInput = input('ρ', 'rotation', rotation * DEGREES, 'deg');
  const round = (rotation / 2) * tube.outsideDiameter;
  const feedSlope = (arc.ofDie ? setbackFactor(arc) : 0) + (before?.ofDie === true ? setbackFactor(before) : 0);
  return {
    number: arc.number,
    made: arc.piece.made,
    feed: figure(
      arc.feed,
      'mm',
      'Y = P − T₁ − T₂',
      [
        input('P', 'corner-to-corner', arc.feed + cornerTangent(before?.piece) + cornerTangent(arc.piece), 'mm'),
        input('T₁', 'tangent-length-before', cornerTangent(before?.piece), 'mm'),
        input('T₂', 'tangent-length', cornerTangent(arc.piece), 'mm'),
      ],
      ['geometry'],
      withTape(radiusBand(feedSlope, context), context),
    ),
    rotation: figure(
      rotation * DEGREES,
      'deg',
      'ρ = s atan2((N₁ × N₂) · d, N₁ · N₂)',
      [input('s', 'rotation-sign', machine.rotationSign, 'count')],
      ['geometry'],
      before === undefined || machine.planeScatter === 0 ? null : band(machine.planeScatter, 'rotation-scatter'),
    ),
    rotationRound: figure(
      round,
      'mm',
      'u = π D ρ / 360',
      [input('D', 'outside-diameter', tube.outsideDiameter, 'mm'), rotationInput],
      ['geometry'],
      before === undefined ? null : roundBand(rotation, context),
    ),
    ...angleFigures(arc, context),
    ...markFigures(arc, context),
    arcLength: figure(
      arc.piece.length,
      'mm',
      'L = R θ π / 180',
      [input('R', 'radius-after-release', radius, 'mm'), input('θ', 'angle', angle * DEGREES, 'deg')],
      ['geometry'],
      radiusBand(arc.ofDie ? angle : 0, context),
    ),
    tangentLength: tangentFigure(arc, context),
    ...formingFigures(arc, context),
    check,
  };
}

/** ± of a rotation laid off round the tube: the scatter of the rotation, and the tube's own girth. */
function roundBand(rotation: number, { tube, machine, tolerance }: BendContext): Band | null {
  const scatter = ((machine.planeScatter / DEGREES) * tube.outsideDiameter) / 2;
  const girth = (Math.abs(rotation) / 2) * (tolerance?.outsideDiameter ?? 0);
  if (scatter === 0 && girth === 0) return null;
  return band(Math.hypot(scatter, girth), 'rotation-scatter', ...(girth > 0 ? ['tube-tolerance'] : []));
}

function tangentFigure(arc: PlannedArc, context: BendContext): Figure | null {
  if (!hasCorner(arc.piece)) return null;
  const { radius, angle } = arc.piece;
  return figure(
    tangentLength(arc.piece),
    'mm',
    'T = R tan(θ / 2)',
    [input('R', 'radius-after-release', radius, 'mm'), input('θ', 'angle', angle * DEGREES, 'deg')],
    ['geometry', 'faa-43-13'],
    radiusBand(arc.ofDie ? Math.tan(angle / 2) : 0, context),
  );
}

function angleFigures(
  arc: PlannedArc,
  { law, machine }: BendContext,
): Pick<BendRow, 'angle' | 'angleToBendTo' | 'dieRadius' | 'radiusAfterRelease'> {
  const wanted = input('θ', 'angle', arc.piece.angle * DEGREES, 'deg');
  const die = arc.piece.made === 'die';
  const scatter = law.bandFor(arc.piece.angle);
  const share = input('b', 'springback-share', die ? shareOf(arc, law) : 0, 'ratio');
  const fixed = input('a', 'springback-fixed', law.fixed * DEGREES, 'deg');
  const source = law.method === 'theory' ? 'pure-bending' : 'test-bends';
  const after = input('R_f', 'radius-after-release', arc.piece.radius, 'mm');
  return {
    angle: figure(arc.piece.angle * DEGREES, 'deg', 'θ', [wanted], ['geometry']),
    angleToBendTo: die
      ? figure(
          arc.command * DEGREES,
          'deg',
          'c = (θ + a) / (1 − b)',
          [wanted, fixed, share],
          [source, law.method === 'theory' ? 'springback-shop' : 'springback-fit'],
          band(scatter.plusMinus * DEGREES, ...scatter.from),
        )
      : figure(arc.command * DEGREES, 'deg', 'c = θ', [wanted], ['geometry']),
    dieRadius: arc.ofDie
      ? figure(machine.dieRadius, 'mm', 'R', [input('R', 'die-radius', machine.dieRadius, 'mm')], ['typed'])
      : figure(arc.dieRadius, 'mm', 'R = R_f (1 − λ(R))', [after], ['pure-bending', 'springback-shop']),
    radiusAfterRelease: figure(
      arc.piece.radius,
      'mm',
      'R_f',
      [after],
      arc.ofDie ? [law.radiusMeasured ? 'test-bends' : 'pure-bending'] : ['typed'],
      radiusBand(arc.ofDie ? 1 : 0, { law }),
    ),
  };
}

/** b of c = (θ + a)/(1 − b), read back from the command: theory has its own share for each die. */
const shareOf = (arc: PlannedArc, law: SpringbackLaw): number => 1 - (arc.piece.angle + law.fixed) / arc.command;

function markFigures(arc: PlannedArc, context: BendContext): Pick<BendRow, 'startMark' | 'middleMark' | 'endMark'> {
  const station = input('s', 'station', arc.station, 'mm');
  const shift = input('z', 'mark-shift', arc.mark - arc.station, 'mm');
  const length = input('L', 'arc-length', arc.piece.length, 'mm');
  const stretch = input('e', 'stretch', arc.stretch, 'mm');
  const arcSlope = arc.ofDie ? arc.piece.angle : 0;
  return {
    startMark: figure(
      arc.mark,
      'mm',
      'm₁ = s + z',
      [station, shift],
      ['geometry', 'typed'],
      withTape(radiusBand(arc.markSlope, context), context),
    ),
    middleMark: figure(
      arc.mark + arc.taken / 2,
      'mm',
      'm₂ = s + z + (L − e) / 2',
      [station, shift, length, stretch],
      ['geometry', 'typed'],
      withTape(radiusBand(arc.markSlope + arcSlope / 2, context), context),
    ),
    endMark: figure(
      arc.mark + arc.taken,
      'mm',
      'm₃ = s + z + L − e',
      [station, shift, length, stretch],
      ['geometry', 'typed'],
      withTape(radiusBand(arc.markSlope + arcSlope, context), context),
    ),
  };
}
