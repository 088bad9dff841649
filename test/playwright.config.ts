import { defineConfig } from '@playwright/test'
import { browserPath, browserFlags } from './browser.ts'

export default defineConfig({
  testDir: './journeys',
  outputDir: '../out/journeys',
  timeout: 120_000,
  expect: { timeout: 15_000 },
  workers: 2,
  // A slow machine may miss a moment once; what fails twice is broken. The report names the retried as flaky.
  retries: process.env['CI'] ? 1 : 0,
  fullyParallel: true,
  reporter: [['list']],
  use: {
    viewport: { width: 1440, height: 900 },
    screenshot: 'only-on-failure',
    locale: 'en-GB',
    launchOptions: { executablePath: browserPath(), args: browserFlags() },
  },
})
