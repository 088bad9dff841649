import type { IncomingHttpHeaders } from 'node:http'

/** Only this machine, by this name: a page under another name that resolves here (DNS rebinding) is not ours. */
export const address = '127.0.0.1'

/**
 * Why a request is turned away before anything is read of it; null: go on.
 *   421 the Host is not ours, 403 the page that asks is not ours.
 * `sec-fetch-site` is set by browsers alone, on every request, and cannot be forged by a page.
 */
export function refusal(headers: IncomingHttpHeaders, port: number, path: string): 421 | 403 | null {
  if (headers.host !== `${address}:${port}`) return 421
  if (headers.origin !== undefined && headers.origin !== `http://${address}:${port}`) return 403
  const site = headers['sec-fetch-site']
  if (isGuarded(path) && site !== undefined && site !== 'same-origin') return 403
  return null
}

/** Everything but the page's own files. */
export const isGuarded = (path: string): boolean => /^\/(api|files|in|out|track)(\/|$)/.test(path)
