import type { LearnedKind, PassedOver } from '../../src-domain/learning/logs.ts'

export const learnedWords: Readonly<Record<LearnedKind, string>> = {
  pace: 'Pace',
  breaks: 'Breaks',
  cold: 'Cold',
  fuel: 'Fuel',
  water: 'Water',
  food: 'Food',
}

/** What a log is, one and many. */
export const logWords: Readonly<Record<LearnedKind, readonly [string, string]>> = {
  pace: ['leg', 'legs'],
  breaks: ['leg', 'legs'],
  cold: ['night', 'nights'],
  fuel: ['burn', 'burns'],
  water: ['leg', 'legs'],
  food: ['trip', 'trips'],
}

export const passedOverWords: Readonly<Record<PassedOver, string>> = {
  'left-out': 'left out by you',
  'out-of-range': 'too far from the law to be the same thing',
  between: 'cool: neither warm nor cold',
  'nothing-left': 'nothing came home: it says only at least so much',
  resupplied: 'food was bought on the way',
  'short-walk': 'under half an hour',
}

/** Where the method comes from, for the line under the list. */
export const methodWords: Readonly<Record<LearnedKind, string>> = {
  pace: 'Own hours over the walking law’s, wild days pulled in (Huber), drawn towards 1 by a spread of 0.20 between walkers.',
  breaks: 'Standing for each hour of moving; before any log 9 min, weighing as much as ten hours.',
  cold: 'Nights warm or cold beside the low the bed held by the sum, on a grid of offsets, from your own word with 3 K of doubt.',
  fuel: 'Grams weighed away over the law’s for the water heated, drawn towards 1 (0.25), one burn scatters 0.15.',
  water: 'Litres drunk over the law’s for the hours moved, drawn towards 1 (0.30), one leg scatters 0.25.',
  food: 'What was eaten over the energy need by the law, drawn towards 1 (0.117), one trip scatters 0.15.',
}
