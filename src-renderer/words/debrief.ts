import type { DebriefHead, DebriefLine } from '../../src-main/contract.ts'
import { plain, show } from '../state/units.svelte.ts'
import type { Use, Verdict, VerdictChange } from '../../src-domain/trips/record.ts'

/** Words of the debrief. Unknown is a word of its own: nobody said. */
export const useOptions: readonly (readonly [Use, string])[] = [
  ['used', 'used'],
  ['unused', 'unused'],
  ['missed', 'missed'],
  ['failed', 'failed'],
]
export const verdictOptions: readonly (readonly [Verdict, string])[] = [
  ['keep', 'keep'],
  ['adjust', 'adjust'],
  ['drop', 'drop'],
]
export const changeOptions: Readonly<Record<'adjust' | 'drop', readonly (readonly [VerdictChange, string])[]>> = {
  adjust: [
    ['add', 'add'],
    ['swap', 'swap for'],
    ['amount', 'other amount'],
    ['mend', 'mend'],
  ],
  drop: [
    ['weight', 'weight'],
    ['function', 'function'],
    ['comfort', 'comfort'],
    ['waste', 'waste'],
  ],
}

const changeWords = new Map([...changeOptions.adjust, ...changeOptions.drop])

/** `keep only when the low is 0 °C or more`, `adjust: swap for Power bank, 20 Wh, wished`, `drop: waste`. */
export function verdictWords(line: DebriefLine, toName: string): string {
  if (line.verdict === '') return ''
  if (line.verdict === 'keep') return line.onlyWhen === '' ? 'keep' : `keep only when ${line.onlyWhen}`
  const change = line.change === '' ? '' : `: ${changeWords.get(line.change) ?? ''}`
  return `${line.verdict}${change}${toName === '' ? '' : ` ${toName}`}${line.what === '' ? '' : `, ${line.what}`}`
}

/** The conditions a word held in: the line's own, else the trip's. */
export function heldWords(line: DebriefLine, trip: DebriefHead | null): string {
  const lowC = line.lowC ?? trip?.lowC ?? null
  const windKmh = line.windKmh ?? trip?.windKmh ?? null
  const rainHours = line.rainHours ?? trip?.rainHours ?? null
  return [
    lowC === null ? '' : `low ${plain(show.temp(lowC))}`,
    windKmh === null ? '' : `wind ${Math.round(windKmh)} km/h`,
    rainHours === null ? '' : `${rainHours} h of rain`,
  ]
    .filter((part) => part !== '')
    .join(', ')
}
