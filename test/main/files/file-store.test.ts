import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { beforeEach, expect, test } from 'vitest'
import { fileFolder, filePath, keepFile, readKept, unnamedFiles } from '../../../src-main/files/file-store.ts'
import { pictureKind } from '../../../src-main/files/sniff.ts'
import { inPieces, jpeg, png, webp, zeros } from './pictures.ts'

let dataDir: string
beforeEach(() => (dataDir = mkdtempSync(join(tmpdir(), 'tarework-files-'))))

const sha = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')
const kept = (): string[] => (existsSync(fileFolder(dataDir)) ? readdirSync(fileFolder(dataDir)) : [])

test('a picture is kept under its hash and read back byte for byte, however it arrives in pieces', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(png, jpeg, webp),
      fc.string({ maxLength: 3000 }),
      fc.integer({ min: 1, max: 700 }),
      async (kind, tail, size) => {
        const whole = kind(tail)
        const done = await keepFile(dataDir, inPieces(whole, size))
        expect(done).toEqual({ ok: true, value: { sha256: sha(whole), mime: pictureKind(whole), bytes: whole.length } })
        const back = await readKept(dataDir, sha(whole))
        expect(back.ok && Buffer.compare(back.value.bytes, whole)).toBe(0)
      },
    ),
    { numRuns: 60 },
  )
  expect(kept().every((name) => /^[0-9a-f]{64}$/.test(name))).toBe(true)
})

test('only png, jpeg and webp are pictures here, whatever they are called', async () => {
  expect([png(), jpeg(), webp()].map(pictureKind)).toEqual(['image/png', 'image/jpeg', 'image/webp'])
  const others = [
    'GIF89a..........',
    '<svg xmlns="http://www.w3.org/2000/svg"/>',
    '<html><script>alert(1)</script>',
    'RIFF\x1a\0\0\0WAVEfmt ',
    '',
    '\xff\xd8',
    '\x89PNG\r\n',
  ]
  for (const text of others) {
    const done = await keepFile(dataDir, inPieces(Buffer.from(text, 'latin1'), 5))
    expect([text, done.ok ? '' : done.fault.code]).toEqual([text, 'file.not-image'])
  }
  expect(kept()).toEqual([])
})

test('a gigabyte of zeros is given up at the first bytes, and behind a true beginning at the cap', async () => {
  const gigabyte = 1024 ** 3
  const nothing = zeros(Buffer.alloc(64), gigabyte)
  expect(await keepFile(dataDir, nothing.stream)).toMatchObject({ ok: false, fault: { code: 'file.not-image' } })
  expect(nothing.drawn()).toBeLessThan(100_000)
  const dressed = zeros(png(), gigabyte)
  expect(await keepFile(dataDir, dressed.stream)).toMatchObject({
    ok: false,
    fault: { code: 'file.too-large', facts: { limit: 32 * 1024 ** 2 } },
  })
  expect(dressed.drawn()).toBeLessThan(33 * 1024 ** 2)
  expect(kept()).toEqual([])
})

test('a sender who breaks off leaves nothing', async () => {
  const broken = (async function* () {
    yield await Promise.resolve(png('half of it'))
    throw new Error('hung up')
  })()
  await expect(keepFile(dataDir, broken)).rejects.toThrow('hung up')
  expect(kept()).toEqual([])
})

test('a file that is no longer what its name says is not shown, and sending it again mends it', async () => {
  const whole = png('as it was')
  const name = sha(whole)
  await keepFile(dataDir, inPieces(whole, 9))
  for (const spoiled of [png('as it is!'), whole.subarray(0, 12), Buffer.from('')]) {
    writeFileSync(filePath(dataDir, name), spoiled)
    expect(await readKept(dataDir, name)).toMatchObject({ ok: false, fault: { code: 'file.unreadable' } })
  }
  await keepFile(dataDir, inPieces(whole, 9))
  expect((await readKept(dataDir, name)).ok).toBe(true)
})

test('a name that is no hash reads nothing', async () => {
  writeFileSync(join(dataDir, 'secret'), png())
  mkdirSync(fileFolder(dataDir))
  for (const name of ['../secret', '', '.', 'a'.repeat(63), 'A'.repeat(64), `${'a'.repeat(64)}/`])
    expect(await readKept(dataDir, name)).toMatchObject({ ok: false, fault: { code: 'row.gone' } })
})

test('what nobody names and has waited an hour is up for the sweep, and nothing else', async () => {
  const [named, young, old] = [png('named'), png('young'), png('old')]
  for (const one of [named, young, old]) await keepFile(dataDir, inPieces(one, 100))
  const part = 'part-00000000-0000-4000-8000-000000000000'
  writeFileSync(join(fileFolder(dataDir), part), 'left by a crash')
  writeFileSync(join(fileFolder(dataDir), 'a note of my own.txt'), 'not ours')
  const now = Date.now()
  const twoHoursAgo = new Date(now - 2 * 3600_000)
  for (const name of kept()) if (name !== sha(young)) utimesSync(join(fileFolder(dataDir), name), twoHoursAgo, twoHoursAgo)
  expect((await unnamedFiles(dataDir, new Set([sha(named)]), now)).toSorted()).toEqual([sha(old), part].toSorted())
})

test('files can be read by their owner alone', async () => {
  await keepFile(dataDir, inPieces(png(), 50))
  expect(statSync(filePath(dataDir, sha(png()))).mode & 0o077).toBe(0)
  expect(readFileSync(filePath(dataDir, sha(png())))).toEqual(png())
})
