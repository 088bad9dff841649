import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { resolve } from 'node:path'
import { createInterface } from 'node:readline'

/** One loopback host as a process of its own, to be killed without warning. */
export interface Host {
  readonly call: (
    name: string,
    input: unknown,
  ) => Promise<{ readonly ok: boolean; readonly value?: unknown; readonly fault?: { readonly code: string } }>
  readonly kill: () => Promise<void>
  readonly end: () => Promise<void>
}

const script = resolve(import.meta.dirname, '../../src-main/hosts/loopback.ts')

export function spawnHost(dataDir: string): ChildProcess {
  return spawn(process.execPath, [script, '--no-window', '--data', dataDir, '--port', '0'], { stdio: ['ignore', 'pipe', 'pipe'] })
}

/** Ends a process without letting it do anything more, and waits until it is gone. */
export async function killHard(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const gone = once(child, 'exit')
  child.kill('SIGKILL')
  await gone
}

/** Waits for the host's one line and swaps its ticket for a session. */
export async function startHost(dataDir: string): Promise<Host> {
  const child = spawnHost(dataDir)
  const url = new URL(await firstLine(child))
  const headers = { 'content-type': 'application/json' }
  const post = async (path: string, body: unknown, more: Readonly<Record<string, string>> = {}): Promise<unknown> => {
    const reply = await fetch(new URL(path, url), { method: 'POST', headers: { ...headers, ...more }, body: JSON.stringify(body) })
    return await reply.json()
  }
  const { session } = (await post('/api/session', { ticket: url.hash.replace('#ticket=', '') })) as { session: string }
  return {
    call: async (name, input) => (await post(`/api/call/${name}`, input, { 'x-session': session })) as Awaited<ReturnType<Host['call']>>,
    kill: () => killHard(child),
    end: async () => {
      const gone = once(child, 'exit')
      child.kill('SIGTERM')
      await gone
    },
  }
}

/** The host's one line; a host that ends instead says why on its standard error. */
async function firstLine(child: ChildProcess): Promise<string> {
  let complaint = ''
  child.stderr!.on('data', (part: Buffer) => (complaint = (complaint + part.toString('utf8')).slice(-2000)))
  const lines = createInterface(child.stdout!)
  const line = await Promise.race([once(lines, 'line').then(([text]) => String(text)), once(child, 'exit').then(() => null)])
  if (line === null) throw new Error(`the host ended before it gave its address: ${complaint}`)
  return (JSON.parse(line) as { url: string }).url
}
