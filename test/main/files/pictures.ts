/**
 * The smallest files of each kind, written out from their formats' documents (from memory): a one-pixel PNG, a JPEG's first and last markers,
 * a WebP's container. Only their first bytes matter to what is tested.
 */
export const png = (tail = ''): Buffer => Buffer.concat([Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'), Buffer.from(tail)])
export const jpeg = (tail = ''): Buffer => Buffer.concat([Buffer.from('ffd8ffe000104a46494600010100', 'hex'), Buffer.from(tail)])
export const webp = (tail = ''): Buffer => Buffer.concat([Buffer.from('RIFF\x1a\0\0\0WEBPVP8L', 'latin1'), Buffer.from(tail)])

/** A stream in pieces. */
export async function* inPieces(whole: Buffer, size: number): AsyncIterable<Uint8Array> {
  for (let at = 0; at < whole.length; at += size) yield await Promise.resolve(whole.subarray(at, at + size))
}

/** `start`, then zeros up to a size, in 64 KiB pieces, never whole in memory; counts what was drawn. */
export function zeros(start: Buffer, totalBytes: number): { readonly stream: AsyncIterable<Uint8Array>; readonly drawn: () => number } {
  const piece = Buffer.alloc(65_536)
  let drawn = 0
  const stream = (async function* () {
    yield await Promise.resolve(start)
    for (drawn = start.length; drawn < totalBytes; drawn += piece.length) yield await Promise.resolve(piece)
  })()
  return { stream, drawn: () => drawn }
}
