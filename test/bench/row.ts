import { performance } from 'node:perf_hooks'

/** One row of the report: what was asked of the program, over what it stands beside. A smaller ratio is better. */
export interface BenchRow {
  readonly name: string
  readonly ratio: number
  readonly goal: number
  /** The two sides and how they were taken. */
  readonly about: string
}

/** What rows may share: a data folder whose closet holds `closetSize` items, which no row changes. */
export interface Place {
  readonly dataDir: string
}

export const closetSize = 20_000
/** A frame of a 60 Hz screen. */
export const frameMs = 1000 / 60

/** By rank: the share `p` of the values is at most this. The median of an even number is the lower of the two in the middle. */
export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.max(0, Math.ceil(p * sorted.length) - 1)]!
}

export const median = (values: readonly number[]): number => quantile(values, 0.5)

export const ms = (value: number): string => `${value < 10 ? value.toFixed(2) : value.toFixed(1)} ms`

type Work = () => unknown

export async function timeMs(work: Work): Promise<number> {
  const start = performance.now()
  await work()
  return performance.now() - start
}

/** Two works in turn, A B A B …, so that what else the machine does falls on both; each is run once unmeasured first. */
export async function sideBySide(ours: Work, theirs: Work, rounds: number): Promise<readonly [ours: number, theirs: number]> {
  await ours()
  await theirs()
  const times: [number[], number[]] = [[], []]
  for (let round = 0; round < rounds; round++) {
    times[0].push(await timeMs(ours))
    times[1].push(await timeMs(theirs))
  }
  return [median(times[0]), median(times[1])]
}

export interface Timed {
  readonly wallMs: number
  /** Processor time of the same runs: far below the wall's where other work shares the machine. */
  readonly processorMs: number
}

/** Medians over rounds of a work that has nothing to stand beside but a fixed time; `prepare` gives each round its own input, unmeasured. */
export function timed<T>(prepare: (round: number) => T, work: (input: T) => unknown, { unmeasured = 30, rounds = 200 } = {}): Timed {
  const [wall, processor]: [number[], number[]] = [[], []]
  for (let round = 0; round < unmeasured + rounds; round++) {
    const input = prepare(round)
    const [start, before] = [performance.now(), process.cpuUsage()]
    work(input)
    const { user, system } = process.cpuUsage(before)
    if (round < unmeasured) continue
    wall.push(performance.now() - start)
    processor.push((user + system) / 1000)
  }
  return { wallMs: median(wall), processorMs: median(processor) }
}
