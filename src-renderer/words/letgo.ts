import type { BeforeTrip } from '../../src-domain/closet/care.ts'
import type { Withheld } from '../../src-domain/closet/letting-go.ts'
import type { CareCode } from '../../src-domain/closet/wear-facts.ts'

/** What stands against an offer. */
export const withheldWords: Readonly<Record<Withheld, string>> = {
  'not-owned': 'Not yours to let go.',
  'marked-keep': 'You keep it.',
  'owned-too-short': 'Yours for under a year.',
  'season-not-seen': 'Its season has not come round yet.',
  'nothing-else-serves': 'Nothing else of yours does its work.',
}

export const careWords: Readonly<Record<CareCode, string>> = {
  washed: 'wash',
  reproofed: 'reproof',
  resealed: 'reseal the seams',
  recharged: 'recharge',
  aired: 'shake out and air',
  mended: 'mend',
  renewed: 'renew',
}
export const careDoneWords: Readonly<Record<CareCode, string>> = {
  washed: 'washed',
  reproofed: 'reproofed',
  resealed: 'resealed',
  recharged: 'recharged',
  aired: 'aired',
  mended: 'mended',
  renewed: 'renewed',
}

export const dropWords: Readonly<Record<string, string>> = {
  weight: 'weight',
  function: 'function',
  comfort: 'comfort',
  waste: 'waste',
  '': 'no reason said',
}

/** The task's own word, for the button that says it is done; null: nothing that one press could do. */
export const doneBy = (todo: BeforeTrip): CareCode | null =>
  todo.kind === 'care' ? todo.task.code : todo.kind === 'mend' ? 'mended' : null
