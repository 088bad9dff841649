/**
 * Where the fields of a scale's report lie, read from the collections of its report descriptor. The shapes below are the plain data of the
 * browser's `HIDDevice.collections`, so that nothing here needs a browser.
 */
export interface HidItem {
  readonly isArray?: boolean | undefined
  readonly isConstant?: boolean | undefined
  readonly isRange?: boolean | undefined
  /** Page and usage in one number: 0x8D0040. */
  readonly usages?: readonly number[] | undefined
  readonly usageMinimum?: number | undefined
  readonly usageMaximum?: number | undefined
  readonly reportSize?: number | undefined
  readonly reportCount?: number | undefined
  readonly logicalMinimum?: number | undefined
}
export interface HidReport {
  readonly reportId?: number | undefined
  readonly items?: readonly HidItem[] | undefined
}
export interface HidCollection {
  readonly usagePage?: number | undefined
  readonly usage?: number | undefined
  readonly children?: readonly HidCollection[] | undefined
  readonly inputReports?: readonly HidReport[] | undefined
  readonly outputReports?: readonly HidReport[] | undefined
}

export interface Field {
  readonly bit: number
  readonly bits: number
  readonly isSigned: boolean
  /** Of a field that names a usage: the logical least, and for each value from it the usage's place in its table. */
  readonly least: number
  readonly places?: readonly number[]
}
export interface Layout {
  /** Absent: any report. */
  readonly reportId?: number
  readonly status: Field
  readonly unit: Field
  /** Absent: counts are whole units. */
  readonly scaling?: Field
  readonly weight: Field
}

const page = 0x8d0000
const usage = {
  unit: page | 0x50,
  scaling: page | 0x41,
  weight: page | 0x40,
  status: page | 0x70,
  zero: page | 0x80,
  zeroReturn: page | 0x81,
}

const byte = (at: number, isSigned = false): Field => ({ bit: at * 8, bits: 8, isSigned, least: 0 })
/** Status, unit, scaling, weight: the five bytes that scales commonly send. */
export const commonLayout: Layout = {
  status: byte(0),
  unit: byte(1),
  scaling: byte(2, true),
  weight: { bit: 24, bits: 16, isSigned: false, least: 0 },
}

/** The layout a scale declares; the common one where its descriptor does not tell of all fields. */
export function layoutOf(collections: readonly HidCollection[]): Layout {
  for (const collection of flat(collections)) {
    for (const report of collection.inputReports ?? []) {
      const layout = layoutFrom(report.items ?? [], report.reportId)
      if (layout) return layout
    }
  }
  return scattered(collections) ?? commonLayout
}

/** A report whose fields stand in collections of their own: inner ones first, as the descriptor of a scale opens with them. */
function scattered(collections: readonly HidCollection[]): Layout | undefined {
  const byId = new Map<number, HidItem[]>()
  const gather = (collection: HidCollection): void => {
    collection.children?.forEach(gather)
    for (const report of collection.inputReports ?? []) {
      const id = report.reportId ?? 0
      byId.set(id, [...(byId.get(id) ?? []), ...(report.items ?? [])])
    }
  }
  collections.forEach(gather)
  for (const [id, items] of byId) {
    const layout = layoutFrom(items, id)
    if (layout) return layout
  }
  return undefined
}

/** The command that sets a scale to zero, where it takes one: report id and bytes. */
export function zeroCommandOf(
  collections: readonly HidCollection[],
): { readonly reportId: number; readonly bytes: readonly number[] } | undefined {
  for (const collection of flat(collections)) {
    for (const report of collection.outputReports ?? []) {
      const fields = fieldsOf(report.items ?? [])
      const zero = fields.find(({ usages }) => usages.includes(usage.zero))
      if (!zero) continue
      const length = Math.ceil(Math.max(...fields.map(({ field }) => field.bit + field.bits)) / 8)
      const bytes = Array.from({ length }, (_, at) => (zero.field.bit >> 3 === at ? 1 << (zero.field.bit & 7) : 0))
      return { reportId: report.reportId ?? 0, bytes }
    }
  }
  return undefined
}

const flat = (collections: readonly HidCollection[]): readonly HidCollection[] =>
  collections.flatMap((one) => [one, ...flat(one.children ?? [])])

interface FoundField {
  readonly field: Field
  readonly usages: readonly number[]
}

function layoutFrom(items: readonly HidItem[], reportId: number | undefined): Layout | undefined {
  const fields = fieldsOf(items)
  const within = (first: number, last: number): Field | undefined =>
    fields.find(({ usages }) => usages.some((one) => one >= first && one <= last))?.field
  const status = within(usage.status, usage.status + 8)
  const unit = within(usage.unit, usage.unit + 12)
  const weight = within(usage.weight, usage.weight)
  if (!status || !unit || !weight) return undefined
  const scaling = within(usage.scaling, usage.scaling)
  // The scaling is a signed byte even where a descriptor forgets to say so: no scale counts in tens of millions of kilograms.
  return { ...(reportId ? { reportId } : {}), status, unit, weight, ...(scaling ? { scaling: { ...scaling, isSigned: true } } : {}) }
}

/** Every field of a report in order, constant padding left out but counted. */
function fieldsOf(items: readonly HidItem[]): readonly FoundField[] {
  const found: FoundField[] = []
  let bit = 0
  for (const item of items) {
    const bits = item.reportSize ?? 0
    const usages = usagesOf(item)
    for (let at = 0; at < Math.min(item.reportCount ?? 0, 256); at++, bit += bits) {
      if (item.isConstant || bits < 1 || bits > 32) continue
      const own = item.isArray ? usages : usages.slice(Math.min(at, usages.length - 1)).slice(0, 1)
      found.push({ field: fieldOf(item, bit, bits), usages: own })
    }
  }
  return found
}

function fieldOf(item: HidItem, bit: number, bits: number): Field {
  const least = item.logicalMinimum ?? 0
  const field = { bit, bits, isSigned: least < 0, least }
  return item.isArray ? { ...field, places: usagesOf(item).map((one) => placeOf(one)) } : field
}

/** A unit's or status's place in its table: its usage less the table's own. */
function placeOf(one: number): number {
  const isOf = (table: number, size: number): boolean => one >= table && one <= table + size
  return isOf(usage.unit, 12) ? one - usage.unit : isOf(usage.status, 8) ? one - usage.status : 0
}

function usagesOf(item: HidItem): readonly number[] {
  if (item.usages && item.usages.length > 0) return item.usages
  const { usageMinimum: first, usageMaximum: last } = item
  if (first === undefined || last === undefined || last < first || last - first > 0xff) return []
  return Array.from({ length: last - first + 1 }, (_, at) => first + at)
}
