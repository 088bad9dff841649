import { garment } from './warm-kit.ts'

/** An outfit of 0.52 clo of garments on foot; with the rest jacket 1.07. */
export const onFoot = [
  garment('wool top', 'base-layer', 0.12),
  garment('trousers', 'legwear', 0.15),
  garment('fleece', 'mid-layer', 0.2),
  garment('hat', 'hat', 0.05),
] as const
export const shell = garment('rain jacket', 'rain-shell', 0.25, { 'cover-kind': 'jacket' })
export const jacket = garment('jacket', 'big-jacket', 0.55)
