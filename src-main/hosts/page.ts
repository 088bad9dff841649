import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { extname, join, resolve, sep } from 'node:path'
import { toWeb } from '../files/streams.ts'

/** One policy for both hosts, sent as a header: nothing from outside, no inline script or style. */
export const contentSecurityPolicy =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

/** Sent with every answer of both hosts. */
export const safeHeaders: Readonly<Record<string, string>> = {
  'content-security-policy': contentSecurityPolicy,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
}

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
}

/** The built window's file for a path of a request, or 404. Both hosts serve the page through this. */
export async function servePage(root: string, rawPath: string, method: string): Promise<Response> {
  if (method !== 'GET' && method !== 'HEAD') return answer(405, 'Only reading is possible here.')
  const file = await fileFor(root, rawPath)
  if (file === null) return answer(404, 'There is no such page.')
  const headers = { ...safeHeaders, 'content-type': file.type, 'content-length': String(file.bytes), 'cache-control': file.cache }
  if (method === 'HEAD') return new Response(null, { headers })
  return new Response(toWeb(createReadStream(file.path)), { headers })
}

export const answer = (status: number, text: string): Response =>
  new Response(`${text}\n`, {
    status,
    headers: { ...safeHeaders, 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' },
  })

interface Found {
  readonly path: string
  readonly type: string
  readonly bytes: number
  readonly cache: string
}

/** Resolved inside the root or nothing; a path that still holds an escape, a backslash or a NUL once decoded is nothing. */
async function fileFor(root: string, rawPath: string): Promise<Found | null> {
  const path = inside(root, rawPath)
  if (path === null) return null
  const type = types[extname(path)]
  const seen = await stat(path).catch(() => null)
  if (type === undefined || seen?.isFile() !== true) return null
  // Built assets carry a hash in their name and never change; the page that names them must always be asked for.
  const cache = rawPath.startsWith('/assets/') ? 'max-age=31536000, immutable' : 'no-cache'
  return { path, type, bytes: seen.size, cache }
}

export function inside(root: string, rawPath: string): string | null {
  const decoded = decodedOnce(rawPath === '/' ? '/index.html' : rawPath)
  if (decoded === null || !decoded.startsWith('/') || /[%\\\0]/.test(decoded)) return null
  if (decoded.split('/').some((part) => part === '..' || part === '.')) return null
  const path = resolve(join(root, decoded))
  return path.startsWith(resolve(root) + sep) ? path : null
}

function decodedOnce(path: string): string | null {
  try {
    return decodeURIComponent(path)
  } catch {
    return null
  }
}
