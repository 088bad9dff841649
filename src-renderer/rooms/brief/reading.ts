/** What fields of the brief read: typed text in the person's units to a value of the domain, and a value to what stands in the field. */
import { parseEnergy, parseDate, parseLength, parseTemperature, parseVolume } from '../../../src-domain/closet/quantity.ts'
import { fault, ok, type Outcome } from '../../../src-domain/figures/fault.ts'
import { formatClock, formatDuration } from '../../../src-domain/figures/format.ts'
import { convertNumber } from '../../../src-domain/figures/units.ts'
import { given } from '../../../src-domain/figures/figure.ts'
import { parseClock, parseCount, parseMinutes, parsePlace, parseWind, type Place } from '../../../src-domain/trips/typed-entries.ts'
import { program } from '../../state/program.svelte.ts'
import { settings } from '../../state/settings.svelte.ts'
import { plain, show, showDay } from '../../state/units.svelte.ts'

const isUs = (): boolean => settings.units.length === 'us'
const within = <T extends number>(read: Outcome<T>, least: number, most: number, text: string): Outcome<T> =>
  !read.ok || (read.value >= least && read.value <= most) ? read : fault('quantity.too-large', { text })

export const readDistance = (text: string): Outcome<number> => {
  const read = parseLength(text, { unit: isUs() ? 'mi' : 'km' })
  return read.ok ? within(ok(read.value.lengthM), 0, 10_000_000, text) : read
}
/** Heights of the land, from the Dead Sea up. */
export const readHeight = (text: string): Outcome<number> => {
  const isBelow = /^[-−]/u.test(text.trim())
  const read = parseLength(isBelow ? text.trim().slice(1) : text, { unit: isUs() ? 'ft' : 'm' })
  return read.ok ? within(ok(isBelow ? -read.value.lengthM : read.value.lengthM), -500, 9000, text) : read
}
export const readClimb = (text: string): Outcome<number> => {
  const read = parseLength(text, { unit: isUs() ? 'ft' : 'm' })
  return read.ok ? within(ok(read.value.lengthM), 0, 100_000, text) : read
}
export const readTemp = (text: string): Outcome<number> => {
  const read = parseTemperature(text, { unit: settings.units.temp === 'us' ? 'degF' : 'degC' })
  return read.ok ? within(ok(read.value.tempC), -90, 70, text) : read
}
export const readLitres = (text: string): Outcome<number> => {
  const read = parseVolume(text, { unit: settings.units.volume === 'us' ? 'qt' : 'l' })
  return read.ok ? within(ok(read.value.volumeL), 0, 20, text) : read
}
export const readKcal = (text: string): Outcome<number> => {
  const read = parseEnergy(text, { unit: 'kcal' })
  return read.ok ? within(ok(Math.round(convertNumber(read.value.energyJ, 'J', 'kcal'))), 0, 200_000, text) : read
}
export const readDay = (text: string): Outcome<string> => {
  const read = parseDate(text, { today: program.state?.today ?? '2000-01-01' })
  if (!read.ok) return read
  return read.value.precision === 'day' ? ok(read.value.date) : fault('quantity.unreadable', { text })
}
export const readZone = (text: string): Outcome<string> => {
  try {
    return ok(new Intl.DateTimeFormat('en', { timeZone: text }).resolvedOptions().timeZone)
  } catch {
    return fault('quantity.unreadable', { text })
  }
}
export const readClock = parseClock
export const readMinutes = (text: string): Outcome<number> => parseMinutes(text)
export const readHours = (text: string): Outcome<number> => {
  const bare = /^\d+([.,]\d+)?$/u.test(text.trim()) ? `${text.trim().replace(',', '.')} h` : text
  const read = parseMinutes(bare, 6000)
  return read.ok ? ok(read.value / 60) : read
}
export const readWind = (text: string): Outcome<number> => parseWind(text, isUs() ? 'mph' : 'km/h')
export const readPlace = (text: string): Outcome<Place> => parsePlace(text)
export const readCount =
  (least: number, most: number, places = 0) =>
  (text: string): Outcome<number> =>
    within(parseCount(text, most, places), least, most, text)

const said = <T>(value: T | null, of: (value: T) => string): string => (value === null ? '' : of(value))
export const distanceText = (value: number | null): string => said(value, (m) => plain(show.distance(m)))
export const heightText = (value: number | null): string => said(value, (m) => plain(show.height(m)))
export const tempText = (value: number | null): string => said(value, (c) => plain(show.temp(c)))
export const clockText = (value: number | null): string => said(value, formatClock)
export const minutesText = (value: number | null): string => said(value, formatDuration)
export const hoursText = (value: number | null): string => said(value, (h) => formatDuration(h * 60))
export const dayText = (value: string | null): string => said(value, showDay)
export const countText = (value: number | null): string => said(value, String)
export const litresText = (value: number | null): string => said(value, (l) => plain(show.volume(l)))
export const windText = (value: number | null): string => said(value, (kmh) => plain(show.figure(given(kmh, 'km/h', 'given'), 0)))
export const placeText = (value: Place | null): string =>
  said(value, ({ latDeg, lonDeg }) => `${latDeg.toFixed(4)}, ${lonDeg.toFixed(4)}`.replaceAll('-', '−'))
