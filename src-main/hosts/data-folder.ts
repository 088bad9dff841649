import { homedir } from 'node:os'
import { join, resolve } from 'node:path'

/** Where the data live: the folder named, else the system's usual application folder. */
export function dataFolder(named: string | undefined): string {
  return named === undefined ? join(applicationFolder(process.platform, process.env, homedir()), 'Tarework') : resolve(named)
}

/** The usual place for a program's own data on each system; Electron's `appData` is the same. */
export function applicationFolder(platform: NodeJS.Platform, env: Readonly<Record<string, string | undefined>>, home: string): string {
  if (platform === 'win32') return env['APPDATA'] ?? join(home, 'AppData', 'Roaming')
  if (platform === 'darwin') return join(home, 'Library', 'Application Support')
  return env['XDG_CONFIG_HOME'] ?? join(home, '.config')
}

/** The demo closet's own folder: beside the person's data, never inside it. */
export const demoFolder = (dataDir: string): string => `${resolve(dataDir)}-demo`
