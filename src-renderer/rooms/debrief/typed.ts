import { parseMass, parseTemperature, parseVolume } from '../../../src-domain/closet/quantity.ts'
import { parseDuration } from '../../../src-domain/trips/typed-duration.ts'
import { settings } from '../../state/settings.svelte.ts'
import { massUnit } from '../../state/units.svelte.ts'
import { faultWords } from '../../words/faults.ts'

/** What was typed in a field of the debrief: a value, nothing (cleared: nobody knows), or what is wrong with it. */
export type Typed = { readonly ok: true; readonly value: number | null } | { readonly ok: false; readonly problem: string }

const none: Typed = { ok: true, value: null }

export function typedMinutes(text: string): Typed {
  if (text === '') return none
  const read = parseDuration(text)
  return read.ok ? read : { ok: false, problem: faultWords(read.fault) }
}

export function typedTempC(text: string): Typed {
  if (text === '') return none
  const read = parseTemperature(text, { unit: settings.units.temp === 'us' ? 'degF' : 'degC' })
  return read.ok ? { ok: true, value: read.value.tempC } : { ok: false, problem: faultWords(read.fault) }
}

export function typedMl(text: string): Typed {
  if (text === '') return none
  const read = parseVolume(text, { unit: 'l' })
  return read.ok ? { ok: true, value: Math.round(read.value.volumeL * 1000) } : { ok: false, problem: faultWords(read.fault) }
}

export function typedMg(text: string): Typed {
  if (text === '') return none
  const read = parseMass(text, { unit: massUnit() })
  return read.ok ? { ok: true, value: read.value.massMg } : { ok: false, problem: faultWords(read.fault) }
}

/** A plain number within limits; a comma counts as the decimal point, U+2212 as minus, a unit behind it is passed over. */
export function typedPlain(text: string, most: number): Typed {
  if (text === '') return none
  const value = Number(text.replace(',', '.').replace(/\s*(km\/h|km|h)$/, ''))
  return Number.isFinite(value) && value >= 0 && value <= most ? { ok: true, value } : { ok: false, problem: `Between 0 and ${most}.` }
}
