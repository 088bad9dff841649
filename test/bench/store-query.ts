import Database from 'better-sqlite3'
import { closetSql } from '../../src-main/store/closet.ts'
import { storeFile } from '../../src-main/store/open.ts'
import { programIn, does } from './closet-of.ts'
import { closetSize, ms, sideBySide, type BenchRow, type Place } from './row.ts'

const rounds = 15

/** The whole closet through the program's call, against the same SQL on the same file, prepared once, its rows as bare arrays (the cheapest form). */
export async function storeQuery({ dataDir }: Place): Promise<BenchRow> {
  const program = await programIn(dataDir)
  const raw = new Database(storeFile(dataDir), { readonly: true })
  try {
    const statement = raw.prepare(closetSql).raw()
    const ours = async () => insist((await does(program, 'closet.all', {})).id.length)
    const [call, sql] = await sideBySide(ours, () => insist(statement.all().length), rounds)
    return {
      name: 'store query',
      ratio: call / sql,
      goal: 1.5,
      about: `closet.all ${ms(call)}, the same SQL alone ${ms(sql)}; medians of ${rounds}`,
    }
  } finally {
    raw.close()
    await program.close()
  }
}

function insist(rows: number): void {
  if (rows !== closetSize) throw new Error(`${rows} rows instead of ${closetSize}`)
}
