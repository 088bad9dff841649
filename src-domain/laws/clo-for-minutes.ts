/**
 * The clothing in which an exposure lasts so many minutes: the time limit of ISO 11079 turned round.
 *   S = −2400/t;  I = root of B(I, S);  clo = ((I + Ia/fcl)/K − 0.085/fcl)/0.155;  0 where B(0.0001, S) > 0
 * t min, above 0 (`ireq.minutes`); the rest as ireq.ts. Put back into exposure-limit.ts it gives the minutes again.
 * What a check asks: need = minimal for t; enough = the lesser of neutral for t and minimal without end.
 */
import type { Law } from '../figures/figure.ts'
import { termsOf, type Climate, type Criterion } from './clothed-balance.ts'
import {
  climateOf,
  climateTakes,
  heatDoubtClo,
  ireqCautions,
  ireqOutside,
  ireqSource,
  resistanceFor,
  wornCloFor,
  type ClimateAt,
} from './ireq.ts'
import { outside, within, type Ranged } from './ranged.ts'

function clo(climate: Climate, criterion: Criterion, minutes: number): number {
  const terms = termsOf(climate, criterion)
  return wornCloFor(terms, resistanceFor(terms, -2400 / minutes))
}

export function cloForMinutes(climate: Climate, criterion: Criterion, minutes: number): Ranged {
  const no = ireqOutside(climate)
  if (no) return no
  return minutes > 0 ? within(clo(climate, criterion, minutes)) : outside('ireq.minutes', { minutes })
}

const takes = { ...climateTakes, minutes: 'min' } as const
type At = ClimateAt & { readonly minutes: number }
/** A figure's slope may step a little under a short time: never to nothing. */
const lasting = (at: At, criterion: Criterion): number => clo(climateOf(at), criterion, Math.max(1, at.minutes))

export const cloToLast = {
  name: 'Clothing that lasts so long, minimal',
  formula: 'clo = ((I + Ia/fcl)/K − 0.085/fcl)/0.155, I where the balance closes at S = −2400/t',
  source: ireqSource,
  takes,
  unit: 'clo',
  cautions: ireqCautions,
  compute: (at) => lasting(at, 'minimal'),
  spread: (at) => heatDoubtClo((heat) => lasting({ ...at, heat }, 'minimal'), at.heat),
} as const satisfies Law<typeof takes, 'clo'>

const comfortable = (at: At): number => Math.min(lasting(at, 'neutral'), wornCloFor(...endless(at)))
const endless = (at: At): Parameters<typeof wornCloFor> => {
  const terms = termsOf(climateOf(at), 'minimal')
  return [terms, resistanceFor(terms, 0)]
}

export const cloToLastWell = {
  name: 'Clothing that lasts so long in comfort',
  formula: 'the lesser of clo at S = −2400/t (neutral) and ICL (minimal, S = 0)',
  source: ireqSource,
  takes,
  unit: 'clo',
  cautions: ireqCautions,
  compute: comfortable,
} as const satisfies Law<typeof takes, 'clo'>
