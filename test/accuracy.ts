/**
 * `npm run accuracy`: for each law and check its agreement with values from outside: n, mean and greatest error as a share of the
 * tolerance argued beside the value, and the sources. Plain Node; the same rows are tests of their own.
 * Then the calibration of what is learned: how often the 80 % bands hold on invented walkers (test/calibration.ts).
 */
import { readdirSync } from 'node:fs'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import { coverages, isHonest } from './calibration.ts'
import type { Published } from './published/published.ts'

const folder = resolve(import.meta.dirname, 'published')

async function allRows(): Promise<readonly Published[]> {
  const files = readdirSync(folder).filter((name) => name.endsWith('.ts') && name !== 'published.ts')
  const modules = await Promise.all(
    files.sort().map((name) => import(pathToFileURL(resolve(folder, name)).href) as Promise<{ readonly rows?: readonly Published[] }>),
  )
  return modules.flatMap(({ rows }) => rows ?? [])
}

const errorOf = (row: Published): number => Math.abs(row.got() - row.expected)
const isOutside = (row: Published): boolean => !(errorOf(row) <= row.tolerance)
const short = (value: number): string =>
  value === 0 ? '0' : Math.abs(value) >= 0.001 && Math.abs(value) < 1e5 ? value.toPrecision(3) : value.toExponential(1)

function report(law: string, rows: readonly Published[]): void {
  const errors = rows.map(errorOf).sort((a, b) => a - b)
  const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length
  const p90 = errors[Math.min(errors.length - 1, Math.floor(errors.length * 0.9))]!
  const units = [...new Set(rows.map((row) => row.unit))].join(', ')
  const known = [...new Set(rows.map((row) => row.known))].join(', ')
  console.log(`${law}: n ${rows.length}, mean ${short(mean)}, p90 ${short(p90)}, max ${short(errors.at(-1)!)} ${units} (${known})`)
  for (const source of new Set(rows.map((row) => row.source))) console.log(`    ${source}`)
  for (const row of rows.filter(isOutside))
    console.log(`    OUTSIDE: ${row.about}: expected ${row.expected} ± ${row.tolerance}, got ${row.got()}`)
}

const rows = await allRows()
for (const law of new Set(rows.map((row) => row.law)))
  report(
    law,
    rows.filter((row) => row.law === law),
  )
const outside = rows.filter(isOutside).length
console.log(`accuracy: ${rows.length} values, ${new Set(rows.map((row) => row.source)).size} sources, ${outside} outside`)

const held = coverages()
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`
for (const [kind, of] of Map.groupBy(held, (one) => one.kind))
  console.log(
    `calibration of ${kind}: ${of.map((one) => `${one.logs} logs ${percent(one.held)}${isHonest(one) ? '' : ' OUTSIDE'} (seed ${one.seed})`).join(', ')}`,
  )
const dishonest = held.filter((one) => !isHonest(one)).length
console.log(
  `calibration: 80 % bands on ${held[0]!.walkers} invented walkers each, 75–90 % below three logs, 75–85 % from three on: ${dishonest} outside`,
)
if (outside + dishonest > 0) process.exitCode = 1
