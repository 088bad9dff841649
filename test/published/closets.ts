import { groundAskedR, type Candidate, type Wanted } from '../../src-domain/choosing/candidate.ts'

/**
 * Invented closets with their exact answers: closet 1 and the stairs of the formulation's own notes, found there by two ways (a solver and full
 * enumeration, tolerance 0). Masses in g, R in 1/100, ml.
 */
const one = (id: string, g: number, more: Partial<Candidate> = {}): Candidate => ({
  id,
  massDg: g * 10,
  pieces: 1,
  place: 'pack',
  covers: {},
  needs: [],
  volumeMl: 0,
  ...more,
})
const shared = (duty: string, amount = 1) => ({ duty, amount, kind: 'shared' as const })
const reserved = (duty: string, amount: number) => ({ duty, amount, kind: 'reserved' as const })

const mostPadR = 200 + 120 + 420
export const closetAt = (c: number): readonly Candidate[] => {
  const top = (topR: number) => ({ topAsksR: groundAskedR(topR, { a: 21, b: 9, c }, mostPadR) })
  return [
    one('tarp', 310, { covers: { shelter: 1 }, volumeMl: 1200, needs: [shared('pole'), reserved('stake', 6)] }),
    one('tent', 1120, { covers: { shelter: 1 }, volumeMl: 4500, needs: [reserved('stake', 4)] }),
    one('bivy', 640, { covers: { shelter: 1 }, volumeMl: 2000 }),
    one('stake', 9, { pieces: 8, covers: { stake: 1 }, volumeMl: 10 }),
    one('pole', 190, { pieces: 2, covers: { pole: 1 }, place: 'either', slot: 'hands' }),
    one('quiltA', 480, { ...top(400), volumeMl: 6000, tags: ['down'] }),
    one('quiltB', 640, { ...top(520), volumeMl: 7500, tags: ['down'] }),
    one('bagC', 1050, { ...top(560), volumeMl: 11000 }),
    one('foam', 250, { padR: 200 }),
    one('foamShort', 120, { padR: 120 }),
    one('airpad', 430, { padR: 420, volumeMl: 1300 }),
    one('packS', 520, { covers: { pack: 1 }, packMl: 30000, packLoadDg: 90000 }),
    one('packL', 1150, { covers: { pack: 1 }, packMl: 60000, packLoadDg: 160000 }),
    one('gasStove', 85, { covers: { stove: 1 }, volumeMl: 200, needs: [shared('pot'), shared('gas')] }),
    one('alcStove', 22, { covers: { stove: 1 }, volumeMl: 150, tags: ['alcohol'], needs: [shared('pot')] }),
    one('canister', 210, { covers: { gas: 1 }, volumeMl: 500 }),
    one('pot', 110, { covers: { pot: 1 }, volumeMl: 900 }),
    one('bigPot', 190, { covers: { pot: 2 }, volumeMl: 1800 }),
    one('bottle', 38, { pieces: 3, covers: { water: 1000 } }),
    one('bladder', 62, { covers: { water: 2000 } }),
    one('lamp', 72, { covers: { light: 1 }, volumeMl: 100 }),
    one('phone', 190, { covers: { map: 1, light: 1 } }),
  ]
}

const duties1 = { shelter: 1, pack: 1, stove: 1, pot: 1, water: 2000, light: 1, map: 1 }
export const brief1: Wanted = {
  duties: duties1,
  atMost: [{ duty: 'pack', amount: 1 }],
  slots: { hands: 2 },
  volumeMl: 15000,
  loadDg: 45000,
  groundR: 320,
}

export interface Case {
  readonly id: string
  readonly change: Partial<Wanted>
  readonly duties?: Readonly<Record<string, number>>
  readonly c?: number
  /** g; null: no answer. */
  readonly best: number | null
}

export const cases: readonly Case[] = [
  { id: '1a', change: {}, best: 2178 },
  { id: '1b', change: { bans: ['down'] }, best: 2688 },
  { id: '1c', change: { bans: ['alcohol'] }, best: 2451 },
  { id: '1d', change: { bans: ['down', 'alcohol'] }, best: 2961 },
  { id: '1e', change: { pinIn: { tent: 1 } }, best: 2970 },
  { id: '1f', change: { pinOut: ['airpad'] }, best: 2278 },
  { id: '1g', change: { wornFactor: 1 }, best: 2368 },
  { id: '1h', change: { volumeMl: 21000 }, best: 2808 },
  { id: '1i', change: {}, duties: { pot: 2 }, best: 2258 },
  { id: '1j', change: {}, duties: { water: 3000 }, best: 2216 },
  { id: '1k', change: {}, duties: { light: 2 }, best: 2250 },
  { id: '1l', change: { exclude: [['tarp', 'alcStove']] }, best: 2451 },
  { id: '1m', change: {}, c: 6.3, best: 2338 },
  { id: '1n', change: { loadDg: 87500 }, best: 2808 },
  { id: '1o', change: {}, c: 4.5, best: null },
  { id: '1p', change: { pinOut: ['pole', 'bivy', 'tent'] }, duties: { water: 6000 }, best: null },
]

export const wantedOf = ({ change, duties = {} }: Pick<Case, 'change' | 'duties'>): Wanted => ({
  ...brief1,
  ...change,
  duties: { ...duties1, ...duties },
})

/** Stairs of one amount: D and the least mass in g; null: none. */
export const stairs: readonly (readonly [number, number | null])[] = [
  [1, 60],
  [15, 60],
  [16, 100],
  [20, 100],
  [21, 150],
  [33, 150],
  [34, 160],
  [35, 160],
  [36, 210],
  [48, 210],
  [49, 250],
  [53, 250],
  [54, 310],
  [68, 310],
  [70, null],
]
export const stairItems: readonly Candidate[] = [
  one('a', 100, { covers: { R: 20 } }),
  one('b', 150, { covers: { R: 33 } }),
  one('c', 60, { covers: { R: 15 } }),
]
