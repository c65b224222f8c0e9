import type { Highs } from 'highs';
import type { LinearProgram, LinearRow, LinearSolution } from './linear-program.ts';

/** Linear programs solved by HiGHS, which whoever runs this has loaded. */
export function highsProgram(highs: Highs): LinearProgram {
  const model = highs.createModel();
  model.options.set({ output_flag: false, primal_feasibility_tolerance: 1e-9, dual_feasibility_tolerance: 1e-9 });
  let columns = 0;
  let rows = 0;
  return {
    addColumns(lower, upper) {
      const first = columns;
      model.addVars(Float64Array.from(lower), Float64Array.from(upper));
      columns += lower.length;
      return first;
    },
    addRows(more) {
      const first = rows;
      if (more.length > 0) model.addRows(packed(more, columns));
      rows += more.length;
      return first;
    },
    freeRow: (row) => void model.changeRowBounds(row, -highs.infinity, highs.infinity),
    setCosts: (costs) =>
      void (columns > 0 && model.changeColsCost({ kind: 'range', from: 0, to: columns - 1 }, Float64Array.from(costs))),
    solve(): LinearSolution {
      // Where no car may charge there is nothing to solve, and the solver refuses to.
      if (columns === 0) return { status: 'optimal', columns: new Float64Array(0), prices: new Float64Array(rows) };
      model.run();
      const status = model.getModelStatus();
      const { optimal, infeasible, unboundedOrInfeasible } = highs.constants.modelStatus;
      const { colValue, rowDual } = model.getSolution();
      return {
        status:
          status === optimal
            ? 'optimal'
            : status === infeasible || status === unboundedOrInfeasible
              ? 'infeasible'
              : 'stopped',
        columns: colValue,
        prices: rowDual,
      };
    },
    dispose: () => model.dispose(),
  };
}

function packed(rows: readonly LinearRow[], columns: number) {
  const starts = new Int32Array(rows.length + 1);
  rows.forEach(({ at }, i) => {
    starts[i + 1] = starts[i]! + at.length;
  });
  const size = starts[rows.length]!;
  const indices = new Int32Array(size);
  const values = new Float64Array(size);
  rows.forEach(({ at, by }, i) => {
    indices.set(at, starts[i]);
    values.set(by, starts[i]);
  });
  return {
    lower: Float64Array.from(rows, ({ lower }) => lower),
    upper: Float64Array.from(rows, ({ upper }) => upper),
    matrix: { format: 'csr' as const, numRows: rows.length, numCols: columns, starts, indices, values },
    count: rows.length,
  };
}
