import { EventEmitter } from 'node:events'

/**
 * A strict stand-in for the module `electron`, for tests where its runtime is not there. It does what the real one does at its borders and
 * throws where that throws: what passes between processes is cloned, things are done once and in their order, a frame that asks can be any.
 * What it cannot show: isolation and the sandbox themselves, schemes' privileges, native menus, dialogs and choosers.
 */
interface FakeFrame {
  readonly origin: string
  readonly parent: FakeFrame | null
}
type Handler = (event: { readonly senderFrame: FakeFrame | null }, ...args: unknown[]) => unknown
type Emitted = { readonly preventDefault: () => void; readonly prevented: () => boolean }

const ourFrame: FakeFrame = { origin: 'app://tarework', parent: null }

interface State {
  ready: boolean
  readonly calls: string[]
  readonly handlers: Map<string, Handler>
  readonly schemes: unknown[]
  readonly protocols: Map<string, (request: Request) => Promise<Response>>
  readonly paths: Map<string, string>
  readonly opened: string[]
  readonly windows: BrowserWindow[]
  frame: FakeFrame | null
  single: boolean
  menu: unknown
  answer: number
  messages: unknown[]
  screens: { readonly workArea: { x: number; y: number; width: number; height: number } }[]
  /** What a printed page calls itself when it is filled. */
  title: string
}

const fresh = (): State => ({
  ready: false,
  calls: [],
  handlers: new Map(),
  schemes: [],
  protocols: new Map(),
  paths: new Map(),
  opened: [],
  windows: [],
  frame: ourFrame,
  single: true,
  menu: null,
  answer: 0,
  messages: [],
  screens: [{ workArea: { x: 0, y: 0, width: 1920, height: 1080 } }],
  title: 'ready to print',
})
let state = fresh()
let whenReady = Promise.withResolvers<undefined>()
/** The page's own world; the preload fills it once, before the page. */
const world = new Map<string, Record<string, (...args: never[]) => unknown>>()

/** An event as Electron gives it: listeners may prevent what would come. */
function emitted(): Emitted {
  let prevented = false
  return { preventDefault: () => void (prevented = true), prevented: () => prevented }
}

function beforeReady(what: string): void {
  if (state.ready) throw new Error(`${what} must be called before app is ready`)
  state.calls.push(what)
}

function afterReady(what: string): void {
  if (!state.ready) throw new Error(`${what} can only be used after app is ready`)
}

class FakeApp extends EventEmitter {
  readonly isPackaged = false
  enableSandbox = (): void => beforeReady('app.enableSandbox')
  setPath = (name: string, path: string): void => {
    beforeReady('app.setPath')
    state.paths.set(name, path)
  }
  requestSingleInstanceLock = (): boolean => state.single
  whenReady = (): Promise<undefined> => whenReady.promise
  getAppPath = (): string => '/app'
  exit = (code: number): void => void state.calls.push(`app.exit ${code}`)
  /** As the real one: `before-quit` may prevent it; windows close; then it is over. */
  quit = (): void => {
    const event = emitted()
    this.emit('before-quit', event)
    state.calls.push(event.prevented() ? 'quit put off' : 'quit')
  }
}
export const app = new FakeApp()

export class FakeContents extends EventEmitter {
  windowOpen: (details: { url: string }) => { action: string } = () => ({ action: 'allow' })
  readonly sent: unknown[] = []
  setWindowOpenHandler(handler: (details: { url: string }) => { action: string }): void {
    this.windowOpen = handler
  }
  send(channel: string, ...args: unknown[]): void {
    const cloned = structuredClone(args)
    this.sent.push(cloned)
    ipcRenderer.emit(channel, { sender: 'the event object' }, ...cloned)
  }
  print(): void {
    state.calls.push('print')
  }
  printToPDF(options: unknown): Promise<Buffer> {
    structuredClone(options)
    state.calls.push('printToPDF')
    return Promise.resolve(Buffer.from('%PDF-1.4 a page'))
  }
}

export class BrowserWindow extends EventEmitter {
  readonly webContents = new FakeContents()
  readonly options: Readonly<Record<string, unknown>>
  readonly loaded: string[] = []
  shown = 0
  bounds = { x: 10, y: 20, width: 1200, height: 800 }
  #maximized = false
  #minimized = false
  constructor(options: Readonly<Record<string, unknown>>) {
    super()
    afterReady('BrowserWindow')
    this.options = options
    state.windows.push(this)
    app.emit('web-contents-created', {}, this.webContents)
  }
  static getAllWindows(): BrowserWindow[] {
    return [...state.windows]
  }
  loadURL = (url: string): Promise<void> => {
    this.loaded.push(url)
    this.emit('ready-to-show')
    // A page that is only printed says so in its title once it is filled.
    if (url.includes('#/print/')) setTimeout(() => this.webContents.emit('page-title-updated', emitted(), state.title), 5)
    return Promise.resolve()
  }
  /** As the real one: gone at once, `close` is not asked. */
  destroy = (): void => {
    const at = state.windows.indexOf(this)
    if (at >= 0) state.windows.splice(at, 1)
    if (state.windows.length === 0) app.emit('window-all-closed')
  }
  show = (): void => void (this.shown += 1)
  focus = (): void => undefined
  maximize = (): void => void (this.#maximized = true)
  minimize = (): void => void (this.#minimized = true)
  restore = (): void => void (this.#minimized = false)
  isMaximized = (): boolean => this.#maximized
  isMinimized = (): boolean => this.#minimized
  isDestroyed = (): boolean => false
  getNormalBounds = (): typeof this.bounds => this.bounds
  close(): void {
    this.emit('close', emitted())
    state.windows.splice(state.windows.indexOf(this), 1)
    if (state.windows.length === 0) app.emit('window-all-closed')
  }
}

export const ipcMain = {
  handle(channel: string, handler: Handler): void {
    if (state.handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`)
    state.handlers.set(channel, handler)
  },
}

class FakeRenderer extends EventEmitter {
  async invoke(channel: string, ...args: unknown[]): Promise<unknown> {
    const cloned = structuredClone(args)
    const handler = state.handlers.get(channel)
    if (handler === undefined) throw new Error(`Error invoking remote method '${channel}': Error: No handler registered for '${channel}'`)
    try {
      return structuredClone(await handler({ senderFrame: state.frame }, ...cloned))
    } catch (error) {
      throw new Error(`Error invoking remote method '${channel}': ${String(error)}`)
    }
  }
}
export const ipcRenderer = new FakeRenderer()

export const contextBridge = {
  exposeInMainWorld(key: string, api: Record<string, (...args: never[]) => unknown>): void {
    if (world.has(key)) throw new Error(`Cannot bind an API on top of an existing property on the window object: ${key}`)
    for (const value of Object.values(api)) if (typeof value !== 'function') structuredClone(value)
    world.set(key, api)
  },
}

export const protocol = {
  registerSchemesAsPrivileged(schemes: unknown[]): void {
    beforeReady('protocol.registerSchemesAsPrivileged')
    if (state.schemes.length > 0) throw new Error('registerSchemesAsPrivileged can only be called once')
    state.schemes.push(...schemes)
  },
  handle(scheme: string, handler: (request: Request) => Promise<Response>): void {
    afterReady('protocol.handle')
    if (state.protocols.has(scheme)) throw new Error(`The scheme ${scheme} has been intercepted`)
    state.protocols.set(scheme, handler)
  },
}

type Permitted = (contents: unknown, permission: string, answer: (yes: boolean) => void) => void
type Checked = (contents: unknown, permission: string, origin: string) => boolean
type DeviceChecked = (details: { deviceType: string; origin: string; device: unknown }) => boolean

class FakeSession extends EventEmitter {
  // Without handlers Electron approves everything.
  request: Permitted = (_contents, _permission, answer) => answer(true)
  check: Checked = () => true
  device: DeviceChecked = () => false
  setPermissionRequestHandler = (handler: Permitted): void => void (this.request = handler)
  setPermissionCheckHandler = (handler: Checked): void => void (this.check = handler)
  setDevicePermissionHandler = (handler: DeviceChecked): void => void (this.device = handler)
}
let ownSession = new FakeSession()

export const session = {
  get defaultSession(): FakeSession {
    afterReady('session')
    return ownSession
  },
}

export const shell = {
  openExternal: (url: string): Promise<void> => Promise.resolve(void state.opened.push(url)),
  openPath: (path: string): Promise<string> => Promise.resolve(String(state.opened.push(path))),
}

export const Menu = {
  buildFromTemplate: (template: unknown): unknown => template,
  setApplicationMenu: (menu: unknown): void => void (state.menu = menu),
}

export const dialog = {
  showMessageBox(options: unknown): Promise<{ response: number }> {
    state.messages.push(options)
    return Promise.resolve({ response: state.answer })
  },
}

export const screen = { getAllDisplays: (): State['screens'] => state.screens }

/** The test's hand on the stand-in. */
export const fake = {
  get state(): State {
    return state
  },
  get session(): FakeSession {
    return ownSession
  },
  emitted,
  world,
  /** A new process. */
  reset(): void {
    state = fresh()
    ownSession = new FakeSession()
    whenReady = Promise.withResolvers()
    app.removeAllListeners()
    ipcRenderer.removeAllListeners()
  },
  becomeReady(): void {
    state.ready = true
    whenReady.resolve(undefined)
  },
  fetch(url: string, init?: RequestInit): Promise<Response> {
    const handler = state.protocols.get(new URL(url).protocol.replace(':', ''))
    if (handler === undefined) throw new Error('ERR_UNKNOWN_URL_SCHEME')
    return handler(new Request(url, init))
  },
}
