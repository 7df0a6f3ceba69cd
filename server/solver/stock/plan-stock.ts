import type { SettledJob } from '../../job/job.ts';
import type { Finding } from '../../plan/finding.ts';
import type { CutPiece, SizeLayout, StockPlan } from '../../plan/stock.ts';
import { resolveGrade } from '../tube/grades.ts';
import { roomsOfJoints } from './bar-joints.ts';
import { ROUNDING, longestOf } from './bar-use.ts';
import { keptSize } from './kept-layout.ts';
import { keptPrice } from './kept-price.ts';
import { layoutFindings, type LaidOut } from './layout-findings.ts';
import { overlongPieces, type TooLong } from './overlong.ts';
import { sizeFigures } from './size-figures.ts';
import { keptLaid, laidByFirstFit, type LaidSize } from './size-layout.ts';
import type { StraightTubes } from './straight-tube.ts';
import { bySize, tubeRateOf } from './tube-sizes.ts';

/**
 * What is sawn off which bars for the frames that are asked for, size by size and grade by grade: by the layout that the job
 * keeps where it is for exactly these pieces, else by first fit into bars as they are bought.
 *
 * @param asked the job with its shrinkage settled; the cut list of one frame; the members of a new frame as straight tube,
 *   to say where a piece that is too long may have a joint
 */
export function planStock(asked: {
  readonly job: SettledJob;
  readonly pieces: readonly CutPiece[];
  readonly tubes: StraightTubes;
}): { stock: StockPlan; findings: Finding[] } {
  const { job, pieces, tubes } = asked;
  const { rates, stock, quote } = job;
  const { layout, saw } = stock;
  const quantity = quote.quantities[0] ?? 1;
  const grade = resolveGrade(job.tube.grade);
  const credit = rates.remnantCredit.value;
  const tooLong: TooLong[] = [];
  const sizes = bySize(pieces).map(({ kind, pieces: own }) => {
    if (layout === null) return { kind, own, kept: null };
    const kept = keptSize(layout, { kind, pieces: own, quantity, saw });
    const laid: LaidOut = { kind, pieces: own, kept, price: keptPrice(kept.bars, layout, { kind, rates, saw }) };
    return { kind, own, kept: laid };
  });
  const layouts = sizes.map(({ kind, own, kept }): SizeLayout => {
    let laid: LaidSize;
    if (layout !== null && kept?.kept.differ === 0) {
      laid = keptLaid(kept.price, { found: layout.found, saw });
    } else {
      const { rate } = tubeRateOf(rates, kind);
      laid = laidByFirstFit({ pieces: own, quantity, rate, saw, credit });
      if (rate !== null) tooLong.push(...beyond(own, rate.barLength, longestOf(rate.barLength, saw)));
    }
    return { ...kind, ...laid, ...sizeFigures(kind, own, laid.bars, { quantity, grade }) };
  });
  const long = overlongPieces(tooLong, tubes, job);
  const told =
    layout === null
      ? []
      : layoutFindings(
          layout,
          sizes.flatMap(({ kept }) => kept ?? []),
          job,
        );
  return {
    stock: {
      pieces: [...pieces],
      sizes: layouts,
      overlong: long.overlong,
      joints: roomsOfJoints(stock.joints, tubes, job.tube.outsideDiameter),
    },
    findings: [...long.findings, ...told],
  };
}

/** Pieces that no bar of a length gives. */
const beyond = (pieces: readonly CutPiece[], bar: number, longest: number): TooLong[] =>
  pieces.flatMap((piece) => (piece.length.value > longest + ROUNDING ? [{ piece, bar }] : []));
