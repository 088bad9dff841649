import type { DoorNeed } from '../../src-domain/checks/door-needs.ts'
import type { DoorRow, LastBecause, MissedBefore, NotThere } from '../../src-domain/loadout/door.ts'
import type { Explained, Hook } from '../../src-domain/loadout/hook.ts'
import { formatDate } from '../../src-domain/figures/format.ts'
import { plain, show, showDay } from '../state/units.svelte.ts'
import { words } from '../state/words.svelte.ts'
import { counted } from './closet.ts'
import { sayingWords } from './checks.ts'

/** Words of the door list. It never says that all is there: only what was confirmed, and how little the scale could miss. */
export const lastWords: Readonly<Record<LastBecause, string>> = {
  food: 'from the fridge',
  water: 'at the tap',
  charged: 'off the charger',
  morning: 'after the morning',
  said: '',
}

export const notThereWords: Readonly<Record<NotThere['status'], string>> = {
  wished: 'wished for',
  lent: 'lent out',
  sold: 'sold',
  retired: 'retired',
  lost: 'lost',
}

/** `left at home, 6 Sep 2025`, `missing at the door, Mar 2024`: what happened, in the person's own words where there are some. */
export function beforeWords({ how, note, startsOn, month, tripName }: MissedBefore): string {
  const what = note !== '' ? note : how === 'missed' ? 'missed' : 'nearly forgotten'
  return `${what}, ${startsOn !== null ? showDay(startsOn) : month !== null ? formatDate(month) : tripName}`
}

/** The note beside a row's name: where it was before, why it comes last, the person's own word. */
export const rowNote = (row: DoorRow): string => [row.note, row.last === null ? '' : lastWords[row.last]].filter((part) => part !== '').join(', ') // prettier-ignore

const g = (massG: number): string => plain(show.item({ massMg: Math.round(massG * 1000), origin: 'measured' }))
const kg = (hook: Hook): string => plain(show.total(hook.list))

/** The difference, explained: one sentence for the figure, one for what follows from it. */
export function hookWords(hook: Hook): readonly [string, string] {
  const { difference, says, hiddenG, bandG, withoutMass } = hook
  const off = g(Math.abs(difference.value))
  const side = difference.value < 0 ? 'under' : 'over'
  switch (says) {
    case 'unknown':
      return [
        `The list is ${kg(hook)} and more: ${counted(withoutMass.length, 'confirmed line has', 'confirmed lines have')} no mass (${withoutMass.slice(0, 3).join(', ')}).`,
        'Weigh them, or the hook says nothing.',
      ]
    case 'inside':
      return [
        `${off} ${side} the list’s ${kg(hook)}: inside the band of ±${g(bandG)}.`,
        `Nothing is missing that weighs more than ${g(hiddenG)}. Lighter things the scale cannot see.`,
      ]
    case 'lighter':
      return [`${off} under the list’s ${kg(hook)}, more than the band of ±${g(bandG)}.`, 'Something that was confirmed is not in it.']
    case 'heavier':
      return [`${off} over the list’s ${kg(hook)}, more than the band of ±${g(bandG)}.`, 'Something is in it that was not confirmed.']
  }
}

/** `Rain jacket, 214 g`, `3 of 8 Stakes, 32 g`. */
export function explainedWords({ rows, mass }: Explained): string {
  const parts = rows.map(({ row, pieces }) =>
    row.line?.kind === 'item' && row.line.pieces > 1 && pieces < row.line.pieces ? `${pieces} of ${row.line.pieces} ${row.name}` : row.name,
  )
  return `${parts.join(' and ')}, ${g(mass.value)}`
}

const needHead = ({ duty, holder }: DoorNeed): string => (holder === null ? words.duty(duty) : `${holder}: ${words.duty(duty)}`)

const byWords = ({ by, pieces }: DoorNeed): string =>
  by
    .slice(0, Math.max(2, Math.min(pieces, 3)))
    .map(({ name, who, onMe }) => (who !== '' ? `${name}, carried by ${who}` : onMe ? `${name}, on me` : name))
    .join('; ')

/** Nothing covers it, too few do, or what would cover it serves another duty at that moment. */
function withoutWords(need: DoorNeed): string {
  if (need.by.length === 0) return need.pieces > 1 ? `none of ${need.pieces}` : 'nothing'
  if (need.present < need.pieces) return `${need.present} of ${need.pieces}`
  if (need.saying?.code === 'need-held') return sayingWords(need.saying)
  return `${need.by
    .map(({ name }) => name)
    .slice(0, 2)
    .join(', ')} serves another duty then`
}

/** A need and what stands for it. */
export function needWords(need: DoorNeed): readonly [string, string] {
  if (need.state === 'struck') return [needHead(need), `struck: “${need.reason}”`]
  if (need.state === 'without') return [needHead(need), withoutWords(need)]
  return [needHead(need), byWords(need) || 'with what holds it']
}
