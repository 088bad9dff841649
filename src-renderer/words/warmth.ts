import { convert } from '../../src-domain/figures/units.ts'

type Facts = Readonly<Record<string, string | number>>
const name = (facts: Facts): string => String(facts['name'] ?? '')
/** Mats are shown as R, whatever the units chosen. */
const asR = (facts: Facts, fact: string): string => convert(Number(facts[fact] ?? 0), 'm2K/W', 'R').toFixed(1)

/** Sentences of the checks of warmth and cover. */
export const warmthSentences: Readonly<Record<string, (facts: Facts) => string>> = {
  low: () => 'say how cold it gets: the expected low',
  high: () => 'say how warm the day gets: the expected high',
  wind: () => 'say how windy it gets',
  rain: () => 'say what rain to expect',
  'top-insulation': () => 'nothing rated to sleep in goes along',
  'ground-insulation': () => 'no mat goes along: add one, or strike it from what the trip asks',
  'rated-temperature': (f) => `${name(f)} has no rated temperature`,
  'rating-range': (f) => `the rating of ${name(f)} is outside −60 to 25 °C: check it and its unit`,
  'thermal-resistance': (f) => `${name(f)} has no thermal resistance`,
  'adult-sleeper': () => 'no standard has a model of a sleeping child',
  clothing: () => 'no clothing goes along',
  'garment-clo': (f) => `${name(f)} has no warmth figure`,
  'cover-kind': (f) => `say what kind of cover ${name(f)} is`,
  'ground-mats': (f) => `need R ${asR(f, 'needRsi')}, have R ${asR(f, 'haveRsi')}; enough from ${asR(f, 'enoughRsi')}`,
  'no-cover': () => 'no cover goes along',
  'weak-cover': (f) => `only ${name(f)}`,
  'no-night': () => 'no night out',
  'mild-night': () => 'the night is above 20 °C',
  'mild-air': () => 'the air is above 10 °C',
  hammock: () => 'there is air, not ground, below a hammock',
  'no-sitting': () => 'no time is spent sitting',
  'no-stop': () => 'no stop is planned',
}
