import { fault, ok, type Outcome } from '../figures/fault.ts'
import { convertNumber, units, type Unit } from '../figures/units.ts'
import { parseEnergy, parseMass, parseResistance, parseTemperature, parseVolume } from './quantity.ts'
import type { Trait } from './vocabulary.ts'

/** A trait's value as the store holds it: a number in the trait's unit, or a word; beside it what was typed. */
export interface ReadTrait {
  readonly number: number | null
  readonly text: string
  readonly typed: string
  readonly typedUnit: string
}

/**
 * Reads a typed trait value: `7.5 l`, `32 °F`, `R 4.5`, `yes`, a choice. A bare number is in the trait's own unit,
 * except a thermal resistance, where a bare number below 1.3 could be either unit and is asked about.
 */
export function readTrait(trait: Pick<Trait, 'code' | 'unit' | 'choices'>, text: string): Outcome<ReadTrait> {
  const typed = text.trim()
  if (typed === '') return fault('input.missing', { field: trait.code })
  if (trait.choices)
    return trait.choices.includes(typed) ? ok({ number: null, text: typed, typed, typedUnit: '' }) : fault('quantity.unreadable', { typed })
  if (trait.unit === 'yes')
    return /^(yes|no)$/i.test(typed)
      ? ok({ number: /^yes$/i.test(typed) ? 1 : 0, text: '', typed, typedUnit: '' })
      : fault('quantity.unreadable', { typed })
  if (trait.unit === 'text' || trait.unit === 'date') return ok({ number: null, text: typed, typed, typedUnit: '' })
  return readNumber(trait.unit, typed)
}

function readNumber(unit: string, typed: string): Outcome<ReadTrait> {
  switch (unit) {
    case 'degC': {
      const read = parseTemperature(typed)
      return read.ok ? ok({ number: read.value.tempC, text: '', typed, typedUnit: read.value.unit }) : read
    }
    case 'm2K/W': {
      const read = parseResistance(typed)
      return read.ok ? ok({ number: read.value.rsi_m2K_W, text: '', typed, typedUnit: read.value.unit }) : read
    }
    case 'l': {
      const read = parseVolume(typed)
      return read.ok ? ok({ number: read.value.volumeL, text: '', typed, typedUnit: read.value.unit }) : read
    }
    case 'Wh': {
      const read = parseEnergy(typed, { unit: 'Wh' })
      return read.ok ? ok({ number: read.value.energyJ / 3600, text: '', typed, typedUnit: read.value.unit }) : read
    }
    case 'g':
    case 'kg': {
      const read = parseMass(typed, { unit })
      return read.ok ? ok({ number: read.value.massMg / (unit === 'g' ? 1e3 : 1e6), text: '', typed, typedUnit: read.value.unit }) : read
    }
    default:
      return readPlain(unit, typed)
  }
}

/** A number, and after it nothing, the trait's own unit, or one that converts to it. */
function readPlain(unit: string, typed: string): Outcome<ReadTrait> {
  const match = /^([+\-−]?\d+(?:[.,]\d+)?(?:[eE][+-]?\d+)?)\s*(\S.*)?$/.exec(typed)
  if (!match) return fault('quantity.unreadable', { typed })
  const value = Number(match[1]!.replace('−', '-').replace(',', '.'))
  const said = (match[2] ?? '').trim()
  if (said === '' || said.replace(/[²\s]/g, '2') === unit || said === unit) return ok({ number: value, text: '', typed, typedUnit: unit })
  if (unit === '1' && said === '%') return ok({ number: value / 100, text: '', typed, typedUnit: '%' })
  if (isUnit(said) && isUnit(unit) && units[said].kind === units[unit].kind) {
    const converted = convertNumber(value, said, unit)
    if (Number.isFinite(converted)) return ok({ number: converted, text: '', typed, typedUnit: said })
  }
  return fault('quantity.unit-unknown', { typed })
}

const isUnit = (word: string): word is Unit => Object.hasOwn(units, word)
