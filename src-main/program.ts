import type { Heard, Reply } from './contract.ts'

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
}
