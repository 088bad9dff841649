import type { Heard, Reply } from '../../../src-main/contract.ts'
import type { Log, Program, ProgramOptions } from '../../../src-main/program.ts'

/** A program of three calls for the tests of the hosts: what they carry is not their matter. */
export interface SmallProgram extends Program {
  readonly tell: (heard: Heard) => void
  readonly closed: () => boolean
  /** Bodies handed to `web`, by path. */
  readonly handed: Map<string, number>
}

export const heard = (rev: number): Heard => ({ rev, touched: [{ table: 'item', ids: [rev] }], undo: null, redo: null })

export function smallProgram(): SmallProgram {
  const listeners = new Set<(heard: Heard) => void>()
  const handed = new Map<string, number>()
  let closed = false
  return {
    call: (name, input) => answerTo(name, input),
    onHeard(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    async web(request) {
      const path = new URL(request.url).pathname
      handed.set(path, (await request.arrayBuffer()).byteLength)
      return new Response('a file', { headers: { 'content-type': 'image/png' } })
    },
    close: () => Promise.resolve(void (closed = true)),
    tell: (one) => listeners.forEach((listener) => listener(one)),
    closed: () => closed,
    handed,
  }
}

async function answerTo(name: string, input: unknown): Promise<Reply<unknown>> {
  if (name === 'echo') return { ok: true, value: input }
  if (name === 'slow') return await new Promise((settle) => setTimeout(() => settle({ ok: true, value: 'done' }), msOf(input)))
  return { ok: false, fault: { code: 'program.unknown-call', facts: { name } } }
}

const msOf = (input: unknown): number => (input as { readonly ms?: number }).ms ?? 300

export const openSmall: (options: ProgramOptions) => Promise<SmallProgram> = () => Promise.resolve(smallProgram())

export const silentLog: Log = { info: () => undefined, warn: () => undefined, error: () => undefined }
