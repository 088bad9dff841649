import loadHighs from 'highs'
import { checked, type Model, type Row, type Solve, type Solved } from '../../src-domain/choosing/model.ts'

/**
 * Solves a model of whole numbers exactly, in this thread: HiGHS in WebAssembly, one thread, the same answer every time.
 * *Optimal* is said only where HiGHS proved it (no gap allowed) and the solution holds when every row is added up again in whole numbers.
 */
export type Highs = Awaited<ReturnType<typeof loadHighs>>

export const loadSolver = (): Promise<Highs> => loadHighs()

export interface Limits {
  readonly seconds: number
}

export const USUAL_LIMITS: Limits = { seconds: 20 }

export function solverWith(highs: Highs, limits: Limits = USUAL_LIMITS): Solve {
  return (model) => {
    try {
      return checked(model, solveWith(highs, model, limits))
    } catch (error) {
      // What the package throws can hold its whole source: the name and the message are enough.
      return { kind: 'unsettled', why: error instanceof Error ? `${error.name}: ${error.message}`.slice(0, 300) : 'the solver failed' }
    }
  }
}

function solveWith(highs: Highs, model: Model, { seconds }: Limits): Solved {
  if (model.columns.length === 0) return emptyModel(model)
  return highs.withModel(asArrays(model, highs), (solver): Solved => {
    solver.options.set({ mip_rel_gap: 0, mip_abs_gap: 1e-6, random_seed: 0, output_flag: false, time_limit: seconds })
    solver.run()
    const status = solver.getModelStatus()
    const { optimal, infeasible, timeLimit } = highs.constants.modelStatus
    if (status === infeasible) return { kind: 'infeasible' }
    if (status !== optimal && status !== timeLimit) return { kind: 'unsettled', why: `the solver ended with status ${status}` }
    const values = Array.from(solver.getSolution().colValue)
    if (status === optimal) return { kind: 'optimal', values }
    const gap = solver.getObjectiveValue() - Number(solver.info.get('mip_dual_bound'))
    return Number.isFinite(gap)
      ? { kind: 'best', values, gap: Math.max(0, gap) }
      : { kind: 'unsettled', why: 'out of time without an answer' }
  })
}

const emptyModel = ({ rows }: Model): Solved =>
  rows.every(({ low, high }) => (low ?? 0) <= 0 && (high ?? 0) >= 0) ? { kind: 'optimal', values: [] } : { kind: 'infeasible' }

function asArrays({ columns, rows }: Model, highs: Highs) {
  const starts = [0]
  const indices: number[] = []
  const values: number[] = []
  for (const { terms } of rows) {
    for (const [column, coefficient] of terms) {
      indices.push(column)
      values.push(coefficient)
    }
    starts.push(indices.length)
  }
  const bound = (pick: (row: Row) => number | null, none: number) => Float64Array.from(rows, (row) => pick(row) ?? none)
  return {
    numCols: columns.length,
    numRows: rows.length,
    colCost: Float64Array.from(columns, ({ cost }) => cost),
    colLower: Float64Array.from(columns, ({ least }) => least),
    colUpper: Float64Array.from(columns, ({ most }) => most),
    rowLower: bound(({ low }) => low, -highs.infinity),
    rowUpper: bound(({ high }) => high, highs.infinity),
    matrix: {
      format: 'csr' as const,
      numCols: columns.length,
      numRows: rows.length,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    },
    integrality: new Int32Array(columns.length).fill(highs.constants.variableType.integer),
  }
}
