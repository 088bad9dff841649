/** The least mass by trying everything, from the words of the rules and not from their rows: an oracle for small closets. */
import type { Candidate, Wanted } from '../../src-domain/choosing/candidate.ts'

interface Picked {
  readonly one: Candidate
  readonly q: number
  readonly w: number
}

export function fulfils(picked: readonly Picked[], wanted: Wanted): boolean {
  const going = picked.filter(({ q, w }) => q + w > 0)
  const pieces = ({ q, w }: Picked) => q + w
  const cover = (duty: string, but?: Picked) =>
    going.reduce((sum, at) => sum + (at === but ? 0 : (at.one.covers[duty] ?? 0) * pieces(at)), 0)
  const reserved = (duty: string) =>
    going.reduce(
      (sum, at) =>
        sum + at.one.needs.reduce((n, need) => n + (need.kind === 'reserved' && need.duty === duty ? need.amount * pieces(at) : 0), 0),
      0,
    )
  const inPack = (of: (one: Candidate) => number) => going.reduce((sum, { one, q }) => sum + of(one) * q, 0)
  const duties = new Set([...Object.keys(wanted.duties), ...going.flatMap(({ one }) => one.needs.map(({ duty }) => duty))])
  for (const duty of duties) if (cover(duty) - reserved(duty) < (wanted.duties[duty] ?? 0)) return false
  for (const at of going)
    for (const need of at.one.needs) if (need.kind === 'shared' && cover(need.duty, at) - reserved(need.duty) < need.amount) return false
  for (const { duty, amount } of wanted.atMost ?? []) if (cover(duty) > amount) return false
  for (const [slot, room] of Object.entries(wanted.slots ?? {}))
    if (going.reduce((sum, { one, w }) => sum + (one.slot === slot ? w : 0), 0) > room) return false
  if (wanted.volumeMl !== undefined && inPack((one) => (one.packMl ?? 0) - (one.volumeMl ?? 0)) < wanted.volumeMl) return false
  if (wanted.loadDg !== undefined && inPack((one) => (one.packLoadDg ?? 0) - one.massDg) < wanted.loadDg) return false
  for (const group of wanted.exclude ?? []) if (going.filter(({ one }) => group.includes(one.id)).length > 1) return false
  return isWarm(going, wanted, pieces) && isAsSaid(going, wanted, pieces)
}

function isWarm(going: readonly Picked[], { groundR }: Wanted, pieces: (at: Picked) => number): boolean {
  if (groundR === undefined) return true
  const padR = going.reduce((sum, at) => sum + (at.one.padR ?? 0) * pieces(at), 0)
  return padR >= groundR && going.some(({ one }) => one.topAsksR !== undefined && one.topAsksR !== null && padR >= one.topAsksR)
}

const isAsSaid = (going: readonly Picked[], { bans = [], pinIn = {}, pinOut = [] }: Wanted, pieces: (at: Picked) => number): boolean =>
  going.every(({ one }) => !pinOut.includes(one.id) && !bans.some((ban) => one.tags?.includes(ban))) &&
  Object.entries(pinIn).every(([id, least]) => going.some((at) => at.one.id === id && pieces(at) >= least))

/** Tenths of a gram; null: nothing fulfils it. Branches are cut by mass alone. */
export function leastByHand(candidates: readonly Candidate[], wanted: Wanted): number | null {
  const { wornFactor = 0, usedUpFactor = 1 } = wanted
  let best: number | null = null
  const picked: Picked[] = []
  const tryFrom = (at: number, massDg: number): void => {
    if (best !== null && massDg >= best) return
    if (at === candidates.length) {
      if (fulfils(picked, wanted)) best = massDg
      return
    }
    const one = candidates[at]!
    for (let total = 0; total <= one.pieces; total++)
      for (let w = one.place === 'me' ? total : 0; w <= (one.place === 'pack' ? 0 : total); w++) {
        picked.push({ one, q: total - w, w })
        tryFrom(at + 1, massDg + one.massDg * ((one.usedUp ? usedUpFactor : 1) * (total - w) + wornFactor * w))
        picked.pop()
      }
  }
  tryFrom(0, 0)
  return best
}
