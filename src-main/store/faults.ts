import { fault, type Fault } from '../../src-domain/figures/fault.ts'

/**
 * What an error of SQLite or of the file system means to the person, or null where it is a bug.
 * A disk that is full, a folder that cannot be written and a damaged file are expected; so is a row that another window has just removed.
 */
export function storeFault(error: unknown): Fault | null {
  if (!(error instanceof Error)) return null
  const code = 'code' in error && typeof error.code === 'string' ? error.code : ''
  const detail = error.message
  if (code === 'SQLITE_FULL' || code === 'ENOSPC' || code === 'EDQUOT') return fault('store.full', { detail }).fault
  if (isReadOnly(code) || isNoFolder(error)) return fault('store.read-only', { detail }).fault
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB') return fault('store.damaged', { detail, found: code }).fault
  // SQLite grows its shared index and its log by writes that a full disk refuses under these names.
  if (code === 'SQLITE_IOERR_WRITE' || code === 'SQLITE_IOERR_SHMSIZE') return fault('store.full', { detail: `${code}: ${detail}` }).fault
  // The disk failed; the file need not have.
  if (code.startsWith('SQLITE_IOERR')) return fault('store.damaged', { detail: `${code}: ${detail}` }).fault
  if (code === 'SQLITE_BUSY' || code === 'SQLITE_LOCKED') return fault('program.busy', { detail }).fault
  if (code === 'SQLITE_CONSTRAINT_FOREIGNKEY') return fault('row.gone', { table: '' }).fault
  if (code === 'SQLITE_CONSTRAINT_UNIQUE') return fault('row.taken', { detail }).fault
  if (code === 'SQLITE_CONSTRAINT_CHECK') return fault('input.invalid', { field: '', message: detail }).fault
  return null
}

function isReadOnly(code: string): boolean {
  return code.startsWith('SQLITE_READONLY') || code.startsWith('SQLITE_CANTOPEN') || ['EACCES', 'EPERM', 'EROFS'].includes(code)
}

/** The data folder cannot be made. Node says ENOENT, not EROFS, of a recursive mkdir on a read-only disk. */
function isNoFolder(error: Error): boolean {
  const { syscall, code } = error as NodeJS.ErrnoException
  return syscall === 'mkdir' && (code === 'ENOENT' || code === 'ENOTDIR' || code === 'EEXIST')
}

/** Whether SQLite found the open file itself damaged, so that it is no longer to be written to. */
export const saysDamaged = ({ code, facts }: Fault): boolean => code === 'store.damaged' && 'found' in facts
