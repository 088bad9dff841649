/** Roles guessed so far, column by column. What the person said is never overwritten. */
import type { Role } from './choices.ts'
import type { ReasonCode, Told } from './preview.ts'

export interface RoleGuess {
  readonly role: Role
  readonly because: Told<ReasonCode>
}
export type RoleGuesses = Map<number, RoleGuess>

export const isGuess = (found: RoleGuesses, column: number): boolean => found.get(column)?.because.code !== 'by-person'

export function set(found: RoleGuesses, column: number, role: Role, code: ReasonCode, facts: Told['facts'] = {}): void {
  if (isGuess(found, column)) found.set(column, { role, because: { code, facts } })
}

export const hasRole = (found: RoleGuesses, role: Role): boolean => [...found.values()].some((guess) => guess.role === role)
