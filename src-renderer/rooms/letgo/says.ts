import type { Standing } from '../../../src-domain/closet/let-go-lists.ts'
import { closet } from '../../state/closet.svelte.ts'
import { recorded } from '../../state/recorded.svelte.ts'
import { plain, show } from '../../state/units.svelte.ts'
import { words } from '../../state/words.svelte.ts'
import { dropWords } from '../../words/letgo.ts'
import { letgo } from './letgo.svelte.ts'

const monthFormat = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' })
const month = (day: string): string => monthFormat.format(new Date(`${day}T00:00:00Z`))

const massMg = (row: number): number | null => {
  const each = closet.columns.massMg[row] ?? null
  return each === null ? null : each * closet.columns.pieces[row]!
}

/** The record's evidence in words: what does its work now, when it was last out, what was asked without it, and what verdicts said. */
export function whatTheRecordSays(standing: Standing): string {
  const { row, taken, fit } = standing
  const heir = insteadOf(row)
  const isSaid = standing.why === 'carried' || (heir !== '' && taken === 0)
  return [heir, isSaid ? '' : lastOut(row, taken, fit), verdicts(row)].filter((one) => one !== '').join(' ')
}

function insteadOf(row: number): string {
  const other = letgo.replacedBy(row)
  if (other === null) return ''
  const [own, its] = [massMg(row), massMg(other)]
  const name = closet.columns.name[other]!
  if (own === null || its === null || own === its) return `${name} does its work.`
  const by = plain(show.item({ massMg: Math.abs(own - its), origin: 'measured' }))
  return `${name} does its work and weighs ${by} ${its < own ? 'less' : 'more'}.`
}

function lastOut(row: number, taken: number, fit: number): string {
  const marks = letgo.marks(row)
  const last = marks.findLastIndex((mark) => mark === 'used' || mark === 'carried')
  if (taken > 0 && last >= 0) return `Last out ${month(letgo.lists!.index.onDay[last]!)}.`
  const duty = closet.columns.duties[row]!.split(' ')[0]!.replace('*', '')
  const before = closet.columns.lastOutOn[row]
  if (before != null) return `Last out ${month(before)}, before this record.`
  return duty === '' ? 'Never out on record.' : `Never out on record, though ${words.duty(duty).toLowerCase()} was asked on ${fit}.`
}

function verdicts(row: number): string {
  const { taken } = recorded.columns!
  const id = closet.columns.id[row]!
  const drops = taken.itemId.flatMap((itemId, i) => (itemId === id && taken.verdict[i] === 'drop' ? [taken.change[i]!] : []))
  if (drops.length === 0) return ''
  const reasons = [...new Set(drops)].map((one) => dropWords[one] ?? one).join(', ')
  return `Verdict drop: ${reasons}${drops.length === 1 ? '.' : `, on ${drops.length} trips.`}`
}
