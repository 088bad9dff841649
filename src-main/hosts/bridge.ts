import type { IncomingMessage, ServerResponse } from 'node:http'
import { PassThrough, type Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { fromWeb, toWeb } from '../files/streams.ts'
import { address } from './guard.ts'
import { safeHeaders } from './page.ts'

/** Between Node's requests and the web's own classes, which both hosts speak: bodies stay streams both ways. */
export function webRequest(port: number, request: IncomingMessage): Request {
  const method = request.method ?? 'GET'
  const headers = new Headers()
  for (const name of ['content-type', 'content-length', 'range', 'x-file-name']) {
    const value = headerOf(request, name)
    if (value !== undefined) headers.set(name, value)
  }
  const body = method === 'GET' || method === 'HEAD' ? null : toWeb(bodyOf(request))
  const init = { method, headers, body, duplex: 'half' as const }
  return new Request(`http://${address}:${port}${request.url ?? '/'}`, init)
}

/** A body that can be given up without cutting the line on which the refusal must still go out; a sender who hangs up is an error in it. */
function bodyOf(request: IncomingMessage): Readable {
  const body = new PassThrough()
  request.on('close', () => {
    if (!request.complete) body.destroy(new Error('the sender hung up'))
  })
  return request.pipe(body)
}

export function headerOf(request: IncomingMessage, name: string): string | undefined {
  const value = request.headers[name]
  return Array.isArray(value) ? value[0] : value
}

/** Every answer leaves through here, so every answer carries the policy. */
export async function send(response: ServerResponse, from: Response): Promise<void> {
  response.writeHead(from.status, { ...Object.fromEntries(from.headers), ...safeHeaders })
  if (from.body === null) response.end()
  else await pipeline(fromWeb(from.body), response)
}

export const json = (status: number, value: unknown, more: Readonly<Record<string, string>> = {}): Response =>
  new Response(JSON.stringify(value), {
    status,
    headers: { ...more, 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' },
  })
