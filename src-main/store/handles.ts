import type Database from 'better-sqlite3'
import { Kysely, SqliteDialect } from 'kysely'
import type { ReadonlyKysely } from 'kysely/readonly'
import type { Tables } from './tables.ts'

/** What a reading function gets: a write on it does not compile, and on the read connection SQLite refuses it too. */
export type ReadDb = Pick<ReadonlyKysely<Tables>, 'selectFrom' | 'fn'>

/** What a changing function gets: the open transaction and nothing else. */
export type WriteDb = Pick<Kysely<Tables>, 'selectFrom' | 'insertInto' | 'updateTable' | 'deleteFrom' | 'fn'>

export type Raw = Database.Database

/** Kysely over one open connection. Transactions are opened by transactions.ts on the connection itself, so its own are not offered. */
export const kyselyOver = (raw: Raw): Kysely<Tables> => new Kysely<Tables>({ dialect: new SqliteDialect({ database: raw }) })
