/** Marks that say where a typed figure comes from: `~352`, `≈95`, `352 g (mfr)`, `est. 95 g`; and a note in brackets. */
export type SaidOrigin = 'measured' | 'claimed' | 'estimated'

export interface Claimed {
  readonly rest: string
  readonly origin?: SaidOrigin
  readonly note?: string
}

const before: readonly (readonly [RegExp, SaidOrigin])[] = [
  [/^~ ?/u, 'claimed'],
  [/^≈ ?/u, 'estimated'],
  [/^(?:about|around|approx(?:imately|\.)?|ca\.|circa|est(?:imated|\.)?|c\.) ?(?=[\d.,])/iu, 'estimated'],
]

const saidWords: readonly (readonly [RegExp, SaidOrigin])[] = [
  [
    /^(?:mfr|mfg|mfgr|manufacturer|maker|claim|claimed|spec|specs|catalogue|catalog|listed|stated|advertised|website|web|nominal)\.?(?: (?:weight|mass|spec|figure))?$/iu,
    'claimed',
  ],
  [/^(?:est|estimate|estimated|guess|guessed|approx|approximate|approximately|about|\?)\.?$/iu, 'estimated'],
  [/^(?:measured|weighed|actual|own scale|my scale|scale|scaled)\.?$/iu, 'measured'],
]

/** Takes the marks off; what is left should be the bare quantity. */
export function takeMarks(plain: string): Claimed {
  const front = before.find(([pattern]) => pattern.test(plain))
  const body = front ? plain.replace(front[0], '') : plain
  const bracket = /^(.*?)[ ]?[([]([^()[\]]*)[)\]]$/u.exec(body)
  const trailing =
    bracket ?? /^(.*[\d\p{L}#"'.°]) (mfr|mfg|claimed|est|estimated|measured|weighed|actual|each|ea|apiece|a piece)\.?$/iu.exec(body)
  if (!trailing) return front ? { rest: body, origin: front[1] } : { rest: body }
  const [, rest = '', said = ''] = trailing
  const origin = front?.[1] ?? saidWords.find(([pattern]) => pattern.test(said.trim()))?.[1]
  const isMark = saidWords.some(([pattern]) => pattern.test(said.trim())) || /^(?:each|ea|apiece|a piece|)$/iu.test(said.trim())
  return { rest: rest.trim(), ...(origin ? { origin } : {}), ...(isMark ? {} : { note: said.trim() }) }
}
