import { resolve } from 'node:path'
import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'electron-vite'

const r = (path: string) => resolve(import.meta.dirname, path)

export default defineConfig({
  main: {
    build: {
      target: 'node24',
      sourcemap: true,
      rolldownOptions: {
        input: {
          index: r('src-main/hosts/electron.ts'),
          loopback: r('src-main/hosts/loopback.ts'),
          choosing: r('src-main/choosing/worker.ts'),
        },
      },
    },
  },
  // A sandboxed preload must be one CommonJS file.
  preload: {
    build: {
      target: 'node24',
      externalizeDeps: false,
      rolldownOptions: { input: { index: r('src-main/preload.ts') }, output: { format: 'cjs', entryFileNames: '[name].cjs' } },
    },
  },
  renderer: {
    root: r('src-renderer'),
    plugins: [svelte({ configFile: false })],
    build: {
      target: 'chrome152',
      outDir: r('out/renderer'),
      minify: true,
      sourcemap: true,
      rolldownOptions: { input: { index: r('src-renderer/index.html') } },
    },
  },
})
