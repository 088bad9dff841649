import type { Call, Heard, InputOf, OutputOf, ProgramState, Reply, StepName } from '../../src-main/contract.ts'
import type { Fault } from '../../src-domain/figures/fault.ts'
import { connect, type Host } from './host.ts'
import { faultWords } from '../words/faults.ts'
import { stepWords } from '../words/steps.ts'
import { notices } from './notices.svelte.ts'

export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: Fault }

type OkReply = Extract<Reply<unknown>, { ok: true }>

/** The running program as the window knows it: its state, what can be undone, and the one way to ask and to change. */
class Program {
  state = $state.raw<ProgramState | null>(null)
  undoable = $state.raw<StepName | null>(null)
  redoable = $state.raw<StepName | null>(null)
  /** no: no ticket and no session; gone: the host stopped answering. */
  link = $state<'opening' | 'open' | 'no' | 'gone'>('opening')
  host: Host | null = null
  #rev = 0
  readonly #listeners: ((heard: Pick<Heard, 'touched'>, reply: OkReply | null) => void)[] = []

  async start(): Promise<boolean> {
    this.host = await connect()
    if (this.host === null) {
      this.link = 'no'
      return false
    }
    this.host.onHeard((heard) => this.#heard(heard))
    this.host.onAlive((alive) => this.#alive(alive))
    this.host.onShut(() => (this.link = 'no'))
    const state = await this.ask('program.state', {})
    if (!state.ok) {
      this.link = state.fault.code === 'program.gone' ? 'gone' : 'no'
      return false
    }
    this.state = state.value
    this.undoable = state.value.undo
    this.redoable = state.value.redo
    this.#rev = state.value.rev
    this.link = 'open'
    return true
  }

  /** Told of every change, own or another window's; `touched` with table `*` means: ask all again. */
  listen(listener: (heard: Pick<Heard, 'touched'>, reply: OkReply | null) => void): void {
    this.#listeners.push(listener)
  }

  async ask<K extends Call>(name: K, input: InputOf<K>): Promise<Answer<OutputOf<K>>> {
    if (!this.host) return { ok: false, fault: { code: 'program.gone', facts: {} } }
    return this.host.call(name, input)
  }

  /** Changes the store; what it touched reaches every listener before this answers. A refusal is said and answered. */
  async change<K extends Call>(name: K, input: InputOf<K>): Promise<Answer<OutputOf<K>>> {
    const reply = await this.tryChange(name, input)
    if (!reply.ok) notices.fault(faultWords(reply.fault))
    return reply
  }

  /** As `change`, but the caller says the refusal itself (beside a field). */
  async tryChange<K extends Call>(name: K, input: InputOf<K>): Promise<Answer<OutputOf<K>>> {
    if (!this.host) return { ok: false, fault: { code: 'program.gone', facts: {} } }
    const reply = await this.host.call(name, input)
    if (reply.ok) this.#acknowledged(reply)
    return reply
  }

  async undo(): Promise<void> {
    if (this.undoable === null) {
      notices.say('Nothing to undo')
      return
    }
    const reply = await this.change('step.undo', {})
    if (reply.ok) notices.say(`Undone: ${stepWords(reply.value)}`)
  }

  async redo(): Promise<void> {
    if (this.redoable === null) {
      notices.say('Nothing to redo')
      return
    }
    const reply = await this.change('step.redo', {})
    if (reply.ok) notices.say(`Done again: ${stepWords(reply.value)}`)
  }

  #acknowledged(reply: OkReply): void {
    if (reply.undo !== undefined) this.undoable = reply.undo
    if (reply.redo !== undefined) this.redoable = reply.redo
    if (reply.rev !== undefined) this.#rev = Math.max(this.#rev, reply.rev)
    if (reply.touched) this.#tell({ touched: reply.touched }, reply)
  }

  #heard(heard: Heard): void {
    if (heard.rev <= this.#rev) return // our own change, already told by its reply
    const gap = heard.rev > this.#rev + 1
    this.#rev = heard.rev
    this.undoable = heard.undo
    this.redoable = heard.redo
    this.#tell(gap ? { touched: [{ table: '*', ids: [] }] } : heard, null)
  }

  #tell(heard: Pick<Heard, 'touched'>, reply: OkReply | null): void {
    for (const listener of this.#listeners) listener(heard, reply)
  }

  #alive(alive: boolean): void {
    if (!alive) {
      if (this.link === 'open') this.link = 'gone'
      return
    }
    if (this.link !== 'gone') return
    this.link = 'open'
    this.#tell({ touched: [{ table: '*', ids: [] }] }, null)
  }
}

export const program = new Program()
