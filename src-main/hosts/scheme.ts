import type { Program } from '../program.ts'
import { answer, safeHeaders, servePage } from './page.ts'

/** The page's origin: a scheme of our own, so that nothing of `file:` is open to it. */
export const origin = 'app://tarework'

/** True for addresses of our own page; `URL.origin` is no help, it is `null` for schemes that the URL standard does not know. */
export function isOurs(address: string): boolean {
  try {
    const { protocol, host } = new URL(address)
    return protocol === 'app:' && host === 'tarework'
  } catch {
    return false
  }
}

/** Answers `app://tarework/…`: the page's files, and what is too large for a call. */
export async function serveScheme(request: Request, pageRoot: string, program: Program): Promise<Response> {
  if (!isOurs(request.url)) return answer(404, 'There is no such place.')
  const path = new URL(request.url).pathname
  if (/^\/api(\/|$)/.test(path)) return answer(404, 'There is no such thing.')
  if (!/^\/(files|in|out|track)(\/|$)/.test(path)) return await servePage(pageRoot, path, request.method)
  return withSafeHeaders(await program.web(request))
}

function withSafeHeaders(from: Response): Response {
  const headers = new Headers(from.headers)
  for (const [name, value] of Object.entries(safeHeaders)) headers.set(name, value)
  return new Response(from.body, { status: from.status, headers })
}
