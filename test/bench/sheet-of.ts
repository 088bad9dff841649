import { kitAreaWords } from '../../src-domain/closet/vocabulary.ts'
import { itemsOf } from './closet-of.ts'
import { seeded } from './seeded.ts'

/** A sheet of `size` things as a person's own would be: units by cell, a quantity column, some notes quoted for their comma. */
export function sheetOf(size: number): string {
  const { below, pick } = seeded(size + 1)
  const rows = itemsOf(size).map(({ name, maker, note, pieces }) => {
    const mass = pick([`${5 + below(900)} g`, `${(below(400) / 10 + 0.5).toFixed(1)} oz`, `0.${10 + below(80)} kg`])
    const area = pick(kitAreaWords).label
    return [`"${name}"`, area, maker, mass, pieces, `"${note === '' ? '' : `${note}, ${below(9)}`}"`].join(',')
  })
  return ['Item,Category,Maker,Weight,Qty,Notes', ...rows, ''].join('\n')
}
