import type { Call, StepName } from '../../src-main/contract.ts'

type Facts = StepName['facts']
const named = (facts: Facts): string => (facts['name'] === undefined ? '' : ` ${facts['name']}`)
const counted = (facts: Facts, one: string, many: string): string => {
  const count = Number(facts['count'] ?? 1)
  return count === 1 ? (facts['name'] === undefined ? `one ${one}` : String(facts['name'])) : `${count} ${many}`
}

/** What a step did, as undo and the history name it. */
const sentences: Partial<Record<Call, (facts: Facts) => string>> = {
  'item.add': (f) => `add${named(f)}`,
  'item.edit': (f) => `edit${named(f)}`,
  'item.duplicate': (f) => `duplicate${named(f)}`,
  'item.duties': (f) => `duties of${named(f)}`,
  'item.needs': (f) => `needs of${named(f)}`,
  'item.labels': (f) => `words on${named(f)}`,
  'item.links': (f) => `links of${named(f)}`,
  'item.trait': (f) => `trait of${named(f)}`,
  'item.untrait': (f) => `trait off${named(f)}`,
  'item.counter': (f) => `counter of${named(f)}`,
  'item.weigh': (f) => `weigh${named(f)}`,
  'items.weigh': (f) => `weigh ${counted(f, 'item', 'items')}`,
  'items.edit': (f) => `change ${counted(f, 'item', 'items')}`,
  'items.remove': (f) => `remove ${counted(f, 'item', 'items')}`,
  'photo.add': (f) => `photograph of${named(f)}`,
  'photo.remove': (f) => `photograph off${named(f)}`,
  'photo.order': (f) => `order photographs of${named(f)}`,
  'weighing.remove': (f) => `take back a weighing of${named(f)}`,
  'weighing.mark': (f) => `mark a weighing of${named(f)}`,
  'set.add': (f) => `make the set${named(f)}`,
  'set.edit': (f) => `rename the set${named(f)}`,
  'set.members': (f) => `change the set${named(f)}`,
  'set.dissolve': (f) => `dissolve the set${named(f)}`,
  'scale.add': (f) => `add the scale${named(f)}`,
  'scale.edit': (f) => `change the scale${named(f)}`,
  'scale.check': (f) => `check the scale${named(f)}`,
  'scale.uncheck': (f) => `take back a check of${named(f)}`,
  'supply.add': (f) => `add${named(f)}`,
  'supply.edit': (f) => `change${named(f)}`,
  'supply.trait': (f) => `trait of${named(f)}`,
  'supply.needs': (f) => `needs of${named(f)}`,
  'word.set': (f) => `change the word ${f['label']}`,
  'word.add': (f) => `add the word ${f['label']}`,
  'season.add': (f) => `add the season${named(f)}`,
  'season.edit': (f) => `change the season${named(f)}`,
  'season.remove': (f) => `remove the season${named(f)}`,
  'walker.add': (f) => `add the walker${named(f)}`,
  'walker.edit': (f) => `change the walker${named(f)}`,
  'walker.remove': (f) => `remove the walker${named(f)}`,
  'trip.add': (f) => `add the trip${named(f)}`,
  'trip.edit': (f) => `change the trip${named(f)}`,
  'trip.remove': (f) => `remove the trip${named(f)}`,
  'loadout.add': (f) => `add the loadout${named(f)}`,
  'loadout.edit': (f) => `change the loadout${named(f)}`,
  'loadout.remove': (f) => `remove the loadout${named(f)}`,
  'loadout.take': (f) => `take ${counted(f, 'line', 'lines')} from the parent`,
  'lines.put': (f) => `put in ${counted(f, 'line', 'lines')}`,
  'lines.move': (f) => `move ${counted(f, 'line', 'lines')}`,
  'lines.remove': (f) => `take out ${counted(f, 'line', 'lines')}`,
  'lines.copy': (f) => `copy ${counted(f, 'line', 'lines')}`,
  'line.edit': (f) => `change${named(f)}`,
  'bringIn.accept': (f) => `bring in ${counted(f, 'row', 'rows')}`,
  'view.save': (f) => `save the view${named(f)}`,
  'view.remove': (f) => `remove the view${named(f)}`,
}

export const stepWords = (step: Pick<StepName, 'code' | 'facts'>): string => sentences[step.code as Call]?.(step.facts) ?? step.code
