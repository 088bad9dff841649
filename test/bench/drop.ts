import { filledByBrief } from '../../src-domain/checks/by-brief.ts'
import { findAll } from '../../src-domain/checks/index.ts'
import { gather, type LineFacts } from '../../src-domain/loadout/gather.ts'
import { marksOf, stripOf } from '../../src-domain/loadout/strip.ts'
import { totalsOf } from '../../src-domain/loadout/totals.ts'
import { grownTo, type Grown } from './demo-loadout.ts'
import { frameMs, ms, timed, type BenchRow } from './row.ts'

const entries = 150

/** One line dropped in another lane to new totals, load strip and all checks: the figures of one drawing, which must fit in its frame. */
export async function drop(): Promise<BenchRow> {
  const grown = await grownTo(entries)
  let lines = grown.lines
  const took = timed(
    (round) => (lines = dropped(lines, round % entries)),
    (changed) => figures(grown, changed),
  )
  const about = `figures ${ms(took.wallMs)} (processor ${ms(took.processorMs)}), a frame ${ms(frameMs)}; ${lines.length} entries, median of 200`
  return { name: 'drop to updated totals', ratio: took.wallMs / frameMs, goal: 1, about }
}

const dropped = (lines: readonly LineFacts[], at: number): readonly LineFacts[] =>
  lines.map((line, n) => (n !== at || line.supplyId !== null ? line : { ...line, lane: line.lane === 'on_me' ? 'in_pack' : 'on_me' }))

/** What the window derives from changed lines, in its order. */
function figures({ index, brief, trip, walker, today }: Grown, lines: readonly LineFacts[]): void {
  const gathered = gather(index, 'bench', lines).loadout
  const asked = filledByBrief({ loadout: gathered, brief, trip, walker, today })
  const totals = totalsOf(asked.loadout)
  stripOf(totals, marksOf(asked.loadout, walker, today))
  findAll(asked)
}
