import { formatDuration } from '../../src-domain/figures/format.ts'
import { plain, show } from '../state/units.svelte.ts'

type Facts = Readonly<Record<string, string | number>>
const number = (facts: Facts, fact: string): number => Number(facts[fact] ?? 0)
const name = (facts: Facts): string => String(facts['name'] ?? '')
const kept = (facts: Facts, why: string): string => (name(facts) === '' ? why : `${name(facts)} ${why}`)

/** Sentences of the checks of water, fuel, light, power, room, load on the pack and local rules. */
export const provisionSentences: Readonly<Record<string, (facts: Facts) => string>> = {
  'dry-hours': () => 'say the longest dry stretch, or where there is water',
  'no-dry-stretch': () => 'no stretch is dry',
  'water-capacity': (f) => `say how much water ${name(f)} holds`,
  'all-water-is-safe': () => 'all water on the way is safe',
  treats: (f) => `say how much water ${name(f)} treats`,
  'nothing-treats-water': () => 'nothing to treat water goes along',
  legs: () => 'say the legs of the way',
  'leg-length': (f) => `say how long leg ${number(f, 'leg')} is`,
  'leg-climb': (f) => `say how much leg ${number(f, 'leg')} climbs`,
  'leg-descent': (f) => `say how much leg ${number(f, 'leg')} descends`,
  boils: (f) =>
    f['boils'] === undefined
      ? 'say how many boils a day'
      : `${rounded(number(f, 'boils'))} boils of ${plain(show.volume(number(f, 'litres')))}`,
  stove: () => 'no stove goes along',
  fuels: (f) => `say what ${name(f)} burns`,
  'cold-meals-only': () => 'nothing is heated',
  'no-gas-stove': () => 'no gas is burned',
  'gas-mix': () => 'say which gases are in the canister',
  cell: (f) => `say what cells ${name(f)} has`,
  charge: (f) => `say how much charge ${name(f)} holds`,
  'hours-a-day': (f) => `say how many hours a day ${name(f)} is used`,
  'no-dark-hours': () => 'no hour is dark',
  'no-device': () => 'nothing draws power',
  pack: () => 'no pack goes along',
  'pack-volume': (f) => `say how many litres ${name(f)} holds`,
  'packed-volume': (f) => `say what ${name(f)} weighs, or its packed volume`,
  'nothing-inside': () => 'nothing goes inside',
  'comfortable-load': (f) => `say what ${name(f)} carries in comfort`,
  mass: (f) => (number(f, 'more') > 0 ? `${name(f)} and ${number(f, 'more')} more are without a mass` : `${name(f)} is without a mass`),
  amount: (f) => `say how much ${name(f)} goes along`,
  'no-local-rules': () => 'no local rule is said',
  'rule-valve-only': (f) => kept(f, 'cannot be shut off'),
  'rule-no-flame': (f) => kept(f, 'burns, and nothing may'),
  'rule-no-wood': (f) => kept(f, 'burns wood'),
  'rule-no-alcohol': (f) => kept(f, 'burns alcohol'),
  'rule-hard-canister': (f) =>
    name(f) === '' ? 'no hard food canister goes along' : `${name(f)} of canister do not hold the fullest night`,
  'rule-by-air': (f) => kept(f, 'is over 160 Wh and may not fly'),
}

/** What is said beside need and have, never in place of them; an empty one is not said. */
export const asideSentences: Readonly<Record<string, (facts: Facts) => string>> = {
  'dry-stretch': (f) =>
    `${plain(show.distance(number(f, 'fromM')))} to ${plain(show.distance(number(f, 'toM')))}, ${formatDuration(number(f, 'hours') * 60)}${camps(number(f, 'dryCamps'))}`,
  boils: provisionSentences['boils']!,
  'gas-at-the-end': (f) => `${Math.round(number(f, 'left') * 100)} % left in the canister`,
  'dark-hours': (f) => `${formatDuration(number(f, 'walkingH') * 60)} walking, ${number(f, 'evenings')} evenings`,
  fullest: moment,
  heaviest: moment,
}

const camps = (dry: number): string => (dry === 0 ? '' : dry === 1 ? ' and a dry camp' : ` and ${dry} dry camps`)
const rounded = (value: number): string => String(Math.round(value * 10) / 10)

function moment(facts: Facts): string {
  return facts['what'] === 'resupply' ? `after the resupply of day ${Math.ceil(number(facts, 'day'))}` : ''
}
