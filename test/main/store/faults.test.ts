import { expect, test } from 'vitest'
import { saysDamaged, storeFault } from '../../../src-main/store/faults.ts'

const error = (code: string, more: object = {}) => Object.assign(new Error('what happened'), { code, ...more })

// Codes: SQLite's result codes (rescode.html) and Node's system errors.
test.each([
  ['SQLITE_FULL', 'store.full'],
  ['SQLITE_IOERR_WRITE', 'store.full'],
  ['ENOSPC', 'store.full'],
  ['SQLITE_READONLY', 'store.read-only'],
  ['SQLITE_READONLY_DBMOVED', 'store.read-only'],
  ['SQLITE_CANTOPEN', 'store.read-only'],
  ['EROFS', 'store.read-only'],
  ['EACCES', 'store.read-only'],
  ['SQLITE_CORRUPT', 'store.damaged'],
  ['SQLITE_CORRUPT_INDEX', 'store.damaged'],
  ['SQLITE_NOTADB', 'store.damaged'],
  ['SQLITE_IOERR_READ', 'store.damaged'],
  ['SQLITE_BUSY', 'program.busy'],
  ['SQLITE_CONSTRAINT_FOREIGNKEY', 'row.gone'],
  ['SQLITE_CONSTRAINT_UNIQUE', 'row.taken'],
  ['SQLITE_CONSTRAINT_CHECK', 'input.invalid'],
])('%s is the expected %s', (code, expected) => {
  expect(storeFault(error(code))?.code).toBe(expected)
})

test.each(['SQLITE_ERROR', 'SQLITE_CONSTRAINT_NOTNULL', 'SQLITE_CONSTRAINT_TRIGGER', 'ENOENT', ''])('%s is a bug', (code) => {
  expect(storeFault(error(code))).toBeNull()
})

test('a folder that cannot be made is one that cannot be written', () => {
  expect(storeFault(error('ENOENT', { syscall: 'mkdir' }))?.code).toBe('store.read-only')
  expect(storeFault(error('EEXIST', { syscall: 'mkdir' }))?.code).toBe('store.read-only')
})

test('what is no error is a bug', () => {
  expect(storeFault('SQLITE_FULL')).toBeNull()
})

test('a disk that fails to read does not say that the file is damaged; a malformed page does', () => {
  expect(saysDamaged(storeFault(error('SQLITE_IOERR_READ'))!)).toBe(false)
  expect(saysDamaged(storeFault(error('SQLITE_CORRUPT'))!)).toBe(true)
})
