import type { ScaleRow } from '../../src-main/contract.ts'
import { unknownScale, type BenchScale } from '../../src-domain/closet/weighing.ts'
import { program } from './program.svelte.ts'
import { settings } from './settings.svelte.ts'

/** The scales of this household with their check masses, and the one that stands on the bench. */
class Scales {
  all = $state.raw<readonly ScaleRow[]>([])
  loaded = $state(false)
  readonly kept = $derived(this.all.filter((one) => !one.archived))
  #chosenUid = $derived(settings.get<string | null>('scale', null))
  readonly #finest = $derived([...this.kept].sort((a, b) => a.stepMg - b.stepMg)[0] ?? null)
  /** Chosen; else the finest there is; null: none was ever named, readings count as 1 g steps, never checked. */
  readonly current: ScaleRow | null = $derived(this.kept.find((one) => one.uid === this.#chosenUid) ?? this.#finest)
  readonly bench: BenchScale = $derived(this.current === null ? unknownScale : benchScaleOf(this.current))

  constructor() {
    program.listen((heard) => {
      if (heard.touched.some((one) => one.table === '*' || one.table === 'scale' || one.table === 'check_reading')) void this.load()
    })
  }

  async load(): Promise<void> {
    const answer = await program.ask('scale.all', {})
    if (!answer.ok) return
    this.all = answer.value
    this.loaded = true
  }

  choose(uid: string): void {
    void settings.set('scale', uid)
  }
}

export const benchScaleOf = ({ uid, name, stepMg, capacityMg, checks }: ScaleRow): BenchScale => ({ uid, name, stepMg, capacityMg, checks })

export const scales = new Scales()
