import { ok } from '../../src-domain/figures/fault.ts'
import type { HandlersOf } from './kinds.ts'

export const demoHandlers: HandlersOf<'demo'> = {
  'demo.open': async ({ options }) => ok({ url: await options.openDemo() }),
}
