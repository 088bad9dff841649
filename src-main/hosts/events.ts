import type { ServerResponse } from 'node:http'
import type { Heard } from '../contract.ts'
import { safeHeaders } from './page.ts'

/**
 * The stream of changes to one window: newline-delimited JSON, one `Heard` a line.
 * An empty line comes at once and then every 15 s, so that both ends notice when the other is gone.
 */
const beatMs = 15_000
/** A window that does not read is cut off; it asks for everything again when it comes back. */
const maxWaitingBytes = 1024 * 1024

export interface Streams {
  readonly open: (response: ServerResponse) => void
  readonly tell: (heard: Heard) => void
  readonly count: () => number
  readonly closeAll: () => void
}

export function makeStreams(onCount: (open: number) => void): Streams {
  const open = new Set<ServerResponse>()
  const beat = setInterval(() => send(open, '\n'), beatMs)
  beat.unref()
  return {
    open(response) {
      response.writeHead(200, { ...safeHeaders, 'content-type': 'application/x-ndjson; charset=utf-8', 'cache-control': 'no-store' })
      response.write('\n')
      open.add(response)
      onCount(open.size)
      response.on('close', () => {
        if (open.delete(response)) onCount(open.size)
      })
    },
    tell: (heard) => send(open, `${JSON.stringify(heard)}\n`),
    count: () => open.size,
    closeAll() {
      clearInterval(beat)
      for (const response of open) response.end()
    },
  }
}

function send(open: ReadonlySet<ServerResponse>, text: string): void {
  for (const response of open) {
    if (response.writableLength > maxWaitingBytes) response.destroy()
    else response.write(text)
  }
}
