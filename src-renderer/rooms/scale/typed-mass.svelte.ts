import { parseMass } from '../../../src-domain/closet/quantity.ts'
import { hidScale } from '../../state/hid.svelte.ts'
import { massUnit } from '../../state/units.svelte.ts'
import { faultWords } from '../../words/faults.ts'

/** A mass typed into a field, or what a USB scale says as long as nothing is typed. */
export class TypedMass {
  text = $state('')
  readonly fromScale: boolean
  readonly read = $derived(this.text.trim() === '' ? null : parseMass(this.text, { unit: massUnit() }))
  readonly massMg: number | null = $derived.by(() => {
    if (this.read) return this.read.ok ? this.read.value.massMg : null
    return this.fromScale ? hidScale.steadiness.steadyMg : null
  })
  readonly problem = $derived(this.read && !this.read.ok ? faultWords(this.read.fault) : '')

  constructor(text = '', { fromScale = true } = {}) {
    this.text = text
    this.fromScale = fromScale
  }
}
