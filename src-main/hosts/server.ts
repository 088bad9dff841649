import { createServer, type Server } from 'node:http'
import type { Log, Program } from '../program.ts'
import { attend, type Desk } from './desk.ts'
import { makeStreams } from './events.ts'
import { address } from './guard.ts'
import { makeTickets } from './tickets.ts'

/** A port that the register of ports leaves free (looked up from memory) and that no system hands out by itself. */
export const usualPort = 28_475

export interface DoorServer {
  readonly port: number
  /** A fresh address for one window; good once, for a minute. */
  readonly newUrl: () => string
  /** From now on calls are answered by this program; before, by 503. */
  readonly serve: (program: Program) => void
  /** Takes no new work, lets what runs end, hangs up on the windows. */
  readonly stop: () => Promise<void>
  readonly close: () => Promise<void>
}

export interface ServerOptions {
  /** null: the usual port, else any. */
  readonly port: number | null
  readonly key: string
  /** Where the built page lies; null: this host shows its page another way. */
  readonly pageRoot: string | null
  readonly log: Log
  readonly nowMs: () => number
  readonly onWindows: (open: number) => void
  readonly onKnock?: () => void
}

/** Listens on 127.0.0.1 only. The way in: ticket (once) → session → header `x-session` on everything but the page itself. */
export async function startServer(options: ServerOptions): Promise<DoorServer> {
  const { key, pageRoot, log } = options
  const tickets = makeTickets(options.nowMs)
  const streams = makeStreams(options.onWindows)
  const start = { port: 0, program: null, stopping: false, running: new Set<Promise<void>>() }
  const desk: Desk = { key, pageRoot, log, tickets, streams, onKnock: options.onKnock, ...start }
  const server = createServer({ requestTimeout: 0, headersTimeout: 10_000 }, (request, response) => void attend(desk, request, response))
  desk.port = await listen(server, options.port)
  return {
    port: desk.port,
    newUrl: () => `http://${address}:${desk.port}/#ticket=${tickets.issue()}`,
    serve(program) {
      desk.program = program
      program.onHeard(streams.tell)
    },
    async stop() {
      desk.stopping = true
      await Promise.all(desk.running)
      streams.closeAll()
    },
    close: () => closed(server),
  }
}

async function listen(server: Server, port: number | null): Promise<number> {
  if (port !== null) return await listenOn(server, port)
  try {
    return await listenOn(server, usualPort)
  } catch (error) {
    if (codeOf(error) !== 'EADDRINUSE' && codeOf(error) !== 'EACCES') throw error
    return await listenOn(server, 0)
  }
}

function listenOn(server: Server, port: number): Promise<number> {
  return new Promise((settle, fail) => {
    server.once('error', fail)
    server.listen({ host: address, port, exclusive: true }, () => {
      server.off('error', fail)
      const at = server.address()
      settle(typeof at === 'object' && at !== null ? at.port : port)
    })
  })
}

const codeOf = (error: unknown): string => (error instanceof Error && 'code' in error ? String(error.code) : '')

function closed(server: Server): Promise<void> {
  return new Promise((settle) => {
    server.close(() => settle())
    server.closeAllConnections()
  })
}
