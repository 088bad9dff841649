/**
 * Dry legs: a cover of the legs for the rain the brief expects, and the cold and wind that come with it.
 *   have 1 (trousers, chaps, kilt, long poncho) or 0 · need and enough by rain class, planning low under 10 °C, wind of 20 km/h (choice)
 * Low and wind are asked for only where they would change the answer.
 */
import { COOL_C, legCoverAsked, WINDY_KMH, type CoverAsked } from '../laws/rain-cover.ts'
import type { RainClass } from '../trips/brief.ts'
import { walkingAir } from '../trips/day-air.ts'
import { unknown, type Asked, type Check, type Finding } from './check.ts'
import { coverFinding } from './covers.ts'

export const legCover: Check = {
  id: 'leg-cover',
  label: 'Dry legs',
  duties: ['rain-legs'],
  withoutBrief: false,
  find(asked) {
    const { rain, windKmh } = asked.brief
    if (rain === null) return unknown('rain')
    const air = walkingAir(asked.brief, asked.trip)
    const cools = air.ok ? [air.figure.value < COOL_C] : [false, true]
    const winds = windKmh === null ? [false, true] : [windKmh >= WINDY_KMH]
    const missing = air.ok ? 'wind' : air.missing
    return oneAnswer(asked, rain, cools, winds) ?? unknown(missing)
  },
}

/** The finding, if every case that is still open gives the same state; with one case open, that. */
function oneAnswer({ loadout, brief }: Asked, rain: RainClass, cools: readonly boolean[], winds: readonly boolean[]): Finding | null {
  const cases: readonly CoverAsked[] = cools.flatMap((cool) => winds.map((windy) => legCoverAsked(rain, cool, windy)))
  const findings = cases.map((asks) => coverFinding(loadout, 'rain-legs', asks, brief))
  const first = findings[0]!
  return findings.every((finding) => finding.state === first.state) ? findings.at(-1)! : null
}
