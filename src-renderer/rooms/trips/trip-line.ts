import type { TripRow } from '../../../src-main/contract.ts'
import { readBrief } from '../../../src-domain/trips/brief.ts'
import { plain, show, showDay, showDays } from '../../state/units.svelte.ts'
import type { Walker } from '../../../src-domain/trips/walker.ts'

/** `9–12 October · 62 km · 2,900 m climb · low −2 °C · walker 58 kg`: what the brief says, and nothing it does not. */
export function tripLine(trip: TripRow, walker: Walker): string {
  const brief = readBrief(trip.brief)
  const sum = (of: 'lengthM' | 'climbM') => brief.legs.reduce((all, leg) => all + (leg[of] ?? 0), 0)
  const parts = [
    trip.startsOn === null
      ? 'no dates yet'
      : trip.endsOn === null || trip.endsOn === trip.startsOn
        ? showDay(trip.startsOn)
        : showDays(trip.startsOn, trip.endsOn),
    sum('lengthM') > 0 ? plain(show.distance(sum('lengthM'))) : '',
    sum('climbM') > 0 ? `${plain(show.height(sum('climbM')))} climb` : '',
    brief.lowC === null ? '' : `low ${plain(show.temp(brief.lowC))}`,
    walker.bodyMassG === null ? '' : `walker ${plain(show.body({ massMg: walker.bodyMassG * 1000, origin: 'measured' }))}`,
  ]
  return parts.filter((part) => part !== '').join(' · ')
}
