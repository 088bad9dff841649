/**
 * Which things each check reads, and which way they move it: what a cut may leave out of account.
 *   helps: more of it never makes the check worse · hurts: less of it never does · either: nothing is taken for granted
 * Read off the checks' own rules (src-domain/checks), and tested on random kits: a thing that is said to help never turns enough into not enough.
 */
import { worthOf, type CoverDuty } from '../laws/rain-cover.ts'
import { restDuties, walkingDuties } from '../checks/clothes.ts'
import { traitNumber, traitText, type KitItem } from '../loadout/loadout.ts'
import { serves } from '../loadout/going.ts'

export type Way = 'helps' | 'hurts' | 'either'

/** null: the check does not read it. */
export type Reads = (item: KitItem) => Way | null

const has = (item: KitItem, ...codes: readonly string[]): boolean => item.traits.some(({ code }) => codes.includes(code))
const isTop = (item: KitItem): boolean => serves(item, 'top-insulation')
const isHammock = (item: KitItem): boolean => traitText(item, 'form') === 'hammock'

const bed: Reads = (item) => {
  if (isTop(item) || isHammock(item)) return 'either'
  if (serves(item, 'ground-insulation', 'hat', 'base-layer', 'dry-base', 'big-jacket', 'mid-layer', 'legwear') || has(item, 'liner'))
    return 'helps'
  return null
}

const ground: Reads = (item) => (isTop(item) || isHammock(item) ? 'either' : serves(item, 'ground-insulation') ? 'helps' : null)

/** A shell that lets more air through than the usual one may stand for it, and then makes the whole airier. */
const clothing =
  (duties: readonly string[]): Reads =>
  (item) =>
    !serves(item, ...duties) ? null : serves(item, 'wind-shell', 'rain-shell') && has(item, 'air-permeability') ? 'either' : 'helps'

const cover =
  (duty: CoverDuty): Reads =>
  (item) =>
    serves(item, duty) || worthOf(duty, traitText(item, 'cover-kind')) !== null ? 'helps' : null

const kitchen: Reads = (item) =>
  serves(item, 'stove', 'pot', 'windscreen', 'fuel-holder') || has(item, 'gas-mix', 'net-full') ? 'either' : null

const lamps: Reads = (item) => (serves(item, 'light', 'spare-light') ? 'helps' : null)
const powered: Reads = (item) =>
  (traitNumber(item, 'draw') ?? 0) > 0
    ? 'either'
    : serves(item, 'power', 'light', 'spare-light') || has(item, 'charge', 'port-efficiency')
      ? 'either'
      : null

const rules: Reads = (item) => {
  if (has(item, 'hard-canister')) return 'helps'
  return serves(item, 'stove') || has(item, 'charge') ? 'hurts' : null
}

const needs: Reads = (item) =>
  item.needs.length > 0 || (traitNumber(item, 'draw') ?? 0) > 0 ? 'either' : item.duties.length > 0 ? 'helps' : null

export const readsOf: Readonly<Record<string, Reads>> = {
  'sleep-warmth': bed,
  'ground-warmth': ground,
  'walk-warmth': clothing([...walkingDuties, 'big-jacket']),
  'camp-warmth': clothing(restDuties),
  'stop-warmth': clothing(restDuties),
  'rain-cover': cover('rain-shell'),
  'leg-cover': cover('rain-legs'),
  'dry-store': cover('dry-store'),
  'water-carry': (item) => (has(item, 'water-capacity') || serves(item, 'water-vessel') ? 'helps' : null),
  'water-treatment': (item) =>
    serves(item, 'water-treatment', 'treatment-backup') || has(item, 'treats', 'treatment-kind') ? 'helps' : null,
  fuel: kitchen,
  'gas-cold': kitchen,
  light: lamps,
  power: powered,
  room: () => 'either',
  'pack-load': () => 'either',
  rules,
  safety: needs,
  duties: needs,
}

/** Checks that read what is used up as the brief fills it in: they are asked of the loadout filled anew. */
export const readsSupplies: ReadonlySet<string> = new Set([
  'water-treatment',
  'fuel',
  'gas-cold',
  'light',
  'power',
  'room',
  'pack-load',
  'rules',
])

/** Things by which the amount of what is used up changes: the stove and its kit, vessels, means of treatment, lamps and devices. */
export const changesUsedUp: Reads = (item) =>
  kitchen(item) ?? lamps(item) ?? powered(item) ?? readsOf['water-treatment']!(item) ?? readsOf['water-carry']!(item)
