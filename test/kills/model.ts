import Database from 'better-sqlite3'

/**
 * What the store must hold. Every change carries a token of its own and touches several rows, so that a look at the rows says
 * whether it is there whole, not at all, or half.
 */
export type Kind = 'item' | 'sheet' | 'tag' | 'weigh'
export interface Token {
  readonly text: string
  readonly kind: Kind
  /** The item made, for later changes to name. */
  readonly itemId?: number
  /** How many items a tag was put on. */
  readonly items?: number
}

/** Which tokens are there, and which can be undone and redone, newest last. */
export interface State {
  readonly undo: readonly Token[]
  readonly redo: readonly Token[]
  /** Steps that were dropped for age can no longer be undone, but are there. */
  readonly settled: readonly Token[]
}

export const empty: State = { undo: [], redo: [], settled: [] }
const keptSteps = 500

export function added({ undo, settled }: State, token: Token): State {
  const steps = [...undo, token]
  return { undo: steps.slice(-keptSteps), redo: [], settled: [...settled, ...steps.slice(0, -keptSteps)] }
}

export function undone(state: State): State {
  const last = state.undo.at(-1)
  return last ? { ...state, undo: state.undo.slice(0, -1), redo: [...state.redo, last] } : state
}

export function redone(state: State): State {
  const next = state.redo.at(-1)
  return next ? { ...state, redo: state.redo.slice(0, -1), undo: [...state.undo, next] } : state
}

export const liveIn = ({ undo, settled }: State): readonly Token[] => [...settled, ...undo]

export const sizes = { tags: 3, duties: 2, sheetRows: 60 } as const

type Seen = 'whole' | 'half'

/** What stands in the store of each token; one that is not there at all is left out. */
export function observe(
  file: string,
  tokens: ReadonlyMap<string, Token>,
): { readonly seen: ReadonlyMap<string, Seen>; readonly broken: readonly string[] } {
  const raw = new Database(file)
  try {
    return { seen: seenIn(raw, tokens), broken: brokenIn(raw) }
  } finally {
    raw.close()
  }
}

function seenIn(raw: Database.Database, tokens: ReadonlyMap<string, Token>): ReadonlyMap<string, Seen> {
  const seen = new Map<string, Seen>()
  const note = (text: string, isWhole: boolean) => void seen.set(text, isWhole && seen.get(text) !== 'half' ? 'whole' : 'half')
  for (const row of rows(raw, itemsSql)) note(row.text, row.a === sizes.tags && row.b === sizes.duties && row.c === 1)
  for (const row of rows(raw, sheetsSql)) note(row.text, row.a === sizes.sheetRows && row.b === sizes.sheetRows && row.c === 1)
  for (const row of rows(raw, tagsSql)) note(row.text, row.a === tokens.get(row.text)?.items)
  for (const row of rows(raw, weighingsSql)) note(row.text, row.a === 1)
  return seen
}

interface Counted {
  readonly text: string
  readonly a: number
  readonly b: number
  readonly c: number
}
const rows = (raw: Database.Database, sql: string): readonly Counted[] => raw.prepare<[], Counted>(sql).all()

const itemsSql = `SELECT name AS text, (SELECT count(*) FROM item_label l WHERE l.item_id = item.id AND text LIKE 'own-%') AS a,
  (SELECT count(*) FROM item_duty d WHERE d.item_id = item.id) AS b, (SELECT count(*) FROM weighing w WHERE w.item_id = item.id AND note = '') AS c
  FROM item WHERE name LIKE 'item-%'`
const sheetsSql = `SELECT text, (SELECT count(*) FROM item WHERE maker = text) AS a,
  (SELECT count(*) FROM line JOIN loadout ON loadout.id = line.loadout_id WHERE loadout.name = text) AS b, (SELECT count(*) FROM loadout WHERE name = text) AS c
  FROM (SELECT maker AS text FROM item WHERE maker LIKE 'sheet-%' UNION SELECT name FROM loadout WHERE name LIKE 'sheet-%')`
const tagsSql = `SELECT text, count(*) AS a, 0 AS b, 0 AS c FROM item_label WHERE text LIKE 'tag-%' GROUP BY text`
const weighingsSql = `SELECT note AS text, count(*) AS a, 0 AS b, 0 AS c FROM weighing WHERE note LIKE 'weigh-%' GROUP BY note`

/** Damage that no change may leave, whatever was done. */
function brokenIn(raw: Database.Database): readonly string[] {
  const count = (sql: string) => raw.prepare(sql).pluck().get() as number
  const broken: string[] = []
  const check = raw.pragma('integrity_check', { simple: true })
  if (check !== 'ok') broken.push(String(check))
  if ((raw.pragma('foreign_key_check') as unknown[]).length > 0) broken.push('a row refers to one that is not there')
  if (count('SELECT count(*) FROM step_now WHERE step_id IS NOT NULL OR quiet <> 0') > 0) broken.push('a step is left open')
  if (count('SELECT count(*) FROM step WHERE id NOT IN (SELECT step_id FROM step_row)') > 0) broken.push('a step has no rows')
  return broken
}

export interface Verdict {
  readonly state: State
  readonly lost: readonly string[]
  readonly half: readonly string[]
}

/** Of the states that may be (the last call may or may not have been kept) the one that fits best, and what does not fit it. */
export function judge(file: string, candidates: readonly State[], tokens: ReadonlyMap<string, Token>): Verdict {
  const { seen, broken } = observe(file, tokens)
  const half = [...broken, ...[...seen].filter(([, how]) => how === 'half').map(([text]) => text)]
  const verdicts = candidates.map((state) => ({ state, lost: misfits(state, seen), half }))
  return verdicts.reduce((best, one) => (one.lost.length < best.lost.length ? one : best))
}

function misfits(state: State, seen: ReadonlyMap<string, Seen>): readonly string[] {
  const live = new Set(liveIn(state).map(({ text }) => text))
  const missing = [...live].filter((text) => !seen.has(text))
  const extra = [...seen.keys()].filter((text) => !live.has(text)).map((text) => `${text} (should not be there)`)
  return [...missing, ...extra]
}
