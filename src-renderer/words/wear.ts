import type { Counter } from '../../src-domain/closet/lives.ts'
import type { CountedWear, Wear, When } from '../../src-domain/closet/wear.ts'
import { plain, show, showDay } from '../state/units.svelte.ts'

const counterWords: Readonly<Record<Counter, string>> = {
  ...{ km: 'km', nights: 'nights', days: 'days', litres: 'L', cycles: 'cycles', washes: 'washes', years: 'years' },
}

/** An amount of a counter with its unit; distances follow the units chosen. */
export function countedIn(counter: Counter, amount: number): string {
  if (counter === 'km') return plain(show.distance(1000 * amount))
  return `${amount < 10 && amount % 1 !== 0 ? amount.toFixed(1) : Math.round(amount).toLocaleString('en-GB')} ${counterWords[counter]}`
}

const whenWords = (when: When): string => (when.kind === 'now' ? 'now' : when.kind === 'on' ? showDay(when.on) : 'not foreseeable')

/** `846 of ≈900 km; 90 % gone about 3 May 2027 (1 Dec 2026 to not foreseeable).` */
export function lifeLine(wear: CountedWear): string {
  const { lifeClass, used, life, early, median, late } = wear
  const about = wear.guess ? ', a guess: no trip wore it in two years' : ''
  const when =
    wear.share >= 0.9
      ? ''
      : ` 90 % gone about ${whenWords(median)}, four in five between ${whenWords(early)} and ${whenWords(late)}${about}.`
  return `${wear.estimated ? 'About ' : ''}${countedIn(lifeClass.counter, used)} of ≈${countedIn(lifeClass.counter, life)}.${when}`
}

/** The wear of a thing in a sentence; empty: nothing is counted. */
export function wearLine(wear: Wear): string {
  if (wear.kind === 'none') return ''
  if (wear.kind === 'counted') return lifeLine(wear)
  return wear.dueOn === null ? `Inspect it by its maker’s rule: ${wear.cite}.` : `Due ${showDay(wear.dueOn)}: ${wear.cite}.`
}
