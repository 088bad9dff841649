import { fault, ok, type Outcome } from '../figures/fault.ts'

/**
 * A time on foot as it is typed, in minutes: `5 h 20`, `5:20`, `5h20`, `5.5 h`, `320 min`, and a bare number as minutes from 25 on, as hours below
 * (nobody notes a leg of four minutes, nor one of thirty hours; a choice). Up to ten days.
 */
const MOST_MIN = 14_400
const BARE_HOURS = 24

export function parseDuration(text: string): Outcome<number> {
  const plain = text.trim().toLowerCase().replaceAll(',', '.').replaceAll(/\s+/g, ' ')
  const minutes = inMinutes(plain)
  if (minutes === null) return fault('quantity.unreadable', { typed: text })
  return minutes > MOST_MIN ? fault('quantity.too-large', { typed: text }) : ok(minutes)
}

function inMinutes(text: string): number | null {
  const both = /^(\d+) ?(?:h|hours?|:) ?([0-5]?\d)(?: ?(?:m|min|minutes?))?$/.exec(text)
  if (both) return Number(both[1]) * 60 + Number(both[2])
  const hours = /^(\d+(?:\.\d+)?) ?(?:h|hours?)$/.exec(text)
  if (hours) return Number(hours[1]) * 60
  const minutes = /^(\d+(?:\.\d+)?) ?(?:m|min|minutes?)$/.exec(text)
  if (minutes) return Number(minutes[1])
  const bare = /^\d+(?:\.\d+)?$/.exec(text)
  return bare ? (Number(text) <= BARE_HOURS ? Number(text) * 60 : Number(text)) : null
}
