/**
 * Making water safe: how long to boil, how much to dose, how long a filter lasts.
 * Sources: CDC backcountry guide and EPA emergency disinfection (read). The EPA page gives 3 min "above 5,000 feet (1,000 meters)", two figures that
 * disagree (5000 ft is 1524 m): here 3 min above 1000 m, the more cautious. Chemical doses are the label's; the drops below are EPA's for plain bleach.
 * Caution: iodine and chlorine do not stop Cryptosporidium; iodine is not for pregnancy, thyroid disease or weeks on end; ordinary filters pass viruses;
 * UV needs clear water; none removes salt, fuel, metals or the poisons of algae. Follow the label and local rules.
 */
export type TreatmentKind = 'filter' | 'purifier' | 'chlorine' | 'iodine' | 'uv' | 'boil'

/** Rolling boil, minutes. */
export const boilMinutes = (heightM: number): number => (heightM > 1000 ? 3 : 1)

/** Drops of plain household bleach; doubled when cloudy, coloured or very cold. Stand 30 min, a slight smell of chlorine stays. */
export function bleachDrops(litres: number, strength: 6 | 8.25, cloudy: boolean): number {
  const dropsPerLitre = { 6: 2, 8.25: 6 / 3.785411784 }[strength]
  return Math.ceil(litres * dropsPerLitre * (cloudy ? 2 : 1) - 1e-9)
}

/** Drops of 2 % tincture of iodine, EPA: 5 to the quart or litre clear, 10 cloudy; 30 min. */
export const iodineDrops = (litres: number, cloudy: boolean): number => Math.ceil(litres * (cloudy ? 10 : 5) - 1e-9)

/** Doses (tablets, lamps, pumps) that treat the litres, `litresADose` as the label says. */
export const dosesFor = (litres: number, litresADose: number): number =>
  litresADose > 0 ? Math.ceil(litres / litresADose - 1e-9) : Number.NaN

/** Litres a filter still gives. Frozen wet it is treated as failed; silt shortens it by 2 to 5 (common practice). */
export function filterLeftL(lifeL: number, usedL: number, frozenWet: boolean, siltFactor = 1): number {
  return frozenWet ? 0 : Math.max(0, lifeL - usedL * siltFactor)
}

export const treatmentCautions: Readonly<Record<TreatmentKind, readonly string[]>> = {
  filter: ['Ordinary filters pass viruses. A filter that has frozen wet is treated as failed.'],
  purifier: ['Follow the maker’s life and freezing limits.'],
  chlorine: ['Not effective against Cryptosporidium; chlorine dioxide only after the longer time on its label. Follow the label.'],
  iodine: ['Not effective against Cryptosporidium. Not for pregnancy, thyroid disease, nor for weeks on end. Follow the label.'],
  uv: ['Clear water only; needs power.'],
  boil: ['Rolling boil 1 minute, 3 minutes above 1000 m.'],
}
