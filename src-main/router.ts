import * as v from 'valibot'
import { fault, type Fault, type Outcome } from '../src-domain/figures/fault.ts'
import { contract, type Call, type Heard, type Reply } from './contract.ts'
import type { Answered, Around, Handlers, Told } from './handlers/kinds.ts'
import type { Log } from './program.ts'
import type { Running } from './running.ts'
import { closetRows } from './store/closet.ts'
import { saysDamaged, storeFault } from './store/faults.ts'
import type { Raw, ReadDb, WriteDb } from './store/handles.ts'
import { touchedBy } from './store/touched.ts'
import { inSnapshot, inStep, inTransaction, type Changed } from './store/transactions.ts'
import { redoName, undoName } from './store/undo.ts'
import { dayIn } from './today.ts'

/** What the router needs of the running program beyond what handlers see. */
export interface Routed extends Running {
  /** Counts without telling: what a change that touched nothing answers. */
  readonly rev: () => number
  /** Runs reads one at a time, each on one state of the store. */
  readonly reading: <T>(work: () => Promise<T>) => Promise<T>
  /** The store was found damaged while running: it is not written to again. */
  readonly damaged: (found: Fault) => void
}

/** Calls that answer while the store cannot be opened. */
const withoutStore: ReadonlySet<string> = new Set<Call>(['program.state', 'backup.list', 'backup.restore', 'demo.open'])

/** Notes that other windows hear of, by the table they touch. */
const heardNotes: Readonly<Partial<Record<Call, string>>> = { 'setting.set': 'setting' }

export type Router = (name: string, input: unknown) => Promise<Reply<unknown>>

/** Looks a call up, checks its input, runs it in the way of its kind, and answers; nothing is thrown across the border. */
export function makeRouter(running: Routed, handlers: Handlers): Router {
  return async (name, input) => {
    try {
      if (!isCall(name)) return fault('program.unknown-call', { name: shortName(name) })
      const checked = v.safeParse(contract[name].input, input)
      if (!checked.success) return fault('input.invalid', problemOf(checked.issues[0]))
      return replyOf(running, await run(running, handlers, name, checked.output))
    } catch (error) {
      return caught(running, name, error)
    }
  }
}

/** `Object.hasOwn`, so that `__proto__` or `constructor` is no call. */
const isCall = (name: unknown): name is Call => typeof name === 'string' && Object.hasOwn(contract, name)

/** Whatever came in place of a name, short enough to be told. */
const shortName = (name: unknown): string => String(name).slice(0, 100)

function problemOf(issue: v.BaseIssue<unknown>): Fault['facts'] {
  return { field: v.getDotPath(issue) ?? '', message: issue.message.slice(0, 300) }
}

function caught(running: Routed, name: string, error: unknown): Reply<unknown> {
  const expected = storeFault(error)
  if (!expected) return bug(running.options.log, name, error)
  return replyOf(running, { ok: false, fault: expected })
}

function bug(log: Log, name: string, error: unknown): Reply<never> {
  log.error(`the call ${name} failed`, error)
  return fault('program.bug', { call: name, message: error instanceof Error ? error.message.slice(0, 300) : '' })
}

function replyOf(running: Routed, answer: Answered<unknown>): Reply<unknown> {
  if (!answer.ok) {
    if (saysDamaged(answer.fault)) running.damaged(answer.fault)
    return answer
  }
  const { value, told } = answer
  return { ok: true, value, ...told }
}

/** Handlers as the router calls them: the contract has checked the input, and only the row's kind is known here. */
type Handler<Db, Answer> = (db: Db, input: unknown, around: Around) => Promise<Answer>
type Ask = Handler<ReadDb, Outcome<unknown>>
type Note = Handler<WriteDb, Outcome<unknown>>
type Change = Handler<WriteDb, Changed<unknown>>
type OfProgram = (running: Running, input: unknown) => Promise<Answered<unknown>>

function run(running: Routed, handlers: Handlers, name: Call, input: unknown): Promise<Answered<unknown>> {
  const kind = contract[name].kind
  const handler: unknown = handlers[name]
  if (kind === 'program') return runProgram(running, name, handler as OfProgram, input)
  if (kind === 'ask') return running.reading(() => ask(running, handler as Ask, input))
  if (kind === 'note') return running.alone(() => note(running, name, handler as Note, input))
  return running.alone(() => change(running, name, handler as Change, input))
}

async function runProgram(running: Routed, name: Call, handler: OfProgram, input: unknown): Promise<Answered<unknown>> {
  const store = running.store()
  return store.ok || withoutStore.has(name) ? handler(running, input) : store
}

function around({ options }: Routed, raw: Raw): Around {
  const now = options.now()
  return { raw, now, today: dayIn(options.zone, now) }
}

async function ask(running: Routed, handler: Ask, input: unknown): Promise<Outcome<unknown>> {
  const store = running.store()
  if (!store.ok) return store
  const { read, readRaw } = store.value
  return inSnapshot(readRaw, () => handler(read, input, around(running, readRaw)))
}

async function note(running: Routed, name: Call, handler: Note, input: unknown): Promise<Answered<unknown>> {
  const store = running.store()
  if (!store.ok) return store
  const { raw, write } = store.value
  const done = await inTransaction<Outcome<unknown>>(raw, () => handler(write, input, around(running, raw)))
  const table = heardNotes[name]
  return done.ok && table !== undefined ? { ...done, told: running.tell([{ table, ids: [] }]) } : done
}

async function change(running: Routed, name: Call, handler: Change, input: unknown): Promise<Answered<unknown>> {
  const store = running.store()
  if (!store.ok) return store
  const { raw } = store.value
  const here = around(running, raw)
  const done = await inStep(
    store.value,
    { code: name, at: here.now.toISOString() },
    (db) => handler(db, input, here),
    ({ value, stepId }) => Promise.resolve({ value, ...changesOf(raw, stepId) }),
  )
  if (!done.ok) return done
  const { value, touched, closet } = done.value
  return { ok: true, value, told: touched ? running.tell(touched, closet) : untouched(running, raw) }
}

/** What a change that changed nothing tells: no new count, no event. */
const untouched = (running: Routed, raw: Raw): Told => ({ rev: running.rev(), touched: [], undo: undoName(raw), redo: redoName(raw) })

/** What the step touched, with the closet's changed rows; an item named in `touched` but missing from them is gone. */
function changesOf(raw: Raw, stepId: number | null): { readonly touched?: Heard['touched']; readonly closet?: Told['closet'] } {
  if (stepId === null) return {}
  const { touched, itemIds } = touchedBy(raw, stepId)
  return itemIds.length > 0 ? { touched, closet: closetRows(raw, itemIds) } : { touched }
}
