/**
 * A figure: a number that knows its unit, where it comes from, how uncertain it is and how it was worked out.
 * Uncertainty is kept as signed shares per leaf (one weighing, one scale's gain, one brief entry), so that a leaf that
 * stands behind two figures adds before it is squared and cancels in their difference.
 * First order only (JCGM 100:2008, 5.1.2); strongly bent laws add a share of their own through `Law.spread`.
 */
declare const unit: unique symbol

/** A plain number at run time; the compiler keeps grams from litres. */
export type Quantity<U extends string> = number & { readonly [unit]: U }

/**
 * measured: read on an instrument · claimed: said by a maker · estimated: guessed or learned · given: stated by the person in the brief
 * brief: an amount that follows the brief · constant: a published value · worked: computed here.
 */
export type Origin = 'measured' | 'claimed' | 'estimated' | 'given' | 'brief' | 'constant' | 'worked'

/** Where a formula or value was published, and how we know it. */
export interface Source {
  readonly cite: string
  readonly known: 'read' | 'memory' | 'choice' | 'common practice, no source'
}

export interface Given {
  readonly name: string
  readonly figure: Figure
}

export interface Working {
  readonly name: string
  readonly formula: string
  readonly source: Source
  readonly cautions: readonly string[]
  readonly given: readonly Given[]
  /** What the method leaves out, in words. */
  readonly leavesOut?: string
  /** What would narrow the figure most, in words. */
  readonly settle?: string
}

export interface Figure<U extends string = string> {
  readonly value: Quantity<U>
  readonly unit: U
  readonly origin: Origin
  /** Leaf id → signed share of the standard uncertainty (k = 1), in `unit`. */
  readonly shares: Readonly<Record<string, number>>
  /** Of an input: who says so, e.g. "weighed 8 Oct 2025 on scale B". */
  readonly from?: string
  readonly working?: Working
}

/** One published formula. `takes` names the inputs with their units; `compute` gets their bare values. */
export interface Law<In extends Record<string, string>, U extends string> {
  readonly name: string
  readonly formula: string
  readonly source: Source
  readonly takes: In
  readonly unit: U
  readonly compute: (at: { readonly [K in keyof In]: number }) => number
  readonly cautions?: (at: { readonly [K in keyof In]: number }) => readonly string[]
  /** The law's own standard uncertainty in `unit`: doubt of the formula itself, kept as the leaf `law:<name>`. */
  readonly spread?: (at: { readonly [K in keyof In]: number }) => number
  readonly leavesOut?: string
}

/** An input figure: a value with its unit, origin and shares (none: taken as exact). */
export function given<U extends string>(
  value: number,
  unit: U,
  origin: Origin,
  shares: Readonly<Record<string, number>> = {},
  from?: string,
): Figure<U> {
  const figure = { value: value as Quantity<U>, unit, origin, shares }
  return from === undefined ? figure : { ...figure, from }
}

/** A published constant, exact unless it carries a share. */
export function constant<U extends string>(value: number, unit: U, from: string, shares: Readonly<Record<string, number>> = {}): Figure<U> {
  return given(value, unit, 'constant', shares, from)
}

/** Applies a law; carries every input's uncertainty through it, leaf by leaf. */
export function work<In extends Record<string, string>, U extends string>(
  law: Law<In, U>,
  inputs: { readonly [K in keyof In]: Figure<In[K]> },
): Figure<U> {
  const names = Object.keys(law.takes) as (keyof In & string)[]
  const at = Object.fromEntries(names.map((name) => [name, inputs[name].value as number])) as { [K in keyof In]: number }
  const shares: Record<string, number> = {}
  for (const name of names) {
    const leaves = Object.entries(inputs[name].shares)
    if (leaves.length === 0) continue
    const slope = slopeAt(law.compute, at, name, uncertainty(inputs[name]))
    for (const [leaf, share] of leaves) addShare(shares, leaf, slope * share)
  }
  const own = law.spread?.(at) ?? 0
  if (own !== 0) addShare(shares, `law:${law.name}`, own)
  return {
    value: law.compute(at) as Quantity<U>,
    unit: law.unit,
    origin: 'worked',
    shares,
    working: {
      name: law.name,
      formula: law.formula,
      source: law.source,
      cautions: law.cautions?.(at) ?? [],
      given: names.map((name) => ({ name, figure: inputs[name] })),
      ...(law.leavesOut === undefined ? {} : { leavesOut: law.leavesOut }),
    },
  }
}

/** The sum of figures of one unit. Shares of a common leaf add before they are squared. */
export function total<U extends string>(name: string, unit: U, parts: readonly Given[]): Figure<U> {
  let value = 0
  const shares: Record<string, number> = {}
  for (const { figure } of parts) {
    if (figure.unit !== unit) throw new Error(`total ${name}: ${figure.unit} among ${unit}`)
    value += figure.value
    for (const leaf in figure.shares) addShare(shares, leaf, figure.shares[leaf]!)
  }
  return {
    value: value as Quantity<U>,
    unit,
    origin: 'worked',
    shares,
    working: { name, formula: 'sum of the parts', source: adding, cautions: [], given: parts },
  }
}

/** a − b. What both hold cancels exactly, its doubt included. */
export function difference<U extends string>(
  name: string,
  a: Given & { readonly figure: Figure<U> },
  b: Given & { readonly figure: Figure<U> },
): Figure<U> {
  const net: Record<string, number> = { ...a.figure.shares }
  for (const [leaf, share] of Object.entries(b.figure.shares)) net[leaf] = (net[leaf] ?? 0) - share
  const shares = Object.fromEntries(Object.entries(net).filter(([, share]) => share !== 0))
  return {
    value: (a.figure.value - b.figure.value) as Quantity<U>,
    unit: a.figure.unit,
    origin: 'worked',
    shares,
    working: { name, formula: `${a.name} − ${b.name}`, source: adding, cautions: [], given: [a, b] },
  }
}

/** figure × factor, factor exact (pieces, a unit's conversion). */
export function scaled<U extends string, V extends string = U>(
  figure: Figure<U>,
  factor: number,
  unit: V,
  name: string,
  formula: string,
): Figure<V> {
  const shares: Record<string, number> = {}
  for (const leaf in figure.shares) shares[leaf] = figure.shares[leaf]! * factor
  return {
    value: (figure.value * factor) as Quantity<V>,
    unit,
    origin: figure.origin,
    shares,
    working: { name, formula, source: adding, cautions: [], given: [{ name, figure }] },
  }
}

/** One standard uncertainty (k = 1), in the figure's unit. */
export function uncertainty(figure: Figure): number {
  let squares = 0
  for (const leaf in figure.shares) squares += figure.shares[leaf]! ** 2
  return Math.sqrt(squares)
}

/** The band shown beside a figure: 2u, about 95 % (JCGM 100:2008, 6.2). */
export const band = (figure: Figure): number => 2 * uncertainty(figure)

const adding: Source = { cite: 'JCGM 100:2008, 5.1 and 5.2: shares of one leaf add, leaves add as squares', known: 'memory' }

function addShare(shares: Record<string, number>, leaf: string, share: number): void {
  shares[leaf] = (shares[leaf] ?? 0) + share
}

/** Central difference over half a standard uncertainty each way (or a millionth of the value): the slope where the doubt is. */
function slopeAt<A extends Record<string, number>>(compute: (at: A) => number, at: A, name: keyof A & string, u: number): number {
  const x = at[name]!
  const step = u > 0 ? u / 2 : Math.max(Math.abs(x) * 1e-6, 1e-9)
  const high = compute({ ...at, [name]: x + step })
  const low = compute({ ...at, [name]: x - step })
  return (high - low) / (2 * step)
}
