import type { CorrectionPlan } from '../../plan/correction.ts';
import type { LaidDoubt, Outcome } from '../correction/outcome.ts';
import type { FrameGeometry } from '../frame/frame-geometry.ts';
import { fromPlanPieces } from '../geometry/from-plan-pieces.ts';
import { movedLine } from '../geometry/moved-centreline.ts';
import type { MadeLine, MadeVariation } from './laid-site.ts';

/** The frame that will stand there: as the chosen way leaves it, or as wanted where nothing came back or it is made anew. */
export function madeLines(
  wanted: FrameGeometry,
  correction: Pick<CorrectionPlan, 'ways' | 'chosen'> | null,
): readonly MadeLine[] {
  const way = correction?.ways.find(({ key }) => key === correction.chosen);
  const asWanted = wanted.members.map(({ name, closed, centreline }) => ({ name, closed, centreline }));
  if (way === undefined || way.key === 'new-frame') return asWanted;
  return asWanted.map((member) => {
    const made = way.members.find(({ name }) => name === member.name);
    const centreline = made === undefined ? undefined : fromPlanPieces(made.pieces);
    return centreline === undefined || centreline.pieces.length === 0 ? member : { ...member, centreline };
  });
}

/**
 * The frame that will stand there with each thing that is in doubt of it off by its ±: what the readings of the frame
 * that came back leave open, and what bending and welding scatter. Laid on the wanted frame as the ways are, so that
 * these are the doubts that the way's own bands come from.
 */
export const madeVariations = (made: readonly MadeLine[], doubts: readonly LaidDoubt[]): readonly MadeVariation[] =>
  doubts.flatMap(({ from, outcomes }) =>
    outcomes.map((outcome) => ({
      goBackTo: from === 'readings' ? '/cameBack/readings' : '/frame',
      lines: made.map((line) => variedLine(line, outcome)),
    })),
  );

function variedLine(line: MadeLine, { corrected, lay }: Pick<Outcome, 'corrected' | 'lay'>): MadeLine {
  const parts = corrected.members.find(({ name }) => name === line.name)?.parts ?? [];
  const pieces = parts.flatMap((part) => movedLine(lay, part).pieces);
  if (pieces.length === 0) return line;
  const centreline = { pieces, length: pieces.reduce((sum, piece) => sum + piece.length, 0) };
  return { ...line, centreline, offFrom: line.centreline };
}
