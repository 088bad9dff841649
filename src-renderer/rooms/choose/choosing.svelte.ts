import type { ChoiceState, ChosenSet, InputOf } from '../../../src-main/contract.ts'
import { filledByBrief } from '../../../src-domain/checks/by-brief.ts'
import { findAll, type Row } from '../../../src-domain/checks/index.ts'
import type { Loadout, Line } from '../../../src-domain/loadout/loadout.ts'
import type { OpenLoadout } from '../../state/loadout.svelte.ts'
import { kit } from '../../state/kit.svelte.ts'
import { program } from '../../state/program.svelte.ts'
import { faultWords } from '../../words/faults.ts'

type Asks = Omit<InputOf<'choice.start'>, 'loadoutId'>

/** A choice as the window follows it: asked anew whenever what is asked changes, looked at until it is done. */
export class Choosing {
  state = $state.raw<ChoiceState | null>(null)
  problem = $state('')
  asks = $state.raw<Asks>({ principles: [], pinIn: [], pinOut: [], wants: true, notShort: false, wornFactor: 0 })
  #ticket = 0
  #ended = false
  readonly #open: OpenLoadout

  constructor(open: OpenLoadout) {
    this.#open = open
    this.asks = { ...this.asks, principles: [...open.around.walker.principles] }
  }

  async ask(patch: Partial<Asks> = {}): Promise<void> {
    this.asks = { ...this.asks, ...patch }
    this.problem = ''
    this.state = null
    const answer = await program.ask('choice.start', { loadoutId: this.#open.id, ...this.asks })
    if (!answer.ok) this.problem = faultWords(answer.fault)
    else if (!this.#ended) {
      this.#ticket = answer.value.ticket
      await this.#follow(answer.value.ticket)
    }
  }

  /** Ends the solver's thread. What was found stays on the sheet. */
  async stop(): Promise<void> {
    this.#ticket = 0
    await program.ask('choice.stop', {})
  }

  end(): void {
    this.#ended = true
    if (this.#ticket !== 0) void this.stop()
  }

  /** Pinned in, out, or neither: in turn. */
  pin(uid: string, to: 'in' | 'out' | null): Promise<void> {
    const { pinIn, pinOut } = this.asks
    const without = (list: readonly string[]) => list.filter((one) => one !== uid)
    return this.ask({
      pinIn: to === 'in' ? [...without(pinIn), uid] : without(pinIn),
      pinOut: to === 'out' ? [...without(pinOut), uid] : without(pinOut),
    })
  }

  async #follow(ticket: number): Promise<void> {
    while (this.#ticket === ticket && !this.#ended) {
      const answer = await program.ask('choice.state', { ticket })
      if (this.#ticket !== ticket) return
      if (!answer.ok) {
        this.problem = faultWords(answer.fault)
        return
      }
      if (answer.value === null) return
      this.state = answer.value
      if (answer.value.stage === 'done' || answer.value.stage === 'failed') return
      await new Promise((resolve) => setTimeout(resolve, 120))
    }
  }
}

/** The loadout as it would be with a choice: what stays in its lines, what comes in with made-up ids. */
export function withChoice(open: OpenLoadout, chosen: ChosenSet): Loadout | null {
  const now = open.loadout
  if (now === null || kit.index === null) return null
  const rows = [...chosen.lines]
  const kept = now.lines.flatMap((line): readonly Line[] => {
    if (line.kind === 'supply' || line.carriedBy !== '') return [line]
    const at = rows.findIndex(({ itemId, lane }) => itemId === line.item.id && lane === line.lane)
    if (at < 0) return []
    const [row] = rows.splice(at, 1)
    return [row!.pieces === line.pieces ? line : { ...line, pieces: row!.pieces }]
  })
  const coming = rows.flatMap(({ itemId, lane, pieces }, i): readonly Line[] => {
    const item = kit.index?.item(itemId)
    return item ? [{ kind: 'item', id: -1 - i, lane, carriedBy: '', note: '', item, pieces }] : []
  })
  return filledByBrief({ ...askedOf(open), loadout: { ...now, lines: [...kept, ...coming] } }).loadout
}

const askedOf = ({ around }: OpenLoadout) => ({
  brief: around.brief,
  trip: around.trip,
  walker: around.walker,
  today: program.state?.today ?? '2000-01-01',
})

export const railOf = (open: OpenLoadout, loadout: Loadout): readonly Row[] => findAll({ ...askedOf(open), loadout }, open.around.briefed)
