import { mkdtempSync, rmSync, existsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { parseArgs } from 'node:util'
import { backupFolder, listBackups } from '../src-main/store/backup.ts'
import { storeFile } from '../src-main/store/open.ts'
import { killHard, spawnHost, startHost, type Host } from './kills/host.ts'
import { added, empty, judge, liveIn, redone, sizes, undone, type Kind, type State, type Token } from './kills/model.ts'

/**
 * Kills the program without warning at random moments during changes, and looks at what is left.
 *   npm run kills -- --rounds 200 [--seed N]
 * A change that was acknowledged must be there whole; one that was not may be there whole or not at all; none may be there half.
 */
const { values } = parseArgs({ options: { rounds: { type: 'string', default: '200' }, seed: { type: 'string' } } })
const rounds = Number(values.rounds)
const seed = values.seed === undefined ? Date.now() % 2 ** 31 : Number(values.seed)

let random = seed
const chance = (): number => {
  random = (Math.imul(random, 1664525) + 1013904223) >>> 0 // a linear congruence, common practice; only the seed's repeatability matters
  return random / 2 ** 32
}
const below = (n: number): number => Math.floor(chance() * n)
const pick = <T>(list: readonly T[]): T => list[below(list.length)]!

const tally = { acknowledged: 0, lost: 0, half: 0 }
const say = (line: string): void => void process.stderr.write(`${line}\n`)
let made = 0

interface Run {
  readonly dataDir: string
  /** What every acknowledged call has led to. */
  state: State
  /** What the call in flight would lead to; null while none is. */
  next: State | null
  readonly backups: Map<string, State>
  readonly tokens: Map<string, Token>
}

const newRun = (): Run => ({
  dataDir: mkdtempSync(join(tmpdir(), 'tarework-kills-')),
  state: empty,
  next: null,
  backups: new Map(),
  tokens: new Map(),
})

/** A fresh store every so often, so that its making is killed too; what a run leaves must undo to nothing. */
const roundsARun = 20

async function main(): Promise<void> {
  say(`kills: seed ${seed}`)
  let run = newRun()
  for (let round = 1; round <= rounds; round += 1) {
    await oneRound(run)
    look(run, round)
    if (round % roundsARun !== 0 && round !== rounds) continue
    say(`kills: ${round} rounds, ${tally.acknowledged} acknowledged so far`)
    await undoAll(run)
    rmSync(run.dataDir, { recursive: true, force: true })
    run = newRun()
  }
  rmSync(run.dataDir, { recursive: true, force: true })
  process.stdout.write(`kills: ${rounds} rounds, ${tally.acknowledged} acknowledged, ${tally.lost} lost, ${tally.half} half\n`)
  process.exitCode = tally.lost + tally.half > 0 ? 1 : 0
}

async function oneRound(run: Run): Promise<void> {
  // One round in ten ends while the host is starting: making the store, migrating, taking the stale lock.
  if (below(10) === 0) {
    await killWhileStarting(run.dataDir)
    return
  }
  const host = await startHost(run.dataDir)
  const working = work(host, run)
  await until(tally.acknowledged + below(25), 5000)
  await sleep(below(60))
  await host.kill()
  await working
}

/** Waits for so many acknowledged changes, or for the time to be over. */
async function until(acknowledged: number, mostMs: number): Promise<void> {
  const ends = Date.now() + mostMs
  while (tally.acknowledged < acknowledged && Date.now() < ends) await sleep(1)
}

async function killWhileStarting(dataDir: string): Promise<void> {
  const child = spawnHost(dataDir)
  await sleep(below(1500))
  await killHard(child)
}

/** Makes one change after the other until the host is gone. */
async function work(host: Host, run: Run): Promise<void> {
  for (;;) {
    const step = change(run)
    try {
      if (!(await step(host))) return
    } catch {
      return // the host is gone; what was in flight stays noted in `run.next`
    }
  }
}

type Step = (host: Host) => Promise<boolean>

function change(run: Run): Step {
  const dice = below(100)
  const items = liveIn(run.state).filter(({ itemId }) => itemId !== undefined)
  if (dice < 15) return step(run, 'step.undo', {}, undone(run.state), run.state.undo.length > 0)
  if (dice < 25) return step(run, 'step.redo', {}, redone(run.state), run.state.redo.length > 0)
  if (dice < 29) return backUp(run)
  if (dice < 31 && run.backups.size > 0) return restore(run)
  if (dice < 45 || items.length === 0) return addItem(run)
  if (dice < 60) return bringIn(run)
  if (dice < 80) return tag(run, items)
  return weigh(run, items)
}

/** Notes what the call would lead to, sends it, and takes that for the state once it is acknowledged. */
function step(run: Run, name: string, input: unknown, next: State, expected = true): Step {
  return async (host) => {
    run.next = next
    const reply = await host.call(name, input)
    if (reply.ok) {
      tally.acknowledged += 1
      run.state = next
    } else if (expected) {
      say(`refused: ${name} ${JSON.stringify(reply.fault)}`)
      tally.half += 1
    }
    run.next = null
    return true
  }
}

const newToken = (run: Run, kind: Kind, more: Partial<Token> = {}): Token => {
  made += 1
  const token = { text: `${kind}-${made}`, kind, ...more }
  run.tokens.set(token.text, token)
  return token
}

function addItem(run: Run): Step {
  const token = newToken(run, 'item')
  const tags = Array.from({ length: sizes.tags }, (_, n) => `own-${n}`)
  const duties = [{ duty: 'pot', shared: false }, { duty: 'stove', shared: true }] // prettier-ignore
  return async (host) => {
    run.next = added(run.state, token)
    const reply = await host.call('item.add', { name: token.text, kitArea: 'kitchen', tags, duties, weighedMg: 1000 + below(90_000) })
    if (!reply.ok) throw new Error(JSON.stringify(reply.fault))
    tally.acknowledged += 1
    run.state = added(run.state, { ...token, itemId: (reply.value as { id: number }).id })
    run.next = null
    return true
  }
}

function bringIn(run: Run): Step {
  const token = newToken(run, 'sheet')
  const item = (n: number) => ({ name: `Row ${n}`, kitArea: 'extras', maker: token.text, tags: ['sheet'], weighedMg: 1000 + n })
  const rows = Array.from({ length: sizes.sheetRows }, (_, n) => ({ itemId: null, item: item(n), line: { lane: 'in_pack', pieces: 1 } }))
  const batch = crypto.randomUUID()
  const accept = { batch, rows: rows.length, loadout: { name: token.text, seasonId: null, tripId: null } }
  return async (host) => {
    await host.call('bringIn.stage', { batch, from: 0, rows })
    return await step(run, 'bringIn.accept', accept, added(run.state, token))(host)
  }
}

function tag(run: Run, items: readonly Token[]): Step {
  const ids = [...new Set(Array.from({ length: 12 }, () => pick(items).itemId!))]
  const token = newToken(run, 'tag', { items: ids.length })
  return step(run, 'items.edit', { ids, addTags: [token.text], note: undefined }, added(run.state, token))
}

function weigh(run: Run, items: readonly Token[]): Step {
  const token = newToken(run, 'weigh')
  const marks = { damp: false, dirty: false, incomplete: false, entered: 'typed', note: token.text }
  const reading = {
    itemId: pick(items).itemId!,
    scaleId: null,
    weighedOn: '2026-09-20',
    readingsMg: [5000 + below(9000)],
    tareMg: 0,
    tareKind: 'button',
    pieces: 1,
  }
  return step(run, 'item.weigh', { ...reading, ...marks }, added(run.state, token))
}

function backUp(run: Run): Step {
  return async (host) => {
    const reply = await host.call('backup.now', {})
    if (reply.ok) run.backups.set((reply.value as { name: string }).name, run.state)
    return true
  }
}

function restore(run: Run): Step {
  const kept = [...run.backups].filter(([name]) => existsSync(join(backupFolder(run.dataDir), name)))
  const [name, state] = kept.length > 0 ? pick(kept) : ['', run.state]
  return name === '' ? backUp(run) : step(run, 'backup.restore', { name }, state)
}

/** Looks at the store after a kill, and goes on from what it holds. */
function look(run: Run, round: number): void {
  const unsound = listBackups(backupFolder(run.dataDir)).filter(({ sound }) => !sound)
  for (const { name } of unsound) say(`round ${round}: the backup ${name} is unsound`)
  tally.half += unsound.length
  const candidates = run.next ? [run.state, run.next] : [run.state]
  const waiting = run.next
  run.next = null
  if (!existsSync(storeFile(run.dataDir))) {
    missing(run, round, waiting)
    return
  }
  const verdict = judge(storeFile(run.dataDir), candidates, run.tokens)
  for (const what of verdict.lost) say(`round ${round}: lost: ${what}`)
  for (const what of verdict.half) say(`round ${round}: half: ${what}`)
  tally.lost += verdict.lost.length
  tally.half += verdict.half.length
  run.state = verdict.state
}

/** No file is right only while nothing was acknowledged, or in the middle of a restore, which the next opening finishes. */
function missing(run: Run, round: number, waiting: State | null): void {
  if (waiting !== null && existsSync(join(run.dataDir, 'tarework.restored.sqlite'))) {
    run.state = waiting
    return
  }
  if (liveIn(run.state).length === 0) return
  say(`round ${round}: lost: the whole store`)
  tally.lost += liveIn(run.state).length
}

/** Everything that the steps reach must undo, one by one. */
async function undoAll(run: Run): Promise<void> {
  const host = await startHost(run.dataDir)
  for (let left = run.state.undo.length; left > 0; left -= 1) {
    const reply = await host.call('step.undo', {})
    if (reply.ok) continue
    say(`undo was refused: ${JSON.stringify(reply.fault)}`)
    tally.half += 1
    break
  }
  await host.end()
  const verdict = judge(storeFile(run.dataDir), [{ undo: [], redo: [], settled: run.state.settled }], run.tokens)
  for (const what of [...verdict.lost, ...verdict.half]) say(`after undoing all: ${what}`)
  tally.half += verdict.lost.length + verdict.half.length
}

await main()
