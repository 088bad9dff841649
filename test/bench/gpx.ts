import { SaxesParser } from 'saxes'
import { readGpx } from '../../src-main/files/gpx.ts'
import { ms, sideBySide, type BenchRow } from './row.ts'
import { seeded } from './seeded.ts'

const points = 100_000
const rounds = 5
const pieceBytes = 65_536

/** A track of 100,000 points with heights and times, read as the stream an upload gives, against saxes on the same pieces with listeners that do nothing. */
export async function gpx(): Promise<BenchRow> {
  const pieces = piecesOf(new TextEncoder().encode(track()))
  const [ours, alone] = await sideBySide(
    () => ourReading(pieces),
    () => parseAlone(pieces),
    rounds,
  )
  return { name: '100,000-point GPX', ratio: ours / alone, goal: 2, about: `readGpx ${ms(ours)}, saxes ${ms(alone)}; medians of ${rounds}` }
}

async function ourReading(pieces: readonly Uint8Array[]): Promise<void> {
  const read = await readGpx(pieces)
  const found = read.ok ? read.value.tracks[0]?.segments[0]?.length : 0
  if (found !== points) throw new Error(`${found} points instead of ${points}`)
}

/** A parser that nobody listens to skips work that every reader needs, so the listeners stand. */
function parseAlone(pieces: readonly Uint8Array[]): void {
  const parser = new SaxesParser({ xmlns: false })
  const decoder = new TextDecoder()
  const nothing = () => undefined
  parser.on('opentag', nothing)
  parser.on('closetag', nothing)
  parser.on('text', nothing)
  for (const piece of pieces) parser.write(decoder.decode(piece, { stream: true }))
  parser.close()
}

function track(): string {
  const { below } = seeded(points)
  const step = (n: number) => (n * 0.00001 + below(10) * 1e-7).toFixed(7)
  const point = (_: unknown, n: number) =>
    `<trkpt lat="${Number(step(n)) + 47}" lon="${Number(step(n)) + 8}"><ele>${(800 + below(2000) / 10).toFixed(1)}</ele><time>${new Date(1_750_000_000_000 + n * 1000).toISOString()}</time></trkpt>`
  const all = Array.from({ length: points }, point).join('\n')
  return `<?xml version="1.0" encoding="UTF-8"?>\n<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Ridge</name><trkseg>\n${all}\n</trkseg></trk></gpx>`
}

function piecesOf(bytes: Uint8Array): readonly Uint8Array[] {
  const count = Math.ceil(bytes.length / pieceBytes)
  return Array.from({ length: count }, (_, n) => bytes.subarray(n * pieceBytes, (n + 1) * pieceBytes))
}
