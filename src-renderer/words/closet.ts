import type { MassOrigin, Status, Way } from '../../src-domain/closet/vocabulary.ts'
import type { FacetName } from '../../src-domain/closet/browse.ts'

export const statusWords: Readonly<Record<Status | 'archived', string>> = {
  owned: 'owned',
  wished: 'wished for',
  lent: 'lent out',
  sold: 'sold',
  retired: 'retired',
  lost: 'lost',
  archived: 'put away',
}

export const originWords: Readonly<Record<MassOrigin, string>> = {
  measured: 'measured',
  claimed: 'claimed',
  estimated: 'estimated',
  none: 'no mass',
}

export const wayWords: Readonly<Record<Way, string>> = { bought: 'bought', made: 'made', gift: 'a gift', trial: 'lent for trial' }

export const facetWords: Readonly<Record<FacetName, string>> = {
  area: 'kit area',
  duty: 'duty',
  status: 'status',
  weight: 'weight',
  season: 'season',
  tag: 'tag',
}

export const laneWords = { on_me: 'On me', in_pack: 'In the pack', used_up: 'Used up' } as const
export const laneWeights = { on_me: 'worn weight', in_pack: 'base weight', used_up: 'consumables' } as const

const plurals = new Intl.PluralRules('en')
export const counted = (count: number, one: string, many: string): string =>
  `${count.toLocaleString('en-GB')} ${plurals.select(count) === 'one' ? one : many}`
