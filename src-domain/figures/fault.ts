/**
 * An expected failure: a code and the facts its sentence needs. The window words it (`src-renderer/words/faults.ts`);
 * a code without a sentence does not compile there.
 */
export const faultCodes = [
  'program.bug',
  'program.unknown-call',
  'program.busy',
  'program.gone',
  'program.shut',
  'input.invalid',
  'input.missing',
  'quantity.unreadable',
  'quantity.ambiguous',
  'quantity.negative',
  'quantity.unit-missing',
  'quantity.unit-unknown',
  'quantity.too-large',
  'weighing.over-capacity',
  'weighing.negative',
  'weighing.no-reading',
  'weighing.count-unsure',
  'scale.unreadable',
  'scale.unit-refused',
  'scale.fault',
  'scale.moving',
  'scale.under-zero',
  'scale.over-limit',
  'scale.needs-calibration',
  'scale.needs-zero',
  'scale.unsuccessful',
  'scale.too-coarse',
  'row.gone',
  'row.in-use',
  'row.taken',
  'undo.nothing',
  'undo.changed-since',
  'loadout.cycle',
  'trip.frozen',
  'trip.planned',
  'store.full',
  'store.read-only',
  'store.damaged',
  'store.newer',
  'store.in-use',
  'file.unreadable',
  'file.too-large',
  'file.not-image',
  'archive.unreadable',
  'archive.newer',
  'archive.truncated',
  'archive.foreign-entry',
  'archive.mismatch',
  'sheet.unreadable',
  'sheet.empty',
  'track.unreadable',
  'track.too-large',
  'backup.none',
  'print.no-browser',
  'print.failed',
] as const
export type FaultCode = (typeof faultCodes)[number]

export interface Fault {
  readonly code: FaultCode
  /** Plain facts for the sentence: the field, what was typed, the limit, the line. */
  readonly facts: Readonly<Record<string, string | number>>
}

export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly fault: Fault }

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value })
export const fault = (code: FaultCode, facts: Fault['facts'] = {}): { readonly ok: false; readonly fault: Fault } => ({
  ok: false,
  fault: { code, facts },
})
