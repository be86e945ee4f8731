import type { LinearProgram, LinearSolution, LinearSolver, SolverLimits } from "@sheetwright/packing";
import type { Highs, Model } from "highs";

/** Solves after which the module is made anew: what it leaves in its memory adds up. */
const MOST_SOLVES = 2_000;
/** Memory of the module above which nothing more is asked of it before it is made anew. */
const MOST_BYTES = 1 << 30;

/** The module that is in use, and how often it has been asked. */
interface Loaded {
  readonly highs: Highs;
  solves: number;
}

/**
 * Loads HiGHS, which takes about a tenth of a second. What goes wrong inside comes out as a short error, never as the text of
 * the module. After many solves another module takes the place of the first, as soon as there is time to load it.
 *
 * @param mostSolves how many solves are many.
 */
export async function loadSolver(mostSolves = MOST_SOLVES): Promise<LinearSolver> {
  let loaded = await loadModule();
  let isRenewing = false;
  const renew = (): void => {
    if (isRenewing) return;
    isRenewing = true;
    loadModule().then(
      (next) => {
        loaded = next;
        isRenewing = false;
      },
      () => {
        // The one in use goes on until its memory is full.
        isRenewing = false;
      },
    );
  };
  return {
    name: `highs ${loaded.highs.version.string}`,
    solve: (program, limits) => {
      if (loaded.solves >= mostSolves) renew();
      if (loaded.highs.memoryBytes > MOST_BYTES) {
        renew();
        throw new Error("HiGHS has used up its memory.");
      }
      loaded.solves++;
      return guarded(() => solveWith(loaded.highs, program, limits));
    },
  };
}

async function loadModule(): Promise<Loaded> {
  try {
    const { default: given } = await import("highs");
    // Its types describe a CommonJS module inside another one.
    const load = given as unknown as typeof given.default;
    return { highs: await load(), solves: 0 };
  } catch (error) {
    // biome-ignore lint/style/useErrorCause: the stack of the cause would print the whole module.
    throw new Error(`HiGHS could not be loaded: ${shortMessage(error)}`);
  }
}

/** Lets no error out with the stack of the module, whose lines are its whole text. */
function guarded<Result>(action: () => Result): Result {
  try {
    return action();
  } catch (error) {
    // biome-ignore lint/style/useErrorCause: as above.
    throw new Error(`HiGHS failed: ${shortMessage(error)}`);
  }
}

function shortMessage(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).slice(0, 200);
}

function solveWith(highs: Highs, program: LinearProgram, limits: SolverLimits): LinearSolution {
  const { rows, columns } = program;
  const isWhole = columns.some((column) => column.whole);
  const model = highs.createModel(modelData(highs, program));
  try {
    model.options.set({
      output_flag: false,
      random_seed: 0,
      simplex_iteration_limit: limits.iterations,
      mip_max_nodes: limits.nodes,
    });
    runWithin(highs, model, limits);
    const status = statusOf(highs, model);
    if (status === "infeasible" || status === "none") return { status, values: [], duals: [], objective: 0 };
    const { colValue = [], rowDual = [] } = model.getSolution();
    if (colValue.length !== columns.length) return { status: "none", values: [], duals: [], objective: 0 };
    const duals = !isWhole && rowDual.length === rows.length ? [...rowDual] : [];
    return { status, values: [...colValue], duals, objective: model.getObjectiveValue() };
  } finally {
    model.dispose();
  }
}

/** Runs a model until its iterations are used up, those of all nodes together. */
function runWithin(highs: Highs, model: Model, limits: SolverLimits): void {
  model.run({
    [highs.constants.callbackType.mipInterrupt]: (event: {
      readonly data: { readonly mip_total_lp_iterations?: bigint };
      interrupt(): void;
    }) => {
      if ((event.data.mip_total_lp_iterations ?? 0n) > BigInt(limits.iterations)) event.interrupt();
    },
  });
}

function statusOf(highs: Highs, model: Model): LinearSolution["status"] {
  const { modelStatus } = highs.constants;
  const status = model.getModelStatus();
  if (status === modelStatus.optimal) return "optimal";
  if (status === modelStatus.infeasible) return "infeasible";
  // 2: a point that keeps all limits.
  return model.info.get("primal_solution_status") === 2 ? "feasible" : "none";
}

function modelData(highs: Highs, { rows, columns }: LinearProgram) {
  const { continuous, integer } = highs.constants.variableType;
  const entries = columns.flatMap((column) => column.entries);
  const starts = new Int32Array(columns.length + 1);
  columns.forEach((column, i) => {
    starts[i + 1] = (starts[i] ?? 0) + column.entries.length;
  });
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: Float64Array.from(columns, (column) => column.cost),
    colLower: Float64Array.from(columns, (column) => column.lower),
    colUpper: Float64Array.from(columns, (column) => column.upper),
    rowLower: Float64Array.from(rows, (row) => row.lower),
    rowUpper: Float64Array.from(rows, (row) => row.upper),
    matrix: {
      format: "csc",
      numRows: rows.length,
      numCols: columns.length,
      starts,
      indices: Int32Array.from(entries, (entry) => entry.row),
      values: Float64Array.from(entries, (entry) => entry.factor),
    },
    ...(columns.some((column) => column.whole)
      ? { integrality: Int32Array.from(columns, (column) => (column.whole ? integer : continuous)) }
      : {}),
  } as const;
}
