import { groundAskedR, type Candidate, type Wanted } from '../../src-domain/choosing/candidate.ts'

/**
 * Random closets, seeded, shaped like real ones: one class of things for each duty, better traits with mass and noise, shelters that reserve
 * stakes and share poles, stoves that need a pot, beds of tops and pads, packs by room and load. The recipe is the one the timings were set on.
 */
export interface RandomCloset {
  readonly candidates: readonly Candidate[]
  readonly wanted: Wanted
}

type Chance = () => number

export function mulberry(seed: number): Chance {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const named = ['shelter', 'top', 'pad', 'pack', 'stove', 'pot', 'stake', 'pole', 'torso', 'water'] as const
const ranges: Readonly<Record<string, readonly [number, number]>> = {
  shelter: [400, 2500],
  top: [400, 1600],
  pad: [80, 700],
  pack: [300, 2400],
}

export function randomCloset(seed: number, items: number, duties: number): RandomCloset {
  const chance = mulberry(seed)
  const classes = Array.from({ length: Math.max(4, duties) }, (_, i) => named[i] ?? `duty${i}`)
  const sleep = { a: 1.2 * whole(chance, 22, 40), b: 0, c: whole(chance, 12, 16) }
  const bed = { ...sleep, b: sleep.a / 3 }
  const made = Array.from({ length: items }, (_, i) => {
    const at = i < 2 * classes.length ? i % classes.length : Math.floor(chance() ** 1.3 * classes.length)
    return thing(chance, `${classes[at]!}-${i}`, classes[at]!, classes, bed)
  })
  const mostPadR = made.reduce((sum, one) => sum + (one.padR ?? 0) * one.pieces, 0)
  const candidates = made.map((one) => (one.topR === undefined ? one : { ...one, topAsksR: groundAskedR(one.topR, bed, mostPadR) }))
  return { candidates, wanted: wantedFor(chance, classes, candidates) }
}

const whole = (chance: Chance, low: number, high: number): number => Math.round(low + chance() * (high - low))

type Made = Candidate & { readonly topR?: number }

function thing(
  chance: Chance,
  id: string,
  kind: string,
  classes: readonly string[],
  bed: { readonly a: number; readonly c: number },
): Made {
  const [low, high] = ranges[kind] ?? [10, 400]
  const massG = whole(chance, low, high)
  const better = 0.7 * ((massG - low) / (high - low)) + 0.3 * chance()
  const base = { id, massDg: massG * 10, pieces: 1, place: 'pack' as const, needs: [], volumeMl: whole(chance, 50, 1500) }
  const tags = [...(chance() < 0.3 && kind === 'stove' ? ['alcohol'] : []), ...(chance() < 0.55 && kind === 'top' ? ['down'] : [])]
  const second = chance() < 0.15 ? { [classes[Math.floor(chance() * classes.length)]!]: 1 } : {}
  const own = kindOf(chance, kind, better, bed)
  return { ...base, tags, ...own, covers: { ...(bedded.has(kind) ? {} : { [kind]: 1 }), ...pickable(second), ...own.covers } }
}

/** Beds are asked by their warmth and packs by their room: neither comes as a second duty. */
const bedded: ReadonlySet<string> = new Set(['top', 'pad'])
const pickable = (second: Readonly<Record<string, number>>): Readonly<Record<string, number>> =>
  Object.fromEntries(Object.entries(second).filter(([duty]) => !bedded.has(duty) && duty !== 'pack'))

function kindOf(chance: Chance, kind: string, better: number, bed: { readonly a: number; readonly c: number }): Partial<Made> {
  const shared = (duty: string, amount: number) => ({ duty, amount, kind: 'shared' as const })
  switch (kind) {
    case 'shelter':
      return {
        needs: [
          { duty: 'stake', amount: whole(chance, 4, 10), kind: 'reserved' },
          ...(chance() < 0.4 ? [shared('pole', whole(chance, 1, 2))] : []),
        ],
      }
    case 'top':
      return { topR: Math.round((bed.a / bed.c) * 100 * (0.9 + better)) }
    case 'pad':
      return { padR: Math.round(60 + 380 * better) }
    case 'pack':
      return { packMl: Math.round(15000 + 50000 * better), packLoadDg: Math.round(60000 + 120000 * better), volumeMl: 0 }
    case 'stove':
      return chance() < 0.9 ? { needs: [shared('pot', 1)] } : {}
    case 'stake':
      return { pieces: whole(chance, 2, 8), massDg: whole(chance, 60, 140), volumeMl: 10 }
    case 'pole':
      return { pieces: 2, place: 'either', slot: 'hands' }
    case 'torso':
      return { place: 'either', slot: 'torso' }
    case 'water':
      return { pieces: 2, covers: { water: whole(chance, 1, 2) } }
    default:
      return {}
  }
}

function wantedFor(chance: Chance, classes: readonly string[], candidates: readonly Candidate[]): Wanted {
  const asked = classes.filter((kind) => !bedded.has(kind) && kind !== 'stake' && kind !== 'pole')
  const ids = candidates.map(({ id }) => id)
  const groups = Array.from({ length: Math.floor(ids.length / 100) }, () =>
    Array.from({ length: 3 }, () => ids[Math.floor(chance() * ids.length)]!),
  )
  return {
    duties: Object.fromEntries(asked.map((duty) => [duty, duty === 'water' ? whole(chance, 1, 3) : 1])),
    atMost: [{ duty: 'pack', amount: 1 }],
    slots: { hands: 2, torso: 2 },
    volumeMl: whole(chance, 4000, 9000),
    loadDg: whole(chance, 40, 70) * 1000,
    groundR: whole(chance, 100, 320),
    exclude: groups.filter((group) => new Set(group).size === 3),
  }
}
