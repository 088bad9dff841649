import { randomBytes, timingSafeEqual } from 'node:crypto'

/** How long a ticket that nobody used stays good. It stands on a browser's command line, which others on the computer may read. */
const ticketLifeMs = 60_000

export interface Tickets {
  /** A new one-time ticket. */
  readonly issue: () => string
  /** Takes a ticket and gives a session for it; null: unknown, used or too old. */
  readonly swap: (ticket: string) => string | null
  readonly isSession: (session: string | undefined) => boolean
}

export const secret = (): string => randomBytes(32).toString('base64url')

/** Compares in a time that tells nothing about where two secrets differ. */
export function sameSecret(a: string, b: string): boolean {
  const left = Buffer.from(a)
  const right = Buffer.from(b)
  return left.length === right.length && timingSafeEqual(left, right)
}

export function makeTickets(nowMs: () => number): Tickets {
  const bestBefore = new Map<string, number>()
  const sessions = new Set<string>()
  return {
    issue() {
      const ticket = secret()
      bestBefore.set(ticket, nowMs() + ticketLifeMs)
      return ticket
    },
    swap(ticket) {
      const until = bestBefore.get(ticket)
      bestBefore.delete(ticket)
      if (until === undefined || nowMs() > until) return null
      const session = secret()
      sessions.add(session)
      return session
    },
    isSession: (session) => session !== undefined && sessions.has(session),
  }
}
