import { statSync } from 'node:fs'
import { mkdir, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { fault, ok } from '../../src-domain/figures/fault.ts'
import { isOutName, outFolder } from '../files/boxes.ts'
import type { HandlersOf } from './kinds.ts'

/** What a file may be called on any system: letters and digits of the name, all else a dash. */
export function pdfName(name: string): string {
  const plain = name.normalize('NFKD').replaceAll(/[^A-Za-z0-9]+/g, '-').replaceAll(/^-+|-+$/g, '').slice(0, 80).toLowerCase() // prettier-ignore
  const file = `${plain === '' ? 'print' : plain}.pdf`
  return isOutName(file) ? file : 'print.pdf'
}

export const printHandlers: HandlersOf<'print'> = {
  'print.pdf': async ({ options }, { page, id, name }) => {
    if (options.printPdf === undefined) return fault('print.no-browser')
    const folder = outFolder(options.dataDir)
    await mkdir(folder, { recursive: true, mode: 0o700 })
    const file = pdfName(name)
    const part = join(folder, `${file}.part`)
    const printed = await options.printPdf(`/print/${page}/${id}`, part)
    if (!printed.ok) {
      await rm(part, { force: true })
      return printed
    }
    await rename(part, join(folder, file))
    return ok({ name: file, bytes: statSync(join(folder, file)).size, url: `/out/${file}` })
  },
}
