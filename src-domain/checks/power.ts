import { given, total, work, type Figure, type Given, type Law } from '../figures/figure.ts'
import { partsBetween } from '../loadout/amounts.ts'
import { itemLines, supplyLines, traitNumber, traitText, type ItemLine, type Loadout } from '../loadout/loadout.ts'
import { coldCell, COLD_U, isCellKind } from '../laws/cold-cell.ts'
import type { CellKind } from '../laws/cell-energy.ts'
import { bankIntoCell, CHARGE_EFFICIENCY, PORT_EFFICIENCY } from '../laws/power-bank.ts'
import { DRAW_U_SHARE, POWER_MARGIN } from '../laws/power-draw.ts'
import { walkingAir } from '../trips/day-air.ts'
import { found, notAsked, unknown, type Asked, type Check } from './check.ts'
import { daysCount } from './fuel.ts'
import { cellTemp, isOwnLamp } from './light.ts'
import { doubted, enoughOf, nothing } from './margin.ts'

/**
 * Power: do cells and banks feed the devices for as long as they must?
 *   have: Σ start charge·f(kind, t) + Σ bank·ηc·ηd        Wh
 *   need: Σ draw·hours a day·days, of the part between places to charge that lasts longest · enough: 1.25·need        at least
 *   t the planning low, + 10 °C where it is kept warm; lithium-ion where no cell is said; ηc, ηd 0.85 (estimates)
 * A lamp with cells of its own counts in light alone; what draws nothing (a beacon) is never counted as power.
 * u: 0.10/√3 of have, 0.173 of need (choices). Source: provisions.md 4. Caution: lithium-ion is never charged below 0 °C; by air the carrier decides.
 */
export const power: Check = {
  id: 'power',
  label: 'Power',
  duties: ['power'],
  withoutBrief: false,
  find(asked) {
    const devices = devicesOf(asked.loadout)
    if (devices.length === 0) return notAsked('no-device')
    const silent = devices.find((line) => traitNumber(line.item, 'hours-a-day') === null)
    if (silent !== undefined) return unknown('hours-a-day', { name: silent.item.name })
    const days = longestPart(asked)
    if (days === null) return unknown('nights')
    const air = walkingAir(asked.brief, asked.trip)
    if (!air.ok) return unknown(air.missing)
    const have = energyCarried(asked.loadout, devices, { ...air.figure, shares: {} })
    if ('missing' in have) return unknown(have.missing, { name: have.name })
    const need = energyNeeded(devices, days)
    return found({
      have: have.energy,
      need,
      enough: enoughOf(need, POWER_MARGIN),
      wants: 'at least',
      cautions: air.figure.value < 0 ? ['Never charge lithium-ion below 0 °C: warm it first.'] : [],
    })
  },
}

/** What draws power over the days and is no lamp of its own cells. */
export const devicesOf = (loadout: Loadout): readonly ItemLine[] =>
  itemLines(loadout).filter((line) => (traitNumber(line.item, 'draw') ?? 0) > 0 && !isOwnLamp(line) && !isBank(line))

/** Days of the longest part between places where devices can be charged. */
function longestPart({ brief, trip }: Asked): number | null {
  const parts = partsBetween('power', { brief, trip })
  return parts.length === 0 ? daysCount(brief, trip) : Math.max(...parts.map(({ fromDay, toDay }) => toDay - fromDay))
}

function energyNeeded(devices: readonly ItemLine[], days: number): Figure<'Wh'> {
  const parts = devices.map(({ item, pieces }): Given => {
    const drawW = traitNumber(item, 'draw')! * pieces
    const hours = traitNumber(item, 'hours-a-day')!
    return {
      name: item.name,
      figure: work(drawn, {
        drawW: given(drawW, 'W', 'claimed'),
        hours: given(hours, 'h', 'given', {}, 'a day'),
        days: given(days, 'd', 'given'),
      }),
    }
  })
  const sum = total('energy drawn', 'Wh', parts)
  return doubted(sum, 'draws', sum.value * DRAW_U_SHARE)
}

const drawn = {
  name: 'Drawn over the days',
  formula: 'draw·hours·days',
  source: { cite: 'definition of power', known: 'memory' },
  takes: { drawW: 'W', hours: 'h', days: 'd' },
  unit: 'Wh',
  compute: ({ drawW, hours, days }) => drawW * hours * days,
} as const satisfies Law<{ drawW: 'W'; hours: 'h'; days: 'd' }, 'Wh'>

type Energy = { readonly energy: Figure<'Wh'> } | { readonly missing: string; readonly name: string }

function energyCarried(loadout: Loadout, devices: readonly ItemLine[], air: Figure<'degC'>): Energy {
  const parts: Given[] = []
  for (const line of devices) {
    const chargeWh = traitNumber(line.item, 'charge')
    if (chargeWh !== null) parts.push({ name: line.item.name, figure: ownCells(line, chargeWh, air) })
  }
  for (const line of itemLines(loadout).filter(isBank)) {
    const chargeWh = traitNumber(line.item, 'charge')
    if (chargeWh === null) return { missing: 'charge', name: line.item.name }
    parts.push({ name: line.item.name, figure: bankEnergy(line, chargeWh) })
  }
  parts.push(...spareOfDevices(loadout, devices, air))
  if (parts.length === 0) return { energy: nothing('Wh', 'no charge in the loadout') }
  const sum = total('energy carried', 'Wh', parts)
  return { energy: doubted(sum, 'cold', sum.value * COLD_U) }
}

const isBank = ({ item }: ItemLine): boolean =>
  item.duties.some(({ duty }) => duty === 'power') || traitNumber(item, 'port-efficiency') !== null

const cellOf = (text: string): CellKind => (isCellKind(text) ? text : 'lithium-ion')

function ownCells({ item, pieces }: ItemLine, chargeWh: number, air: Figure<'degC'>): Figure<'Wh'> {
  const cellC = cellTemp(air, (traitNumber(item, 'kept-warm') ?? 0) === 1)
  return { ...work(coldCell(cellOf(traitText(item, 'cell'))), { energyWh: given(chargeWh * pieces, 'Wh', 'claimed'), cellC }), shares: {} }
}

function bankEnergy({ item, pieces }: ItemLine, chargeWh: number): Figure<'Wh'> {
  const port = traitNumber(item, 'port-efficiency')
  return work(bankIntoCell, {
    labelWh: given(chargeWh * pieces, 'Wh', 'claimed', {}, 'as labelled'),
    port: port === null ? given(PORT_EFFICIENCY, '1', 'estimated', {}, 'its converter') : given(port, '1', 'claimed'),
    charging: given(CHARGE_EFFICIENCY, '1', 'estimated', {}, 'charging a device'),
  })
}

/** Spare cells that fit a device by their kind; lithium-ion is charged, not swapped. */
function spareOfDevices(loadout: Loadout, devices: readonly ItemLine[], air: Figure<'degC'>): readonly Given[] {
  const kinds = new Set<string>(
    devices.map(({ item }) => traitText(item, 'cell')).filter((kind) => isCellKind(kind) && kind !== 'lithium-ion'),
  )
  const ofLamps = new Set(
    itemLines(loadout)
      .filter(isOwnLamp)
      .map(({ item }) => traitText(item, 'cell')),
  )
  return supplyLines(loadout)
    .filter(
      ({ supply }) =>
        kinds.has(traitText(supply, 'cell')) && !ofLamps.has(traitText(supply, 'cell')) && traitNumber(supply, 'charge') !== null,
    )
    .map(({ supply, amount }): Given => {
      const energyWh = given((amount ?? 0) * traitNumber(supply, 'charge')!, 'Wh', 'claimed')
      return { name: supply.name, figure: { ...work(coldCell(cellOf(traitText(supply, 'cell'))), { energyWh, cellC: air }), shares: {} } }
    })
}
