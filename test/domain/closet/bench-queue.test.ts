import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { benchQueue, queueOrder } from '../../../src-domain/closet/bench-queue.ts'
import type { QueueItem, QueueLine } from '../../../src-domain/closet/bench-queue.ts'

const item = (id: number, more: Partial<QueueItem> = {}): QueueItem => ({
  id,
  uid: `u${id}`,
  name: `thing ${id}`,
  status: 'owned',
  archived: false,
  pieces: 1,
  massMg: 100_000,
  massFrom: 'claimed',
  uOwnMg: 0,
  uGainMg: 0,
  weighingUid: null,
  scaleUid: null,
  weighedOn: null,
  claimedMg: 100_000,
  ...more,
})
const measured = (id: number, massG: number, weighedOn: string, claimedG: number | null = null): QueueItem =>
  item(id, {
    massMg: massG * 1000,
    massFrom: 'measured',
    uOwnMg: 650,
    uGainMg: 80,
    weighingUid: `w${id}`,
    scaleUid: 'B',
    weighedOn,
    claimedMg: claimedG === null ? null : claimedG * 1000,
  })
const line = (itemId: number, loadoutId = 1, startsOn: string | null = '2025-10-09', more: Partial<QueueLine> = {}): QueueLine => ({
  itemId,
  loadoutId,
  loadoutName: `loadout ${loadoutId}`,
  startsOn,
  pieces: 1,
  carriedBy: '',
  ...more,
})
const before = '2024-10-08'
const groups = (items: readonly QueueItem[], lines: readonly QueueLine[] = []) =>
  benchQueue(items, lines, before).map(({ kind, entries }) => [kind, ...entries.map((entry) => entry.id)])

describe('the queue at the bench', () => {
  test('asks first for what leaves the next trip most open, then the rest never weighed, the oldest, the claims that do not hold', () => {
    const items = [
      item(1),
      item(2, { massMg: 352_000, claimedMg: 352_000 }),
      item(3, { massMg: 95_000, massFrom: 'estimated', claimedMg: null }),
      item(4, { massMg: 308_000, claimedMg: 308_000 }),
      measured(5, 1164, '2024-03-03'),
      measured(6, 232, '2023-03-03'),
      measured(7, 110, '2025-09-01', 100),
      measured(8, 104, '2025-09-01', 100),
    ]
    // Bands by provisions.md 9.3: claims 2·√(3² + 2²) % = 7.21 %, estimates 2·√(10² + 5²) % = 22.4 %: 352 → 25.4, 308 → 22.2, ≈95 → 21.2 g.
    // 110 against 100 is 10 g over 2·√(3.6² + 0.65²) = 7.3 g; 104 is not.
    expect(groups(items, [line(2), line(3), line(4)])).toEqual([['planned', 2, 4, 3], ['never', 1], ['oldest', 6, 5], ['differs', 7]]) // prettier-ignore
  })
  test('puts what has no mass at all before every band', () => {
    expect(groups([item(1), item(2, { massMg: null, massFrom: 'none' })])).toEqual([['never', 2, 1]])
    expect(benchQueue([item(2, { massMg: null, massFrom: 'none' })], [], before)[0]?.entries[0]?.bandMg).toBeNull()
  })
  test('names the nearest trip first and each thing once', () => {
    const items = [item(1), item(2), item(3)]
    const lines = [line(1, 1, null), line(2, 2, '2025-11-01'), line(1, 3, '2025-10-01'), line(3, 1, null)]
    expect(benchQueue(items, lines, before)).toMatchObject([{ kind: 'planned', loadoutId: 3 }, { kind: 'planned', loadoutId: 2 }, { kind: 'planned', loadoutId: 1, entries: [{ id: 3 }] }]) // prettier-ignore
  })
  test('adds the pieces of both lanes, and counts what is carried by another for nothing', () => {
    const [group] = benchQueue([item(1, { pieces: 8 })], [line(1, 1, null, { pieces: 2 }), line(1, 1, null, { pieces: 1 })], before)
    expect(group?.entries[0]).toMatchObject({ pieces: 3 })
    expect(group?.entries[0]?.bandMg).toBeCloseTo(3 * 100_000 * 0.0721110255, 2) // 2·√(0.03² + 0.02²)
    expect(groups([item(1)], [line(1, 1, null, { carriedBy: 'Mira' })])).toEqual([['never', 1]])
  })
  test('leaves out what is not at home', () => {
    expect(
      groups(
        [item(1, { status: 'lent' }), item(2, { status: 'wished' }), item(3, { archived: true }), item(4, { status: 'sold' })],
        [line(1)],
      ),
    ).toEqual([])
  })
  test('holds every owned, unweighed thing exactly once, whatever the loadouts', () => {
    const items = fc.uniqueArray(
      fc.record({
        id: fc.integer({ min: 1, max: 40 }),
        from: fc.constantFrom('claimed', 'estimated', 'none', 'measured'),
        massMg: fc.integer({ min: 0, max: 2_000_000 }),
        on: fc.constantFrom('2023-01-01', '2025-01-01'),
      }),
      { selector: (one) => one.id, maxLength: 30 },
    )
    const lines = fc.array(
      fc.record({
        itemId: fc.integer({ min: 1, max: 40 }),
        loadoutId: fc.integer({ min: 1, max: 4 }),
        pieces: fc.integer({ min: 1, max: 5 }),
      }),
      { maxLength: 40 },
    )
    fc.assert(
      fc.property(items, lines, (owned, carried) => {
        const rows = owned.map((one) => item(one.id, { massFrom: one.from, massMg: one.from === 'none' ? null : one.massMg, weighedOn: one.from === 'measured' ? one.on : null })) // prettier-ignore
        const queue = benchQueue(rows, carried.map((one) => line(one.itemId, one.loadoutId, `2025-10-0${one.loadoutId}`, { pieces: one.pieces })), before) // prettier-ignore
        const order = queueOrder(queue)
        expect(new Set(order).size).toBe(order.length)
        for (const row of rows) if (row.massFrom !== 'measured' || row.weighedOn === '2023-01-01') expect(order).toContain(row.id)
        for (const { kind, entries } of queue) {
          if (kind !== 'planned' && kind !== 'never') continue
          const bands = entries.map((entry) => entry.bandMg ?? Infinity)
          expect([...bands].sort((a, b) => (a < b ? 1 : a > b ? -1 : 0))).toEqual(bands)
        }
      }),
    )
  })
})
