import { describe, expect, test } from 'vitest'
import { walkingSentences } from '../../../src-renderer/words/walking.ts'

const say = (code: string, facts: Readonly<Record<string, string | number>> = {}) =>
  walkingSentences[code]!(facts).replaceAll('\u00a0', ' ')

describe('words of the way', () => {
  // walking.md 5.3: 45 N 0 E on 25 Nov 2026, arriving 17:33 with a sunset at 16:22:58: 1 h 10 after sunset.
  test('arrival against sunset', () => {
    expect(say('arrival', { day: 1, arrivalMin: 17 * 60 + 33, sunsetMin: 16 * 60 + 22 + 58 / 60 })).toBe(
      'day 1: in camp about 17:33, 1 h 10 after sunset',
    )
    expect(say('arrival', { day: 2, arrivalMin: 900, sunsetMin: 950 })).toBe('day 2: in camp about 15:00, 50 min before sunset')
  })
  test('a chance is never said to be none or certain', () => {
    expect(say('chance-after-sunset', { percent: 0.2 })).toBe('under 1 % chance of arriving after sunset')
    expect(say('chance-after-sunset', { percent: 99.8 })).toBe('over 99 % chance of arriving after sunset')
    expect(say('chance-after-sunset', { percent: 77.5 })).toBe('78 % chance of arriving after sunset')
  })
  test('a stretch is told by its days', () => expect(say('food-stretch', { fromDay: 1.4, toDay: 4 })).toBe('from day 2 to day 4'))
})
