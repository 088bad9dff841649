/**
 * Asks the rail's own checks of a choice: the one judge of every proposal.
 * Checks that read what is used up are asked of the loadout with its amounts filled in by the brief anew; what a check has said of the same
 * things is remembered.
 */
import type { Asked, Check, Finding } from '../checks/check.ts'
import { filledByBrief } from '../checks/by-brief.ts'
import { dutyByCode } from '../closet/vocabulary.ts'
import type { Loadout } from '../loadout/loadout.ts'
import { lineMass } from '../loadout/mass.ts'
import { totalsOf } from '../loadout/totals.ts'
import type { Brief } from '../trips/brief.ts'
import { readsOf, readsSupplies } from './reads.ts'
import { loadoutWith, type Choosing, type Field } from './trip-choice.ts'

/** What is asked of a check; `as-now`: to be no worse than it is in the loadout as it stands. */
export type Level = 'enough' | 'not-short' | 'as-now'

/** Candidate id → pieces. */
export type Pieces = ReadonlyMap<string, number>

export class Trial {
  readonly #asked: Asked
  readonly #field: Field
  readonly #now = new Map<string, number>()
  readonly #said = new Map<string, Finding>()
  readonly #filled = new Map<string, Asked>()

  /** `struck`: duties given up for this trial. */
  constructor(choosing: Choosing, field: Field, struck: readonly string[] = []) {
    this.#asked = { ...choosing.asked, brief: briefFor(choosing, struck) }
    this.#field = field
  }

  loadout(pieces: Pieces): Loadout {
    return loadoutWith(this.#asked, this.#field, pieces)
  }

  /** With the amounts that follow the brief filled in. */
  filled(pieces: Pieces): Asked {
    const key = keyOf(pieces)
    const known = this.#filled.get(key)
    if (known !== undefined) return known
    const filled = filledByBrief({ ...this.#asked, loadout: this.loadout(pieces) })
    if (this.#filled.size > 2000) this.#filled.clear()
    this.#filled.set(key, filled)
    return filled
  }

  find(check: Check, pieces: Pieces): Finding {
    const reads = readsOf[check.id]
    const read = new Map([...pieces].filter(([id]) => reads === undefined || reads(this.#itemOf(id)!) !== null))
    const whole = readsSupplies.has(check.id)
    const key = `${check.id}|${keyOf(whole ? pieces : read)}`
    const known = this.#said.get(key)
    if (known !== undefined) return known
    const finding = check.find(whole ? this.filled(pieces) : { ...this.#asked, loadout: this.loadout(read) })
    this.#said.set(key, finding)
    return finding
  }

  isMet(check: Check, pieces: Pieces, level: Level): boolean {
    const finding = this.find(check, pieces)
    const { state } = finding
    if (level === 'as-now') return state === 'not-asked' || ('have' in finding && finding.margin >= this.marginNow(check) - 1e-9)
    return state === 'enough' || state === 'not-asked' || (level === 'not-short' && state === 'tight')
  }

  /** The place on its gauge of the loadout as it stands; −∞ where it does not answer. */
  marginNow(check: Check): number {
    const known = this.#now.get(check.id)
    if (known !== undefined) return known
    const finding = check.find(this.#asked)
    const margin = 'have' in finding ? finding.margin : -Infinity
    this.#now.set(check.id, margin)
    return margin
  }

  /** What is used up and is no food, tenths of a gram: food follows the load, so the lightest kit has the least of it too. */
  usedUpDg(pieces: Pieces): number {
    return this.filled(pieces).loadout.lines.reduce((sum, line) => {
      if (line.kind !== 'supply' || line.supply.kitArea === 'food') return sum
      const mass = lineMass(line)
      return sum + (mass === null ? 0 : Math.ceil(mass.value * 10 - 1e-6))
    }, 0)
  }

  /** Food as the brief asks it of this load, g. */
  foodG(pieces: Pieces): number {
    return this.filled(pieces).loadout.lines.reduce((sum, line) => {
      const isFood = line.kind === 'supply' && line.supply.kitArea === 'food'
      return sum + (isFood ? (lineMass(line)?.value ?? 0) : 0)
    }, 0)
  }

  /** All that is used up, with nothing chosen at all, tenths of a gram. */
  leastUsedUpDg(): number {
    return Math.floor(totalsOf(this.filled(new Map()).loadout).consumables.massMg / 100)
  }

  readonly #items = new Map<string, Field['choices'][number]['item']>()
  #itemOf(id: string) {
    if (this.#items.size === 0) for (const { candidate, item } of this.#field.choices) this.#items.set(candidate.id, item)
    return this.#items.get(id)
  }
}

const keyOf = (pieces: Pieces): string =>
  [...pieces]
    .filter(([, count]) => count > 0)
    .map(([id, count]) => `${id}=${count}`)
    .sort()
    .join(' ')

/** Without the wants where they are left out, and with what is given up struck. */
export function briefFor({ asked: { brief }, wants }: Choosing, struck: readonly string[] = []): Brief {
  const isMust = ({ duty, as }: Brief['asked'][number]) => as === 'must' && dutyByCode.get(duty)?.asked !== 'want'
  return {
    ...brief,
    asked: wants ? brief.asked : brief.asked.filter(isMust),
    struck: [...brief.struck, ...struck.map((duty) => ({ duty, reason: 'given up' }))],
  }
}
