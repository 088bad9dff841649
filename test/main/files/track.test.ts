import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { readTrackFile } from '../../../src-main/files/track.ts'

const ridge = readFileSync(resolve(import.meta.dirname, '../../fixtures/tracks/ridge.gpx'))

async function* pieces(bytes: Buffer, size: number): AsyncIterable<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield await Promise.resolve(bytes.subarray(at, at + size))
}

test('a file gives its track and its route, each read whole, and its waypoints', async () => {
  const read = await readTrackFile(pieces(ridge, 1000), 'satellite')
  if (!read.ok) throw new Error(read.fault.code)
  const { lines, waypoints } = read.value
  expect(lines.map(({ kind, name }) => [kind, name])).toEqual([
    ['track', 'Walked'],
    ['route', 'Planned'],
  ])
  expect(waypoints.map(({ name }) => name)).toEqual(['Spring & trough', 'Flat <camp>'])
  for (const { points, lengthM, gapM } of lines) expect(points.at(-1)![0]).toBeCloseTo(lengthM + gapM, 1)
})

test('what cannot be read says why and where', async () => {
  const cut = await readTrackFile(pieces(ridge.subarray(0, 5000), 700), 'satellite')
  expect(cut).toMatchObject({ ok: false, fault: { code: 'track.unreadable', facts: { why: 'not-xml' } } })
  expect(cut.ok || Number(cut.fault.facts['line'])).toBeGreaterThan(10)
  const bare = Buffer.from('<gpx version="1.1"><wpt lat="1" lon="2"><name>alone</name></wpt></gpx>')
  expect(await readTrackFile(pieces(bare, 100), 'terrain')).toMatchObject({ ok: false, fault: { facts: { why: 'no-points' } } })
})
