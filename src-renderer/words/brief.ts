import type { Ask } from '../../src-domain/trips/asked.ts'
import type { LocalRule, RainClass, Resupply, Terrain, WaterSource } from '../../src-domain/trips/brief.ts'
import type { HeightsFrom } from '../../src-domain/trips/track-heights.ts'
import type { Fault } from '../../src-domain/figures/fault.ts'
import { faultWords } from './faults.ts'

export const terrainWords: Readonly<Record<Terrain, string>> = {
  road: 'road',
  track: 'track',
  path: 'path',
  rough: 'rough path',
  brush: 'brush',
  bog: 'bog',
  sand: 'sand',
  rock: 'rock',
  snow: 'snow',
}

export const rainWords: Readonly<Record<RainClass, string>> = { none: 'none', showers: 'showers', wet: 'wet days' }
export const sunWords = { full: 'full sun', half: 'half', shade: 'shade' } as const
export const effortWords = { easy: 'easy', moderate: 'moderate', hard: 'hard' } as const
export const sureWords: Readonly<Record<WaterSource['sure'], string>> = { sure: 'sure', likely: 'likely', unsure: 'not confirmed' }
export const resupplyWords: Readonly<Record<Resupply['what'][number], string>> = { food: 'food', fuel: 'fuel', power: 'power' }

export const ruleWords: Readonly<Record<LocalRule, string>> = {
  'valve-only': 'only stoves with a valve',
  'no-flame': 'no open flame at all',
  'no-wood': 'no wood fires',
  'no-alcohol': 'no alcohol burners',
  'hard-canister': 'food in a hard canister',
  permit: 'a permit is needed',
  'by-air': 'the way there is by air',
  'protected-water': 'protected water, or drought',
  'cook-in-shelter': 'cooking inside the shelter',
}

export const heightsWords: Readonly<Record<HeightsFrom, string>> = {
  satellite: 'satellite receiver',
  barometer: 'barometer',
  terrain: 'terrain model',
}

export const askedByWords: Readonly<Record<Ask['by'], string>> = {
  night: 'a night out',
  cold: 'the cold',
  boil: 'boils',
  device: 'devices',
  water: 'the water',
  rule: 'a rule',
  person: 'you',
}

/** What a field wants, with an example: said after what is wrong. */
const wants = {
  date: 'a day, such as 9 Oct 2026',
  zone: 'a time zone, such as Europe/Paris',
  place: 'latitude and longitude, such as 55.4, −2.2',
  distance: 'a length, such as 16 km or 9.9 mi',
  height: 'a height, such as 830 m or 2,720 ft',
  clock: 'a time, such as 08:30',
  minutes: 'a time span, such as 30 min or 1 h 15',
  temp: 'a temperature, such as −2 °C or 28 °F',
  wind: 'a wind, such as 30 km/h, 18 mph or 8 m/s',
  count: 'a number, such as 2',
  litres: 'a volume, such as 0.6 L',
  energy: 'an energy, such as 1200 kcal',
  camps: 'places along the way, such as 16, 34, 49',
} as const
export type Wanted = keyof typeof wants

/** What is wrong with a field, named, and what to write. */
export function fieldFault(label: string, fault: Fault, wanted: Wanted): string {
  const typed = fault.facts['text'] === undefined ? '' : `“${fault.facts['text']}” `
  switch (fault.code) {
    case 'quantity.unreadable':
    case 'quantity.unit-unknown':
    case 'quantity.unit-missing':
      return `${label}: ${typed}cannot be read. Write ${wants[wanted]}.`
    case 'quantity.ambiguous':
      return `${label}: ${typed}can be read two ways, ${fault.facts['first'] ?? ''} or ${fault.facts['second'] ?? ''}. Write ${wants[wanted]}.`
    case 'quantity.negative':
      return `${label}: ${typed}is below zero. Write ${wants[wanted]}.`
    case 'quantity.too-large':
      return `${label}: ${typed}is more than this field holds. Write ${wants[wanted]}.`
    default:
      return `${label}: ${faultWords(fault)}`
  }
}

export const briefWords = {
  foot: 'Underlined figures are yours to change; the rest follow from them. A check waits rather than guesses.',
  emptyWay: 'No way yet. Bring in a track, or type the legs day by day.',
  dateOrder: 'It ends before it starts: set the last day to the first or later.',
  noTrack: 'A track brings its heights; without one the legs alone are drawn.',
  noLoadout: 'Make a loadout for this trip, and its checks say here what they wait for.',
  nothingUnknown: 'No check waits for anything.',
  noNights: 'Give the first and last day, or the nights out, and each night stands here.',
  noWater: 'No source is listed. List them, or say the longest dry stretch.',
  noRules: 'Tick what holds there. Ask locally: rules change with the season.',
  strikeSafety: 'This is for safety. Say why it stays home; the reason stands beside the check.',
  carriedUp: 'Carried up at 6.5 °C a km, no credit for going down. Open a figure for its working.',
  reading: 'Reading the track…',
} as const
