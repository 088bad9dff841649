import { parseArgs } from 'node:util'
import { dataFolder } from './data-folder.ts'

/** What a host is told on its command line. */
export interface HostArguments {
  readonly dataDir: string
  /** The port asked for; null: the usual one, else any. */
  readonly port: number | null
  /** Who shows the window: this host opens a browser, nobody does, or whoever started it does and the host ends with it. */
  readonly window: 'open' | 'none' | 'elsewhere'
  readonly demo: boolean
}

/**
 * `--data DIR --port N --no-window --window-elsewhere --demo`.
 * Anything else is an error: a mistyped `--data` must not quietly open the person's own data.
 */
export function readArguments(words: readonly string[]): HostArguments {
  const { values } = parseArgs({
    args: [...words],
    options: {
      data: { type: 'string' },
      port: { type: 'string' },
      'no-window': { type: 'boolean', default: false },
      'window-elsewhere': { type: 'boolean', default: false },
      demo: { type: 'boolean', default: false },
    },
  })
  return {
    dataDir: dataFolder(values.data),
    port: values.port === undefined ? null : readPort(values.port),
    window: values['no-window'] ? 'none' : values['window-elsewhere'] ? 'elsewhere' : 'open',
    demo: values.demo,
  }
}

/** The same for the Electron window: only `--data` and `--demo` matter there, and Chromium's own switches stand between them. */
export function readWindowArguments(words: readonly string[]): Pick<HostArguments, 'dataDir' | 'demo'> {
  const at = words.indexOf('--data')
  return { dataDir: dataFolder(at < 0 ? undefined : words[at + 1]), demo: words.includes('--demo') }
}

function readPort(typed: string): number {
  const port = Number(typed)
  if (!/^\d+$/.test(typed) || port > 65_535) throw new Error(`--port takes a number from 0 to 65535, not "${typed}"`)
  return port
}
