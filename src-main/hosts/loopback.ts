import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { fillDemo } from '../files/demo/fill.ts'
import { openProgram } from '../program.ts'
import { readArguments } from './arguments.ts'
import { demoFolder } from './data-folder.ts'
import { runHost } from './host.ts'
import { hostLog } from './log.ts'

// The host for a browser on the same machine. Built, it lies in out/main; unbuilt, here.
const told = readArguments(process.argv.slice(2))
const log = hostLog(told.dataDir)
const beside = resolve(import.meta.dirname, '../renderer')
const pageRoot = existsSync(beside) ? beside : resolve(import.meta.dirname, '../../out/renderer')

/** The demo runs in a host process of its own, so that its data and the person's never share a store; it ends with its window. */
async function openDemo(): Promise<string> {
  const words = [
    ...process.execArgv,
    fileURLToPath(import.meta.url),
    '--data',
    demoFolder(told.dataDir),
    '--demo',
    '--window-elsewhere',
    '--port',
    '0',
  ]
  const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'ignore'], detached: true })
  for await (const line of createInterface(child.stdout)) {
    child.unref()
    child.stdout.destroy()
    return (JSON.parse(line) as { url: string }).url
  }
  throw new Error('the demo host ended before it gave its address')
}

const parts = { open: openProgram, fillDemo, openDemo, pageRoot, log, say: (line: string) => process.stdout.write(`${line}\n`) }
process.exitCode = await runHost(told, parts).catch((error: unknown) => {
  log.error('the host ended by a fault', error)
  return 1
})
process.exit()
