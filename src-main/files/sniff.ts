/** The kinds of picture that are kept, told from their first bytes; what a browser or a name claims is not asked. */
export type PictureKind = 'image/png' | 'image/jpeg' | 'image/webp'

/**
 * PNG: the eight-byte signature (W3C PNG, 5.2). JPEG: SOI and the next marker's first byte, FF D8 FF (ITU-T T.81, B.1.1.3).
 * WebP: `RIFF`, four bytes of size, `WEBP` (RFC 9649, 2.4). All from memory of these documents.
 */
export function pictureKind(start: Uint8Array): PictureKind | null {
  if (has(start, 0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png'
  if (has(start, 0, [0xff, 0xd8, 0xff])) return 'image/jpeg'
  if (has(start, 0, [0x52, 0x49, 0x46, 0x46]) && has(start, 8, [0x57, 0x45, 0x42, 0x50])) return 'image/webp'
  return null
}

/** The four bytes that every ZIP with an entry starts with: a local file header (APPNOTE 4.3.7). */
export const looksZipped = (start: Uint8Array): boolean => has(start, 0, [0x50, 0x4b, 0x03, 0x04])

const has = (bytes: Uint8Array, at: number, wanted: readonly number[]): boolean => wanted.every((byte, i) => bytes[at + i] === byte)
