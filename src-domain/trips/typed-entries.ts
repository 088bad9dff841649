/**
 * What a brief asks beside masses and lengths, typed freely: a place, a clock, minutes, a wind, a plain count.
 * Total like every parser here: a value within limits, or a fault that keeps what was typed.
 */
import { longestText, plainText } from '../closet/typed-number.ts'
import { fault, ok, type Outcome } from '../figures/fault.ts'
import { convertNumber } from '../figures/units.ts'

export interface Place {
  readonly latDeg: number
  readonly lonDeg: number
}

const unreadable = (text: string): Outcome<never> => fault('quantity.unreadable', { text: text.trim().slice(0, longestText) })
const tooLarge = (text: string): Outcome<never> => fault('quantity.too-large', { text: text.trim().slice(0, longestText) })
const plainOf = (text: string): string => (text.length > longestText * 4 ? '' : plainText(text)).toLowerCase()

/** Degrees, minutes and seconds of one axis, with a letter of the sky before or behind: `55.4`, `55°24′N`, `s 33 51.5`. */
const axis = String.raw`([nsew])? ?([+-]?\d{1,3}(?:\.\d+)?) ?[°d]? ?(?:(\d{1,2}(?:\.\d+)?) ?['m]? ?(?:(\d{1,2}(?:\.\d+)?) ?["s]? ?)?)?([nsew])?`
const twoAxes = new RegExp(`^${axis} ?[,; ] ?${axis}$`, 'u')
const oneAxis = new RegExp(`^${axis}$`, 'u')

/** Two coordinates, latitude first unless the letters say else: `55.4, -2.2`, `55°24′N 2°12′W`. WGS84, degrees. */
export function parsePlace(text: string): Outcome<Place> {
  const plain = plainOf(text)
  const halves = plain.split(/ ?[,;] ?/u)
  const found = halves.length === 2 ? halves.map((half) => oneAxis.exec(half)) : splitAxes(plain)
  if (found.length !== 2 || found.some((one) => one === null)) return unreadable(text)
  const [first, second] = found.map((one) => readAxis(one!.slice(1, 6)))
  if (first === undefined || second === undefined) return unreadable(text)
  const turned = first.isEast === true || second.isEast === false
  if (first.isEast !== null && first.isEast === second.isEast) return unreadable(text)
  const [lat, lon] = turned ? [second, first] : [first, second]
  if (Math.abs(lat.deg) > 90 || Math.abs(lon.deg) > 180) return tooLarge(text)
  return ok({ latDeg: lat.deg, lonDeg: lon.deg === 180 ? -180 : lon.deg })
}

/** Without a comma: two bare numbers, or two halves that each end in their letter. */
function splitAxes(plain: string): readonly (readonly string[] | null)[] {
  const lettered = /^(.*?[ns]) ?(.*[ew])$/u.exec(plain) ?? /^([ns].*?) ?([ew].*)$/u.exec(plain)
  if (lettered) return [oneAxis.exec(lettered[1]!), oneAxis.exec(lettered[2]!)]
  const bare = /^([+-]?\d{1,3}(?:\.\d+)?) ([+-]?\d{1,3}(?:\.\d+)?)$/u.exec(plain)
  if (bare) return [oneAxis.exec(bare[1]!), oneAxis.exec(bare[2]!)]
  const both = twoAxes.exec(plain)
  return both ? [both.slice(0, 6), ['', ...both.slice(6)]] : []
}

interface Axis {
  readonly deg: number
  /** null: no letter says. */
  readonly isEast: boolean | null
}

function readAxis([before, degrees = '', minutes, seconds, behind]: readonly (string | undefined)[]): Axis | undefined {
  const [min, sec] = [Number(minutes ?? 0), Number(seconds ?? 0)]
  if ((before && behind) || min >= 60 || sec >= 60) return undefined
  const letter = before ?? behind ?? ''
  const size = Math.abs(Number(degrees)) + min / 60 + sec / 3600
  const isNegative = degrees.startsWith('-')
  if (isNegative && letter !== '') return undefined
  return { deg: isNegative || letter === 's' || letter === 'w' ? -size : size, isEast: letter === '' ? null : /[ew]/u.test(letter) }
}

/** A time of the day in minutes: `08:30`, `8.30`, `830`, `8`, `8:30 pm`. */
export function parseClock(text: string): Outcome<number> {
  const found = /^(\d{1,2})(?:[:.h ]?(\d{2}))?(?: ?h)? ?(am|pm|a\.m\.|p\.m\.)?$/u.exec(plainOf(text))
  if (!found) return unreadable(text)
  const [, hours = '', minutes = '0', half] = found
  const hour = Number(hours)
  if (Number(minutes) > 59 || hour > (half === undefined ? 23 : 12) || (half !== undefined && hour === 0)) return unreadable(text)
  const turned = half === undefined ? hour : (hour % 12) + (half.startsWith('p') ? 12 : 0)
  return ok(turned * 60 + Number(minutes))
}

/** A span in minutes, up to `mostMin`: `45`, `45 min`, `1 h 30`, `1:30`, `1.5 h`. */
export function parseMinutes(text: string, mostMin = 1440): Outcome<number> {
  const plain = plainOf(text)
  const bare = /^(\d{1,5}(?:\.\d+)?) ?(?:m|min|mins|minutes?)?$/u.exec(plain)
  const hours = /^(\d{1,3}(?:\.\d+)?) ?(?:h|hrs?|hours?)(?: ?(\d{1,2}) ?(?:m|min|mins|minutes?)?)?$/u.exec(plain)
  const clock = /^(\d{1,3}):(\d{2})$/u.exec(plain)
  const said = hours ?? clock
  if (!bare && !said) return unreadable(text)
  const minutes = bare ? Number(bare[1]) : Number(said![1]) * 60 + Number(said![2] ?? 0)
  return minutes > mostMin ? tooLarge(text) : ok(Math.round(minutes))
}

const speedWords: Readonly<Record<string, 'km/h' | 'mph' | 'm/s' | 'knot'>> = {
  'km/h': 'km/h',
  kmh: 'km/h',
  kph: 'km/h',
  mph: 'mph',
  'm/s': 'm/s',
  kn: 'knot',
  kt: 'knot',
  kts: 'knot',
  knots: 'knot',
}
const KNOT_kmh = 1.852
const WINDIEST_kmh = 400

/** A wind in km/h: `30`, `30 km/h`, `18 mph`, `8 m/s`, `16 kn` (the international nautical mile is 1852 m by definition). */
export function parseWind(text: string, unit: 'km/h' | 'mph' = 'km/h'): Outcome<number> {
  const found = /^(\d{1,4}(?:[.,]\d+)?) ?(km\/h|kmh|kph|mph|m\/s|kn|kts?|knots)?$/u.exec(plainOf(text))
  if (!found) return unreadable(text)
  const value = Number(found[1]!.replace(',', '.'))
  const said = speedWords[found[2] ?? unit]!
  const kmh = said === 'knot' ? value * KNOT_kmh : convertNumber(value, said, 'km/h')
  return kmh > WINDIEST_kmh ? tooLarge(text) : ok(kmh)
}

/** A plain number from 0 to `most`, with at most `places` decimals. */
export function parseCount(text: string, most: number, places = 0): Outcome<number> {
  const found = /^(\d{1,9})(?:[.,](\d+))?$/u.exec(plainOf(text))
  if (!found || (found[2]?.replace(/0+$/u, '').length ?? 0) > places) return unreadable(text)
  const value = Number(`${found[1]}.${found[2] ?? '0'}`)
  return value > most ? tooLarge(text) : ok(value)
}
