/**
 * The coldest night a bed holds: the air temperature at which the sleeper's heat balances what leaves above, below and with the breath.
 *   M − H(M, T) = (Ut + Ua)·D(Tsk, T) + Ub·(D(Tsk, T) + T − Tg)      all per m² of body; root by bisection on −90 … Tsk
 *   Ut = (1 − f)/(φ·Rt + ΔR);  Ub = f·(s/(rb + Rm) + (1 − s)/(rb + Rl));  Ua = a·(1/Rh − 1/Rt);  Tg = min(T, warmest ground)
 * Rt top resistance from the rating (rated-top.ts, same f and rb); φ damp factor; ΔR clothes and liner; Rm mats, Rl what lies under the
 * legs, s share of the length on the mats; a share of the body left bare, Rh what covers it; Tsk, M the sleeper asked for (comfort scale).
 * Range: ratings −60 … 25 °C, resistances ≥ 0. A bed that is too cold at any temperature (on snow without a mat) answers
 * `sleep.never-warm`, one that would hold below −90 °C `sleep.below-bracket`; as a figure they stay at that end.
 * Source: ISO 11079 terms (read) in a balance of our own, fitted to labels; EN ISO 23537-1's constants were not seen.
 * Agreement: any rating on the test mat gives itself; without a mat 77 % leaves below, a field study says up to 80 %.
 * Caution: never use IREQ for sleepers, it is said to overestimate (wear trials of 2013, abstract).
 */
import type { Law } from '../figures/figure.ts'
import { rootOfRising } from './bisect.ts'
import { breathingLoss } from './breathing-loss.ts'
import { outside, within, type Ranged } from './ranged.ts'
import { calibrate, ratedWhole, topRsiOf, type Rated } from './rated-top.ts'
import { skinDrive } from './skin-drive.ts'
import { GROUND_SHARE, NIGHT_RH_PCT, sleepScales, UNDER_BAG_RSI, type ScaleName } from './sleep-scales.ts'

export interface Bed extends Rated {
  readonly matsRsi: number
  readonly legsRsi: number
  /** Share of the length that lies on the mats. */
  readonly matShare: number
  /** φ: what damp leaves of the insulation above; 1 dry. */
  readonly damp: number
  /** ΔR: clothes worn inside, liner, a second bag; negative for what the rating counted on and is missing. */
  readonly addedRsi: number
  /** Share of the body left bare by a quilt or a hoodless bag; 0 with a closed hood. */
  readonly bareShare: number
  /** What covers that share: warm hat or hood 0.30, bare 0.12. */
  readonly headRsi: number
  /** The sleeper asked for. */
  readonly skinC: number
  readonly heat: number
  /** The ground is never warmer than this: 0 on snow; far above any air: as the air. */
  readonly groundAtMostC: number
}

/** Ground as cold as the air, as in the test. */
export const GROUND_AS_AIR_C = 100
export const GROUND_OF_SNOW_C = 0

/** Least top resistance that still means something, m²K/W: less is no bedding. */
const THINNEST_RSI = 0.02

/** A dry, closed bag on a full mat, answered for the standard sleeper. */
export function plainBed(ratedC: number, scale: ScaleName, matsRsi: number, answer: ScaleName = 'comfort'): Bed {
  return {
    ratedC,
    ratedSkinC: sleepScales[scale].skinC,
    ratedHeat: sleepScales[scale].heat_W_m2,
    groundShare: GROUND_SHARE,
    underRsi: UNDER_BAG_RSI,
    rhPct: NIGHT_RH_PCT,
    matsRsi,
    legsRsi: matsRsi,
    matShare: 1,
    damp: 1,
    addedRsi: 0,
    bareShare: 0,
    headRsi: 0.3,
    skinC: sleepScales[answer].skinC,
    heat: sleepScales[answer].heat_W_m2,
    groundAtMostC: GROUND_AS_AIR_C,
  }
}

interface Paths {
  readonly top: number
  readonly ground: number
}

/** Conductances above (bare head included) and below, W/m²K. */
function paths(bed: Bed): Paths {
  const topRsi = topRsiOf(bed)
  const above = (1 - bed.groundShare) / Math.max(THINNEST_RSI, bed.damp * topRsi + bed.addedRsi)
  const head = Math.max(0, bed.bareShare * (1 / bed.headRsi - 1 / topRsi))
  const under = bed.matShare / (bed.underRsi + bed.matsRsi) + (1 - bed.matShare) / (bed.underRsi + bed.legsRsi)
  return { top: above + head, ground: bed.groundShare * under }
}

/** Heat made less heat lost at T: rises with T. */
function surplus(bed: Bed, { top, ground }: Paths, airC: number): number {
  const drive = skinDrive.compute({ skinC: bed.skinC, airC, rhPct: bed.rhPct })
  const colderGroundK = Math.max(0, airC - bed.groundAtMostC)
  const lost = breathingLoss.compute({ heat: bed.heat, airC, rhPct: bed.rhPct }) + (top + ground) * drive + ground * colderGroundK
  return bed.heat - lost
}

const COLDEST_C = -90
const balanceC = (bed: Bed, ways: Paths): number => rootOfRising((airC) => surplus(bed, ways, airC), COLDEST_C, bed.skinC)

export interface BedBalance {
  readonly limitC: number
  readonly wholeRsi: number
  readonly topRsi: number
  /** W/m²K of body: above with the head, below, together. */
  readonly top: number
  readonly ground: number
  readonly all: number
  readonly groundShareOfLoss: number
  /** Flow under the body where the mats lie, W/m². */
  readonly underFlow: number
}

/** The bed in balance, with every part of it, or why there is no answer. */
export function bedBalance(bed: Bed): Ranged<BedBalance> {
  const rated = calibrate(bed)
  if (!rated.ok) return rated
  if (!(bed.matsRsi >= 0 && bed.legsRsi >= 0 && bed.underRsi > 0)) return outside('sleep.mat-range', { matsRsi: bed.matsRsi })
  const ways = paths(bed)
  if (!(surplus(bed, ways, bed.skinC) > 0)) return outside('sleep.never-warm', { matsRsi: bed.matsRsi })
  if (!(surplus(bed, ways, COLDEST_C) < 0)) return outside('sleep.below-bracket', { coldestC: COLDEST_C })
  const limitC = balanceC(bed, ways)
  const all = ways.top + ways.ground
  return within({
    limitC,
    wholeRsi: ratedWhole(bed),
    topRsi: rated.value.topRsi,
    ...ways,
    all,
    groundShareOfLoss: ways.ground / all,
    underFlow: skinDrive.compute({ skinC: bed.skinC, airC: limitC, rhPct: bed.rhPct }) / (bed.underRsi + bed.matsRsi),
  })
}

const takes = {
  ratedC: 'degC',
  ratedSkinC: 'degC',
  ratedHeat: 'W/m2',
  groundShare: '1',
  underRsi: 'm2K/W',
  rhPct: '%',
  matsRsi: 'm2K/W',
  legsRsi: 'm2K/W',
  matShare: '1',
  damp: '1',
  addedRsi: 'm2K/W',
  bareShare: '1',
  headRsi: 'm2K/W',
  skinC: 'degC',
  heat: 'W/m2',
  groundAtMostC: 'degC',
} as const

/** For a figure that opens; only after `bedBalance` has said that the law answers. */
export const sleepLimit = {
  name: 'Coldest night held',
  formula: 'T where M − H(M, T) = ((1 − f)/(φ·Rt + ΔR) + a·(1/Rh − 1/Rt) + f/(rb + Rm))·D(Tsk, T)',
  source: { cite: 'Heat balance with ISO 11079 terms, fitted to EN ISO 23537-1 labels', known: 'choice' },
  takes,
  unit: 'degC',
  cautions: ({ ratedC }) => [
    'This is a balance of heat for a rested, fed, dry, healthy adult in a base layer. Fatigue, hunger, alcohol, altitude, illness, age and damp all make the night colder. Toes can be cold when the sum says enough.',
    ...(ratedC > 20 || ratedC < -40 ? ['This rating is outside what the model was fitted to.'] : []),
  ],
  leavesOut: 'draughts of an open quilt, wind through the shell, frost gathering in the fill over many nights, two people under one cover',
  compute: (bed) => balanceC(bed, paths(bed)),
} as const satisfies Law<typeof takes, 'degC'>
