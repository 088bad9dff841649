import { plain } from '../../state/units.svelte.ts'
import { formatShare } from '../../../src-domain/figures/format.ts'

/** `+5.4 %`, `−0.3 %`. */
export const signedShare = (share: number): string => plain(formatShare(share, 1, 'always'))
