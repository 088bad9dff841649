import {
  claimedMass,
  countPieces,
  estimatedMass,
  gainFrom,
  learnClaimBias,
  permissibleErrorMg,
  weigh,
} from '../../src-domain/closet/weighing.ts'
import type { BenchScale, ClaimBias, Reading } from '../../src-domain/closet/weighing.ts'
import type { Figure, Law } from '../../src-domain/figures/figure.ts'
import { given, scaled, total, uncertainty, work } from '../../src-domain/figures/figure.ts'
import { gravityAt, gravityError } from '../../src-domain/laws/gravity.ts'
import type { Published } from './published.ts'

const unchecked: BenchScale = { uid: 'B', name: 'scale B', stepMg: 1000, capacityMg: 5_000_000, checks: [], spreadMg: 500 }
const oneKilogram = { readOn: '2025-10-01', nominalMg: 1_000_000, mpeMg: 50, readingsMg: [1_000_000] }
const checked: BenchScale = { ...unchecked, checks: [oneKilogram] }

const reading = (massG: number, pieces = 1): Reading => ({
  readingsMg: [massG * 1000],
  tareMg: 0,
  tareKind: 'button',
  pieces,
  weighedOn: '2025-10-08',
})

function weighed(massG: number, scale: BenchScale, uid = 'w'): Figure<'g'> {
  const found = weigh(reading(massG), scale, uid)
  if (!found.ok) throw new Error(found.fault.code)
  return found.value.figure
}

const notes = 'provisions.md 9, worked from JCGM 100:2008'
const row = (law: string, about: string, expected: number, tolerance: number, unit: string, got: () => number, source = notes, known: Published['known'] = 'recomputed'): Published => ({ law, about, source, known, expected, tolerance, unit, got }) // prettier-ignore

/** u of one reading, d = 1 g, tared, s 0.5 g: the table of 9.1 (its tolerance). */
const oneReading = (massG: number, plain: number, withCheck: number): readonly Published[] => [
  row('weighing', `${massG} g on a scale never checked`, plain, 0.0005, 'g', () => uncertainty(weighed(massG, unchecked))),
  row('weighing', `${massG} g on a scale checked with 1 kg M1`, withCheck, 0.0005, 'g', () => uncertainty(weighed(massG, checked))),
]

const kitOf9_3 = (): Figure<'g'> =>
  total('kit', 'g', [
    ...[412, 865, 233, 96, 1340].map((massG) => ({ name: `${massG}`, figure: weighed(massG, checked, `${massG}`) })),
    { name: '590', figure: claimedMass(590_000, 'a') },
    { name: '310', figure: claimedMass(310_000, 'b') },
    { name: '150', figure: estimatedMass(150_000, 'c') },
  ])
const tenClaims = (): Figure<'g'> =>
  total(
    'ten',
    'g',
    Array.from({ length: 10 }, (_, at) => ({ name: `${at}`, figure: claimedMass(300_000, `${at}`) })),
  )

const isCommon = (leaf: string): boolean => leaf.startsWith('scale:') || leaf.endsWith(':bias')
const sideOf = (figure: Figure, common: boolean): number =>
  Math.hypot(...Object.entries(figure.shares).filter(([leaf]) => isCommon(leaf) === common).map(([, share]) => share)) // prettier-ignore

const bias = (): ClaimBias =>
  learnClaimBias([1.04, 1.02, 1.07, 0.99, 1.05, 1.03].map((ratio) => ({ claimedMg: 1_000_000, measuredMg: 1_000_000 * ratio })))!

/** The end gauge of JCGM 100:2008, H.1: l = l_s + d − l_s·(δα·θ + α_s·δθ), first order. Lengths in nm. */
const endGauge = {
  name: 'End gauge',
  formula: 'l = ls + d − ls·(δα·θ + αs·δθ)',
  source: { cite: 'JCGM 100:2008, H.1', known: 'memory' },
  takes: { ls: 'nm', d: 'nm', alpha: '1/K', theta: 'K', dAlpha: '1/K', dTheta: 'K' },
  unit: 'nm',
  compute: ({ ls, d, alpha, theta, dAlpha, dTheta }) => ls + d - ls * (dAlpha * theta + alpha * dTheta),
} as const satisfies Law<{ ls: 'nm'; d: 'nm'; alpha: '1/K'; theta: 'K'; dAlpha: '1/K'; dTheta: 'K' }, 'nm'>
const gauge = (): Figure<'nm'> =>
  work(endGauge, {
    ls: given(50_000_623, 'nm', 'given', { ls: 25 }),
    d: given(215, 'nm', 'measured', { d: 9.7 }),
    alpha: given(11.5e-6, '1/K', 'given', { alpha: 1.2e-6 }),
    theta: given(-0.1, 'K', 'measured', { theta: 0.41 }),
    dAlpha: given(0, '1/K', 'given', { dAlpha: 0.58e-6 }),
    dTheta: given(0, 'K', 'given', { dTheta: 0.029 }),
  })
const gum = 'JCGM 100:2008, H.1, tables H.1 and text'

export const rows: readonly Published[] = [
  ...oneReading(12, 0.6458, 0.6455),
  ...oneReading(412, 0.9622, 0.6982),
  ...oneReading(1850, 3.2687, 1.3585),
  row('scale gain', 'one check reading of 1 kg M1, s 0.5 g', 0.00064614, 1e-7, '1', () => gainFrom(oneKilogram, checked).u),
  // LOOK.md: checked with 500 g, 20 readings: 0.08 %, and 0.65 g own at 1 g steps.
  row('scale gain', '500 g M1, 20 readings of spread 0.5 g', 0.0008, 0.00005, '1', () => gainFrom({ readOn: '2025-10-01', nominalMg: 500_000, mpeMg: 25, readingsMg: Array.from({ length: 20 }, (_, at) => 500_000 + (at % 2 === 0 ? 487.34 : -487.34)) }, checked).u),
  // GUM F.2.2.1: an indicating device of resolution δx has u = 0.29 δx.
  row('weighing', 'resolution alone, zero shown', 0.29, 0.005, 'g', () => { const found = weigh({ ...reading(412), tareKind: 'none' }, unchecked); return found.ok ? found.value.makeUp.resolutionMg / 1000 : Number.NaN }, 'JCGM 100:2008, F.2.2.1', 'memory'),
  row('weighing', '8 stakes of 96 g: u of one, gain neglected', 0.0807, 0.0005, 'g', () => { const found = weigh(reading(96, 8), checked); return found.ok ? found.value.uOwnMg / 1000 : Number.NaN }),
  row('weighing', '8 stakes of 96 g: one', 12, 0, 'g', () => { const found = weigh(reading(96, 8), checked); return found.ok ? found.value.massMg / 1000 : Number.NaN }),
  row('weighing', 'a check of 1000 g that reads 1001 g corrects 412 g', (412 * 1000) / 1001, 0.0005, 'g', () => weighed(412, { ...unchecked, checks: [{ ...oneKilogram, readingsMg: [1_001_000] }] }).value),
  row('counting', '96 g of stakes of 12 g', 8, 0, 'pieces', () => { const found = countPieces({ massMg: 96_000, uMg: 650 }, { massMg: 12_000, uMg: 81 }); return found.ok ? found.value : Number.NaN }),
  row('kit mass', 'eight items of 9.3: mass', 3996, 1e-9, 'g', () => kitOf9_3().value),
  row('kit mass', 'eight items of 9.3: independent', 25.037, 0.01, 'g', () => sideOf(kitOf9_3(), false)),
  row('kit mass', 'eight items of 9.3: common', 19.593, 0.01, 'g', () => sideOf(kitOf9_3(), true)),
  row('kit mass', 'eight items of 9.3: u', 31.792, 0.01, 'g', () => uncertainty(kitOf9_3())),
  row('kit mass', 'ten claims of 300 g: independent', 28.46, 0.01, 'g', () => sideOf(tenClaims(), false)),
  row('kit mass', 'ten claims of 300 g: common', 60, 0.01, 'g', () => sideOf(tenClaims(), true)),
  row('kit mass', 'ten claims of 300 g: u', 66.41, 0.01, 'g', () => uncertainty(tenClaims())),
  row('kit mass', 'pieces of one item double its doubt', 2 * 0.6982, 0.001, 'g', () => uncertainty(scaled(weighed(412, checked), 2, 'g', 'two', '2 × m'))),
  row('claim bias', 'mean log of six ratios', 0.0324968, 2e-6, '1', () => bias().meanLog),
  row('claim bias', 'their sd', 0.0265596, 2e-6, '1', () => bias().sdLog),
  row('claim bias', 'posterior mean', 0.0251149, 2e-6, '1', () => bias().b),
  row('claim bias', 'factor', 1.025433, 2e-6, '1', () => bias().factor),
  row('claim bias', 'posterior sd', 0.0095322, 2e-6, '1', () => bias().sd),
  ...([[0, 9.780327], [45, 9.8062], [90, 9.832186]] as const).map(([latitude, g]) => row('gravity', `${latitude}°`, g, 2e-6, 'm/s²', () => gravityAt(latitude), 'gravity formula of 1980', 'memory')),
  row('gravity', 'adjusted at 52°, used at 22°', -0.00254, 0.000005, '1', () => gravityError({ latitudeDeg: 52 }, { latitudeDeg: 22 })),
  row('gravity', '412 g then shows', 410.95, 0.005, 'g', () => 412 * (1 + gravityError({ latitudeDeg: 52 }, { latitudeDeg: 22 }))),
  row('check masses', '200 g M1', 10, 0, 'mg', () => permissibleErrorMg('M1', 200_000) ?? Number.NaN, 'OIML R 111-1, table 1', 'memory'),
  row('check masses', '1 kg M2', 160, 0, 'mg', () => permissibleErrorMg('M2', 1_000_000) ?? Number.NaN, 'OIML R 111-1, table 1', 'memory'),
  row('uncertainty', 'end gauge: length', 50_000_838, 0.5, 'nm', () => gauge().value, gum, 'memory'),
  // Published rounded: the terms to a tenth of a nanometre, u_c to a whole one ("32 nm").
  row('uncertainty', 'end gauge: share of the comparison', 9.7, 0.05, 'nm', () => gauge().shares['d']!, gum, 'memory'),
  row('uncertainty', 'end gauge: share of δα', 2.9, 0.05, 'nm', () => Math.abs(gauge().shares['dAlpha']!), gum, 'memory'),
  row('uncertainty', 'end gauge: share of δθ', 16.6, 0.1, 'nm', () => Math.abs(gauge().shares['dTheta']!), gum, 'memory'),
  row('uncertainty', 'end gauge: no first-order share of αs', 0, 1e-6, 'nm', () => gauge().shares['alpha']!, gum, 'memory'),
  row('uncertainty', 'end gauge: u', 32, 0.5, 'nm', () => uncertainty(gauge()), gum, 'memory'),
] // prettier-ignore
