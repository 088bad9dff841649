import { nowHere } from '../../state/clock.ts'
import { settings } from '../../state/settings.svelte.ts'

/** The queue as it went to paper, so that it can be typed in row by row in the same order, days later. */
export interface PrintedQueue {
  readonly day: string
  readonly ids: readonly number[]
}
/** A few sheets of paper; more would not be weighed in one go. */
export const mostPrinted = 200

export const lastPrinted = (): PrintedQueue | null => settings.get<PrintedQueue | null>('scale.printed', null)

export async function rememberPrinted(order: readonly number[]): Promise<void> {
  if (order.length === 0) return
  await settings.set('scale.printed', { day: nowHere().day, ids: order.slice(0, mostPrinted) } satisfies PrintedQueue)
}
