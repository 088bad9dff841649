import { checks } from '../../src-domain/checks/index.ts'
import type { LeftOut } from '../../src-domain/choosing/trip-choice.ts'
import type { Why } from '../../src-domain/choosing/explain.ts'
import type { Principle } from '../../src-domain/trips/walker.ts'
import { words } from '../state/words.svelte.ts'

const labels: ReadonlyMap<string, string> = new Map(checks.map(({ id, label }) => [id, label]))
export const checkLabel = (id: string): string => labels.get(id) ?? id

const groupWords: Readonly<Record<string, string>> = {
  'hot-meals': 'Hot meals',
  sleep: 'All of sleep',
  carry: 'Room, and Load on the pack',
}

/** A demand by its code: `duty:…`, `check:…`, `group:…`. */
export function demandWords(demand: string): string {
  const [kind = '', code = ''] = demand.split(':')
  if (kind === 'group') return groupWords[code] ?? code
  if (kind === 'duty') return capital(words.duty(code))
  return kind === 'in' ? 'a pin' : checkLabel(code)
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

/** What has to give way, one sentence each: the worst that is given up of a check stands for it. */
export function givenUpWords(demands: readonly string[]): readonly string[] {
  const worst = new Map<string, string>()
  for (const demand of demands) {
    const [kind = '', code = ''] = demand.split(':')
    if (kind === 'duty') worst.set(demand, `${demandWords(demand)}: nothing serves it`)
    if (kind === 'in') worst.set(demand, 'A pin goes out')
    if (kind === 'check' && !worst.has(code)) worst.set(code, `${checkLabel(code)}: tight`)
    if (kind === 'tight') worst.set(code, `${checkLabel(code)}: short, no worse than now`)
    if (kind === 'worse') worst.set(code, `${checkLabel(code)}: not met`)
  }
  return [...worst.values()]
}

export function whyWords(why: readonly Why[]): string {
  const parts = why.map((one) => (one.kind === 'check' ? checkLabel(one.id) : one.holder === '' ? one.label : `needed by ${one.holder}`))
  return [...new Set(parts)].join(', ')
}

export const principleWords: Readonly<Record<Principle, string>> = {
  'no-down': 'no down',
  'no-throwaways': 'no throwaways',
  'no-open-flame': 'no open flame',
  'no-animal-fibre': 'no animal fibre',
  'no-fluorinated-finish': 'no fluorinated finish',
}

export function leftOutWords({ reason, why }: Pick<LeftOut, 'reason' | 'why'>): string {
  switch (reason) {
    case 'no-mass':
      return 'no mass known'
    case 'verdict':
      return `verdict: ${why}`
    case 'principle':
      return principleWords[why as Principle]
    case 'pinned-out':
      return 'left out by you'
    case 'lent':
      return 'not at hand'
  }
}
