import { heard, justOpened, layoutOf, learntStepMg, parseScaleReport, taken, zeroCommandOf } from '../../src-domain/closet/scale-report.ts'
import type { HidCollection, Layout, ScaleReport, Steadiness } from '../../src-domain/closet/scale-report.ts'
import type { Fault } from '../../src-domain/figures/fault.ts'

/** The scale page of the HID usage tables, point of sale. */
const scalePage = 0x8d
/** Reports that the step is learnt from. */
const remembered = 200

/**
 * A USB scale on the bench. Browsers name devices only after a click (connect); one that was allowed before is opened at the next start
 * and whenever it is plugged in. What it says goes through the pure reader and the pure steadiness; nothing is kept by itself.
 */
class HidScale {
  readonly able = typeof navigator !== 'undefined' && 'hid' in navigator
  /** Known again by what it is: vendor, product and name. */
  key = $state<string | null>(null)
  name = $state('')
  steadiness = $state.raw<Steadiness>(justOpened)
  /** What the scale said instead of a mass. */
  problem = $state.raw<Fault | null>(null)
  /** The scale's own step: learnt from its readings, else one count. */
  stepMg = $state<number | null>(null)
  canZero = $state(false)
  #device: HIDDevice | null = null
  #layout: Layout | null = null
  #reports: ScaleReport[] = []
  #started = false

  get connected(): boolean {
    return this.key !== null
  }

  /** Opens a scale that was allowed before, now and whenever one is plugged in. Once a window. */
  async start(): Promise<void> {
    if (!this.able || this.#started) return
    this.#started = true
    navigator.hid.addEventListener('connect', ({ device }) => void this.#open(device))
    navigator.hid.addEventListener('disconnect', ({ device }) => device === this.#device && this.#forget())
    for (const device of await navigator.hid.getDevices()) await this.#open(device)
  }

  /** Asks the person which scale; must follow a click or a key. True: one was chosen and is open. */
  async connect(): Promise<boolean> {
    const [device] = await navigator.hid.requestDevice({ filters: [{ usagePage: scalePage }] })
    if (device) await this.#open(device)
    return this.connected
  }

  /** The reading was kept: it is not offered again until the plate has moved. */
  take(): void {
    this.steadiness = taken(this.steadiness)
  }

  /** Sets the scale to zero as its own button would. */
  async zero(): Promise<void> {
    const command = this.#device ? zeroCommandOf(this.#device.collections) : undefined
    if (command) await this.#device?.sendReport(command.reportId, new Uint8Array(command.bytes))
  }

  async disconnect(): Promise<void> {
    const device = this.#device
    this.#forget()
    await device?.close()
  }

  async #open(device: HIDDevice): Promise<void> {
    if (this.#device !== null || !device.collections.some((one) => one.usagePage === scalePage)) return
    this.#device = device
    try {
      if (!device.opened) await device.open()
    } catch {
      this.#device = null
      this.problem = { code: 'scale.fault', facts: {} }
      return
    }
    const collections = device.collections as readonly HidCollection[]
    this.#layout = layoutOf(collections)
    this.#reports = []
    this.canZero = zeroCommandOf(collections) !== undefined
    this.steadiness = justOpened
    this.problem = null
    this.name = device.productName
    this.key = `${device.vendorId.toString(16)}:${device.productId.toString(16)}:${device.productName}`
    device.addEventListener('inputreport', this.#heard)
  }

  readonly #heard = ({ device, reportId, data }: HIDInputReportEvent): void => {
    const layout = this.#layout
    if (device !== this.#device || !layout || (layout.reportId !== undefined && layout.reportId !== reportId)) return
    const report = parseScaleReport(new Uint8Array(data.buffer, data.byteOffset, data.byteLength), layout)
    if (!report.ok) {
      this.problem = report.fault
      this.steadiness = { ...justOpened, isFresh: false }
      return
    }
    this.problem = null
    this.steadiness = heard(this.steadiness, report.value, performance.now())
    this.#learn(report.value)
  }

  #learn(report: ScaleReport): void {
    this.#reports = [...this.#reports.slice(1 - remembered), report]
    this.stepMg = learntStepMg(this.#reports) ?? report.stepMg
  }

  #forget(): void {
    this.#device?.removeEventListener('inputreport', this.#heard)
    this.#device = null
    this.#layout = null
    this.key = null
    this.name = ''
    this.stepMg = null
    this.canZero = false
    this.steadiness = justOpened
    this.problem = null
  }
}

export const hidScale = new HidScale()
