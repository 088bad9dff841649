import { loadSolver, solverWith } from '../../../src-main/choosing/highs.ts'

/** The solver as the program uses it, for tests. */
export const solve = solverWith(await loadSolver())
