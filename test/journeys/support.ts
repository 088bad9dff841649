import { AxeBuilder } from '@axe-core/playwright'
import { expect, test as base, type Page } from '@playwright/test'
import type { Call, InputOf, OutputOf, Reply } from '../../src-main/contract.ts'
import { startHost, type RunningHost } from '../host.ts'

export { expect } from '@playwright/test'

interface Running {
  readonly host: RunningHost
  /** A contract call with the page's own session. */
  readonly call: <K extends Call>(name: K, input: InputOf<K>) => Promise<OutputOf<K>>
}

/** A journey's own program: a host in an empty folder, the page open on it; any console error or warning fails the journey. */
export const test = base.extend<{ demo: boolean; program: Running }>({
  demo: [false, { option: true }],
  program: [
    async ({ page, demo }, use) => {
      const host = await startHost({ demo })
      const said: string[] = []
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') said.push(`${message.text()} ${message.location().url}`)
      })
      page.on('pageerror', (error) => said.push(error.message))
      await openPage(page, host.url)
      await use({ host, call: (name, input) => call(page, name, input) })
      await page.close()
      await host.stop()
      expect(said, 'the console stayed silent').toEqual([])
    },
    { auto: true },
  ],
})

export async function openPage(page: Page, url: string): Promise<void> {
  await page.goto(url)
  await expect(page.getByRole('navigation', { name: 'Rooms' })).toBeVisible()
}

export async function call<K extends Call>(page: Page, name: K, input: InputOf<K>): Promise<OutputOf<K>> {
  const reply = await page.evaluate(
    async ([name, input]) => {
      const headers = { 'content-type': 'application/json', 'x-session': sessionStorage.getItem('tarework-session') ?? '' }
      const answer = await fetch(`/api/call/${name}`, { method: 'POST', body: JSON.stringify(input), headers })
      return (await answer.json()) as unknown
    },
    [name, input] as const,
  )
  const answer = reply as Reply<OutputOf<K>>
  if (!answer.ok) throw new Error(`${name}: ${JSON.stringify(answer.fault)}`)
  return answer.value
}

/** Grams whatever the machine's region: journeys check figures, not regions. */
export async function inGrams(page: Page): Promise<void> {
  await call(page, 'setting.set', {
    key: 'units',
    value: JSON.stringify({ mass: 'metric', length: 'metric', temp: 'metric', volume: 'metric' }),
  })
  await page.reload()
  await expect(page.getByRole('navigation', { name: 'Rooms' })).toBeVisible()
}

/** Accessibility by axe: no breach at all on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(
    violations.map(
      ({ id, nodes }) =>
        `${id}: ${nodes
          .map((node) => node.html)
          .slice(0, 3)
          .join(' | ')}`,
    ),
  ).toEqual([])
}
