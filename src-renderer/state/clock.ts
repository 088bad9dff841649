import { program } from './program.svelte.ts'

/** The local day (YYYY-MM-DD) and the minute of the day, now, in the zone the program works in. */
export function nowHere(): { readonly day: string; readonly minute: number } {
  const parts = new Intl.DateTimeFormat('en', {
    timeZone: program.state?.zone ?? 'UTC',
    calendar: 'iso8601',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(new Date())
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((one) => one.type === type)!.value
  const minute = Number(part('hour')) * 60 + Number(part('minute'))
  return { day: `${part('year').padStart(4, '0')}-${part('month')}-${part('day')}`, minute }
}

/** A year before a day, as text: 29 February goes to the 28th. */
export function yearBefore(day: string): string {
  const [year = '', month = '', date = ''] = day.split('-')
  return `${String(Number(year) - 1).padStart(4, '0')}-${month}-${month === '02' && date === '29' ? '28' : date}`
}
