/**
 * Insulation of single garments over the whole body, clo: what to enter where no better figure is known.
 * Where two tables differ, `low` is the smaller, used by the checks for cold; `high` the larger.
 * Sources: S the ASHRAE 55 garment table in a public program library (read); T a table of the ISO 7730 and 9920 kind (read);
 * fibre-filled garments, vest and gloves from the ISO 7730 table (memory); over-trousers and warm hat are choices.
 */
export interface Garment {
  readonly code: string
  readonly low: number
  readonly high: number
  readonly known: 'read' | 'memory' | 'choice'
}

const garment = (code: string, low: number, high: number, known: Garment['known'] = 'read'): Garment => ({ code, low, high, known })

export const garments: readonly Garment[] = [
  garment('briefs', 0.04, 0.04),
  garment('t-shirt', 0.08, 0.09),
  garment('base-top', 0.12, 0.2),
  garment('base-bottom', 0.1, 0.15),
  garment('shirt-light', 0.2, 0.25),
  garment('shirt-flannel', 0.3, 0.34),
  garment('trousers-thin', 0.15, 0.2),
  garment('trousers', 0.24, 0.25),
  garment('shorts', 0.06, 0.08),
  garment('fleece-light', 0.2, 0.2, 'choice'),
  garment('fleece-heavy', 0.35, 0.35, 'choice'),
  garment('vest-filled', 0.13, 0.2),
  garment('shell', 0.25, 0.25, 'choice'),
  garment('jacket-fibre', 0.4, 0.4, 'memory'),
  garment('jacket-down', 0.55, 0.55),
  garment('parka', 0.7, 0.7),
  garment('trousers-filled', 0.35, 0.35, 'memory'),
  garment('over-trousers', 0.15, 0.15, 'choice'),
  garment('socks-thin', 0.02, 0.02),
  garment('socks-thick', 0.05, 0.05),
  garment('socks-long', 0.06, 0.1),
  garment('shoes', 0.02, 0.04),
  garment('boots', 0.05, 0.1),
  garment('gloves', 0.05, 0.05, 'memory'),
  garment('hat', 0.05, 0.05, 'choice'),
]

const lows: ReadonlyMap<string, number> = new Map(garments.map((one) => [one.code, one.low]))

/** The table's smaller figure. */
export function garmentClo(code: string): number {
  const clo = lows.get(code)
  if (clo === undefined) throw new Error(`no garment ${code}`)
  return clo
}
