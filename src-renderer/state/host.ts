import type { Call, Heard, InputOf, OutputOf, Reply } from '../../src-main/contract.ts'

/** The one way from the window to the program: the preload's two functions in Electron, requests to the loopback host in a browser. */
export interface Host {
  readonly call: <K extends Call>(name: K, input: InputOf<K>) => Promise<Reply<OutputOf<K>>>
  readonly onHeard: (listener: (heard: Heard) => void) => void
  /** Called with false when the host is gone and true when it answers again. */
  readonly onAlive: (listener: (alive: boolean) => void) => void
  /** Called once when the host answers but no longer knows this window: it was started anew, and only a new ticket opens it. */
  readonly onShut: (listener: () => void) => void
  /** Files too large for a call: /files/<sha256>, /in, /out/<name>. */
  readonly fetch: (path: string, init?: RequestInit) => Promise<Response>
}

interface Preload {
  readonly call: (name: string, input: unknown) => Promise<unknown>
  readonly onChange: (listener: (heard: Heard) => void) => () => void
}

declare global {
  interface Window {
    readonly tarework?: Preload
  }
}

/** Connects to whichever host carries this window; null: a browser tab without a valid ticket or session. */
export async function connect(): Promise<Host | null> {
  return window.tarework ? electron(window.tarework) : loopback()
}

function electron(preload: Preload): Host {
  return {
    call: (name, input) => preload.call(name, input) as Promise<Reply<never>>,
    onHeard: (listener) => void preload.onChange(listener),
    onAlive: () => undefined,
    onShut: () => undefined,
    fetch: (path, init) => fetch(path, init),
  }
}

const sessionKey = 'tarework-session'
/** 401, RFC 9110 section 15.5.2. */
const unknownSession = 401

async function loopback(): Promise<Host | null> {
  const session = await openSession()
  if (session === null) return null
  const headers = { 'x-session': session }
  const heardBy: ((heard: Heard) => void)[] = []
  const aliveBy: ((alive: boolean) => void)[] = []
  const shutBy: (() => void)[] = []
  const request = (path: string, init: RequestInit = {}) =>
    fetch(path, { ...init, headers: { ...headers, ...(init.headers as Record<string, string>) } })
  // A page that is only printed hears of no changes: its browser waits until nothing more is asked for.
  if (!location.hash.startsWith('#/print/'))
    void listen(
      request,
      (heard) => heardBy.forEach((tell) => tell(heard)),
      (alive) => aliveBy.forEach((tell) => tell(alive)),
    ).then(() => shutBy.forEach((tell) => tell()))
  return {
    call: async (name, input) => {
      try {
        const answer = await request(`/api/call/${name}`, {
          method: 'POST',
          body: JSON.stringify(input),
          headers: { 'content-type': 'application/json' },
        })
        if (answer.status === unknownSession) return { ok: false, fault: { code: 'program.shut', facts: {} } }
        return (await answer.json()) as Reply<never>
      } catch {
        return { ok: false, fault: { code: 'program.gone', facts: {} } }
      }
    },
    onHeard: (listener) => void heardBy.push(listener),
    onAlive: (listener) => void aliveBy.push(listener),
    onShut: (listener) => void shutBy.push(listener),
    fetch: request,
  }
}

/** The ticket in the fragment is good once; the session it is swapped for lasts as long as the tab. */
async function openSession(): Promise<string | null> {
  const ticket = /#ticket=([^&]+)/.exec(location.hash)?.[1]
  const go = /&go=(\/[^&]*)/.exec(location.hash)?.[1]
  if (ticket !== undefined) {
    history.replaceState(null, '', `${location.pathname}${location.search}${go === undefined ? '' : `#${go}`}`)
    const answer = await fetch('/api/session', {
      method: 'POST',
      body: JSON.stringify({ ticket }),
      headers: { 'content-type': 'application/json' },
    })
    if (answer.ok) sessionStorage.setItem(sessionKey, ((await answer.json()) as { session: string }).session)
  }
  return sessionStorage.getItem(sessionKey)
}

type Request = (path: string, init?: RequestInit) => Promise<Response>

/** Reads change events line by line; when the host is gone, says so and tries again each second. Ends when the host knows no such window. */
async function listen(request: Request, heard: (heard: Heard) => void, alive: (alive: boolean) => void): Promise<void> {
  for (;;) {
    try {
      const answer = await request('/api/events')
      if (answer.status === unknownSession) return
      if (!answer.ok || !answer.body) throw new Error('no events')
      alive(true)
      await readLines(answer.body, (line) => heard(JSON.parse(line) as Heard))
    } catch {
      // worded by whoever listens to alive
    }
    alive(false)
    await new Promise((resolve) => setTimeout(resolve, 1000))
  }
}

async function readLines(body: ReadableStream<Uint8Array>, each: (line: string) => void): Promise<void> {
  const reader = body.pipeThrough(new TextDecoderStream() as ReadableWritablePair<string, Uint8Array>).getReader()
  let rest = ''
  for (;;) {
    const { done, value } = await reader.read()
    if (done) return
    const lines = (rest + value).split('\n')
    rest = lines.pop() ?? ''
    for (const line of lines) if (line.trim() !== '') each(line)
  }
}
