import { given, total, type Given } from '../figures/figure.ts'
import { partsBetween } from '../loadout/amounts.ts'
import { covering, itemLines, supplyLines, traitNumber, traitText, type Loadout } from '../loadout/loadout.ts'
import { byAir } from '../laws/cell-energy.ts'
import { CANISTER_FILL, CANISTER_MARGIN, canisterRoom, mustFitL, TOILETRIES_l } from '../laws/food-canister.ts'
import { foodDays } from '../laws/meals-counted.ts'
import { ruleCautions, stoveMeets, type RuledStove, type StoveRule } from '../laws/trip-rules.ts'
import { nightsOf, type LocalRule } from '../trips/brief.ts'
import { USUAL_START_MINUTE } from '../trips/dark-hours.ts'
import { found, notAsked, unknown, type Asked, type Check, type Saying } from './check.ts'
import { daysCount } from './fuel.ts'
import { foodLitres } from './packed-things.ts'

/**
 * Local rules: how many of those a kit can meet does this one meet?
 *   have: met · need = enough: asked        count
 *   valve only, no flame, no wood, no alcohol: every stove carried keeps it · hard canister: its room is 1.05 of what must fit on the fullest night
 *   · by air: no cell over 160 Wh
 * Permits, protected water and cooking in the shelter are cautions: no kit meets them. Source: provisions.md 3, 4.5 and 6. Cautions, not law.
 */
export const rules: Check = {
  id: 'rules',
  label: 'Local rules',
  duties: ['stove', 'food-storage'],
  withoutBrief: false,
  find(asked) {
    const { brief, loadout } = asked
    if (brief.rules.length === 0) return notAsked('no-local-rules')
    const met: Given[] = []
    const saying: Saying[] = []
    for (const rule of brief.rules.filter(isCounted)) {
      const answer = answers[rule](asked, loadout)
      if (answer.kind === 'unknown')
        return unknown(answer.missing, answer.name === undefined ? undefined : { name: answer.name }, cautionsOf(brief.rules))
      met.push({ name: rule, figure: given(answer.kind === 'met' ? 1 : 0, 'count', 'worked') })
      if (answer.kind === 'broken') saying.push({ code: `rule-${rule}`, facts: { name: answer.name } })
    }
    const need = given(met.length, 'count', 'given', {}, 'local rules a kit can keep')
    return found({
      have: total('rules kept', 'count', met),
      need,
      enough: need,
      wants: 'at least',
      counts: true,
      saying,
      cautions: cautionsOf(brief.rules),
    })
  },
}

const cautionsOf = (asked: readonly LocalRule[]): readonly string[] => asked.flatMap((rule) => ruleCautions[rule] ?? [])

type Counted = StoveRule | 'hard-canister' | 'by-air'
type Answer =
  | { readonly kind: 'met' }
  | { readonly kind: 'broken'; readonly name: string }
  | { readonly kind: 'unknown'; readonly missing: string; readonly name?: string }

const met: Answer = { kind: 'met' }

const answers: Readonly<Record<Counted, (asked: Asked, loadout: Loadout) => Answer>> = {
  'valve-only': (_, loadout) => stoves('valve-only', loadout),
  'no-flame': (_, loadout) => stoves('no-flame', loadout),
  'no-wood': (_, loadout) => stoves('no-wood', loadout),
  'no-alcohol': (_, loadout) => stoves('no-alcohol', loadout),
  'hard-canister': hardCanister,
  'by-air': (_, loadout) => flying(loadout),
}

const isCounted = (rule: LocalRule): rule is Counted => Object.hasOwn(answers, rule)

function stoves(rule: StoveRule, loadout: Loadout): Answer {
  for (const { item } of covering(loadout, 'stove')) {
    const valve = traitNumber(item, 'valve')
    const stove: RuledStove = { fuel: traitText(item, 'fuels'), valve: valve === null ? null : valve === 1 }
    if (stove.fuel === '' && rule !== 'no-flame') return { kind: 'unknown', missing: 'fuels', name: item.name }
    if (!stoveMeets(rule, stove)) return { kind: 'broken', name: item.name }
  }
  return met
}

function flying(loadout: Loadout): Answer {
  const over = itemLines(loadout).find((line) => byAir(traitNumber(line.item, 'charge') ?? 0) === 'no')
  return over === undefined ? met : { kind: 'broken', name: over.item.name }
}

function hardCanister(asked: Asked, loadout: Loadout): Answer {
  const nights = nightsOf(asked.trip, asked.brief)
  if (nights === null) return { kind: 'unknown', missing: 'nights' }
  if (nights === 0) return met
  const ratedL = itemLines(loadout).reduce((sum, line) => sum + (traitNumber(line.item, 'hard-canister') ?? 0) * line.pieces, 0)
  if (ratedL === 0) return { kind: 'broken', name: '' }
  const must = fullestNightL(asked, nights)
  if ('missing' in must) return { kind: 'unknown', missing: 'amount', name: must.missing }
  return canisterRoom.compute({ ratedL, fill: CANISTER_FILL }) >= (1 + CANISTER_MARGIN) * must.litres
    ? met
    : { kind: 'broken', name: `${ratedL} l` }
}

/** The most that must fit on any night: what the first day does not eat, and all that is bought on the night after it. */
function fullestNightL(asked: Asked, nights: number): { readonly litres: number } | { readonly missing: string } {
  const { brief, trip, loadout } = asked
  const food = supplyLines(loadout).filter((line) => line.supply.kitArea === 'food')
  const silent = food.find((line) => foodLitres(line) === null)
  if (silent !== undefined) return { missing: silent.supply.name }
  const litres = food.reduce((sum, line) => sum + foodLitres(line)!, 0)
  const days = daysCount(brief, trip) ?? nights + 1
  const start = brief.days.find((one) => one.day === 1)?.startMinute ?? USUAL_START_MINUTE
  const shares = foodDays(days, start, LAST_DAY_MINUTE)
  const [first] = partsBetween('food', { brief, trip })
  const untilBox = first === undefined || first.toDay >= days ? shares : shares.slice(0, Math.max(1, Math.ceil(first.toDay)))
  const daysOfFood = untilBox.reduce((sum, share) => sum + share, 0)
  const night = mustFitL({
    daysOfFood,
    firstDay: untilBox[0]!,
    nights,
    litresADay: litres / daysOfFood,
    toiletriesL: TOILETRIES_l,
    resupplies: [],
  })
  return { litres: Math.max(...night, ...(untilBox === shares ? [] : [litres + TOILETRIES_l])) }
}

/** The end of the last day where none is said: an afternoon (choice). */
const LAST_DAY_MINUTE = 15 * 60
