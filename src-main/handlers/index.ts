import { archiveHandlers } from './archive.ts'
import { backupHandlers } from './backups.ts'
import { benchHandlers } from './bench.ts'
import { bringInHandlers } from './bring-in.ts'
import { choosingHandlers } from './choosing.ts'
import { closetHandlers } from './closet.ts'
import { debriefHandlers } from './debrief.ts'
import { demoHandlers } from './demo.ts'
import { doorHandlers } from './door.ts'
import { itemHandlers } from './items.ts'
import type { Handlers } from './kinds.ts'
import { learningHandlers } from './learning.ts'
import { loadoutHandlers } from './loadouts.ts'
import { printHandlers } from './print.ts'
import { programHandlers } from './program.ts'
import { recordHandlers } from './record.ts'
import { settingHandlers } from './settings.ts'
import { shelfHandlers } from './shelf.ts'
import { tripHandlers } from './trips.ts'

/** Every call's handler. The type makes a row of the contract without one fail to compile. */
export const handlers: Handlers = Object.freeze({
  ...programHandlers,
  ...closetHandlers,
  ...itemHandlers,
  ...benchHandlers,
  ...shelfHandlers,
  ...tripHandlers,
  ...loadoutHandlers,
  ...doorHandlers,
  ...recordHandlers,
  ...debriefHandlers,
  ...learningHandlers,
  ...choosingHandlers,
  ...bringInHandlers,
  ...settingHandlers,
  ...backupHandlers,
  ...archiveHandlers,
  ...printHandlers,
  ...demoHandlers,
})
