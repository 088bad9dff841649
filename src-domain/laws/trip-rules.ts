/**
 * What local rules ask of a kit. Cautions, not law: local rules decide; check before you go.
 * Sources: US Forest Service fire stages allow stoves that shut off (read: fs.usda.gov and county orders); flame bans and wood bans differ by place;
 * carbon monoxide: two hours of a kerosene stove in a small tent gave seven people a mean COHb of 21.5 % (Thomassen et al. 2004, Am. J. Emerg. Med. 22,
 * 204–206, read); 60 to 155 ppm within 20 min of naphtha (Betten et al. 2013, Wilderness Environ. Med. 24, 280–284, read).
 */
export interface RuledStove {
  readonly fuel: string
  /** Shuts off at once; null: not said, then by its fuel. */
  readonly valve: boolean | null
}

export type StoveRule = 'valve-only' | 'no-flame' | 'no-wood' | 'no-alcohol'

/** Gas and pressurised liquid shut off; alcohol, tablets and twigs do not, whatever is said of them. */
export const shutsOff = (stove: RuledStove): boolean =>
  stove.fuel === 'alcohol' || stove.fuel === 'solid' || stove.fuel === 'wood' ? false : (stove.valve ?? true)

export function stoveMeets(rule: StoveRule, stove: RuledStove): boolean {
  if (rule === 'no-flame') return false
  if (rule === 'valve-only') return shutsOff(stove)
  return rule === 'no-wood' ? stove.fuel !== 'wood' : stove.fuel !== 'alcohol'
}

export const ruleCautions: Readonly<Record<string, readonly string[]>> = {
  'valve-only': ['Clear the ground for a metre around the stove. Local rules decide; check before you go.'],
  'no-flame': ['Nothing may burn: plan cold meals. Local rules decide; check before you go.'],
  'no-wood': ['No wood may be gathered or burned. Local rules decide; check before you go.'],
  'no-alcohol': ['No alcohol may be burned. Local rules decide; check before you go.'],
  'hard-canister': [
    'Food, rubbish and everything with a scent goes into the canister every night; which ones count is local. Local rules decide; check before you go.',
  ],
  permit: ['A permit is asked. Local rules decide; check before you go.'],
  'by-air': [
    'Fuel never flies: no canister, no liquid fuel, no tablets; used stoves and bottles only clean and without smell. Lithium-ion to 100 Wh in the cabin, to 160 Wh with the carrier’s word, none beyond. Ask the carrier.',
  ],
  'protected-water': ['A protected source or drought: do not count on taking water there. Local rules decide; check before you go.'],
  'cook-in-shelter': [
    'Carbon monoxide kills without warning: do not burn anything in a closed shelter or a snow hole. Headache or drowsiness means get out. If there is no choice, wide vents low and high.',
  ],
}
/** Shown always where it applies; cannot be dismissed. */
export const undismissable: ReadonlySet<string> = new Set(['cook-in-shelter'])
