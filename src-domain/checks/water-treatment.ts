import { given, total, type Figure, type Given } from '../figures/figure.ts'
import { itemLines, supplyLines, traitNumber, traitText, type KitTrait, type Loadout } from '../loadout/loadout.ts'
import { boilMinutes, treatmentCautions, type TreatmentKind } from '../laws/water-made-safe.ts'
import { WATER_MARGIN } from '../laws/water-carried.ts'
import { daysOf, type Brief, type Trip } from '../trips/brief.ts'
import { found, notAsked, unknown, type Check } from './check.ts'
import { enoughOf, nothing } from './margin.ts'
import { drawnNeed, USUAL_BOIL_l } from './water-needs.ts'

/**
 * Safe water: do the means carried treat all the water that is drawn from sources not known to be safe?
 *   have: Σ litres a piece or dose treats × pieces or doses; a filter: the life it has left
 *   need: litres drawn (water-needs.ts) · enough: 1.15 of it        l, at least
 * Boiling counts the litres of the brief's boils. Doses are the label's; clear water.
 * Source: provisions.md 2.5 (CDC, EPA, read). Caution: what each means does not stop stands in its caution; follow the label.
 */
export const waterTreatment: Check = {
  id: 'water-treatment',
  label: 'Safe water',
  duties: ['water-treatment', 'treatment-backup'],
  withoutBrief: false,
  find(asked) {
    const drawn = drawnNeed(asked)
    if (!drawn.ok) return unknown(drawn.missing, drawn.facts)
    if (drawn.litres === null || drawn.litres.value <= 0) return notAsked('all-water-is-safe')
    const means = meansOf(asked.loadout, boiledLitres(asked.brief, asked.trip))
    if ('silent' in means) return unknown('treats', { name: means.silent })
    return found({
      have: means.litres,
      need: drawn.litres,
      enough: enoughOf(drawn.litres, WATER_MARGIN),
      wants: 'at least',
      saying: means.kinds.length === 0 ? [{ code: 'nothing-treats-water' }] : [],
      cautions: [
        ...means.kinds.flatMap((kind) => treatmentCautions[kind]),
        ...boilCaution(asked.brief, means.kinds),
        'Nothing carried here removes salt, fuel, metals or the poisons of algae.',
      ],
    })
  },
}

interface Means {
  readonly litres: Figure<'l'>
  readonly kinds: readonly TreatmentKind[]
}

interface Thing {
  readonly name: string
  readonly traits: readonly KitTrait[]
}

/** All means, whoever carries them; `without` leaves one supply line out. A means that does not say how much it treats is named. */
export function meansOf(loadout: Loadout, boiledL: number, without: number | null = null): Means | { readonly silent: string } {
  const parts: Given[] = []
  const kinds = new Set<TreatmentKind>()
  const things: readonly (readonly [Thing, number, boolean])[] = [
    ...itemLines(loadout).map((line) => [line.item, line.pieces, line.item.duties.some(({ duty }) => treats.has(duty))] as const),
    ...supplyLines(loadout)
      .filter((line) => line.id !== without)
      .map((line) => [line.supply, line.amount ?? 0, false] as const),
  ]
  for (const [thing, count, asked] of things) {
    const kind = kindOf(thing)
    const each = traitNumber(thing, 'treats')
    if (kind === null && each === null && !asked) continue
    if (kind !== null) kinds.add(kind)
    if (kind === 'boil') parts.push({ name: thing.name, figure: given(boiledL, 'l', 'brief', {}, 'boils of the brief') })
    else if (each === null) return { silent: thing.name }
    else parts.push({ name: thing.name, figure: given(each * count, 'l', 'claimed', {}, 'as its label says') })
  }
  return {
    litres: parts.length === 0 ? nothing('l', 'no means of treatment') : total('water the means treat', 'l', parts),
    kinds: [...kinds],
  }
}

const treats: ReadonlySet<string> = new Set(['water-treatment', 'treatment-backup'])
const kinds: ReadonlySet<string> = new Set(Object.keys(treatmentCautions))

function kindOf(thing: Thing): TreatmentKind | null {
  const text = traitText(thing, 'treatment-kind')
  return kinds.has(text) ? (text as TreatmentKind) : null
}

/** Litres brought to the boil on the whole way. */
export function boiledLitres({ meals }: Brief, trip: Pick<Trip, 'startsOn' | 'endsOn'>): number {
  const days = daysOf(trip) ?? 1
  const hot = Array.from({ length: days }, (_, i) => i + 1).filter((day) => !meals.coldDays.includes(day)).length
  return (meals.boilsPerDay ?? 0) * (meals.litresPerBoil ?? USUAL_BOIL_l) * hot
}

function boilCaution(brief: Brief, found: readonly TreatmentKind[]): readonly string[] {
  if (!found.includes('boil')) return []
  const highest = Math.max(0, ...brief.legs.map((leg) => leg.endHeightM ?? 0))
  return boilMinutes(highest) === 3 ? ['Above 1000 m on this way: three minutes of rolling boil.'] : []
}
