import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'

const root = resolve(import.meta.dirname, '..')

/** The built loopback host in a folder of its own: what `npm start -- --no-window` runs once it has built (test/journeys/start.spec.ts runs that itself). */
export interface RunningHost {
  readonly url: string
  readonly dataDir: string
  readonly process: ChildProcess
  /** Asks it to end and waits until it has; the folder stays unless the host made it up. */
  readonly stop: () => Promise<void>
}

export interface HostOptions {
  readonly dataDir?: string
  /** The invented demo closet in that folder. */
  readonly demo?: boolean
  /** Any free one otherwise. */
  readonly port?: number
}

export async function startHost({ dataDir, demo = false, port = 0 }: HostOptions = {}): Promise<RunningHost> {
  const folder = dataDir ?? mkdtempSync(join(tmpdir(), 'tarework-'))
  const child = spawn(
    process.execPath,
    ['out/main/loopback.js', '--no-window', '--data', folder, '--port', String(port), ...(demo ? ['--demo'] : [])],
    {
      cwd: root,
      stdio: ['pipe', 'pipe', 'inherit'],
    },
  )
  const ended = new Promise<void>((done) => child.once('exit', () => done()))
  const url = await firstUrl(child)
  const stop = async () => {
    child.kill('SIGTERM')
    await ended
    if (dataDir === undefined) rmSync(folder, { recursive: true, force: true })
  }
  return { url, dataDir: folder, process: child, stop }
}

/** The host prints one JSON line with its address; anything else before it is talk. */
function firstUrl(child: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let text = ''
    child.stdout?.setEncoding('utf8')
    child.stdout?.on('data', (more: string) => {
      text += more
      for (const line of text.split('\n')) if (line.startsWith('{"url"')) found((JSON.parse(line) as { url: string }).url)
    })
    child.once('exit', (code) => failed(new Error(`The host ended with ${String(code)} before it said where it listens: ${text}`)))
  })
}
