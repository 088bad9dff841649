import { duties, kitAreas } from '../../src-domain/closet/vocabulary.ts'
import type { Call, InputOf, OutputOf } from '../../src-main/contract.ts'
import { openProgram, type Program } from '../../src-main/program.ts'
import { seeded, type Chance } from './seeded.ts'

/** Invented closets of any size, always the same for the same size: names of two to four words, seven in ten weighed, duties on half. */
type NewItem = InputOf<'item.add'>

const firsts = ['Light', 'Warm', 'Old', 'Spare', 'Long', 'Short', 'Wool', 'Down', 'Folding', 'Padded', 'Waxed', 'Striped'] as const
const things = ['jacket', 'quilt', 'mat', 'pot', 'stove', 'lamp', 'socks', 'bottle', 'tarp', 'pack', 'gloves', 'knife', 'cord'] as const
const makers = ['', '', 'Own work', 'Harbour sewing room', 'Village smith', 'Market stall'] as const
const tags = ['winter', 'guest', 'repair due', 'coast', 'hut'] as const

const nameOf = ({ below, pick }: Chance, at: number): string =>
  `${pick(firsts)} ${pick(things)}${below(3) === 0 ? `, ${pick(firsts).toLowerCase()}` : ''} ${at + 1}`

/** Where a mass comes from goes by tens, so that the shares are exact. */
function massOf({ below }: Chance, at: number): Partial<NewItem> {
  const massMg = 1000 + below(1_500_000)
  const claimedMg = Math.round(massMg * (0.9 + below(20) / 100))
  if (at % 10 < 7) return { weighedMg: massMg, weighedOn: `202${4 + below(2)}-0${1 + below(9)}-1${below(9)}`, claimedMg }
  return at % 10 < 9 ? { claimedMg } : { estimatedMg: massMg }
}

export function itemsOf(size: number): readonly NewItem[] {
  const chance = seeded(size)
  const { below, pick } = chance
  return Array.from({ length: size }, (_, at) => ({
    name: nameOf(chance, at),
    kitArea: pick(kitAreas),
    maker: pick(makers),
    pieces: 1 + (below(6) === 0 ? below(8) : 0),
    ...massOf(chance, at),
    duties: below(2) === 0 ? [{ duty: pick(duties).code, shared: below(4) === 0 }] : [],
    tags: below(3) === 0 ? [pick(tags)] : [],
    note: below(5) === 0 ? 'Mended at the seam; look at it again before the next long walk.' : '',
  }))
}

const quiet = { info: () => undefined, warn: () => undefined, error: (text: string, error?: unknown) => console.error(text, error) }

export const programIn = (dataDir: string): Promise<Program> =>
  openProgram({
    ...{ dataDir, host: 'loopback', version: '0', log: quiet, zone: 'UTC', demo: false },
    now: () => new Date(),
    openDemo: () => Promise.resolve(null),
  })

/** Calls and insists on an answer. */
export async function does<K extends Call>(program: Program, name: K, input: InputOf<K>): Promise<OutputOf<K>> {
  const reply = await program.call(name, input)
  if (!reply.ok) throw new Error(`${name}: ${JSON.stringify(reply.fault)}`)
  return reply.value as OutputOf<K>
}

const stagedAtOnce = 500

/** Fills an empty data folder through the program, as a sheet brought in. */
export async function fillCloset(dataDir: string, size: number): Promise<void> {
  const program = await programIn(dataDir)
  const batch = crypto.randomUUID()
  const rows = itemsOf(size).map((item) => ({ itemId: null, item, line: null }))
  for (let from = 0; from < size; from += stagedAtOnce)
    await does(program, 'bringIn.stage', { batch, from, rows: rows.slice(from, from + stagedAtOnce) })
  await does(program, 'bringIn.accept', { batch, rows: size, loadout: null })
  await program.close()
}
