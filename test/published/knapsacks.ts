/**
 * Published instances with their known optima.
 *   0/1 knapsacks P01 to P08: J. Burkardt's KNAPSACK_01 collection (P01, P02 and others from Kreher & Stinson, Martello & Toth); from memory
 *   multi-dimensional: Petersen 1967, the first of OR-Library's mknap1; from memory
 *   covers: points that meet every line of the affine planes and spaces over three elements, and of the projective space over two; from memory:
 *     caps of AG(2,3) hold 4 and of AG(3,3) 9 (Bose 1947), so 5 of 9 and 18 of 27 meet all lines (Fulkerson, Nemhauser & Trotter 1974: A9, A27);
 *     a plane meets every line of PG(3,2), and fewer than 7 points do not (Bose & Burton 1966)
 * Each sum that was remembered is guarded by the value: a digit remembered wrongly would not give the published optimum by chance.
 */
export interface Knapsack {
  readonly name: string
  readonly worth: readonly number[]
  /** One row for each limit. */
  readonly weighs: readonly (readonly number[])[]
  readonly limits: readonly number[]
  readonly best: number
}

const single = (name: string, limit: number, weighs: readonly number[], worth: readonly number[], best: number): Knapsack => ({
  name,
  worth,
  weighs: [weighs],
  limits: [limit],
  best,
})

export const knapsacks: readonly Knapsack[] = [
  single('P01', 165, [23, 31, 29, 44, 53, 38, 63, 85, 89, 82], [92, 57, 49, 68, 60, 43, 67, 84, 87, 72], 309),
  single('P02', 26, [12, 7, 11, 8, 9], [24, 13, 23, 15, 16], 51),
  single('P03', 190, [56, 59, 80, 64, 75, 17], [50, 50, 64, 46, 50, 5], 150),
  single('P04', 50, [31, 10, 20, 19, 4, 3, 6], [70, 20, 39, 37, 7, 5, 10], 107),
  single('P05', 104, [25, 35, 45, 5, 25, 3, 2, 2], [350, 400, 450, 20, 70, 8, 5, 5], 900),
  single('P06', 170, [41, 50, 49, 59, 55, 57, 60], [442, 525, 511, 593, 546, 564, 617], 1735),
  single(
    'P07',
    750,
    [70, 73, 77, 80, 82, 87, 90, 94, 98, 106, 110, 113, 115, 118, 120],
    [135, 139, 149, 150, 156, 163, 173, 184, 192, 201, 210, 214, 221, 229, 240],
    1458,
  ),
  single(
    'P08',
    6404180,
    [
      382745, 799601, 909247, 729069, 467902, 44328, 34610, 698150, 823460, 903959, 853665, 551830, 610856, 670702, 488960, 951111, 323046,
      446298, 931161, 31385, 496951, 264724, 224916, 169684,
    ],
    [
      825594, 1677009, 1676628, 1523970, 943972, 97426, 69666, 1296457, 1679693, 1902996, 1844992, 1049289, 1252836, 1319836, 953277,
      2067538, 675367, 853655, 1826027, 65731, 901489, 577243, 466257, 369261,
    ],
    13549094,
  ),
  {
    name: 'Petersen 1 (mknap1)',
    worth: [100, 600, 1200, 2400, 500, 2000],
    weighs: [
      [8, 12, 13, 64, 22, 41],
      [8, 12, 13, 75, 22, 41],
      [3, 6, 4, 18, 6, 4],
      [5, 10, 8, 32, 6, 12],
      [5, 13, 8, 42, 6, 20],
      [5, 13, 8, 48, 6, 20],
      [0, 0, 0, 0, 8, 0],
      [3, 0, 4, 0, 8, 0],
      [3, 2, 4, 0, 8, 4],
      [3, 2, 4, 8, 8, 4],
    ],
    limits: [80, 96, 20, 36, 44, 48, 10, 18, 22, 24],
    best: 3800,
  },
]

export interface Cover {
  readonly name: string
  readonly points: number
  readonly lines: readonly (readonly number[])[]
  readonly best: number
}

/** Lines of AG(n, 3): triples of points whose sum is 0 in every coordinate. */
function affineLines(n: number): number[][] {
  const count = 3 ** n
  const digits = (p: number) => Array.from({ length: n }, (_, i) => Math.floor(p / 3 ** i) % 3)
  const third = (p: number, q: number) => digits(p).reduce((sum, d, i) => sum + ((6 - d - digits(q)[i]!) % 3) * 3 ** i, 0)
  const lines: number[][] = []
  for (let p = 0; p < count; p++) for (let q = p + 1; q < count; q++) if (third(p, q) > q) lines.push([p, q, third(p, q)])
  return lines
}

/** Lines of PG(n − 1, 2): triples of non-zero binary words whose sum is 0; point p is the word p + 1. */
function binaryLines(n: number): number[][] {
  const lines: number[][] = []
  for (let p = 1; p < 2 ** n; p++) for (let q = p + 1; q < 2 ** n; q++) if ((p ^ q) > q) lines.push([p - 1, q - 1, (p ^ q) - 1])
  return lines
}

export const covers: readonly Cover[] = [
  { name: 'A9, the affine plane of order 3', points: 9, lines: affineLines(2), best: 5 },
  { name: 'A27, the affine space of order 3', points: 27, lines: affineLines(3), best: 18 },
  { name: 'the projective space of order 2', points: 15, lines: binaryLines(4), best: 7 },
]
