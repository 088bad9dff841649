import type { Figure } from '../../src-domain/figures/figure.ts'
import * as format from '../../src-domain/figures/format.ts'
import type { MassUnit } from '../../src-domain/figures/units.ts'
import { settings } from './settings.svelte.ts'

export type { Shown } from '../../src-domain/figures/format.ts'
export { plain } from '../../src-domain/figures/format.ts'

/** Figures in the units the person chose. Reading one inside a component follows a change of units at once. */
export const show = {
  item: (mass: format.Mass, options?: format.ItemFormat) => format.formatItemMass(mass, settings.units, options),
  /** Pieces weighed together resolve one piece finer than the scale does. */
  pieces: (count: number, pieceMg: number) => format.formatPieces(count, pieceMg, settings.units, 100),
  total: (mass: format.Mass) => format.formatTotalMass(mass, settings.units),
  subtotal: (mass: format.Mass) => format.formatSubtotalMass(mass, settings.units),
  load: (mass: format.Mass) => format.formatLoadMass(mass, settings.units),
  body: (mass: format.Mass) => format.formatBodyMass(mass, settings.units),
  difference: (mass: format.Mass, options?: { readonly band?: boolean }) => format.formatMassDifference(mass, settings.units, options),
  figure: (figure: Figure, places?: number) => format.formatFigure(figure, settings.units, places),
  temp: (tempC: number) => format.formatTemp(tempC, settings.units),
  distance: (lengthM: number) => format.formatDistance(lengthM, settings.units),
  height: (lengthM: number) => format.formatHeight(lengthM, settings.units),
  volume: (volumeL: number) => format.formatVolume(volumeL, settings.units),
  money: (minor: number, currency: string) => format.formatMoney(minor, currency),
}

/** The unit a bare number stands for where a mass is typed. */
export const massUnit = (): MassUnit => (settings.units.mass === 'us' ? 'oz' : 'g')

const dayFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' })
/** A local date as it is written: `8 Oct 2025`. */
export const showDay = (day: string): string => dayFormat.format(new Date(`${day}T00:00:00Z`))
const rangeFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' })
/** Two local dates as they are written: `9–12 October 2026`. */
export const showDays = (from: string, to: string): string =>
  rangeFormat.formatRange(new Date(`${from}T00:00:00Z`), new Date(`${to}T00:00:00Z`)).replace(/\s–\s/, '–')
