import type { Highs } from "highs";

/** A whole-number program: least cost, each row at least `rows`, each column so many times. */
export interface Program {
  readonly costs: readonly number[];
  /** Sparse columns: row and amount. */
  readonly columns: readonly (readonly (readonly [row: number, amount: number])[])[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  /** Most of each column; unbounded when not given. */
  readonly most?: readonly number[];
}

export interface Search {
  /** Nodes of the search tree: a limit that, unlike time, gives the same plan every run. */
  readonly nodes: number;
  /** Solutions this near to the bound are as good as proved. */
  readonly gap: number;
  readonly start?: readonly number[];
  readonly stop?: () => boolean;
  readonly improved?: (amounts: readonly number[]) => void;
}

export interface Solved {
  readonly amounts?: readonly number[];
  /** No solution of the program costs less. */
  readonly bound: number;
  readonly optimal: boolean;
}

/** The solver is handed in, loaded: this folder opens no file. */
export type Solver = Highs;

export function solveProgram(solver: Solver, program: Program, search: Search): Solved {
  const { callbackType, variableType, modelStatus } = solver.constants;
  const starts = [0];
  for (const column of program.columns) starts.push(starts[starts.length - 1] + column.length);
  const numCols = program.costs.length;
  const numRows = program.lower.length;
  return solver.withModel(
    {
      numCols,
      numRows,
      colCost: Float64Array.from(program.costs),
      colLower: new Float64Array(numCols),
      colUpper: Float64Array.from(program.costs, (_, i) => program.most?.[i] ?? solver.infinity),
      rowLower: Float64Array.from(program.lower),
      rowUpper: Float64Array.from(program.upper),
      integrality: program.costs.map(() => variableType.integer),
      matrix: {
        format: "csc" as const,
        numRows,
        numCols,
        starts: Int32Array.from(starts),
        indices: Int32Array.from(program.columns.flat().map(([row]) => row)),
        values: Float64Array.from(program.columns.flat().map(([, amount]) => amount)),
      },
    },
    (model) => {
      model.options.set({
        output_flag: false,
        random_seed: 1,
        mip_max_nodes: search.nodes,
        mip_rel_gap: 0,
        mip_abs_gap: search.gap,
      });
      if (search.start) model.setSolution({ colValue: Float64Array.from(search.start) });
      model.run({
        [callbackType.mipImprovingSolution]: (event) => {
          if (event.data.mip_solution && search.improved)
            search.improved(Array.from(event.data.mip_solution, Math.round));
          return undefined;
        },
        [callbackType.mipInterrupt]: (event) => {
          if (search.stop?.()) event.interrupt();
          return undefined;
        },
      });
      const primal = Number(model.info.get("primal_solution_status"));
      const feasible = primal === 2;
      return {
        amounts: feasible ? Array.from(model.getSolution().colValue, Math.round) : undefined,
        bound: Number(model.info.get("mip_dual_bound")),
        optimal: model.getModelStatus() === modelStatus.optimal,
      };
    },
  );
}
