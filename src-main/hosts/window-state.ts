import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'

export interface Bounds {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A USB scale that the person chose once: Electron forgets it with the page, so it is kept here. */
export interface Device {
  readonly vendorId: number
  readonly productId: number
  readonly serial: string
}

export interface WindowState {
  readonly bounds: Bounds | null
  readonly maximized: boolean
  readonly devices: readonly Device[]
}

export const freshState: WindowState = { bounds: null, maximized: false, devices: [] }
const usualSize = { width: 1440, height: 900 }

const pathIn = (dataDir: string): string => join(dataDir, 'window.json')

/** The window as it was left; anything unreadable is a fresh start, never an error. */
export function readState(dataDir: string): WindowState {
  try {
    const kept = JSON.parse(readFileSync(pathIn(dataDir), 'utf8')) as Partial<WindowState>
    const devices = Array.isArray(kept.devices) ? kept.devices.filter(isDevice) : []
    return { bounds: isBounds(kept.bounds) ? kept.bounds : null, maximized: kept.maximized === true, devices }
  } catch {
    return freshState
  }
}

/** Written beside and renamed, so that a crash leaves the old one. */
export function keepState(dataDir: string, state: WindowState): void {
  const path = pathIn(dataDir)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(`${path}.part`, JSON.stringify(state))
  renameSync(`${path}.part`, path)
}

const isBounds = (value: unknown): value is Bounds =>
  typeof value === 'object' &&
  value !== null &&
  ['x', 'y', 'width', 'height'].every((key) => Number.isInteger((value as Record<string, unknown>)[key]))

const isDevice = (value: unknown): value is Device =>
  typeof value === 'object' &&
  value !== null &&
  ['vendorId', 'productId'].every((key) => Number.isInteger((value as Record<string, unknown>)[key])) &&
  typeof (value as Record<string, unknown>)['serial'] === 'string'

/** Where to open: as left, if at least a hand's breadth of it still lies on a screen; else the usual size, placed by the system. */
export function placeOf(state: WindowState, screens: readonly Bounds[]): Partial<Bounds> {
  const { bounds } = state
  if (bounds === null) return usualSize
  const size = { width: Math.max(800, bounds.width), height: Math.max(600, bounds.height) }
  return screens.some((screen) => overlap(bounds, screen) >= 100) ? { ...size, x: bounds.x, y: bounds.y } : size
}

/** The lesser side of what two rectangles share, px. */
function overlap(a: Bounds, b: Bounds): number {
  const wide = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x)
  const high = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y)
  return Math.min(wide, high)
}
