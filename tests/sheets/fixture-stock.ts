import type { BarPlan, CutPiece, OverlongPiece, SizeLayout, StockPlan } from '../../server/plan/stock.ts';
import { pieceOf } from '../solver/stock/made-up-stock.ts';
import { figure } from './fixture-figure.ts';

export const SAW = { kerf: 2, endTrim: 10, leastRemnant: 300 } as const;

/** A piece of the cut list. */
export const piece = (name: string, length: number, change: Partial<CutPiece> = {}): CutPiece =>
  pieceOf(name, length, { wall: 1.7, ...change });

/** A bar with pieces laid on it from its trimmed end, a kerf between them and one before what is left. */
export function bar(
  number: number,
  length: number,
  pieces: readonly (readonly [name: string, length: number, job?: string])[],
  change: Partial<BarPlan> = {},
): BarPlan {
  let from: number = SAW.endTrim;
  const laid = pieces.map(([name, long, job = '']) => {
    const on = { name, job, from, to: from + long };
    from = on.to + SAW.kerf;
    return on;
  });
  const offcut = Math.max(0, length - from);
  return {
    number,
    times: 1,
    stock: '',
    name: '',
    remnant: false,
    length,
    heat: '',
    price: null,
    endTrim: SAW.endTrim,
    pieces: laid,
    offcut: figure(offcut, 'mm'),
    kept: offcut >= SAW.leastRemnant,
    ...change,
  };
}

/** Bars of one size as a plan tells them. */
export const sizeLayout = (bars: BarPlan[], change: Partial<SizeLayout> = {}): SizeLayout => ({
  outsideDiameter: 38.1,
  wall: 1.7,
  grade: '316L',
  pieces: figure(
    bars.reduce((sum, { pieces }) => sum + pieces.length, 0),
    'count',
  ),
  metres: figure(5.42, 'm'),
  mass: figure(8.2, 'kg'),
  from: 'first-fit',
  proven: false,
  bars,
  least: figure(1, 'count'),
  used: figure(87.3, 'percent'),
  keptShare: figure(9.1, 'percent'),
  scrap: figure(3.6, 'percent'),
  cost: null,
  ...change,
});

/** Two bars of one size with an offcut to keep and one that is scrap, and a leg of another size. */
export function stock(overlong: OverlongPiece[] = []): StockPlan {
  const thin = { outsideDiameter: 25.4, wall: 1.5 } as const;
  return {
    pieces: [
      piece('hoop', 2080),
      piece('crossbar 1', 910),
      piece('let-in 2', 60, { kind: 'let-in', of: '2' }),
      piece('leg 1', 640.5, { kind: 'leg', ...thin }),
    ],
    sizes: [
      sizeLayout([
        bar(1, 6000, [
          ['hoop', 2080],
          ['crossbar 1', 910],
          ['let-in 2', 60],
          ['post', 700, 'Gangway'],
        ]),
        bar(2, 1200, [['rail', 1120, 'Gangway']], {
          stock: 'b1',
          name: 'rack 3',
          remnant: true,
          heat: 'H 4711',
        }),
      ]),
      sizeLayout([bar(1, 3000, [['leg 1', 640.5]])], { ...thin, proven: true }),
    ],
    overlong,
    joints: [],
  };
}
