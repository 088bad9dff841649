import type { IncomingMessage, ServerResponse } from 'node:http'
import type { Log, Program } from '../program.ts'
import { letFinish, readJson, type ReadBody } from './body.ts'
import { headerOf, json, send, webRequest } from './bridge.ts'
import type { Streams } from './events.ts'
import { isGuarded, refusal } from './guard.ts'
import { answer, servePage } from './page.ts'
import { sameSecret, type Tickets } from './tickets.ts'

/** What the loopback host answers from. */
export interface Desk {
  readonly key: string
  readonly pageRoot: string | null
  readonly log: Log
  readonly tickets: Tickets
  readonly streams: Streams
  /** A host with a window of its own shows that to a second start, instead of giving a ticket. */
  readonly onKnock: (() => void) | undefined
  /** Requests under way, event streams apart: they are waited for at the end. */
  readonly running: Set<Promise<void>>
  port: number
  program: Program | null
  stopping: boolean
}

/** Every request ends here: refused, answered, or a bug that is logged and answered by 500. */
export async function attend(desk: Desk, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const work = reply(desk, request, response).catch((error: unknown) => {
    if (!request.destroyed) desk.log.error(`request ${request.method ?? ''} ${pathOf(request)}`, error)
    response.destroy()
  })
  desk.running.add(work)
  await work
  desk.running.delete(work)
  letFinish(request)
}

async function reply(desk: Desk, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const answered = await route(desk, request).catch((error: unknown) => {
    desk.log.error(`request ${request.method ?? ''} ${pathOf(request)}`, error)
    return json(500, { ok: false, fault: { code: 'program.bug', facts: {} } })
  })
  if (answered === 'events') desk.streams.open(response)
  else await send(response, answered)
}

// The raw path on purpose: a parsed URL would resolve `..` before it is looked at.
const pathOf = (request: IncomingMessage): string => (request.url ?? '/').split(/[?#]/, 1)[0] ?? '/'

async function route(desk: Desk, request: IncomingMessage): Promise<Response | 'events'> {
  const path = pathOf(request)
  const refused = refusal(request.headers, desk.port, path)
  if (refused !== null) return answer(refused, refused === 421 ? 'This is not the host you asked for.' : 'Not from here.')
  if (!isGuarded(path)) return await page(desk, path, request.method ?? 'GET')
  if (path === '/api/session') return await takeTicket(desk, request)
  if (path === '/api/door') return await openDoor(desk, request)
  if (!desk.tickets.isSession(headerOf(request, 'x-session'))) return answer(401, 'This window is not known here. Start Tarework again.')
  if (desk.stopping || desk.program === null) return json(503, { ok: false, fault: { code: 'program.busy', facts: {} } })
  return await known(desk, desk.program, path, request)
}

const page = async ({ pageRoot }: Desk, path: string, method: string): Promise<Response> =>
  pageRoot === null ? answer(404, 'This host has no page here.') : await servePage(pageRoot, path, method)

async function known(desk: Desk, program: Program, path: string, request: IncomingMessage): Promise<Response | 'events'> {
  if (path === '/api/events') return request.method === 'GET' ? 'events' : answer(405, 'GET only.')
  if (path.startsWith('/api/call/')) return await call(program, path.slice('/api/call/'.length), request)
  if (path.startsWith('/api/')) return answer(404, 'There is no such thing.')
  return await program.web(webRequest(desk.port, request))
}

async function call(program: Program, name: string, request: IncomingMessage): Promise<Response> {
  if (request.method !== 'POST') return answer(405, 'POST only.')
  const body = await readJson(request)
  return body.ok ? json(200, await program.call(name, body.value)) : refuseBody(body.status)
}

async function takeTicket(desk: Desk, request: IncomingMessage): Promise<Response> {
  const ticket = await wordOf(request, 'ticket')
  if (typeof ticket !== 'string') return ticket
  const session = desk.tickets.swap(ticket)
  return session === null ? answer(401, 'This ticket was used or is too old. Start Tarework again.') : json(200, { session })
}

/** A second start shows the key of the lock file and gets a ticket for its own window. */
async function openDoor(desk: Desk, request: IncomingMessage): Promise<Response> {
  const key = await wordOf(request, 'key')
  if (typeof key !== 'string') return key
  if (!sameSecret(key, desk.key)) return answer(401, 'That is not the key.')
  if (desk.onKnock !== undefined) {
    desk.onKnock()
    return json(200, { ticket: '' })
  }
  if (desk.stopping || desk.program === null) return answer(503, 'This host is starting or ending.')
  return json(200, { ticket: desk.tickets.issue() })
}

/** The one word that a small JSON body holds, or the answer that refuses it. */
async function wordOf(request: IncomingMessage, name: string): Promise<string | Response> {
  if (request.method !== 'POST') return answer(405, 'POST only.')
  const body = await readJson(request, 4096)
  if (!body.ok) return refuseBody(body.status)
  const word = typeof body.value === 'object' && body.value !== null ? (body.value as Record<string, unknown>)[name] : undefined
  return typeof word === 'string' ? word : refuseBody(400)
}

function refuseBody(status: Extract<ReadBody, { ok: false }>['status']): Response {
  const code = status === 413 ? 'file.too-large' : 'input.invalid'
  return json(status, { ok: false, fault: { code, facts: {} } }, status === 413 ? { connection: 'close' } : {})
}
