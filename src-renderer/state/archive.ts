import type { ArchiveLook, ArchiveMade } from '../../src-main/contract.ts'
import { fault, ok, type Outcome } from '../../src-domain/figures/fault.ts'
import { program } from './program.svelte.ts'
import { settings } from './settings.svelte.ts'
import { words } from './words.svelte.ts'

/** Writes everything into one file and hands it to the browser as a download. */
export async function archiveOut(): Promise<Outcome<ArchiveMade>> {
  const made = await program.tryChange('archive.write', {})
  return made.ok ? handOut(made.value) : made
}

/** Hands a file that the program made to the browser as a download. */
export async function handOut(made: ArchiveMade): Promise<Outcome<ArchiveMade>> {
  const answer = await program.host?.fetch(`/out/${encodeURIComponent(made.name)}`)
  if (!answer?.ok) return fault('file.unreadable')
  const url = URL.createObjectURL(await answer.blob())
  const link = document.createElement('a')
  link.href = url
  link.download = made.name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
  return ok(made)
}

export interface Looked {
  readonly token: string
  readonly holds: ArchiveLook
}

/** Sends an archive and tells what it holds; nothing is changed. */
export async function lookInto(file: File): Promise<Outcome<Looked>> {
  try {
    const answer = await program.host?.fetch('/in', { method: 'POST', body: file, headers: { 'content-type': 'application/octet-stream' } })
    if (!answer) return fault('program.gone')
    const sent = (await answer.json()) as Outcome<{ token: string }>
    if (!sent.ok) return sent
    const { token } = sent.value
    const holds = await program.tryChange('archive.look', { token })
    return holds.ok ? ok({ token, holds: holds.value }) : holds
  } catch {
    return fault('file.unreadable')
  }
}

/** After a restore or an archive taken in, what is not told of by change events is asked again. */
export async function askAllAgain(): Promise<void> {
  await Promise.all([settings.load(), words.load()])
  const state = await program.ask('program.state', {})
  if (!state.ok) return
  program.state = state.value
  program.undoable = state.value.undo
  program.redoable = state.value.redo
}
