/**
 * Dry spare: something that keeps the sleep and spare layers dry in the rain the brief expects.
 *   have 2 full (pack liner, dry bags, waterproof pack), 1 weak (pack cover alone), 0 none · need and enough by rain class
 * Wet down is the reason: with wet days a pack cover alone is at best tight.
 */
import { dryStoreAsked } from '../laws/rain-cover.ts'
import { unknown, type Check } from './check.ts'
import { coverFinding } from './covers.ts'

export const dryStore: Check = {
  id: 'dry-store',
  label: 'Dry spare',
  duties: ['dry-store'],
  withoutBrief: false,
  find({ loadout, brief }) {
    if (brief.rain === null) return unknown('rain')
    return coverFinding(loadout, 'dry-store', dryStoreAsked(brief.rain), brief)
  },
}
