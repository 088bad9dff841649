import { letGoLists, type LetGoThings } from '../../src-domain/closet/let-go-lists.ts'
import type { RecordFacts } from '../../src-domain/closet/let-go-record.ts'
import { duties } from '../../src-domain/closet/vocabulary.ts'
import { closetSize, ms, sideBySide, timed, type BenchRow } from './row.ts'
import { seeded } from './seeded.ts'

const trips = 500
const linesEach = 60
const goalMs = 200

/** Ranking a closet of 20,000 for letting go, with 500 trips of 60 lines: beside reading its record and closet through once, and against 200 ms. */
export async function letGo(): Promise<BenchRow> {
  const things = thingsOf()
  const record = recordOf()
  const ranked = letGoLists(things, record, new Map(), today)
  const rank = () => letGoLists(things, record, new Map(), today)
  const [ours, raw] = await sideBySide(rank, () => readThrough(things, record), 9)
  const { processorMs } = timed(() => null, rank, { unmeasured: 2, rounds: 9 })
  const offered = ranked.stayedHome.length + ranked.carriedForNothing.length
  const about = `${ms(ours)} (processor ${ms(processorMs)}) against ${ms(goalMs)}, ${(ours / raw).toFixed(1)} times one reading through (${ms(raw)}); ${offered} of ${closetSize} offered, ${trips} trips of ${linesEach} lines, median of 9`
  return { name: 'let-go ranking', ratio: ours / goalMs, goal: 1, about }
}

const today = '2026-06-15'

function thingsOf(): LetGoThings {
  const { below, pick } = seeded(20_000)
  const rows = Array.from({ length: closetSize }, (_, i) => i)
  return {
    id: rows.map((i) => i + 1),
    status: rows.map(() => (below(30) === 0 ? 'lent' : 'owned')),
    statusSince: rows.map(() => null),
    duties: rows.map(() => (below(5) === 0 ? '' : below(3) === 0 ? `${pick(duties).code} ${pick(duties).code}` : pick(duties).code)),
    seasons: rows.map(() => (below(6) === 0 ? pick(['winter', 'summer', 'spring\nautumn']) : '')),
    tags: rows.map(() => (below(20) === 0 ? 'wet only' : '')),
    cameOn: rows.map(() => `20${String(14 + below(12)).padStart(2, '0')}-0${1 + below(9)}-1${below(9)}`),
    name: rows.map((i) => `Thing ${i}`),
    massMg: rows.map(() => 1000 + below(1_500_000)),
    pieces: rows.map(() => 1),
    archived: rows.map(() => false),
  }
}

function recordOf(): RecordFacts {
  const { below, pick } = seeded(500)
  const all = Array.from({ length: trips }, (_, i) => i)
  const taken = all.flatMap((trip) => Array.from({ length: linesEach }, () => ({ trip, item: 1 + below(closetSize / 10) })))
  return {
    trips: {
      id: all.map((i) => i + 1),
      past: all.map((i) => i < 200),
      onDay: all.map(
        (i) => `20${String(15 + Math.floor(i / 50)).padStart(2, '0')}-${String(1 + Math.floor((i % 50) / 4.2)).padStart(2, '0')}-10`,
      ),
      season: all.map(() => pick(['spring', 'summer', 'autumn', 'winter', 'any'] as const)),
      asked: all.map(() => [...new Set(Array.from({ length: 24 }, () => pick(duties).code))].join(' ')),
      rain: all.map(() => pick(['', 'none', 'showers', 'wet'])),
      lowC: all.map(() => below(20) - 8),
      expectedLowC: all.map(() => null),
      newestItemId: all.map((i) => (i < 200 ? null : Math.round((closetSize * i) / trips))),
    },
    taken: {
      tripId: taken.map(({ trip }) => trip + 1),
      itemId: taken.map(({ item }) => item),
      use: taken.map(() => pick(['used', 'used', 'unused', 'unknown', 'failed'])),
    },
    away: { tripId: all.map((i) => i + 1), itemId: all.map(() => 1 + below(closetSize)) },
  }
}

/** The raw part: every line and every thing is looked at once, and the things sorted by mass. */
function readThrough(things: LetGoThings, { taken }: RecordFacts): number {
  const times = new Map<number, number>()
  for (const itemId of taken.itemId) if (itemId !== null) times.set(itemId, (times.get(itemId) ?? 0) + 1)
  const rows = things.id.map((id, row) => ({ row, times: times.get(id) ?? 0, massMg: things.massMg[row] ?? 0 }))
  return rows.sort((a, b) => a.times - b.times || b.massMg - a.massMg).length
}
