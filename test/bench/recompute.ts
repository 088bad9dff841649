import { filledByBrief } from '../../src-domain/checks/by-brief.ts'
import { findAll, tallyOf } from '../../src-domain/checks/index.ts'
import type { Asked } from '../../src-domain/checks/check.ts'
import { gather } from '../../src-domain/loadout/gather.ts'
import { profileOf } from '../../src-domain/loadout/profile.ts'
import { totalsOf } from '../../src-domain/loadout/totals.ts'
import type { Brief, Leg } from '../../src-domain/trips/brief.ts'
import { grownTo } from './demo-loadout.ts'
import { ms, timed, type BenchRow } from './row.ts'

const [entries, days] = [120, 14]
const goalMs = 4

/** All checks, totals and the profile of a 120-entry loadout on a brief of fourteen days, against 4 ms. */
export async function recompute(): Promise<BenchRow> {
  const asked = await askedOf()
  const { unknown, notAsked } = tallyOf(findAll(asked))
  const took = timed(
    () => asked,
    (same) => whole(same),
  )
  const about = `${ms(took.wallMs)} (processor ${ms(took.processorMs)}) against ${ms(goalMs)}; ${entries} entries, ${days} days, ${unknown} checks unknown, ${notAsked} not asked, median of 200`
  return { name: 'full recomputation', ratio: took.wallMs / goalMs, goal: 1, about }
}

function whole(asked: Asked): void {
  findAll(asked)
  totalsOf(asked.loadout)
  if (!profileOf(asked).ok) throw new Error('the brief gives no profile')
}

async function askedOf(): Promise<Asked> {
  const { index, lines, brief, trip, walker, today } = await grownTo(entries)
  const { loadout } = gather(index, 'bench', lines)
  const long = { ...trip, startsOn: '2026-09-05', endsOn: '2026-09-18' }
  return filledByBrief({ loadout, brief: longBrief(brief), trip: long, walker, today })
}

/** The trip's own legs walked again and again, a camp at each day's end, supplies every fifth day, a source every half day. */
function longBrief(brief: Brief): Brief {
  const byDay = Map.groupBy(brief.legs, ({ day }) => day)
  const own = [...byDay.values()]
  const legs = Array.from({ length: days }, (_, n) => own[n % own.length]!.map((leg): Leg => ({ ...leg, day: n + 1 }))).flat()
  const lengthM = legs.reduce((sum, leg) => sum + (leg.lengthM ?? 0), 0)
  const along = (count: number) => Array.from({ length: count }, (_, n) => Math.round((lengthM * n) / count))
  return {
    ...brief,
    legs,
    nightsOut: days - 1,
    sources: along(2 * days).map((atM) => ({ atM, name: '', sure: 'sure', safe: false })),
    resupplies: along(3)
      .slice(1)
      .map((atM, n) => ({ atM, day: 5 * (n + 1), name: '', what: ['food', 'fuel', 'power'] })),
  }
}
