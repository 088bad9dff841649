/** What a leaf of doubt is, in words: the one weighing, the one scale, the claims. */
export function leafWords(leaf: string): string {
  if (leaf === 'claims:bias') return 'claims leaning one way'
  if (leaf === 'estimates:bias') return 'estimates leaning one way'
  if (/^scale:.*:gain$/.test(leaf) || leaf === 'gain') return "the scale's gain"
  const [kind] = leaf.split(':')
  switch (kind) {
    case 'weighing':
    case 'own':
      return 'its own reading'
    case 'claim':
      return 'the claim itself'
    case 'estimate':
      return 'the estimate itself'
    case 'amount':
      return 'the amount'
    case 'law':
      return `the law (${leaf.slice(4)})`
    case 'rating':
      return 'the rating'
    case 'method':
      return `how ${leaf.slice(7)} are measured`
    case 'choice':
      return `a constant chosen (${leaf.slice(7).replaceAll('-', ' ')})`
    case 'brief':
      return `what the brief says (${leaf.slice(6)})`
    case 'walker':
      return `the walker (${leaf.slice(7).replaceAll('-', ' ')})`
    case 'efficiency':
      return `the efficiency of ${leaf.slice(11)}`
    case 'heat-value':
      return 'the heat value of the fuel'
    case 'cold':
      return 'what the cold leaves of the cells'
    case 'draws':
      return 'what the devices draw'
    case 'room':
      return 'the room a thing takes'
    case 'trait':
      return 'a trait'
    default:
      return leaf.replaceAll(':', ' ')
  }
}
