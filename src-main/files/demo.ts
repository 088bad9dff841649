import type { Call, InputOf, OutputOf } from '../contract.ts'
import type { Program } from '../program.ts'

/** Fills an empty demo closet through the contract's own calls, as a person would; one that holds anything is left as it is. */
export async function fillDemo(program: Program): Promise<void> {
  const walkers = await run(program, 'walker.all', {})
  if (walkers.length > 0) return
  await run(program, 'walker.add', { name: 'Walker', profile: JSON.stringify({ bodyMassG: 58_000 }) })
}

/** The demo is ours: a refusal of one of its calls is a bug. */
async function run<K extends Call>(program: Program, name: K, input: InputOf<K>): Promise<OutputOf<K>> {
  const reply = await program.call(name, input)
  if (!reply.ok) throw new Error(`demo: ${name} was refused: ${JSON.stringify(reply.fault)}`)
  return reply.value as OutputOf<K>
}
