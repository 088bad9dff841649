/** The local date (YYYY-MM-DD) of a moment in a zone. */
export function dayIn(zone: string, at: Date): string {
  const parts = new Intl.DateTimeFormat('en', {
    timeZone: zone,
    calendar: 'iso8601',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  }).formatToParts(at)
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((one) => one.type === type)!.value
  return `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`
}
