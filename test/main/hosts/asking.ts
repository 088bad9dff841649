import { request, type IncomingHttpHeaders } from 'node:http'

export interface Answer {
  readonly status: number
  readonly headers: IncomingHttpHeaders
  readonly text: string
}

export interface Asking {
  readonly method?: string
  readonly headers?: Readonly<Record<string, string>>
  readonly body?: string | Buffer
}

/** A plain request with every header free to be wrong; `fetch` would mend the path and refuse to set Host. */
export function ask(port: number, path: string, { method = 'GET', headers = {}, body }: Asking = {}): Promise<Answer> {
  return new Promise((settle, fail) => {
    const asked = request({ host: '127.0.0.1', port, path, method, headers: { connection: 'close', ...headers } }, (response) => {
      const parts: Buffer[] = []
      response.on('data', (part: Buffer) => parts.push(part))
      response.on('end', () =>
        settle({ status: response.statusCode ?? 0, headers: response.headers, text: Buffer.concat(parts).toString('utf8') }),
      )
      response.on('error', fail)
    })
    asked.on('error', fail)
    asked.end(body)
  })
}

export const post = (port: number, path: string, value: unknown, headers: Readonly<Record<string, string>> = {}): Promise<Answer> =>
  ask(port, path, { method: 'POST', headers: { 'content-type': 'application/json', ...headers }, body: JSON.stringify(value) })

export const ticketOf = (url: string): string => new URL(url).hash.replace('#ticket=', '')

/** Swaps the ticket of an address for a session header. */
export async function enter(port: number, url: string): Promise<Readonly<Record<string, string>>> {
  const { text } = await post(port, '/api/session', { ticket: ticketOf(url) })
  return { 'x-session': (JSON.parse(text) as { session: string }).session }
}
