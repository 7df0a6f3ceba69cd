import loadHighs, { type Highs, type Model } from 'highs';

/** A column of a program: what one of it costs, and what it gives to some rows. */
export type Column = { readonly cost: number; readonly rows: readonly number[]; readonly gives: readonly number[] };

/** Least and most that a row may come to. */
export type Row = { readonly least: number; readonly most: number };

/** A program that columns are added to, solved with parts of a column allowed. */
export type Relaxation = {
  readonly add: (columns: readonly Column[]) => void;
  /** How many of each column, and what one more in each row would cost; null where there is no answer in the time. */
  readonly solve: (seconds: number) => { readonly amounts: Float64Array; readonly worths: Float64Array } | null;
  readonly end: () => void;
};

export type WholeAnswer = {
  /** Whole numbers of each column; null where none were found. */
  readonly amounts: number[] | null;
  /** Nothing that costs less is there; Infinity: there is no answer at all. */
  readonly bound: number;
};

/** Linear programs by HiGHS, in WebAssembly. Every call blocks until it is done. */
export type LinearSolver = {
  readonly relaxation: (rows: readonly Row[]) => Relaxation;
  readonly wholeNumbers: (asked: {
    readonly rows: readonly Row[];
    readonly columns: readonly Column[];
    /** An answer within so much of the best one does. */
    readonly within: number;
    readonly seconds: number;
    /** Told of every better answer as it is found. */
    readonly better: (amounts: number[]) => void;
  }) => WholeAnswer;
};

export async function startLinearSolver(): Promise<LinearSolver> {
  const highs = await loadHighs();
  return {
    relaxation: (rows) => relaxation(highs, rows),
    wholeNumbers: (asked) => wholeNumbers(highs, asked),
  };
}

/** Columns packed one after the other. */
function packed(columns: readonly Column[]) {
  const starts = new Int32Array(columns.length + 1);
  columns.forEach(({ rows }, index) => (starts[index + 1] = (starts[index] ?? 0) + rows.length));
  return {
    starts,
    indices: Int32Array.from(columns.flatMap(({ rows }) => rows)),
    values: Float64Array.from(columns.flatMap(({ gives }) => gives)),
    cost: Float64Array.from(columns, ({ cost }) => cost),
    lower: new Float64Array(columns.length),
    upper: new Float64Array(columns.length).fill(Infinity),
  };
}

/** A program with these columns; its rows ask for no less and no more than they say. */
function modelOf(highs: Highs, rows: readonly Row[], columns: readonly Column[], whole: boolean): Model {
  const { starts, indices, values, cost, lower, upper } = packed(columns);
  const model = highs.createModel({
    numCols: columns.length,
    numRows: rows.length,
    colCost: cost,
    colLower: lower,
    colUpper: upper,
    rowLower: rows.map(({ least }) => least),
    rowUpper: rows.map(({ most }) => most),
    matrix: { format: 'csc', numRows: rows.length, numCols: columns.length, starts, indices, values },
    ...(whole ? { integrality: new Int32Array(columns.length).fill(highs.constants.variableType.integer) } : {}),
  });
  model.options.set({ output_flag: false });
  return model;
}

function relaxation(highs: Highs, rows: readonly Row[]): Relaxation {
  const model = modelOf(highs, rows, [], false);
  let size = 0;
  return {
    add(columns) {
      const { starts, indices, values, cost, lower, upper } = packed(columns);
      const matrix = { format: 'csc', numRows: rows.length, numCols: columns.length, starts, indices, values } as const;
      model.addCols({ cost, lower, upper, matrix });
      size += columns.length;
    },
    solve(seconds) {
      model.zeroAllClocks();
      model.options.set({ time_limit: Math.max(0, seconds) });
      model.run();
      if (size === 0 || model.getModelStatus() !== highs.constants.modelStatus.optimal) return null;
      const { colValue, rowDual } = model.getSolution();
      return { amounts: colValue, worths: rowDual };
    },
    end: () => model.dispose(),
  };
}

const whole = (amounts: Float64Array): number[] => Array.from(amounts, (amount) => Math.round(amount));

function wholeNumbers(highs: Highs, asked: Parameters<LinearSolver['wholeNumbers']>[0]): WholeAnswer {
  const model = modelOf(highs, asked.rows, asked.columns, true);
  const { modelStatus, callbackType } = highs.constants;
  try {
    model.options.set({ time_limit: Math.max(0, asked.seconds), mip_rel_gap: 0, mip_abs_gap: asked.within });
    model.run({
      [callbackType.mipImprovingSolution]: ({ data }) => {
        if (data.mip_solution !== undefined) asked.better(whole(data.mip_solution));
      },
    });
    const status = model.getModelStatus();
    if (status === modelStatus.infeasible) return { amounts: null, bound: Infinity };
    const found = model.info.get('primal_solution_status') === highs.constants.solutionStatus.feasible;
    const bound = Number(model.info.get('mip_dual_bound'));
    return { amounts: found ? whole(model.getSolution().colValue) : null, bound };
  } finally {
    model.dispose();
  }
}
