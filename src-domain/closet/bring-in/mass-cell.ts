/** One cell of mass, or two cells of pounds and ounces, read with the column's unit. Reading is remembered: sheets repeat themselves. */
import type { MassUnit } from '../../figures/units.ts'
import type { DecimalMark, Parsed, TypedMass } from '../quantity.ts'
import { parseMass, parseMassInTwo } from '../quantity.ts'
import type { SheetMassFrom } from './choices.ts'
import type { ProblemCode, Told } from './preview.ts'
import { isNothing } from './tidy.ts'

export interface Reading {
  readonly text: string
  readonly mg: number
}

export type MassCell =
  | { readonly kind: 'none' }
  | { readonly kind: 'zero' }
  | {
      readonly kind: 'mass'
      readonly mg: number
      readonly origin: SheetMassFrom | null
      readonly unit: MassUnit
      readonly unitInCell: boolean
      /** One step of its last digit. */
      readonly step_mg: number
    }
  | { readonly kind: 'problem'; readonly problem: Told<ProblemCode>; readonly readings: readonly Reading[] }

export interface MassReader {
  one(text: string, unit: MassUnit): MassCell
  poundsAndOunces(pounds: string, ounces: string): MassCell
}

export function massReader(decimal: DecimalMark | undefined): MassReader {
  const known = new Map<string, MassCell>()
  const remembered = (key: string, read: () => MassCell): MassCell => {
    const before = known.get(key)
    if (before) return before
    const made = read()
    if (known.size < 50_000) known.set(key, made)
    return made
  }
  const mark = decimal === undefined ? {} : { decimal }
  return {
    one: (text, unit) =>
      remembered(`${unit} ${text}`, () => (isNothing(text) ? none : cellOf(text, parseMass(text, { unit, ...mark }), unit, mark))),
    poundsAndOunces: (pounds, ounces) => remembered(`${pounds}\n${ounces}`, () => inTwo(pounds, ounces, decimal)),
  }
}

const none: MassCell = { kind: 'none' }

function inTwo(pounds: string, ounces: string, decimal: DecimalMark | undefined): MassCell {
  const [head, tail] = [isNothing(pounds) ? '' : pounds, isNothing(ounces) ? '' : ounces]
  if (head === '' && tail === '') return none
  const text = head === '' ? `${tail} oz` : tail === '' ? `${head} lb` : `${head} lb ${tail} oz`
  return cellOf(text, parseMassInTwo(head, tail, 'lb', 'oz', decimal), 'oz', decimal === undefined ? {} : { decimal })
}

function cellOf(text: string, parsed: Parsed<TypedMass>, unit: MassUnit, mark: { decimal?: DecimalMark }): MassCell {
  if (!parsed.ok) return problemOf(text, parsed, unit, mark)
  const { massMg, origin, unitAssumed, stepMg } = parsed.value
  if (massMg === 0) return { kind: 'zero' }
  // `~` is how this program shows a claim; in a person's own sheet it says "about".
  const said = text.startsWith('~') ? 'estimated' : (origin ?? null)
  return { kind: 'mass', mg: massMg, origin: said, unit: parsed.value.unit, unitInCell: !unitAssumed, step_mg: stepMg ?? 0 }
}

const codes: Readonly<Record<string, ProblemCode>> = {
  'quantity.ambiguous': 'mass-ambiguous',
  'quantity.negative': 'mass-below-zero',
  'quantity.too-large': 'mass-too-large',
}

function problemOf(
  text: string,
  refused: Exclude<Parsed<TypedMass>, { ok: true }>,
  unit: MassUnit,
  mark: { decimal?: DecimalMark },
): MassCell {
  const readings = (refused.readings ?? []).flatMap((one): Reading[] => {
    const again = parseMass(one, { unit, ...mark })
    return again.ok ? [{ text: one, mg: again.value.massMg }] : []
  })
  const code = codes[refused.fault.code] ?? 'mass-unreadable'
  const facts = {
    text: text.slice(0, 80),
    ...Object.fromEntries(readings.slice(0, 2).map((one, at) => [at === 0 ? 'first' : 'second', one.text])),
  }
  return { kind: 'problem', problem: { code, facts }, readings }
}
