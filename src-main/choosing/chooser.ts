import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { Worker } from 'node:worker_threads'
import type { ChoiceState, ReasonedLine } from '../answers.ts'
import type { Job, Said } from './messages.ts'

/**
 * Choices being worked out, each in a thread of its own that ends with it. A second request replaces the first; what has been said so far can be
 * asked for at any time, and only by the ticket of the request it belongs to.
 */
interface Running {
  readonly ticket: number
  readonly worker: Worker
  readonly startedMs: number
  state: ChoiceState
}

let tickets = 0
let running: Running | null = null

const empty: ChoiceState = { stage: 'solving', tookMs: 0, proposal: null, reasons: [], prices: [], next: [], why: '' }

export function startChoice(job: Job): number {
  stopChoice()
  const ticket = ++tickets
  const worker = new Worker(workerFile(), { workerData: job })
  worker.unref()
  const now: Running = { ticket, worker, startedMs: performance.now(), state: empty }
  running = now
  worker.on('message', (said: Said) => hear(now, said))
  worker.on('error', (error: Error) => hear(now, { kind: 'failed', why: error.message.slice(0, 300) }))
  return ticket
}

/** null: another request took its place. */
export function choiceState(ticket: number): ChoiceState | null {
  if (running?.ticket !== ticket) return null
  const { state, startedMs } = running
  return state.stage === 'solving' ? { ...state, tookMs: performance.now() - startedMs } : state
}

/** Ends the thread at once; what it had found is forgotten. */
export function stopChoice(): void {
  const before = running
  running = null
  if (before !== null) void before.worker.terminate()
}

function hear(now: Running, said: Said): void {
  now.state = withSaid(now.state, said, performance.now() - now.startedMs)
  if (said.kind === 'done' || said.kind === 'failed') void now.worker.terminate()
}

function withSaid(state: ChoiceState, said: Said, tookMs: number): ChoiceState {
  switch (said.kind) {
    case 'proposal':
      return { ...state, stage: 'explaining', tookMs, proposal: said.proposal }
    case 'reason':
      return { ...state, reasons: replaced(state.reasons, said.reason) }
    case 'price':
      return { ...state, prices: [...state.prices, { name: said.name, dg: said.dg }] }
    case 'next':
      return { ...state, next: [...state.next, said.chosen] }
    case 'done':
      return { ...state, stage: 'done' }
    case 'failed':
      return { ...state, stage: 'failed', why: said.why }
  }
}

const replaced = (reasons: readonly ReasonedLine[], reason: ReasonedLine): readonly ReasonedLine[] => {
  const others = reasons.filter(({ itemId, lane }) => itemId !== reason.itemId || lane !== reason.lane)
  return [...others, reason]
}

/** Beside this file where the source runs; a file of its own in the build, beside this one or one folder up. */
function workerFile(): string {
  const here = import.meta.dirname
  const source = join(here, 'worker.ts')
  if (existsSync(source)) return source
  return [here, resolve(here, '..')].map((folder) => join(folder, 'choosing.js')).find((file) => existsSync(file))!
}
