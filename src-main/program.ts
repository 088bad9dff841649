import type { ProgramState } from './answers.ts'
import type { Fault, Outcome } from '../src-domain/figures/fault.ts'
import type { Heard, Reply } from './contract.ts'
import { keepFileRow } from './files/file-row.ts'
import { startSweeps } from './files/sweep.ts'
import { makeWeb } from './files/web.ts'
import { handlers } from './handlers/index.ts'
import { makeRouter, type Routed } from './router.ts'
import { startBackups } from './rolling-backups.ts'
import { backupFolder, newestAt, newestSound } from './store/backup.ts'
import { openStore, type Store } from './store/open.ts'
import { makeQueue } from './store/transactions.ts'
import { redoName, undoName } from './store/undo.ts'
import { dayIn } from './today.ts'

/** What a host carries: the running program behind the one contract. Both hosts see only this. */
export interface Program {
  /** Looks the call up, validates its input, runs it, answers; never throws across the border. */
  readonly call: (name: string, input: unknown) => Promise<Reply<unknown>>
  /** Tells of every acknowledged change; returns the way to stop listening. */
  readonly onHeard: (listener: (heard: Heard) => void) => () => void
  /** Files that are too large for a call: GET /files/<sha256>, POST /files, POST /in, GET /out/<name>. The host has checked who asks. */
  readonly web: (request: Request) => Promise<Response>
  /** Lets running writes end, then closes the store. */
  readonly close: () => Promise<void>
}

/** The little of a log that the core needs; hosts give it one. */
export interface Log {
  readonly info: (text: string) => void
  readonly warn: (text: string) => void
  readonly error: (text: string, error?: unknown) => void
}

export interface ProgramOptions {
  readonly dataDir: string
  readonly host: 'electron' | 'loopback'
  readonly version: string
  readonly log: Log
  /** The computer's clock and zone, given so that tests can set them. */
  readonly now: () => Date
  readonly zone: string
  readonly demo: boolean
  /** Opens the demo data in its own folder and gives the address of a window on it, or null where the host opened the window itself. */
  readonly openDemo: () => Promise<string | null>
  /** Prints the window's page of that address (`/print/door/3`) into a file; absent: this host has no way to. */
  readonly printPdf?: (address: string, file: string) => Promise<Outcome<null>>
}

/** Opens the store and puts the program together. A store that cannot be opened gives a program in trouble: it says so and offers a backup. */
export async function openProgram(options: ProgramOptions): Promise<Program> {
  const running = await makeRunning(options)
  const call = makeRouter(running, handlers)
  const stopBackups = startBackups(running)
  const stopSweeps = startSweeps(running)
  return {
    call,
    onHeard: running.onHeard,
    web: makeWeb({ dataDir: options.dataDir, keepRow: (file) => keepFileRow(running, file) }),
    close: async () => {
      stopBackups()
      stopSweeps()
      await running.alone(() => running.reading(running.shut))
    },
  }
}

interface Inner extends Routed {
  readonly onHeard: Program['onHeard']
  readonly shut: () => Promise<void>
}

async function makeRunning(options: ProgramOptions): Promise<Inner> {
  const open = () => openStore({ dataDir: options.dataDir, now: options.now })
  let opened: Outcome<Store> = await open()
  const listeners = new Set<(heard: Heard) => void>()
  // Counts on from the clock, so that a window which outlived the program cannot take the new count for the next of the old.
  let rev = options.now().getTime()
  const alone = makeQueue()
  const reading = makeQueue()
  const tell: Routed['tell'] = (touched, closet) => {
    rev += 1
    const heard: Heard = { rev, touched, ...stepNames(opened) }
    for (const listener of listeners) safely(options.log, () => listener(heard))
    return closet ? { ...heard, closet } : heard
  }
  const shut = () => {
    if (opened.ok) opened.value.close()
    opened = { ok: false, fault: { code: 'store.in-use', facts: { detail: 'the program is closing' } } }
  }
  return {
    options,
    store: () => opened,
    rev: () => rev,
    alone,
    reading,
    tell,
    tellAll: () => tell([{ table: '*', ids: [] }]),
    damaged: (found) => {
      if (!opened.ok) return
      const { leave } = opened.value
      opened = { ok: false, fault: found }
      options.log.error(`the store is damaged: ${String(found.facts['detail'])}`)
      // What is running may still hold the connections.
      void alone(() =>
        reading(() => {
          leave()
          return Promise.resolve()
        }),
      )
    },
    reopen: (swap) =>
      reading(async () => {
        shut()
        try {
          await swap()
        } finally {
          opened = await open()
        }
        return opened
      }),
    state: () => Promise.resolve(stateOf(options, opened, rev)),
    onHeard: (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    shut: () => {
      shut()
      return Promise.resolve()
    },
  }
}

function safely(log: Log, work: () => void): void {
  try {
    work()
  } catch (error) {
    log.error('a listener failed', error)
  }
}

function stepNames(opened: Outcome<Store>): Pick<Heard, 'undo' | 'redo'> {
  return opened.ok ? { undo: undoName(opened.value.raw), redo: redoName(opened.value.raw) } : { undo: null, redo: null }
}

function stateOf(options: ProgramOptions, opened: Outcome<Store>, rev: number): ProgramState {
  const { version, dataDir, demo, host, zone, now } = options
  return {
    ...{ version, dataDir, demo, host, rev, zone },
    ...stepNames(opened),
    lastBackupOn: newestAt(backupFolder(dataDir)),
    trouble: opened.ok ? null : troubleOf(opened.fault, dataDir),
    today: dayIn(zone, now()),
  }
}

function troubleOf({ code, facts }: Fault, dataDir: string): NonNullable<ProgramState['trouble']> {
  const known = code === 'store.newer' || code === 'store.read-only' || code === 'store.full' ? code : 'store.damaged'
  return { code: known, detail: String(facts['detail'] ?? ''), backup: newestSound(backupFolder(dataDir)) }
}
