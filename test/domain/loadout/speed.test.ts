import { expect, test } from 'vitest'
import { duties as duty } from '../../../src-domain/checks/duties.ts'
import { duties as vocabulary, kitAreas, lanes, type MassOrigin } from '../../../src-domain/closet/vocabulary.ts'
import { marksOf, stripOf } from '../../../src-domain/loadout/strip.ts'
import { totalsOf } from '../../../src-domain/loadout/totals.ts'
import { itemRow, kitIndex, loadoutOf, type TestItem } from './kit.ts'
import { skarnBrief, skarnTrip, skarnWalker } from './skarn.ts'

const from: readonly MassOrigin[] = ['measured', 'claimed', 'estimated', 'measured']
const items = Array.from({ length: 150 }, (_, i): TestItem => ({
  name: `item ${i}`,
  area: kitAreas[i % 12]!,
  g: 1 + 3 * i,
  from: from[i % 4]!,
  pieces: 1 + (i % 3),
  duties: `${vocabulary[i % 50]!.code} ${vocabulary[(i * 7 + 1) % 50]!.code}`,
  needs: i % 5 === 0 ? [{ duty: 'stake', pieces: 1, kind: 'reserved' }] : [],
}))
const loadout = loadoutOf(
  kitIndex(items),
  items.map(({ pieces }, i) => itemRow(i + 1, i + 1, { lane: lanes[i % 3]!, pieces: pieces! })),
)

function redraw() {
  stripOf(totalsOf(loadout), marksOf(loadout, skarnWalker, '2025-10-08'))
  duty.find({ loadout, brief: skarnBrief, trip: skarnTrip, walker: skarnWalker, today: '2025-10-08' })
}

// A drop has to be drawn inside a frame of 16.7 ms, so that its figures may take 2. Processor time, not the clock, and the best of ten
// batches: others share this machine. Measured 0.6 ms.
test('totals, strip and duties of 150 lines take 2 ms at most', () => {
  for (let turn = 0; turn < 50; turn++) redraw()
  const batches = Array.from({ length: 10 }, () => {
    const start = process.cpuUsage()
    for (let turn = 0; turn < 20; turn++) redraw()
    return process.cpuUsage(start).user / 20_000
  })
  expect(Math.min(...batches)).toBeLessThan(2)
})
