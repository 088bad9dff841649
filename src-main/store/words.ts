import { duties, kitAreaWords, traits, isKitArea, dutyByCode, traitByCode, type KitArea } from '../../src-domain/closet/vocabulary.ts'
import { ok, type Outcome } from '../../src-domain/figures/fault.ts'
import type { WordRow } from '../answers.ts'
import type { ReadDb, WriteDb } from './handles.ts'
import { flag, gone, invalid, newUid } from './rows.ts'

/** The words shown for kit areas, duties and traits: the fixed codes with what the person made of them, and the person's own. */

const fixedWords: readonly WordRow[] = [
  ...kitAreaWords.map(({ code, label }) => ({ kind: 'area' as const, code, label, hidden: false, own: false, area: code, unit: '' })),
  ...duties.map(({ code, label, area }) => ({ kind: 'duty' as const, code, label, hidden: false, own: false, area, unit: '' })),
  ...traits.map(({ code, label, areas, unit }) => ({
    kind: 'trait' as const,
    code,
    label,
    hidden: false,
    own: false,
    area: areas.join(' '),
    unit,
  })),
]

export async function allWords(db: ReadDb): Promise<readonly WordRow[]> {
  const rows = await db.selectFrom('word').select(['kind', 'code', 'label', 'hidden', 'own', 'area', 'unit']).orderBy('id').execute()
  const kept = new Map(rows.map((row) => [`${row.kind} ${row.code}`, row]))
  const fixed = fixedWords.map((word) => {
    const mine = kept.get(`${word.kind} ${word.code}`)
    return mine ? { ...word, label: mine.label, hidden: mine.hidden === 1 } : word
  })
  const own = rows.filter((row) => row.own === 1).map((row) => ({ ...row, hidden: row.hidden === 1, own: true }))
  return [...fixed, ...own]
}

type Kind = WordRow['kind']

const isFixed = (kind: Kind, code: string): boolean =>
  kind === 'area' ? isKitArea(code) : kind === 'duty' ? dutyByCode.has(code) : traitByCode.has(code)

/** Renames or hides a word; a fixed one gets a row of its own the first time. */
export async function setWord(db: WriteDb, word: { kind: Kind; code: string; label: string; hidden: boolean }): Promise<Outcome<null>> {
  const changes = { label: word.label, hidden: flag(word.hidden) }
  const found = await db.updateTable('word').set(changes).where('kind', '=', word.kind).where('code', '=', word.code).executeTakeFirst()
  if (found.numUpdatedRows > 0n) return ok(null)
  if (!isFixed(word.kind, word.code)) return gone('word', word.code)
  await db
    .insertInto('word')
    .values({ uid: newUid(), kind: word.kind, code: word.code, ...changes })
    .execute()
  return ok(null)
}

/** Adds a duty or trait of the person's own; its code is made of its label and never changes after. */
export async function addWord(db: WriteDb, word: { kind: 'duty' | 'trait'; label: string; area: KitArea; unit: string }): Promise<string> {
  const code = await freeCode(db, word.kind, word.label)
  await db
    .insertInto('word')
    .values({ uid: newUid(), code, own: 1, ...word })
    .execute()
  return code
}

/** `own-` keeps the person's codes apart from fixed ones that later versions may bring. */
async function freeCode(db: ReadDb, kind: Kind, label: string): Promise<string> {
  const plain = label
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40)
  const rows = await db.selectFrom('word').select('code').where('kind', '=', kind).execute()
  const taken = new Set(rows.map(({ code }) => code))
  const base = plain === '' ? 'own' : `own-${plain}`
  if (!taken.has(base)) return base
  let n = 2
  while (taken.has(`${base}-${n}`)) n += 1
  return `${base}-${n}`
}

/** A duty or trait must have a word before anything can name it. */
export async function knownCodes(db: ReadDb, kind: 'duty' | 'trait', codes: readonly string[], field: string): Promise<Outcome<null>> {
  const foreign = codes.filter((code) => !isFixed(kind, code))
  if (foreign.length === 0) return ok(null)
  const rows = await db.selectFrom('word').select('code').where('kind', '=', kind).where('own', '=', 1).execute()
  const own = new Set(rows.map(({ code }) => code))
  const unknown = foreign.find((code) => !own.has(code))
  return unknown === undefined ? ok(null) : invalid(field, `no ${kind} has the code ${unknown}`)
}
