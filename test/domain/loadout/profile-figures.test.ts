import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { uncertainty } from '../../../src-domain/figures/figure.ts'
import { profileFigures, sideOf } from '../../../src-domain/loadout/profile-figures.ts'
import { profileOf } from '../../../src-domain/loadout/profile.ts'
import { askedOf, leg, type Change } from '../checks/asking.ts'

const kit = [{ name: 'everything else', area: 'carry' as const, g: 4000, uOwnG: 10 }]
const food = { name: 'food', area: 'food' as const, rule: { per: 'day' as const, amountMilli: 900_000 }, amountFrom: 'brief' as const }
const walker = { bodyMassG: 70_000, heightMm: 1750, bornYear: 1990, sex: 'male' as const }
const place = { latDeg: 50, lonDeg: 10 }

function figures(change: Change) {
  const asked = askedOf(change)
  const found = profileOf(asked)
  if (!found.ok) throw new Error(found.missing.code)
  return { profile: found.profile, figures: profileFigures(asked, found.profile) }
}

describe('the profile’s figures', () => {
  const legs = [leg(1, { climbM: 500 }), leg(1, { descentM: 300 }), leg(2, { climbM: 100 }), leg(3), leg(4, { camp: false })]
  const { profile, figures: of } = figures({ items: kit, supplies: [food], brief: { place, legs }, walker })
  test('are what the profile says in plain numbers', () => {
    for (const [i, day] of profile.days.entries()) {
      const own = of.days[i]!
      expect(own.length.value).toBe(day.lengthM)
      expect(own.climb.value).toBe(day.climbM)
      expect(own.onFoot.value).toBeCloseTo(day.onFootHours, 9)
      expect(own.loadStart.value).toBeCloseTo(day.loadStart.value, 9)
      expect(own.loadEnd.value).toBeCloseTo(day.loadArrival.value, 9)
      expect(own.start.value).toBe(day.arrival.startMin)
      expect(own.arrival.value).toBeCloseTo(day.arrival.medianMin, 9)
      expect(own.late.value).toBeCloseTo(day.arrival.lateMin, 9)
      expect(own.spare!.value).toBeCloseTo(own.light!.dusk!.value - own.arrival.value, 9)
    }
  })
  test('a day’s last leg arrives when the day does; a leg’s walking is less than its day’s energy', () => {
    expect(of.legs[1]!.arrival.value).toBeCloseTo(of.days[0]!.arrival.value, 9)
    expect(of.legs[0]!.arrival.value).toBeLessThan(of.legs[1]!.arrival.value)
    expect(of.legs[0]!.energy!.value + of.legs[1]!.energy!.value).toBeLessThan(of.days[0]!.energy!.value)
    for (const [i, { walkingKcal }] of profile.legs.entries()) expect(of.legs[i]!.energy!.value).toBeCloseTo(walkingKcal!, 6)
  })
  test('every one opens', () => {
    const each = [...of.days, ...of.legs].flatMap((part) => [part.length, part.climb, part.descent, part.onFoot, part.energy, part.loadStart, part.waterStart, part.arrival, part.late, part.light!.set, part.light!.dusk, part.spare]) // prettier-ignore
    for (const figure of [...each, of.meanLoad, of.whole.energy]) expect(figure?.working?.formula).toBeTruthy()
  })
  test('without a place no light, without a body no energy', () => {
    const bare = figures({ items: kit, brief: { place: null, legs } }).figures
    expect(bare.days.every(({ light, spare, energy }) => light === null && spare === null && energy === null)).toBe(true)
    expect(bare.whole.energy).toBeNull()
  })
})

test('whatever the way, the mean keeps the doubt of the base and equals the profile’s; the sides of a jump are told apart', () => {
  const lengths = fc.array(fc.integer({ min: 500, max: 20_000 }), { minLength: 1, maxLength: 6 })
  fc.assert(
    fc.property(lengths, fc.integer({ min: 0, max: 1500 }), (all, perDayG) => {
      const { profile, figures: of } = figures({
        items: kit,
        supplies: [{ ...food, rule: { per: 'day', amountMilli: perDayG * 1000 } }],
        brief: {
          legs: all.map((lengthM, i) => leg(i + 1, { lengthM })),
          resupplies: [{ atM: all[0]!, day: 1, name: 'box', what: ['food'] }],
        },
      })
      expect(of.meanLoad.value).toBeCloseTo(profile.meanLoadKg, 6) // to the milligram, as masses of lines are
      expect(uncertainty(of.meanLoad)).toBeGreaterThanOrEqual(0.01 - 1e-9)
      for (const [i, { atM, loadKg }] of profile.points.entries())
        expect(of.carried.load(atM, sideOf(profile.points, i)).value).toBeCloseTo(loadKg, 6)
    }),
  )
})
