import type { Finding, Found, Saying, State } from '../../src-domain/checks/check.ts'
import type { Figure } from '../../src-domain/figures/figure.ts'
import { plain, show } from '../state/units.svelte.ts'
import { counted } from './closet.ts'
import { asideSentences, provisionSentences } from './provisions.ts'
import { walkingSentences } from './walking.ts'
import { warmthSentences } from './warmth.ts'

export const stateWords: Readonly<Record<State, string>> = {
  short: 'short',
  tight: 'tight',
  unknown: 'unknown',
  enough: 'enough',
  'not-asked': 'not asked',
}

type Facts = Readonly<Record<string, string | number>>
const word = (facts: Facts, name: string): string => String(facts[name] ?? '')

/** One sentence for each saying of a check or a notice; a code without one is shown as it is, so that nothing is silently dropped. */
const sentences: Readonly<Record<string, (facts: Facts) => string>> = {
  ...warmthSentences,
  ...walkingSentences,
  ...provisionSentences,
  'duty-missing': (f) => `no ${word(f, 'label')}${word(f, 'moments') === '' ? '' : ` (${word(f, 'moments').replaceAll(' ', ', ')})`}`,
  'need-missing': (f) =>
    Number(f['present']) === 0
      ? `${word(f, 'holder')} needs ${Number(f['pieces']) > 1 ? `${word(f, 'pieces')} ` : ''}${word(f, 'label')}`
      : `${word(f, 'holder')} needs ${word(f, 'pieces')} ${word(f, 'label')}, has ${word(f, 'present')}`,
  'need-held': (f) =>
    `${word(f, 'held')} of ${word(f, 'present')} ${word(f, 'label')} hold ${word(f, 'heldBy')}; ${word(f, 'holder')} needs ${word(f, 'pieces')}`,
  struck: (f) => `struck, ${word(f, 'label')}: “${word(f, 'reason')}”`,
  'nothing-asked': () => 'nothing is asked',
  nights: () => 'say how many nights: give the trip its dates',
  'more-than-owned': (f) => `${word(f, 'name')}: ${word(f, 'pieces')} in lanes, ${word(f, 'owned')} owned`,
  lent: (f) => `${word(f, 'name')} is lent out${word(f, 'to') === '' ? '' : ` to ${word(f, 'to')}`}`,
  sold: (f) => `${word(f, 'name')} is sold`,
  retired: (f) => `${word(f, 'name')} is retired`,
  lost: (f) => `${word(f, 'name')} is lost`,
  elsewhere: (f) => `${word(f, 'name')} is also in ${word(f, 'loadout')} on those days`,
  'container-left': (f) => `${word(f, 'name')} is in ${word(f, 'container')}, which does not go along`,
  'over-capacity': (f) =>
    `${word(f, 'name')}: ${word(f, 'amount')} ${word(f, 'unit')} in ${word(f, 'container')}, which holds ${word(f, 'capacity')}`,
}

export const sayingWords = (saying: Saying): string => sentences[saying.code]?.(saying.facts ?? {}) ?? saying.code.replaceAll('-', ' ')

const exactWords = (figure: Figure): string => plain(show.figure({ ...figure, shares: {} }))
const figureWords = (figure: Figure): string =>
  figure.unit === 'count' ? String(Math.round(figure.value)) : plain({ ...show.figure(figure), band: '' })

/** Need and have to the places their doubt deserves, and further where that would make two figures read as one. */
function needAndHave({ need, have }: Found): string {
  const alike = need.value !== have.value && figureWords(need) === figureWords(have)
  const words = alike && need.unit !== 'count' ? exactWords : figureWords
  return `need ${words(need)}, have ${words(have)}`
}

/** The second line of a check: what it says, else need and have. */
export function secondLine(finding: Finding): string {
  switch (finding.state) {
    case 'unknown':
      return sayingWords(finding.missing)
    case 'not-asked':
      return sayingWords(finding.why)
    default: {
      const said = finding.saying.filter(({ code }) => !Object.hasOwn(asideSentences, code)).map(sayingWords)
      if (said.length > 0) return said.slice(0, 2).join('; ') + (said.length > 2 ? `; ${counted(said.length - 2, 'more', 'more')}` : '')
      const asides = finding.saying.map(({ code, facts }) => asideSentences[code]?.(facts ?? {}) ?? '').filter((words) => words !== '')
      return [needAndHave(finding), ...enoughFrom(finding), ...asides].join('; ')
    }
  }
}

/** Tight is either before enough, or past it by less than the doubt of both. */
function enoughFrom({ state, have, enough, wants }: Found): readonly string[] {
  if (state !== 'tight') return []
  const past = wants === 'at least' ? have.value >= enough.value : have.value <= enough.value
  return [past ? 'nearer to need than its doubt' : `enough from ${figureWords(enough)}`]
}

/** The whole of a gauge in one sentence, for who cannot see it. */
export function gaugeSentence(label: string, finding: Finding): string {
  return `${label}: ${stateWords[finding.state]}. ${secondLine(finding)}.`
}
