import { beforeDark } from '../../../src-domain/checks/before-dark.ts'
import type { Asked, Check } from '../../../src-domain/checks/check.ts'
import { foodEnergy } from '../../../src-domain/checks/food-energy.ts'
import { fuel } from '../../../src-domain/checks/fuel.ts'
import { sleepWarmth } from '../../../src-domain/checks/sleep-warmth.ts'
import { waterCarry } from '../../../src-domain/checks/water-carry.ts'
import type { LearnedKind } from '../../../src-domain/learning/logs.ts'
import type { Walker } from '../../../src-domain/trips/walker.ts'
import { plain, show } from '../../state/units.svelte.ts'

/** The check that reads each learned factor first. */
const checkOf: Readonly<Record<LearnedKind, Check>> = {
  ...{ pace: beforeDark, breaks: beforeDark, cold: sleepWarmth, fuel, water: waterCarry, food: foodEnergy },
}

/** What a factor changes in its check on a trip: before and after, or why nothing can be said. */
export function movedBy(kind: LearnedKind, asked: Omit<Asked, 'walker'>, before: Walker, after: Walker): string {
  const check = checkOf[kind]
  const [was, is] = [before, after].map((walker) => check.find({ ...asked, walker }))
  if (!was || !is || !('have' in was) || !('have' in is)) return `${check.label}: not asked there, or not known yet.`
  const moved = was.have.value === is.have.value ? (['need', was.need, is.need] as const) : (['have', was.have, is.have] as const)
  const [from, to] = [plain(show.figure(moved[1])), plain(show.figure(moved[2]))]
  const state = was.state === is.state ? `stays ${is.state}` : `${was.state} → ${is.state}`
  return from === to ? `${check.label}: ${state}, nothing to be seen changes.` : `${check.label}: ${moved[0]} ${from} → ${to}, ${state}.`
}
