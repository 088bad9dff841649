import { BrowserWindow } from 'electron'
import { writeFile } from 'node:fs/promises'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { origin } from './scheme.ts'

/** A page that is not on paper by then never will be. */
const longestMs = 60_000
/** The page says so in its title when everything it shows is there. */
export const readyTitle = 'ready to print'

/** Prints a page of ours in a window that is never shown, fenced like every other. */
export async function printInWindow(page: string, file: string, preload: string): Promise<Outcome<null>> {
  const window = new BrowserWindow({
    show: false,
    webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, webviewTag: false, preload },
  })
  try {
    const ready = titled(window)
    await window.loadURL(`${origin}/#${page}`)
    if (!(await ready)) return fault('print.failed', { code: 'the page did not settle' })
    await writeFile(file, await window.webContents.printToPDF({ preferCSSPageSize: true, printBackground: true }))
    return ok(null)
  } finally {
    window.destroy()
  }
}

function titled(window: BrowserWindow): Promise<boolean> {
  return new Promise((settle) => {
    const timer = setTimeout(() => settle(false), longestMs)
    window.webContents.on('page-title-updated', (_event, title) => {
      if (title !== readyTitle) return
      clearTimeout(timer)
      settle(true)
    })
  })
}
