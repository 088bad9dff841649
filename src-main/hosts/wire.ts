import {
  app,
  BrowserWindow,
  dialog,
  ipcMain,
  Menu,
  protocol,
  screen,
  session,
  shell,
  type IpcMainInvokeEvent,
  type Session,
  type WebContents,
} from 'electron'
import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import type { Log, Program, ProgramOptions } from '../program.ts'
import { showWindow } from './browser.ts'
import { address } from './guard.ts'
import { giveLock, isStale, knock, readLock, takeLock, type Lock } from './lock.ts'
import { menuTemplate } from './menu.ts'
import { printInWindow } from './print-window.ts'
import { isOurs, origin, serveScheme } from './scheme.ts'
import { startServer, type DoorServer } from './server.ts'
import { secret } from './tickets.ts'
import { version } from './version.ts'
import { keepState, placeOf, readState, type Device, type WindowState } from './window-state.ts'

/** What the Electron host is made of; electron.ts gives the real parts, tests their own. */
export interface WireParts {
  readonly dataDir: string
  readonly demo: boolean
  readonly open: (options: ProgramOptions) => Promise<Program>
  readonly fillDemo: (program: Program) => Promise<void>
  readonly openDemo: () => Promise<null>
  readonly pageRoot: string
  readonly preload: string
  readonly log: Log
}

interface Running {
  readonly parts: WireParts
  readonly program: Program
  readonly lock: Lock
  readonly door: DoorServer
}

/**
 * Wires the program to Electron. What must come before `ready` is done before the first await: sandbox, scheme, profile folder, single instance.
 * Settings and their sources: the security page of Electron's documentation.
 */
export async function wire(parts: WireParts): Promise<void> {
  app.enableSandbox()
  protocol.registerSchemesAsPrivileged([
    { scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true, codeCache: true } },
  ])
  // The profile lies with the data: grants and the single-instance lock then belong to this data folder.
  app.setPath('userData', join(parts.dataDir, 'window'))
  if (!app.requestSingleInstanceLock()) {
    app.quit()
    return
  }
  app.on('second-instance', showFirst)
  app.on('web-contents-created', (_event, contents) => fence(contents))
  app.on('window-all-closed', () => app.quit())
  await app.whenReady()
  await begin(parts)
}

async function begin(parts: WireParts): Promise<void> {
  await mkdir(parts.dataDir, { recursive: true, mode: 0o700 })
  const running = await takeData(parts)
  if (running === null) {
    app.quit()
    return
  }
  endWith(running)
  permit(session.defaultSession, parts.dataDir)
  protocol.handle('app', (request) => serveScheme(request, parts.pageRoot, running.program))
  carry(running.program)
  Menu.setApplicationMenu(
    Menu.buildFromTemplate(menuTemplate(process.platform, { print: printFirst, showDataFolder: () => void shell.openPath(parts.dataDir) })),
  )
  await openWindow(parts)
}

/** The two directions of the contract. A frame that is not our page's own top frame gets nothing. */
function carry(program: Program): void {
  ipcMain.handle('tarework:call', (event, name: unknown, input: unknown) => {
    if (!isOurPage(event) || typeof name !== 'string') throw new Error('refused')
    return program.call(name, input)
  })
  program.onHeard((heard) => {
    for (const window of BrowserWindow.getAllWindows()) if (!window.isDestroyed()) window.webContents.send('tarework:heard', heard)
  })
}

const isOurPage = ({ senderFrame }: IpcMainInvokeEvent): boolean =>
  senderFrame !== null && senderFrame.origin === origin && senderFrame.parent === null

/** Navigation stays at home; links to `https:` go to the person's own browser, all else nowhere. */
function fence(contents: WebContents): void {
  contents.on('will-navigate', (event) => {
    if (!isOurs(event.url)) event.preventDefault()
  })
  contents.on('will-redirect', (event) => {
    if (!isOurs(event.url)) event.preventDefault()
  })
  contents.on('will-attach-webview', (event) => event.preventDefault())
  contents.setWindowOpenHandler(({ url }) => {
    if (isHttps(url)) void shell.openExternal(url)
    return { action: 'deny' }
  })
}

function isHttps(url: string): boolean {
  try {
    return new URL(url).protocol === 'https:'
  } catch {
    return false
  }
}

/** Nothing is permitted but a scale that the person chose. Without handlers Electron permits everything. */
function permit(own: Session, dataDir: string): void {
  own.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  own.setPermissionCheckHandler((_contents, permission, from) => permission === 'hid' && isOurs(from))
  own.setDevicePermissionHandler(({ deviceType, origin: from, device }) => {
    if (deviceType !== 'hid' || !isOurs(from)) return false
    return readState(dataDir).devices.some((known) => sameDevice(known, deviceOf(device as HidLike)))
  })
  own.on('select-hid-device', (event, { deviceList, frame }, answer) => {
    event.preventDefault()
    const chosen = frame?.origin === origin ? chooseScale(dataDir, deviceList) : Promise.resolve(null)
    void chosen.then((id) => (id === null ? answer() : answer(id)))
  })
}

interface HidLike {
  readonly vendorId: number
  readonly productId: number
  readonly serialNumber?: string
}

const deviceOf = ({ vendorId, productId, serialNumber }: HidLike): Device => ({ vendorId, productId, serial: serialNumber ?? '' })
const sameDevice = (a: Device, b: Device): boolean => a.vendorId === b.vendorId && a.productId === b.productId && a.serial === b.serial

/** Our own chooser: the scales that are plugged in, by name. What is chosen is remembered beside the data. */
async function chooseScale(
  dataDir: string,
  found: readonly (HidLike & { readonly deviceId: string; readonly name: string })[],
): Promise<string | null> {
  const buttons = [...found.map((one) => one.name || 'A scale without a name'), 'Cancel']
  const message = found.length === 0 ? 'No scale is plugged in.' : 'Which scale shall feed the bench?'
  const { response } = await dialog.showMessageBox({ type: 'question', message, buttons, cancelId: buttons.length - 1, noLink: true })
  const chosen = found[response]
  if (chosen === undefined) return null
  const state = readState(dataDir)
  const devices = [...state.devices.filter((one) => !sameDevice(one, deviceOf(chosen))), deviceOf(chosen)]
  keepState(dataDir, { ...state, devices })
  return chosen.deviceId
}

async function openWindow(parts: WireParts): Promise<void> {
  const state = readState(parts.dataDir)
  const window = new BrowserWindow({
    ...placeOf(
      state,
      screen.getAllDisplays().map((one) => one.workArea),
    ),
    minWidth: 800,
    minHeight: 600,
    title: parts.demo ? 'Tarework, the demo closet' : 'Tarework',
    show: false,
    webPreferences: { sandbox: true, contextIsolation: true, nodeIntegration: false, webviewTag: false, preload: parts.preload },
  })
  if (state.maximized) window.maximize()
  window.once('ready-to-show', () => window.show())
  rememberPlace(window, parts.dataDir)
  await window.loadURL(`${origin}/`)
}

function rememberPlace(window: BrowserWindow, dataDir: string): void {
  const keep = (): void => {
    const now: WindowState = { ...readState(dataDir), bounds: window.getNormalBounds(), maximized: window.isMaximized() }
    keepState(dataDir, now)
  }
  let timer: NodeJS.Timeout | undefined
  const soon = (): void => {
    clearTimeout(timer)
    timer = setTimeout(keep, 500)
  }
  window.on('resize', soon)
  window.on('move', soon)
  window.on('close', () => {
    clearTimeout(timer)
    keep()
  })
}

function showFirst(): void {
  const [window] = BrowserWindow.getAllWindows()
  if (window === undefined) return
  if (window.isMinimized()) window.restore()
  window.show()
  window.focus()
}

function printFirst(): void {
  BrowserWindow.getAllWindows()[0]?.webContents.print()
}

/** The same lock as the loopback host's, with a door that a second start may knock at; null: another host holds the data. */
async function takeData(parts: WireParts): Promise<Running | null> {
  const before = await readLock(parts.dataDir)
  const stale = before === null ? null : await heldOrStale(before, parts)
  if (stale === 'held') return null
  const key = secret()
  const door = await startServer({
    port: 0,
    key,
    pageRoot: null,
    log: parts.log,
    nowMs: Date.now,
    onWindows: () => undefined,
    onKnock: showFirst,
  })
  const lock: Lock = { pid: process.pid, port: door.port, key }
  const taken = await takeLock(parts.dataDir, lock, stale)
  if (!taken.ok) {
    await door.close()
    return await takeData(parts)
  }
  const program = await openProgramFor(parts)
  return { parts, program, lock, door }
}

/** A loopback host that holds the data shows its window in the browser; this start is then done. */
async function heldOrStale(lock: Lock, { dataDir, log }: WireParts): Promise<Lock | 'held'> {
  const opened = await knock(lock)
  if (isStale(lock, opened)) return lock
  if (opened.kind !== 'opened')
    log.error(`The data in ${dataDir} are in use by process ${lock.pid}, which does not answer. End it, then start again.`)
  else if (opened.ticket !== '') showWindow(`http://${address}:${lock.port}/#ticket=${opened.ticket}`, dataDir, () => undefined)
  return 'held'
}

async function openProgramFor(parts: WireParts): Promise<Program> {
  const program = await parts.open({
    dataDir: parts.dataDir,
    host: 'electron',
    version,
    log: parts.log,
    now: () => new Date(),
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    demo: parts.demo,
    openDemo: parts.openDemo,
    printPdf: (page, file) => printInWindow(page, file, parts.preload),
  })
  if (parts.demo) await parts.fillDemo(program)
  return program
}

/** Quitting waits for the writes, then gives the data folder back. */
function endWith({ parts, program, lock, door }: Running): void {
  let ended = false
  app.on('before-quit', (event) => {
    if (ended) return
    event.preventDefault()
    ended = true
    void (async () => {
      await program.close().catch((error: unknown) => parts.log.error('closing', error))
      await giveLock(parts.dataDir, lock)
      await door.close()
      app.quit()
    })()
  })
}
