import { beforeDark } from '../../src-domain/checks/before-dark.ts'
import type { Found } from '../../src-domain/checks/check.ts'
import { campbell2022 } from '../../src-domain/laws/campbell.ts'
import { paceFrom } from '../../src-domain/laws/pace-factor.ts'
import { emptyBrief } from '../../src-domain/trips/brief.ts'
import { emptyWalker } from '../../src-domain/trips/walker.ts'
import type { Published } from './published.ts'

// walking.md 7, the case of 1.4: 45 N 0 E, 25 Nov 2026, from 09:30 UTC, six hours by the law, three logs at 1.1. Seconds printed: half a second for the
// walker's own part; two and a half where the sun comes in (three computations agreed within two).
const log = (observedHours: number, modelHours: number) => ({ observedHours, modelHours })
const pace = paceFrom([log(4.4, 4), log(5.5, 5), log(3.3, 3)])
const sixHoursM = 6 * 3600 * campbell2022.compute({ slopeDeg: 0 })

function november(): Found {
  const finding = beforeDark.find({
    loadout: { name: '', lines: [] },
    brief: {
      ...emptyBrief,
      place: { latDeg: 45, lonDeg: 0 },
      legs: [{ day: 1, name: '', lengthM: sixHoursM, climbM: 0, descentM: 0, terrain: 'path', endHeightM: null, camp: true }],
      days: [{ day: 1, startMinute: 9 * 60 + 30, lowC: null, highC: null }],
    },
    trip: { startsOn: '2026-11-25', endsOn: '2026-11-25', zone: 'UTC', season: 'autumn' },
    walker: { ...emptyWalker, paceFactor: pace.factor, paceSpread: pace.spread, paceDof: pace.dof },
    today: '2026-11-01',
  })
  if (!('have' in finding)) throw new Error(finding.state)
  return finding
}
const clock = (h: number, m: number, s: number) => 60 * h + m + s / 60
const row = (about: string, expected: number, tolerance: number, got: () => number): Published => ({
  law: 'In camp before dark',
  about,
  source: 'walking.md 7, computed apart from this code',
  known: 'recomputed',
  unit: 'min',
  expected,
  tolerance,
  got,
})

export const rows: readonly Published[] = [
  row('median arrival 17:02:11', clock(17, 2, 11), 0.5 / 60, () => november().have.value),
  row('late end 18:21:29', clock(18, 21, 29), 0.5 / 60, () => Number(november().saying[0]!.facts!['lateMin'])),
  row('u', 50.75, 5e-3, () => november().marginU * Math.abs(november().enough.value - november().need.value)),
  row('need, civil dusk 16:55:37', clock(16, 55, 37), 2.5 / 60, () => november().need.value),
  row('enough 15:03:40', clock(15, 3, 40), 3 / 60, () => november().enough.value),
]
