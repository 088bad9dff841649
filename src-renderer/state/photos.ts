import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { program } from './program.svelte.ts'

const thumbPx = 320
const types = new Set(['image/png', 'image/jpeg', 'image/webp'])

/** Sends a picture and its thumbnail (made here, so that no native code reads pictures) and ties both to the item. */
export async function addPhoto(itemId: number, file: File): Promise<Outcome<number>> {
  if (!types.has(file.type)) return fault('file.not-image', { name: file.name })
  const small = await thumbnail(file)
  if (small === null) return fault('file.not-image', { name: file.name })
  const whole = await send(file)
  if (!whole.ok) return whole
  const thumb = await send(small)
  if (!thumb.ok) return thumb
  const answer = await program.tryChange('photo.add', {
    itemId,
    sha256: whole.value,
    thumbSha256: thumb.value,
    mime: file.type,
    name: file.name.slice(0, 300),
  })
  return answer.ok ? ok(answer.value.id) : answer
}

/** Turned as its camera says, at most 320 px on its longer side; null where it cannot be decoded. */
async function thumbnail(file: File): Promise<Blob | null> {
  try {
    const whole = await createImageBitmap(file, { imageOrientation: 'from-image' })
    const scale = Math.min(1, thumbPx / Math.max(whole.width, whole.height))
    const canvas = new OffscreenCanvas(Math.max(1, Math.round(whole.width * scale)), Math.max(1, Math.round(whole.height * scale)))
    canvas.getContext('2d')?.drawImage(whole, 0, 0, canvas.width, canvas.height)
    whole.close()
    return await canvas.convertToBlob({ type: 'image/webp', quality: 0.82 })
  } catch {
    return null
  }
}

async function send(blob: Blob): Promise<Outcome<string>> {
  const answer = await program.host?.fetch('/files', { method: 'POST', body: blob, headers: { 'content-type': blob.type } })
  if (!answer) return fault('program.gone')
  const said = (await answer.json()) as Outcome<{ sha256: string }>
  return said.ok ? ok(said.value.sha256) : said
}

const urls = new Map<string, Promise<string | null>>()

/** An address the page may show for a stored file: fetched with the session, kept as an object address. */
export function fileUrl(sha256: string): Promise<string | null> {
  let url = urls.get(sha256)
  if (!url) {
    url = (async () => {
      const answer = await program.host?.fetch(`/files/${sha256}`)
      return answer?.ok ? URL.createObjectURL(await answer.blob()) : null
    })()
    urls.set(sha256, url)
  }
  return url
}
