import type { Page } from '@playwright/test'

/**
 * A USB scale that only a test can load: `navigator.hid` with one device of the scale page (0x8D) that sends the common five-byte report
 * (status, unit, signed power of ten, weight low byte first; STACK.md section 7). The page must be reloaded after this.
 */
export async function plugInScale(page: Page, { known = false } = {}): Promise<void> {
  await page.addInitScript((allowedBefore) => {
    class Device extends EventTarget {
      readonly vendorId = 0x1234
      readonly productId = 0x5678
      readonly productName = 'Simulated scale'
      opened = false
      readonly collections = [{ usagePage: 0x8d, usage: 0x20, children: [], inputReports: [{ reportId: 3, items: [] }], outputReports: [] }]
      open = () => Promise.resolve(void (this.opened = true))
      close = () => Promise.resolve(void (this.opened = false))
    }
    const device = new Device()
    let allowed = allowedBefore
    const hid = Object.assign(new EventTarget(), {
      getDevices: () => Promise.resolve(allowed ? [device] : []),
      requestDevice: () => Promise.resolve(((allowed = true), [device])),
    })
    Object.defineProperty(navigator, 'hid', { value: hid, configurable: true })
    Object.assign(window, {
      sendReport: (bytes: readonly number[], reportId = 3) => {
        const event = new Event('inputreport')
        device.dispatchEvent(Object.assign(event, { device, reportId, data: new DataView(new Uint8Array(bytes).buffer) }))
      },
      unplug: () => hid.dispatchEvent(Object.assign(new Event('disconnect'), { device })),
    })
  }, known)
  await page.reload()
}

export const report = (page: Page, bytes: readonly number[]): Promise<void> =>
  page.evaluate((sent) => (window as unknown as { sendReport: (bytes: readonly number[]) => void }).sendReport(sent), bytes)

/** Two equal stable reports more than 0.3 s apart: what steady means. */
export async function settle(page: Page, bytes: readonly number[]): Promise<void> {
  await report(page, bytes)
  await page.waitForTimeout(350)
  await report(page, bytes)
}
