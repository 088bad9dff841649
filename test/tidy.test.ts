/** Tests of the repository itself: rules that the compiler and the linter cannot hold. Each has a planted breach that must be found. */
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { basename, resolve } from 'node:path'
import { expect, test } from 'vitest'
import { checks } from '../src-domain/checks/index.ts'
import { migrations } from '../migrations/index.ts'

const root = resolve(import.meta.dirname, '..')
const tracked = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], { cwd: root, encoding: 'utf8' })
  .split('\n')
  .filter((path) => path !== '' && existsSync(resolve(root, path)))
const texts = tracked.filter((path) => /\.(ts|svelte|css|html|js|cjs|md|json)$/.test(path) && path !== 'package-lock.json')

interface Rule {
  readonly says: string
  readonly where: RegExp
  readonly breach: RegExp
  /** A line that breaks it. */
  readonly planted: string
}

const rules: readonly Rule[] = [
  {
    says: 'The policy of the page forbids style attributes: use a class or style:x.',
    where: /\.svelte$/,
    breach: /\sstyle="/,
    planted: '<p style="top: 0">',
  },
  {
    says: 'Relative imports are written with their ending.',
    where: /\.(ts|svelte)$/,
    breach: /from '\.{1,2}\/(?:(?!\.(?:ts|svelte|css|json|mjs|js)').)*'/,
    planted: "import { x } from './figure'",
  },
  {
    says: 'The domain has no clock.',
    where: /^src-domain\//,
    breach: /\bDate\.now\(|new Date\(\)|performance\.now/,
    planted: 'const t = Date.now()',
  },
  { says: 'The domain has no chance.', where: /^src-domain\//, breach: /Math\.random/, planted: 'Math.random()' },
  {
    says: 'These labels are not our words.',
    where: /^(src-|README|DEVELOPERS)/,
    breach: /\b(gear closet|gear list|packing list|wish ?list|big three)\b/i,
    planted: 'Your packing list',
  },
  {
    says: 'Nothing names the place it was made in.',
    where: /./,
    breach: new RegExp(['/work/', 'main\\b'].join('') + '|' + ['bash', '_jobs'].join('')),
    planted: ['/work/', 'main/x.ts'].join(''),
  },
  {
    says: 'The compiler is not told to look away.',
    where: /^(src-|migrations)/,
    breach: /@ts-(ignore|nocheck)/,
    planted: '// @ts-ignore',
  },
  {
    says: 'Main says things through its log.',
    where: /^src-main\/(store|handlers|files|router|program)/,
    breach: /\bconsole\./,
    planted: 'console.log(1)',
  },
]

test.each(rules)('$says', ({ where, breach, planted, says }) => {
  expect(breach.test(planted), 'the rule finds its planted breach').toBe(true)
  const found = texts
    .filter((path) => where.test(path) && path !== 'test/tidy.test.ts')
    .flatMap((path) =>
      readFileSync(resolve(root, path), 'utf8')
        .split('\n')
        .flatMap((line, at) => (breach.test(line) ? [`${path}:${at + 1}: ${line.trim().slice(0, 120)}`] : [])),
    )
  expect(found, says).toEqual([])
})

test('Every check has a file under its own id, and tests', () => {
  const tests = texts.filter((path) => path.startsWith('test/domain/')).map((path) => readFileSync(resolve(root, path), 'utf8'))
  const missing = checks.filter(
    ({ id }) => !tracked.includes(`src-domain/checks/${id}.ts`) || !tests.some((text) => text.includes(`checks/${id}.ts'`)),
  )
  expect(missing.map(({ id }) => id)).toEqual([])
})

test('Check ids are one of a kind', () => {
  expect(new Set(checks.map(({ id }) => id)).size).toBe(checks.length)
})

test('Every migration in the folder is listed, in order, by its own name', () => {
  const files = tracked.filter((path) => /^migrations\/\d{4}-.*\.ts$/.test(path)).map((path) => basename(path, '.ts'))
  expect(Object.keys(migrations)).toEqual([...files].sort())
})

test('Every law has check values from outside or a test', () => {
  const laws = tracked.filter((path) => path.startsWith('src-domain/laws/')).map((path) => basename(path, '.ts'))
  const outside = texts
    .filter((path) => /^test\/(published|domain)\//.test(path))
    .map((path) => readFileSync(resolve(root, path), 'utf8'))
    .join('\n')
  const untested = laws.filter((law) => !outside.includes(`/laws/${law}.ts'`))
  expect(untested).toEqual([])
})

test('Licences of what is bundled stand in the repository', () => {
  expect(tracked).toContain('LICENSE')
})
