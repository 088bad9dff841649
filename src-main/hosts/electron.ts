import { app } from 'electron'
import { spawn } from 'node:child_process'
import { resolve } from 'node:path'
import { fillDemo } from '../files/demo/fill.ts'
import { openProgram } from '../program.ts'
import { readWindowArguments } from './arguments.ts'
import { demoFolder } from './data-folder.ts'
import { hostLog } from './log.ts'
import { wire } from './wire.ts'

// The desktop window's main process; wire.ts holds what it does, so that it can be tested without the runtime.
const { dataDir, demo } = readWindowArguments(process.argv.slice(1))

/** The demo is a second program on its own data folder, with a window of its own. */
function openDemo(): Promise<null> {
  const words = [...(app.isPackaged ? [] : [app.getAppPath()]), '--data', demoFolder(dataDir), '--demo']
  spawn(process.execPath, words, { stdio: 'ignore', detached: true }).unref()
  return Promise.resolve(null)
}

const pageRoot = resolve(import.meta.dirname, '../renderer')
const preload = resolve(import.meta.dirname, '../preload/index.cjs')
const log = hostLog(dataDir)
void wire({ dataDir, demo, open: openProgram, fillDemo, openDemo, pageRoot, preload, log }).catch((error: unknown) => {
  log.error('the window did not open', error)
  app.exit(1)
})
