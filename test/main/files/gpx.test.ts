import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Gpx } from '../../../src-main/files/gpx.ts'
import { readGpx, readGpxText } from '../../../src-main/files/gpx.ts'
import { readTrack } from '../../../src-domain/trips/track.ts'

const ridge = readFileSync(resolve(import.meta.dirname, '../../fixtures/tracks/ridge.gpx'), 'utf8')
const NS = 'xmlns="http://www.topografix.com/GPX/1/1"'
const gpx = (inside: string, attributes = `version="1.1" creator="t" ${NS}`) =>
  `<?xml version="1.0"?>\n<gpx ${attributes}>\n${inside}\n</gpx>`
const track = (points: string) => gpx(`<trk><trkseg>\n${points}\n</trkseg></trk>`)

function read(text: string): Gpx {
  const outcome = readGpxText(text)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.fault))
  return outcome.value
}
const firstPoint = (text: string) => read(text).tracks[0]!.segments[0]![0]!

describe('an invented walk, read by another library too', () => {
  // Expected: gpxpy 1.5.0 (Debian) for what the file holds; lengths by Karney's geodesic in Python, geographiclib 2.0; climb by a separate script of the note's pipeline.
  const found = read(ridge)
  test('it holds what that library finds', () => {
    expect(found.tracks.map(({ name, segments }) => [name, segments.map((segment) => segment.length)])).toEqual([['Walked', [91, 55]]])
    const points = found.tracks[0]!.segments.flat()
    expect(points.filter(({ heightM }) => heightM === null)).toHaveLength(3)
    expect(Math.max(...points.map(({ heightM }) => heightM ?? 0))).toBe(1225.9)
    expect(Math.min(...points.map(({ heightM }) => heightM ?? 9999))).toBe(1000)
    expect([points[0]!.atMs, points.at(-1)!.atMs]).toEqual([Date.UTC(2026, 7, 1, 6), Date.UTC(2026, 7, 1, 7, 4, 38)])
    expect(found.waypoints).toEqual([
      { latDeg: 45.007, lonDeg: 7.0035, heightM: 1130, name: 'Spring & trough' },
      { latDeg: 45.016, lonDeg: 7.015, heightM: null, name: 'Flat <camp>' },
    ])
    expect(found.routes).toEqual([
      {
        name: 'Planned',
        segments: [
          [
            { latDeg: 45, lonDeg: 7, heightM: 1000, atMs: null },
            { latDeg: 45.01, lonDeg: 7.005, heightM: null, atMs: null },
            { latDeg: 45.02, lonDeg: 7.02, heightM: 1290.5, atMs: null },
          ],
        ],
      },
    ])
    expect(found.ignored).toEqual({ times: 0, heights: 0 })
  })
  test('its length is the sum of the geodesics', () => {
    expect(readTrack(found.tracks[0]!.segments, 'satellite').lengthM).toBeCloseTo(2118.928671 + 1272.044833, 4)
  })
  test.each([
    ['terrain', 275.5 + 88.2, 86.9 + 95.9],
    ['barometer', 248.4 + 61.65, 59.8 + 69.35],
    ['satellite', 223.6 + 31.9, 35 + 41.5],
  ] as const)('its climb by heights from %s', (from, up, down) => {
    const { climb } = readTrack(found.tracks[0]!.segments, from)
    expect(climb!.upM).toBeCloseTo(up, 6)
    expect(climb!.downM).toBeCloseTo(down, 6)
  })
})

describe('what is optional may be missing', () => {
  test('no height, no time, an empty or unreadable one', () => {
    const text = track(
      '<trkpt lat="1" lon="2"/><trkpt lat="1" lon="2"><ele/><time></time></trkpt><trkpt lat="1" lon="2"><ele>NaN</ele><time>yesterday</time></trkpt><trkpt lat="1" lon="2"><ele>99999</ele></trkpt>',
    )
    const { tracks, ignored } = read(text)
    expect(tracks[0]!.segments[0]!.every(({ heightM, atMs }) => heightM === null && atMs === null)).toBe(true)
    expect(ignored).toEqual({ times: 1, heights: 2 })
  })
  test('version 1.0, no namespace, and a prefix are read alike', () => {
    const inside = (p: string) => `<${p}trk><${p}trkseg><${p}trkpt lat="1" lon="2"><${p}ele>3</${p}ele></${p}trkpt></${p}trkseg></${p}trk>`
    for (const text of [
      gpx(inside(''), 'version="1.0" creator="t" xmlns="http://www.topografix.com/GPX/1/0"'),
      gpx(inside(''), ''),
      `<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1">${inside('g:')}</g:gpx>`,
    ])
      expect(firstPoint(text)).toEqual({ latDeg: 1, lonDeg: 2, heightM: 3, atMs: null })
  })
  test('extensions and foreign elements are passed over', () => {
    const text = track(
      '<trkpt lat="1" lon="2"><ele>3</ele><o:ele xmlns:o="urn:o">7</o:ele><extensions><ele>8</ele><trkpt lat="9" lon="9"/></extensions><time>2026-01-02T03:04:05+01:00</time></trkpt>',
    )
    expect(read(text).tracks[0]!.segments).toEqual([[{ latDeg: 1, lonDeg: 2, heightM: 3, atMs: Date.UTC(2026, 0, 2, 2, 4, 5) }]])
  })
  test('a time without a zone is UTC; longitude 180 is −180', () => {
    expect(firstPoint(track('<trkpt lat="-90" lon="180"><time>2026-01-02T03:04:05.250</time></trkpt>'))).toEqual({
      latDeg: -90,
      lonDeg: -180,
      heightM: null,
      atMs: Date.UTC(2026, 0, 2, 3, 4, 5, 250),
    })
  })
  test('a track over the date line keeps its length', () => {
    const { tracks } = read(track('<trkpt lat="10" lon="179.9995"/><trkpt lat="10" lon="-179.9995"/>'))
    // Published check value of the science note, Karney's geodesic.
    expect(readTrack(tracks[0]!.segments, 'terrain').lengthM).toBeCloseTo(109.639364, 4)
  })
})

describe('as a stream', () => {
  async function* pieces(bytes: Uint8Array, size: number) {
    for (let at = 0; at < bytes.length; at += size) yield await Promise.resolve(bytes.subarray(at, at + size))
  }
  test('cut anywhere, it reads the same', async () => {
    const bytes = new TextEncoder().encode(ridge)
    const whole = read(ridge)
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: 3000 }), async (size) => {
        expect(await readGpx(pieces(bytes, size < 50 ? size + 50 : size))).toEqual({ ok: true, value: whole })
      }),
      { numRuns: 20 },
    )
    expect(await readGpx(pieces(bytes.subarray(0, 0), 1))).toMatchObject({ ok: false })
  })
  test('UTF-16, Latin-1 and a mark are understood', async () => {
    const text = gpx('<wpt lat="1" lon="2"><name>Höhle</name></wpt>')
    const utf16 = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(text, 'utf16le')])
    const latin1 = Buffer.from(text.replace('<?xml version="1.0"?>', '<?xml version="1.0" encoding="ISO-8859-1"?>'), 'latin1')
    for (const bytes of [utf16, latin1, Buffer.from(`\u{feff}${text}`)])
      expect(await readGpx([bytes])).toMatchObject({ ok: true, value: { waypoints: [{ name: 'Höhle' }] } })
  })
  test('100,000 points come through in order', async () => {
    const points = Array.from(
      { length: 100_000 },
      (_, i) => `<trkpt lat="${(45 + i * 1e-5).toFixed(6)}" lon="7.1"><ele>${1000 + (i % 50)}</ele></trkpt>`,
    )
    const outcome = await readGpx(pieces(new TextEncoder().encode(track(points.join('\n'))), 65_536))
    if (!outcome.ok) throw new Error('not read')
    const segment = outcome.value.tracks[0]!.segments[0]!
    expect(segment).toHaveLength(100_000)
    expect(segment[99_999]).toEqual({ latDeg: 45.99999, lonDeg: 7.1, heightM: 1049, atMs: null })
  })
})

describe('round trip', () => {
  const place = fc.record({
    lat: fc.integer({ min: -90_000_000, max: 90_000_000 }),
    lon: fc.integer({ min: -180_000_000, max: 179_999_999 }),
    ele: fc.option(fc.integer({ min: -400, max: 8900 })),
  })
  test('whatever is written is what is read', () => {
    fc.assert(
      fc.property(fc.array(fc.array(place, { minLength: 1, maxLength: 8 }), { minLength: 1, maxLength: 4 }), (segments) => {
        const written = segments.map(
          (segment) =>
            `<trkseg>${segment.map(({ lat, lon, ele }) => `<trkpt lat="${lat / 1e6}" lon='${lon / 1e6}'>${ele === null ? '' : `<ele> ${ele} </ele>`}</trkpt>`).join('')}</trkseg>`,
        )
        const expected = segments.map((segment) =>
          segment.map(({ lat, lon, ele }) => ({ latDeg: lat / 1e6, lonDeg: lon / 1e6, heightM: ele, atMs: null })),
        )
        expect(read(gpx(`<trk>${written.join('')}</trk>`)).tracks[0]!.segments).toEqual(expected)
      }),
    )
  })
})
