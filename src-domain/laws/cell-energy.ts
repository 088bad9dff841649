/**
 * Energy in cells.
 *   E = Ah·V       Wh (mAh/1000 for Ah); lithium-ion packs 3.6 to 3.85 V as printed, else 3.7
 *   capacity left after c full cycles = 1 − 0.2·c/500, never under 0.5       (lithium-ion; a typical rating, memory)
 * Usable figures of common cells at light drain and 20 °C: memory, save AA alkaline (3000 mAh light, read) and AA lithium (3500 mAh, read).
 * At a drain of 1 W an AA alkaline gives about half.
 * Caution: the person's own figures replace these.
 */
export type CellKind = 'lithium-ion' | 'lithium' | 'alkaline' | 'nimh'

export const PACK_VOLT = 3.7

/** Usable Wh of one cell at light drain, 20 °C. `lithium` is the primary kind (iron disulphide; CR cells are lithium too). */
export const cellWh = {
  'AAA alkaline': 1.3,
  'AA alkaline': 3,
  'AAA lithium': 1.7,
  'AA lithium': 4.8,
  'AAA nimh': 0.9,
  'AA nimh': 2.4,
  CR123A: 4.5,
  CR2032: 0.65,
} as const

export const packWh = (ampereHours: number, volts: number = PACK_VOLT): number => ampereHours * volts

export const cyclesLeft = (fullCycles: number): number => Math.max(0.5, 1 - (0.2 * Math.max(0, fullCycles)) / 500)

/**
 * By air (caution; several summaries of the IATA dangerous goods rules 2.3, read; the carrier decides): `carry-on` to 100 Wh, `ask` to 160 Wh,
 * `no` beyond. Spares and power banks in the cabin only, their contacts covered; at most two over 100 Wh.
 */
export const byAir = (wattHours: number): 'carry-on' | 'ask' | 'no' => (wattHours <= 100 ? 'carry-on' : wattHours <= 160 ? 'ask' : 'no')
