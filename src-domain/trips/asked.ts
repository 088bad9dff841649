import { duties, dutyByCode, type Duty } from '../closet/vocabulary.ts'
import { itemLines, traitNumber, type ItemLine, type Loadout } from '../loadout/loadout.ts'
import { daysOf, nightsOf, type Brief, type Trip } from './brief.ts'

/**
 * Which duties a trip asks for (DESIGN.md, Starter codes).
 *   `+` by every night out · `*` too when the low is under 0 °C or the season is winter · `~` only ever a want
 *   the rest by the brief's own entries (a boil asks stove, pot, fire-starter and utensil; devices that outlast their cells ask power;
 *   water to be treated asks treatment), by a rule, or by the person.
 * A struck duty stays in the list with its reason; a safety duty without a reason is not struck.
 */
export type AskedBy = 'night' | 'cold' | 'boil' | 'device' | 'water' | 'rule' | 'person'

export interface Ask {
  readonly duty: string
  readonly as: 'must' | 'want'
  readonly by: AskedBy
  readonly safety: boolean
  /** Why it was struck; null: it stands. */
  readonly struck: string | null
}

type Around = Pick<Trip, 'startsOn' | 'endsOn' | 'season'>

/** In the order of the vocabulary, then own duties. `loadout` tells which devices go; without it none asks. */
export function asksOf(brief: Brief, trip: Around, loadout?: Loadout): readonly Ask[] {
  const why = new Map<string, AskedBy>()
  const ask = (by: AskedBy, codes: readonly string[]) => codes.forEach((code) => why.has(code) || why.set(code, by))
  ask('person', mustsOf(brief))
  if ((nightsOf(trip, brief) ?? 0) > 0) ask('night', starting('night'))
  if (isCold(brief, trip)) ask('cold', starting('cold'))
  if (boils(brief, trip)) ask('boil', ['stove', 'pot', 'fire-starter', 'utensil'])
  if (brief.sources.some((source) => !source.safe)) ask('water', ['water-vessel', 'water-treatment'])
  if (brief.rules.includes('hard-canister')) ask('rule', ['food-storage'])
  if (loadout !== undefined && devicesOutlast(loadout, daysOf(trip))) ask('device', ['power'])
  const wants = brief.asked.map(({ duty }) => duty).filter((duty) => !why.has(duty))
  return inOrder([...why.keys(), ...new Set(wants)]).map((duty) => askOf(duty, why.get(duty) ?? null, brief))
}

/** Asked and not struck. */
export const standing = (asks: readonly Ask[]): readonly Ask[] => asks.filter((ask) => ask.struck === null)

/** The lowest air temperature the brief names, °C; null: none. */
export function lowestC(brief: Brief): number | null {
  const lows = [brief.lowC, ...brief.days.map((day) => day.lowC)].filter((low) => low !== null)
  return lows.length === 0 ? null : Math.min(...lows)
}

const isCold = (brief: Brief, { season }: Around): boolean => season === 'winter' || (lowestC(brief) ?? 0) < 0

const starting = (asked: Duty['asked']): readonly string[] => duties.filter((duty) => duty.asked === asked).map(({ code }) => code)

/** A duty that is only ever a want stays one, whatever the brief calls it. */
const mustsOf = (brief: Brief): readonly string[] =>
  brief.asked.filter(({ duty, as }) => as === 'must' && dutyByCode.get(duty)?.asked !== 'want').map(({ duty }) => duty)

/** Something is heated on at least one day. */
function boils({ meals }: Brief, trip: Around): boolean {
  const days = daysOf(trip)
  return (meals.boilsPerDay ?? 0) > 0 && (days === null || meals.coldDays.filter((day) => day >= 1 && day <= days).length < days)
}

function askOf(duty: string, by: AskedBy | null, brief: Brief): Ask {
  const safety = dutyByCode.get(duty)?.safety ?? false
  const strike = brief.struck.find((one) => one.duty === duty && (!safety || one.reason.trim() !== ''))
  return { duty, as: by === null ? 'want' : 'must', by: by ?? 'person', safety, struck: strike?.reason ?? null }
}

function inOrder(codes: readonly string[]): readonly string[] {
  const asked = new Set(codes)
  return [...duties.map(({ code }) => code).filter((code) => asked.has(code)), ...codes.filter((code) => !dutyByCode.has(code))]
}

function devicesOutlast(loadout: Loadout, days: number | null): boolean {
  return itemLines(loadout).some(({ item }) => outlasts(item, days))
}

/** A device draws more over the days than its own cells hold, or they are not known; what gives light is asked for by light alone. */
export function outlasts(item: ItemLine['item'], days: number | null): boolean {
  const perDayWh = (traitNumber(item, 'draw') ?? 0) * (traitNumber(item, 'hours-a-day') ?? 0)
  return perDayWh > 0 && perDayWh * (days ?? 1) > (traitNumber(item, 'charge') ?? 0) && !serves(item, 'light') && !serves(item, 'power')
}

const serves = (item: ItemLine['item'], duty: string): boolean => item.duties.some((one) => one.duty === duty)
