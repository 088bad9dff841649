import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach } from 'vitest'
import type { Call, ClosetColumns, InputOf, OutputOf, Reply } from '../../src-main/contract.ts'
import { storeFile } from '../../src-main/store/open.ts'
import { openProgram, type Log, type Program } from '../../src-main/program.ts'

/** A program on a real database in a folder of its own, with a clock that the test sets. Folders and programs go when the test ends. */
export interface Tried {
  readonly dataDir: string
  readonly program: () => Program
  /** Calls and insists on an answer. */
  readonly does: <K extends Call>(name: K, input: InputOf<K>) => Promise<OutputOf<K>>
  readonly reply: <K extends Call>(name: K, input: InputOf<K>) => Promise<Reply<OutputOf<K>>>
  /** Calls and insists on a fault. */
  readonly refuses: (
    name: string,
    input: unknown,
  ) => Promise<{ readonly code: string; readonly facts: Readonly<Record<string, string | number>> }>
  readonly reopen: () => Promise<void>
  readonly clock: { at: Date }
  /** What the program wrote to its log as an error: bugs. */
  readonly errors: string[]
  readonly warnings: string[]
}

const cleanups: (() => Promise<void> | void)[] = []
afterEach(async () => {
  for (const clean of cleanups.splice(0).reverse()) await clean()
})

export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'tarework-'))
  cleanups.push(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

export const afterTest = (clean: () => Promise<void> | void): void => void cleanups.push(clean)

export async function programAt(dataDir = tempFolder()): Promise<Tried> {
  const errors: string[] = []
  const warnings: string[] = []
  const log: Log = {
    info: () => undefined,
    warn: (text) => warnings.push(text),
    error: (text, error) => errors.push(`${text} ${String(error)}`),
  }
  const clock = { at: new Date('2026-09-20T10:00:00.000Z') }
  const open = () =>
    openProgram({
      dataDir,
      host: 'loopback',
      version: '0.0.0',
      log,
      now: () => clock.at,
      zone: 'Europe/Berlin',
      demo: false,
      openDemo: () => Promise.resolve(null),
    })
  let program = await open()
  cleanups.push(() => program.close())
  const reply: Tried['reply'] = async (name, input) => (await program.call(name, input)) as never
  return {
    dataDir,
    program: () => program,
    reply,
    does: async (name, input) => {
      const answer = await reply(name, input)
      if (!answer.ok) throw new Error(`${name} was refused: ${JSON.stringify(answer.fault)}`)
      return answer.value
    },
    refuses: async (name, input) => {
      const answer = await program.call(name, input)
      if (answer.ok) throw new Error(`${name} was not refused`)
      return answer.fault
    },
    reopen: async () => {
      await program.close()
      program = await open()
    },
    clock,
    errors,
    warnings,
  }
}

/** One item's row out of closet columns. */
export function rowOf(columns: ClosetColumns, id: number): Readonly<Record<keyof ClosetColumns, unknown>> {
  const at = columns.id.indexOf(id)
  if (at < 0) throw new Error(`no item ${id}`)
  return Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, (values as unknown[])[at]])) as Record<
    keyof ClosetColumns,
    unknown
  >
}

/** A weighing of one reading, for tests that are not about readings. */
export const oneReading = (itemId: number, grams: number, more: Partial<InputOf<'item.weigh'>> = {}): InputOf<'item.weigh'> => ({
  itemId,
  scaleId: null,
  weighedOn: '2026-09-20',
  readingsMg: [grams * 1000],
  tareMg: 0,
  tareKind: 'button',
  pieces: 1,
  damp: false,
  dirty: false,
  incomplete: false,
  entered: 'typed',
  ...more,
})

/** A reading connection of the test's own on a program's store, kept open until the test ends. */
export function watching({ dataDir }: Pick<Tried, 'dataDir'>): Database.Database {
  const raw = new Database(storeFile(dataDir), { readonly: true })
  afterTest(() => void raw.close())
  return raw
}
