import { resolve } from 'node:path'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  plugins: [svelte({ configFile: false })],
  // The Electron runtime is not needed for these tests: a strict stand-in answers for it.
  resolve: { alias: { electron: resolve(import.meta.dirname, 'fakes/electron.ts') } },
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/journeys/**', 'node_modules/**'],
    testTimeout: 90_000,
    hookTimeout: 90_000,
    maxWorkers: 2,
    reporters: ['default'],
  },
})
