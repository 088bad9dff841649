/** What loadouts are called side by side. */
export const letters = ['A', 'B', 'C', 'D'] as const
