/**
 * Sums that no word gives away: a row without a name whose figure is the sum of the rows above it, and a row that is called like a kit area
 * and weighs what that area's rows weigh together (a summary at the foot or beside the table). Found by arithmetic alone.
 */
import { piecesOf } from './pieces.ts'
import { areaOfWord } from './plain-words.ts'
import type { RawRow } from './raw-rows.ts'

export function withoutHiddenSums(blocks: readonly (readonly RawRow[])[]): readonly (readonly RawRow[])[] {
  const sums = areaSums(blocks.flat())
  return blocks.map((rows) => {
    const running = new Running()
    return rows.map((raw) => {
      const isSum =
        raw.kind === 'item' &&
        raw.choice.take === undefined &&
        ((sums.size > 0 && isAreaSum(raw, sums)) || (raw.name === '' && running.has(massOf(raw))))
      const decided: RawRow = isSum ? { ...raw, kind: 'total', label: raw.name } : raw
      running.add(decided)
      return decided
    })
  })
}

const massOf = (raw: RawRow): number => (raw.mass.kind === 'mass' ? raw.mass.mg : 0)
const lineOf = (raw: RawRow): number => massOf(raw) * piecesOf(raw, 'piece').times
const isNear = (a: number, b: number): boolean => a > 0 && Math.abs(a - b) <= Math.max(60, b * 0.002)

/** What stands above a row, summed as a sheet may: cells once or times their pieces, since the last sum or from the top. */
class Running {
  private count = 0
  private readonly sums = { group: 0, groupTimes: 0, all: 0, allTimes: 0 }

  add(raw: RawRow): void {
    if (raw.kind === 'total' || raw.kind === 'area') {
      this.sums.group = 0
      this.sums.groupTimes = 0
    }
    if (raw.kind !== 'item') return
    this.count += 1
    this.sums.group += massOf(raw)
    this.sums.all += massOf(raw)
    this.sums.groupTimes += lineOf(raw)
    this.sums.allTimes += lineOf(raw)
  }

  has(mass_mg: number): boolean {
    return this.count > 1 && Object.values(this.sums).some((sum) => isNear(mass_mg, sum))
  }
}

interface AreaSum {
  rows: number
  once: number
  times: number
}

/** Sums of the rows that stand under each word for an area. */
function areaSums(rows: readonly RawRow[]): ReadonlyMap<string, AreaSum> {
  const byWord = new Map<string, AreaSum>()
  for (const raw of rows) {
    if (raw.kind !== 'item' || raw.areaWord === '') continue
    const sum = byWord.get(raw.areaWord) ?? { rows: 0, once: 0, times: 0 }
    byWord.set(raw.areaWord, sum)
    sum.rows += 1
    sum.once += massOf(raw)
    sum.times += lineOf(raw)
  }
  const byArea = new Map<string, AreaSum>()
  for (const [word, { rows: count, once, times }] of byWord) {
    const area = areaOfWord(word)
    if (area === undefined || area === 'by_name') continue
    const sum = byArea.get(area) ?? { rows: 0, once: 0, times: 0 }
    byArea.set(area, { rows: sum.rows + count, once: sum.once + once, times: sum.times + times })
  }
  return byArea
}

const mayBeSum = (raw: RawRow, { once, times }: AreaSum): boolean =>
  [once, times, once - massOf(raw), times - massOf(raw)].some((sum) => isNear(massOf(raw), sum))

/** The row itself may stand in the last section above it and be counted there too. */
function isAreaSum(raw: RawRow, sums: ReadonlyMap<string, AreaSum>): boolean {
  if (raw.name.length > 30 || ![...sums.values()].some((sum) => mayBeSum(raw, sum))) return false
  const area = areaOfWord(raw.name)
  const sum = area === undefined ? undefined : sums.get(area)
  if (!sum) return false
  const own = areaOfWord(raw.areaWord) === area ? massOf(raw) : 0
  return sum.rows - (own > 0 ? 1 : 0) > 1 && (isNear(massOf(raw), sum.once - own) || isNear(massOf(raw), sum.times - own))
}
