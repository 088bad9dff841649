import { formatClock, formatDuration } from '../../src-domain/figures/format.ts'

type Facts = Readonly<Record<string, string | number>>
const number = (facts: Facts, fact: string): number => Number(facts[fact] ?? 0)

/** Sentences of the checks of food, load on the body and light on the way. */
export const walkingSentences: Readonly<Record<string, (facts: Facts) => string>> = {
  'body-mass': () => 'say what the walker weighs',
  'body-height': () => 'say how tall the walker is',
  age: () => 'say in which year the walker was born',
  place: () => 'say where: the place of the trip',
  dates: () => 'give the trip its dates',
  zone: () => 'say in which time zone the trip is',
  sun: () => 'too near to a pole for mornings and evenings',
  'no-meal-out': () => 'every meal is eaten out',
  'no-civil-dusk': () => 'it does not grow dark',
  'food-stretch': (f) => `from day ${Math.floor(number(f, 'fromDay')) + 1} to day ${Math.ceil(number(f, 'toDay'))}`,
  'expected-loss': (f) => `about ${number(f, 'kg').toFixed(1)} kg of the body would go, ${number(f, 'percent').toFixed(1)} %`,
  arrival: (f) => `day ${number(f, 'day')}: in camp about ${formatClock(number(f, 'arrivalMin'))}, ${against(f)}`,
  'chance-after-sunset': (f) => `${chance(number(f, 'percent'))} of arriving after sunset`,
}

/** `1 h 10 after sunset`, `50 min before sunset`. */
function against(facts: Facts): string {
  const late = number(facts, 'arrivalMin') - number(facts, 'sunsetMin')
  return `${formatDuration(Math.abs(late))} ${late > 0 ? 'after' : 'before'} sunset`
}

function chance(percent: number): string {
  if (percent < 1) return 'under 1 % chance'
  return percent > 99 ? 'over 99 % chance' : `${Math.round(percent)} % chance`
}
