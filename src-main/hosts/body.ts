import type { IncomingMessage } from 'node:http'

/** The most that a call's JSON may hold; the contract's own limits stay below it. Files go another way and have their own caps. */
export const maxCallBytes = 8 * 1024 * 1024

/** The JSON of a request, or the status that refuses it: 413 too much, 415 not JSON by its type, 400 not JSON. */
export type ReadBody = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly status: 400 | 413 | 415 }

export async function readJson(request: IncomingMessage, maxBytes = maxCallBytes): Promise<ReadBody> {
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) return { ok: false, status: 415 }
  const text = await readText(request, maxBytes)
  if (text === null) return { ok: false, status: 413 }
  try {
    return { ok: true, value: JSON.parse(text) as unknown }
  } catch {
    return { ok: false, status: 400 }
  }
}

/** At most `maxBytes` are ever held; null: there was more. */
async function readText(request: IncomingMessage, maxBytes: number): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > maxBytes) return null
  return await new Promise((settle, fail) => {
    const parts: Buffer[] = []
    let bytes = 0
    request.on('data', (part: Buffer) => {
      bytes += part.length
      if (bytes > maxBytes) settle(null)
      else parts.push(part)
    })
    request.on('end', () => settle(Buffer.concat(parts).toString('utf8')))
    request.on('error', fail)
  })
}

/** How long a refused sender may go on talking, unheard, before the line is cut: enough for it to read the refusal. */
const lingerMs = 3_000

/** Reads on and throws away, so that the refusal arrives instead of a broken connection; then cuts the line. */
export function letFinish(request: IncomingMessage): void {
  if (request.complete || request.destroyed) return
  const cut = setTimeout(() => request.destroy(), lingerMs)
  request.removeAllListeners('data')
  request.on('end', () => clearTimeout(cut))
  request.on('close', () => clearTimeout(cut))
  request.on('error', () => clearTimeout(cut))
  request.resume()
}
