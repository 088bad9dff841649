/**
 * What a power bank gives.
 *   at the port = E·ηc        into the cell of a phone = E·ηc·ηd        Wh, E as labelled (Ah·3.7)
 * ηc = 0.85 (0.80 to 0.93; pages of makers and a measuring blog, read), ηd = 0.85 (0.85 to 0.90, read).
 */
import type { Law } from '../figures/figure.ts'

export const PORT_EFFICIENCY = 0.85
export const CHARGE_EFFICIENCY = 0.85

export const bankAtPort = {
  name: 'Power bank at its port',
  formula: 'E·ηc',
  source: { cite: 'converter 80 to 93 %: pages of makers', known: 'read' },
  takes: { labelWh: 'Wh', port: '1' },
  unit: 'Wh',
  compute: ({ labelWh, port }) => labelWh * port,
} as const satisfies Law<{ labelWh: 'Wh'; port: '1' }, 'Wh'>

export const bankIntoCell = {
  name: 'Power bank into a device’s cell',
  formula: 'E·ηc·ηd',
  source: { cite: 'converter 80 to 93 %, charging 85 to 90 %: pages of makers', known: 'read' },
  takes: { labelWh: 'Wh', port: '1', charging: '1' },
  unit: 'Wh',
  compute: ({ labelWh, port, charging }) => labelWh * port * charging,
} as const satisfies Law<{ labelWh: 'Wh'; port: '1'; charging: '1' }, 'Wh'>
