import { canisterVolumeL, packedDensities_kg_l, packedVolume, type PackedClass } from '../../src-domain/laws/packed-volume.ts'
import type { Published } from './published.ts'

/** Class, lowest and highest density seen, kg/l (provisions.md 5; one figure there means ± 30 %). */
const ranges: readonly (readonly [PackedClass, number, number])[] = [
  ['down', 0.07, 0.14],
  ['synthetic', 0.049, 0.091],
  ['fleece', 0.07, 0.13],
  ['shell', 0.14, 0.26],
  ['base', 0.154, 0.286],
  ['fabric', 0.21, 0.39],
  ['poles', 0.42, 0.78],
  ['mat', 0.245, 0.455],
  ['foam', 0.03, 0.05],
  ['pots', 0.15, 0.25],
  ['dense', 0.35, 0.65],
  ['food', 0.35, 0.6],
]
const note = { source: 'provisions.md 5', known: 'common practice, no source' } as const

export const rows: readonly Published[] = [
  ...ranges.map(([name, low, high]): Published => ({
    ...note,
    law: 'Packed density',
    about: name,
    expected: (low + high) / 2,
    tolerance: (high - low) / 2,
    unit: 'kg/l',
    got: () => packedDensities_kg_l[name],
  })),
  {
    ...note,
    law: 'Packed room',
    about: '600 g of down',
    expected: 6,
    tolerance: 1e-9,
    unit: 'l',
    got: () => packedVolume.compute({ massKg: 0.6, density: packedDensities_kg_l.down }),
  },
  { ...note, law: 'Packed room', about: 'a small canister', expected: 0.33, tolerance: 1e-9, unit: 'l', got: () => canisterVolumeL(110) },
  { ...note, law: 'Packed room', about: 'a middle canister', expected: 0.65, tolerance: 1e-9, unit: 'l', got: () => canisterVolumeL(230) },
  { ...note, law: 'Packed room', about: 'a large canister', expected: 1.1, tolerance: 1e-9, unit: 'l', got: () => canisterVolumeL(450) },
]
