import { describe, expect, test } from 'vitest'
import fc from 'fast-check'
import { gpxLimits, readGpx, readGpxText } from '../../../src-main/files/gpx.ts'

const open = '<gpx version="1.1" creator="t" xmlns="http://www.topografix.com/GPX/1/1">'
const points = (inside: string) => `${open}\n<trk><trkseg>\n${inside}\n</trkseg></trk></gpx>`
const why = (text: string) => {
  const outcome = readGpxText(text)
  return outcome.ok ? 'read' : [outcome.fault.code, outcome.fault.facts['why'], outcome.fault.facts['line']]
}

describe('hostile and broken files', () => {
  test.each([
    [
      'an entity bomb',
      `<!DOCTYPE gpx [\n<!ENTITY a "aaaaaaaaaa">\n<!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">\n]>\n${points('<trkpt lat="1" lon="2"><ele>&b;</ele></trkpt>')}`,
      'doctype',
      4,
    ],
    ['an external entity', `<!DOCTYPE gpx SYSTEM "file:///etc/passwd">\n${points('<trkpt lat="1" lon="2"/>')}`, 'doctype', 1],
    ['an entity nobody defined', points('<trkpt lat="1" lon="2"><name>&boom;</name></trkpt>'), 'not-xml', 3],
    ['nothing', '', 'not-xml', 1],
    ['a page of a site', '<html><body>404</body></html>', 'not-gpx', 1],
    ['another vocabulary under the same name', '<gpx xmlns="urn:other"></gpx>', 'not-gpx', 1],
    // Text before the first tag is noticed where it ends; a control character where it stands.
    ['not XML at all', 'lat,lon\n1,2\n', 'not-xml', 3],
    ['a picture', '\u0089PNG\r\n\u001a\n\u0000\u0000', 'not-xml', 2],
    ['cut off in the middle', points('<trkpt lat="1" lon="2"/>').slice(0, -12), 'not-xml', 4],
    ['tags that cross', `${open}<trk></gpx></trk>`, 'not-xml', 1],
    ['a latitude past the pole', points('<trkpt lat="1" lon="2"/>\n<trkpt lat="90.1" lon="2"/>'), 'coordinate', 4],
    ['a longitude past the turn', points('<trkpt lat="1" lon="180.0001"/>'), 'coordinate', 3],
    ['no longitude', points('<trkpt lat="1"/>'), 'coordinate', 3],
    ['a latitude that is no number', points('<trkpt lat="0x10" lon="2"/>'), 'coordinate', 3],
    ['an endless latitude', points('<trkpt lat="Infinity" lon="2"/>'), 'coordinate', 3],
    ['a decimal comma in a place', points('<trkpt lat="45,5" lon="2"/>'), 'decimal-comma', 3],
    ['a decimal comma in a height', points('<trkpt lat="45.5" lon="2">\n<ele>1234,5</ele></trkpt>'), 'decimal-comma', 4],
    ['no places', `${open}<trk><trkseg></trkseg></trk></gpx>`, 'no-points', 1],
    ['a pit of elements', `${open}${'<a>'.repeat(100)}`, 'too-deep', 1],
    ['an endless name', `${open}<trk><name>${'x'.repeat(gpxLimits.text + 1)}</name></trk></gpx>`, 'text-too-long', 1],
    [
      'an endless name in pieces',
      `${open}<trk><name>${`${'x'.repeat(40_000)}<![CDATA[y]]>`.repeat(2)}</name></trk></gpx>`,
      'text-too-long',
      1,
    ],
  ])('%s is refused, with the line', (_, text, reason, line) => {
    expect(why(text)).toEqual(['track.unreadable', reason, line])
  })
  test('too many bytes are refused before they are read', async () => {
    let given = 0
    function* endless() {
      yield new TextEncoder().encode(open)
      for (;;) {
        given++
        yield new TextEncoder().encode(`<wpt lat="1" lon="2"/>${' '.repeat(1000)}`)
      }
    }
    expect(await readGpx(endless(), 100_000)).toEqual({ ok: false, fault: { code: 'track.too-large', facts: { limit: 100_000 } } })
    expect(given).toBeLessThan(100)
  })
  test('bytes that are no text, or of an unknown alphabet, are refused', async () => {
    const bad = Buffer.concat([Buffer.from(open), Buffer.from([0xc3, 0x28]), Buffer.from('</gpx>')])
    expect(await readGpx([bad])).toMatchObject({ ok: false, fault: { facts: { why: 'encoding' } } })
    expect(await readGpx([Buffer.from('<?xml version="1.0" encoding="made-up"?><gpx/>')])).toMatchObject({
      ok: false,
      fault: { facts: { why: 'encoding' } },
    })
  })
  test('any text at all is read or refused, never thrown', () => {
    const scrap = fc.constantFrom(
      '<',
      '>',
      '</',
      '/>',
      '&',
      ';',
      '"',
      'gpx',
      'trk',
      'trkseg',
      'trkpt',
      ' lat="1"',
      ' lon="2"',
      '<![CDATA[',
      ']]>',
      '<!--',
      '-->',
      '<?',
      '?>',
      'é',
      '\u0000',
      '1,5',
      'ele',
    )
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.array(scrap, { maxLength: 40 }).map((parts) => parts.join('')),
          fc.array(scrap, { maxLength: 40 }).map((parts) => open + parts.join('')),
        ),
        (text) => {
          const outcome = readGpxText(text)
          return outcome.ok || (outcome.fault.code === 'track.unreadable' && Number(outcome.fault.facts['line']) >= 1)
        },
      ),
      { numRuns: 2000 },
    )
  })
  test('a good file with one byte changed is read or refused', () => {
    const good = points('<trkpt lat="1.5" lon="2.25"><ele>100.5</ele><time>2026-08-01T06:00:00Z</time></trkpt>')
    fc.assert(
      fc.property(fc.nat({ max: good.length - 1 }), fc.string({ minLength: 0, maxLength: 2 }), (at, by) => {
        const outcome = readGpxText(good.slice(0, at) + by + good.slice(at + 1))
        return outcome.ok || outcome.fault.code === 'track.unreadable'
      }),
      { numRuns: 2000 },
    )
  })
})
