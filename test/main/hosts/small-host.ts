import { resolve } from 'node:path'
import { readArguments } from '../../../src-main/hosts/arguments.ts'
import { runHost } from '../../../src-main/hosts/host.ts'
import { hostLog } from '../../../src-main/hosts/log.ts'
import { openSmall } from './small-program.ts'

// A host process around the small program, for tests that start, knock, kill and end one. SMALL_HOST_WAIT scales the waits before ending.
const told = readArguments(process.argv.slice(2))
process.exitCode = await runHost(told, {
  open: openSmall,
  fillDemo: () => Promise.resolve(),
  openDemo: () => Promise.reject(new Error('no demo here')),
  pageRoot: resolve(import.meta.dirname),
  log: hostLog(told.dataDir),
  say: (line) => process.stdout.write(`${line}\n`),
  waitScale: Number(process.env['SMALL_HOST_WAIT'] ?? 1),
})
process.exit()
