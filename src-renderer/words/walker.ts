import type { Principle } from '../../src-domain/trips/walker.ts'

export const principleWords: Readonly<Record<Principle, string>> = {
  'no-down': 'no down',
  'no-throwaways': 'no throwaways',
  'no-open-flame': 'no open flame',
  'no-animal-fibre': 'no animal fibre',
  'no-fluorinated-finish': 'no fluorinated finish',
}
