import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { archiveSchema } from '../../../src-main/files/archive/schema.ts'
import { storeFile } from '../../../src-main/store/open.ts'
import { fillDemo } from '../../../src-main/files/demo/fill.ts'
import { programAt } from '../program-at.ts'
import { readOnly } from '../random-changes.ts'
import { archived, partsOf } from './archives.ts'

const path = resolve(import.meta.dirname, '../../../src-main/files/archive-schema.json')

// After a migration: `WRITE_SCHEMA=1 npm run unit -- archive-schema`, then read the difference before committing it.
test('the schema in the repository is the one of the store', async () => {
  const { dataDir } = await programAt()
  const now = readOnly(storeFile(dataDir), archiveSchema)
  if (process.env['WRITE_SCHEMA'] === '1') writeFileSync(path, `${JSON.stringify(now, null, 2)}\n`)
  expect(JSON.parse(readFileSync(path, 'utf8'))).toEqual(now)
})

test('an archive is as its schema says', async () => {
  const tried = await programAt()
  await fillDemo(tried.program())
  const { manifest } = await partsOf(await archived(tried))
  const schema = JSON.parse(readFileSync(path, 'utf8')) as Schema
  expect(problems(schema, JSON.parse(JSON.stringify(manifest)), schema)).toEqual([])
  expect(problems(schema, { ...manifest, schema: 2 }, schema)).toEqual(['/schema: const'])
  expect(problems(schema, { ...manifest, files: [{ sha256: 'x', mime: 'image/png', bytes: 0 }] }, schema)).toEqual([
    '/files/0/sha256: pattern',
    '/files/0/bytes: minimum',
  ])
}, 60_000)

interface Schema {
  readonly [key: string]: unknown
  readonly $ref?: string
  readonly anyOf?: readonly Schema[]
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly type?: string
  readonly pattern?: string
  readonly minimum?: number
  readonly items?: Schema
  readonly required?: readonly string[]
  readonly properties?: Readonly<Record<string, Schema>>
  readonly additionalProperties?: boolean
  readonly $defs?: Readonly<Record<string, Schema>>
}

/** The keywords that the schema uses, as JSON Schema 2020-12 defines them (from memory); a keyword it does not know throws. */
function problems(schema: Schema, value: unknown, root: Schema, at = ''): string[] {
  const known = [
    '$schema',
    '$defs',
    '$ref',
    'title',
    'description',
    'format',
    'anyOf',
    'const',
    'enum',
    'type',
    'pattern',
    'minimum',
    'items',
    'required',
    'properties',
    'additionalProperties',
  ]
  const strange = Object.keys(schema).find((key) => !known.includes(key))
  if (strange !== undefined) throw new Error(`the test does not know the keyword ${strange}`)
  if (schema.$ref !== undefined) return problems(root.$defs![schema.$ref.replace('#/$defs/', '')]!, value, root, at)
  if (schema.anyOf !== undefined) return schema.anyOf.some((one) => problems(one, value, root, at).length === 0) ? [] : [`${at}: anyOf`]
  if (schema.const !== undefined) return schema.const === value ? [] : [`${at}: const`]
  if (schema.enum !== undefined) return schema.enum.includes(value) ? [] : [`${at}: enum`]
  if (schema.type !== undefined && !isOf(schema.type, value)) return [`${at}: type`]
  if (typeof value === 'string') return schema.pattern !== undefined && !new RegExp(schema.pattern).test(value) ? [`${at}: pattern`] : []
  if (typeof value === 'number') return schema.minimum !== undefined && value < schema.minimum ? [`${at}: minimum`] : []
  if (Array.isArray(value)) return value.flatMap((one, i) => problems(schema.items ?? {}, one, root, `${at}/${i}`))
  return typeof value === 'object' && value !== null ? inObject(schema, value as Record<string, unknown>, root, at) : []
}

function inObject(schema: Schema, value: Readonly<Record<string, unknown>>, root: Schema, at: string): string[] {
  const missing = (schema.required ?? []).filter((key) => !Object.hasOwn(value, key)).map((key) => `${at}/${key}: required`)
  const more = schema.additionalProperties === false ? Object.keys(value).filter((key) => !Object.hasOwn(schema.properties ?? {}, key)) : []
  const inside = Object.entries(schema.properties ?? {}).flatMap(([key, one]) =>
    Object.hasOwn(value, key) ? problems(one, value[key], root, `${at}/${key}`) : [],
  )
  return [...missing, ...more.map((key) => `${at}/${key}: additional`), ...inside]
}

function isOf(type: string, value: unknown): boolean {
  if (type === 'null') return value === null
  if (type === 'array') return Array.isArray(value)
  if (type === 'integer') return Number.isInteger(value)
  if (type === 'object') return typeof value === 'object' && value !== null && !Array.isArray(value)
  return typeof value === type
}
