import { expect, test } from 'vitest'
import { guessLane } from '../../../src-domain/closet/guess-lane.ts'

test.each([
  ['Trail shoes', ['shoes'], 'on_me'],
  ['Walking poles', ['pole'], 'on_me'],
  ['Tarp pole', ['pole'], 'in_pack'],
  ['Rain jacket', ['rain-shell'], 'in_pack'],
  ['Paperback', [], 'in_pack'],
] as const)('%s goes where it is usually carried', (name, duties, lane) => expect(guessLane(name, duties)).toBe(lane))
