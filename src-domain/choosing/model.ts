/**
 * A model of whole numbers, free of any solver.
 *   least Σ cost·x    such that    low ≤ Σ coefficient·x ≤ high for every row,    0 ≤ x ≤ most, x whole
 * Every coefficient and bound is a whole number (tenths of a gram, hundredths of R, millilitres, coins), so that a solution can be checked
 * again exactly. Costs may be fractions: they choose among solutions and are never a result.
 */
export interface Column {
  readonly name: string
  readonly cost: number
  readonly least: number
  readonly most: number
}

export type Term = readonly [column: number, coefficient: number]

export interface Row {
  readonly name: string
  /** The demand it belongs to: what is given up when the row is freed. */
  readonly demand: string
  readonly terms: readonly Term[]
  readonly low: number | null
  readonly high: number | null
}

export interface Model {
  readonly columns: readonly Column[]
  readonly rows: readonly Row[]
}

/** What a solver answers. `best`: it ran out of time; the true optimum is at most `gap` of the objective below. */
export type Solved =
  | { readonly kind: 'optimal'; readonly values: readonly number[] }
  | { readonly kind: 'best'; readonly values: readonly number[]; readonly gap: number }
  | { readonly kind: 'infeasible' }
  | { readonly kind: 'unsettled'; readonly why: string }

export type Solve = (model: Model) => Solved

/** Rows and bounds that whole values break, by name: recomputed exactly, whatever a solver said. */
export function broken({ columns, rows }: Model, values: readonly number[]): readonly string[] {
  const outside = columns.filter(({ least, most }, i) => !Number.isInteger(values[i]) || values[i]! < least || values[i]! > most)
  const failing = rows.filter((row) => !isKept(row, values))
  return [...outside, ...failing].map(({ name }) => name)
}

function isKept({ terms, low, high }: Row, values: readonly number[]): boolean {
  const sum = activity(terms, values)
  return (low === null || sum >= low) && (high === null || sum <= high)
}

export const activity = (terms: readonly Term[], values: readonly number[]): number =>
  terms.reduce((sum, [column, coefficient]) => sum + coefficient * values[column]!, 0)

/** Rounds what a solver says and checks it anew: never a silent wrong answer. */
export function checked(model: Model, solved: Solved): Solved {
  if (solved.kind !== 'optimal' && solved.kind !== 'best') return solved
  const values = solved.values.map((value) => Math.round(value))
  const failing = broken(model, values)
  return failing.length === 0 ? { ...solved, values } : { kind: 'unsettled', why: `the check of ${failing.slice(0, 3).join(', ')} failed` }
}

/**
 * The model with the rows of some demands given up at a price: a 0/1 column for each demand, big enough in each of its rows (the row's own
 * worst activity) to free it, and `weights` as costs. Other costs fall away.
 */
export function softened({ columns, rows }: Model, weights: ReadonlyMap<string, number>): Model & { readonly firstSoft: number } {
  const demands = [...weights.keys()]
  const at = new Map(demands.map((demand, i) => [demand, columns.length + i]))
  const soft = demands.map((demand): Column => ({ name: `give up ${demand}`, cost: weights.get(demand)!, least: 0, most: 1 }))
  const loosened = rows.map((row): Row => {
    const column = at.get(row.demand)
    return column === undefined ? row : loosen(row, columns, column)
  })
  return { columns: [...columns.map((one) => ({ ...one, cost: 0 })), ...soft], rows: loosened.flatMap(split), firstSoft: columns.length }
}

/** A row with both bounds is loosened on each side by itself. */
const split = (row: Row): readonly Row[] =>
  row.low !== null && row.high !== null && row.low !== row.high
    ? [
        { ...row, high: null },
        { ...row, low: null },
      ]
    : [row]

function loosen(row: Row, columns: readonly Column[], by: number): Row {
  const [least, most] = reach(row.terms, columns)
  if (row.low !== null) return { ...row, terms: [...row.terms, [by, Math.max(0, row.low - least)]] }
  if (row.high !== null) return { ...row, terms: [...row.terms, [by, -Math.max(0, most - row.high)]] }
  return row
}

/** Least and most that a row's sum can come to. */
function reach(terms: readonly Term[], columns: readonly Column[]): readonly [number, number] {
  let [low, high] = [0, 0]
  for (const [column, coefficient] of terms) {
    const { least, most } = columns[column]!
    low += coefficient * (coefficient > 0 ? least : most)
    high += coefficient * (coefficient > 0 ? most : least)
  }
  return [low, high]
}
