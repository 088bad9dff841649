import type { WordRow } from '../../src-main/contract.ts'
import { duties, kitAreas, kitAreaWord, traits, type Duty, type KitArea, type Trait } from '../../src-domain/closet/vocabulary.ts'
import { program } from './program.svelte.ts'

/** Kit areas, duties and traits in the person's own words: the fixed codes, with edited labels, and the ones they added. */
class Words {
  #rows = $state.raw<readonly WordRow[]>([])
  #byCode = $derived(new Map(this.#rows.map((row) => [`${row.kind}:${row.code}`, row])))

  readonly areas = $derived(kitAreas.filter((code) => this.#byCode.get(`area:${code}`)?.hidden !== true))
  readonly duties: readonly Duty[] = $derived(
    [...duties, ...this.#own('duty').map(ownDuty)].filter((one) => this.#byCode.get(`duty:${one.code}`)?.hidden !== true),
  )
  readonly traits: readonly Trait[] = $derived(
    [...traits, ...this.#own('trait').map(ownTrait)].filter((one) => this.#byCode.get(`trait:${one.code}`)?.hidden !== true),
  )

  constructor() {
    program.listen((heard) => {
      if (heard.touched.some((one) => one.table === '*' || one.table === 'word')) void this.load()
    })
  }

  /** Every word with what was made of it, hidden ones too. */
  get rows(): readonly WordRow[] {
    return this.#rows
  }

  async load(): Promise<void> {
    const answer = await program.ask('word.all', {})
    if (answer.ok) this.#rows = answer.value
  }

  area(code: KitArea): string {
    return this.#byCode.get(`area:${code}`)?.label ?? kitAreaWord.get(code)?.label ?? code
  }

  areaShort(code: KitArea): string {
    return kitAreaWord.get(code)?.short ?? code.slice(0, 2)
  }

  duty(code: string): string {
    return this.#byCode.get(`duty:${code}`)?.label ?? duties.find((one) => one.code === code)?.label ?? code
  }

  trait(code: string): string {
    return this.#byCode.get(`trait:${code}`)?.label ?? traits.find((one) => one.code === code)?.label ?? code
  }

  #own(kind: 'duty' | 'trait'): readonly WordRow[] {
    return this.#rows.filter((row) => row.kind === kind && row.own)
  }
}

const ownDuty = (row: WordRow): Duty => ({
  code: row.code,
  label: row.label,
  area: row.area as KitArea,
  moments: ['walking', 'stop', 'camp', 'night'],
  safety: false,
  kept: false,
  asked: 'want',
})
const ownTrait = (row: WordRow): Trait => ({ code: row.code, label: row.label, unit: row.unit, areas: [row.area as KitArea] })

export const words = new Words()
