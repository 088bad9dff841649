import { Readable } from 'node:stream'

type Pieces = ReadableStream<Uint8Array<ArrayBuffer>>

// Node's streams and the web's are one thing at run time; their types differ where the browser's are loaded too, as in the tests.
export function toWeb(from: Readable): Pieces {
  const stream: unknown = Readable.toWeb(from)
  return stream as Pieces
}

export function fromWeb(from: ReadableStream<Uint8Array>): Readable {
  const stream: unknown = from
  return Readable.fromWeb(stream as Parameters<typeof Readable.fromWeb>[0])
}
