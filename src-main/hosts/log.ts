import { join } from 'node:path'
import log from 'electron-log/node'
import type { Log } from '../program.ts'

/**
 * The host's log: a file beside the data (1 MiB, then one older file is kept) and warnings on standard error.
 * Standard output carries nothing but what the person or the calling program asked for.
 */
export function hostLog(dataDir: string): Log {
  const kept = log.create({ logId: dataDir })
  kept.transports.file.resolvePathFn = () => join(dataDir, 'logs', 'tarework.log')
  kept.transports.file.level = 'info'
  kept.transports.file.writeOptions = { flag: 'a', mode: 0o600, encoding: 'utf8' }
  kept.transports.console.level = 'warn'
  kept.transports.console.writeFn = ({ message }) => process.stderr.write(`${message.data.map(String).join(' ')}\n`)
  return {
    info: (text) => kept.info(text),
    warn: (text) => kept.warn(text),
    error: (text, error) => kept.error(text, stackOf(error)),
  }
}

function stackOf(error: unknown): string {
  if (error === undefined) return ''
  return error instanceof Error ? (error.stack ?? error.message) : JSON.stringify(error)
}
