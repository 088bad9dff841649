/**
 * `npm test`: everything CI runs, in the order in which a slip is cheapest to find. `npm run check`: the first half, without a browser.
 * Each step is one command; the first that fails stops the run and names itself.
 */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, resolve } from 'node:path'
import { findBrowser } from './browser.ts'

const root = resolve(import.meta.dirname, '..')
const bin = resolve(root, 'node_modules/.bin')
const env: NodeJS.ProcessEnv = { ...process.env, PATH: `${bin}${delimiter}${process.env['PATH'] ?? ''}` }

type Step = readonly [string, readonly string[]]

const still: readonly Step[] = [
  ['format', ['prettier', '--check', '.']],
  ['types of the domain', ['tsc', '-p', 'src-domain']],
  ['types of main', ['tsc', '-p', 'src-main']],
  ['types of migrations', ['tsc', '-p', 'migrations']],
  ['types of tests', ['tsc', '-p', 'test']],
  ['types of the window', ['svelte-check', '--workspace', 'src-renderer', '--tsconfig', 'tsconfig.json', '--fail-on-warnings']],
  ['lint', ['eslint', '--config', 'test/eslint.config.js', '.']],
  ['layers', ['depcruise', '--config', 'test/layers.cjs', 'src-domain', 'src-main', 'src-renderer', 'migrations']],
  ['dead code', ['knip']],
]
const moving: readonly Step[] = [
  ['build', ['electron-vite', 'build']],
  ['unit', ['vitest', 'run', '--config', 'test/vitest.config.ts']],
  ['accuracy', ['node', 'test/accuracy.ts']],
  ['journeys', ['playwright', 'test', '--config', 'test/playwright.config.ts']],
]

function run([name, [command, ...words]]: Step): void {
  console.log(`\n— ${name}`)
  const started = Date.now()
  const { status, error } = spawnSync(command!, words, { cwd: root, env, stdio: 'inherit' })
  if (status !== 0) {
    console.error(`\n${name} failed${error ? `: ${error.message}` : ''}`)
    process.exit(status ?? 1)
  }
  console.log(`— ${name}: ${((Date.now() - started) / 1000).toFixed(1)} s`)
}

/** A browser named, on the path or Playwright's own; else one is fetched where that may be done; else the line that would. */
function needBrowser(): void {
  if (findBrowser()) return
  const asRoot = process.getuid?.() === 0
  const ways: readonly (readonly string[])[] = [
    ['playwright', 'install', 'chromium'],
    ...(asRoot && existsSync('/usr/bin/apt-get')
      ? [['sh', '-c', 'apt-get update -qq && apt-get install -y -qq --no-install-recommends chromium']]
      : []),
  ]
  for (const [command, ...words] of ways) {
    console.log(`\n— browser: ${command} ${words.join(' ')}`)
    const { PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD: _, ...rest } = env
    spawnSync(command!, words, { cwd: root, env: rest, stdio: 'inherit' })
    if (findBrowser()) return
  }
  console.error(
    '\nThe journeys need a Chromium: apt-get install chromium (Debian), or npx playwright install chromium, or name one in CHROMIUM.',
  )
  process.exit(1)
}

const only = process.argv[2]
for (const step of still) run(step)
if (only !== 'check') {
  needBrowser()
  for (const step of moving) run(step)
}
