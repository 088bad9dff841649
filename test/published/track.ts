import geodesy from 'geographiclib-geodesic'
import { climbOf } from '../../src-domain/laws/climb.ts'
import { geodesicM, stepM } from '../../src-domain/laws/geodesic.ts'
import { despiked } from '../../src-domain/laws/heights-despiked.ts'
import { smoothed } from '../../src-domain/laws/heights-smoothed.ts'
import type { TrackPoint } from '../../src-domain/trips/track.ts'
import { readTrack } from '../../src-domain/trips/track.ts'
import { haversineM } from '../oracles/haversine.ts'
import type { Published } from './published.ts'

// Geodesics to 1e-5 m where the published value carries the digits, else half a unit of its last one; haversine 1e-3 m (walking.md 6.2).
const note = { source: 'walking.md 6, computed apart from this code', known: 'recomputed' } as const
const dms = (d: number, m: number, s: number) => Math.sign(d) * (Math.abs(d) + m / 60 + s / 3600)
type Line = readonly [number, number, number, number]
const australia: Line = [dms(-37, 57, 3.7203), dms(144, 25, 29.5244), dms(-37, 39, 10.1561), dms(143, 55, 35.3839)]

// line, geodesic m, haversine m (null: not printed), published value, its tolerance and source
const lines: readonly (readonly [Line, number, number | null, readonly [number, number, string] | null])[] = [
  // GRS80 and WGS84 differ by 0.1 mm in the minor axis: nothing at this length.
  [australia, 54972.271139, 54925.508, [54972.271, 5e-4, 'Geoscience Australia test line, in public test code']],
  [[50.06632, -5.71475, 58.64402, -3.07009], 969954.166314, 968876.042, [969954.166, 5e-4, 'public test code']],
  [[-41.32, 174.81, 40.96, -5.5], 19959679.267354, 19967403.587, [19959679.267, 5e-4, 'the geodesic library’s own page']],
  [[0, 0, 0.5, 179.5], 19936288.578965, 19936488.146, [19936288.579, 5e-4, 'public test code']],
  [[0, 0, 0.5, 179.7], 19944127.42075, 19950277.343, null],
  [[0, 0, 0, 1], 111319.490793, 111195.08, [(Math.PI * 6378137) / 180, 1e-6, 'π·a/180, exact']],
  [[0, 0, 1, 0], 110574.388558, 111195.08, null],
  [[45, 0, 45, 0.001], 78.846835, 78.627, null],
  [[45, 7.001, 45.001, 7.001], 111.131788, 111.195, null],
  [[10, 179.9995, 10, -179.9995], 109.639364, 109.506, null],
  [[12, 34, 12, 34], 0, 0, null],
]
const far = () => geodesy.Geodesic.WGS84.Direct(-32.06, 115.74, 225, 20_000_000)
const distance = (about: string, expected: number, tolerance: number, got: () => number): Published => ({
  law: 'Distance',
  about,
  ...note,
  unit: 'm',
  expected,
  tolerance,
  got,
})

const example = [12, 17, 15, 20, 22, 18, 15, 16, 14, 12]
const hills = [100, 96, 120, 118, 130, 90]
// heights, threshold: up, down
const turning: readonly (readonly [readonly number[], number, number, number])[] = [
  [example, 2, 12, 12],
  ...[3, 5, 6, 10].map((h) => [example, h, 10, 10] as const),
  [[100, 102, 99, 101, 98, 102, 100], 0, 8, 8],
  [[100, 102, 99, 101, 98, 102, 100], 5, 0, 0],
  [[100, 104, 103, 107, 106, 110], 0, 12, 2],
  [[100, 104, 103, 107, 106, 110], 5, 10, 0],
  [hills, 5, 34, 40],
  [hills, 3, 34, 44],
  [[100], 0, 0, 0],
  [[100], 5, 0, 0],
  [[100, 100, 100], 0, 0, 0],
  [[100, 100, 100], 5, 0, 0],
]
const placesM = Array.from({ length: 13 }, (_, i) => 20 * i)
const noisy = [100, 101, 103, 102, 160, 108, 110, 112, 111, 113, 109, 106, 104]
const cleaned = [100, 101, 103, 102, 105.5, 108, 110, 112, 111, 113, 109, 106, 104]
const soft = [100, 101.3, 102.3, 103.9, 105.7, 107.5, 109.3, 110.8, 111, 110.2, 108.6, 106.3, 104]
const softened = () => smoothed(placesM, despiked(placesM, noisy), 40)
const climb = (about: string, expected: number, got: () => number, tolerance = 1e-9): Published => ({
  law: 'Climb',
  about,
  ...note,
  unit: 'm',
  expected,
  tolerance,
  got,
})

const at = (latDeg: number, lonDeg: number, heightM: number | null, clock: string): TrackPoint => ({
  latDeg,
  lonDeg,
  heightM,
  atMs: Date.parse(`2026-08-01T${clock}Z`),
})
export const testTrack: readonly TrackPoint[] = [
  at(45, 7, 1000, '08:00:00'),
  at(45, 7.001, 1005, '08:01:00'),
  at(45, 7.001, 1005, '08:11:00'),
  at(45.001, 7.001, null, '08:12:30'),
]
const read = () => readTrack([testTrack], 'terrain')
const timed = (about: string, expected: number, tolerance: number, unit: string, got: () => number): Published => ({
  law: 'Track',
  about: `test track: ${about}`,
  ...note,
  unit,
  expected,
  tolerance,
  got,
})

/** Four hills of 100 m at 10 %, at a spacing that hits the summits. */
const cleanHills = (spacingM: number) => {
  const places = Array.from({ length: 8000 / spacingM + 1 }, (_, i) => i * spacingM)
  return { places, heights: places.map((place) => 0.1 * Math.min(place % 2000, 2000 - (place % 2000))) }
}
const hillsUp = (spacingM: number, halfWidthM: number, thresholdM: number) => {
  const { places, heights } = cleanHills(spacingM)
  return climbOf(smoothed(places, despiked(places, heights), halfWidthM), thresholdM).upM
}

export const rows: readonly Published[] = [
  ...lines.flatMap(([line, geodesic, sphere, outside]): Published[] => [
    distance(line.map((deg) => Number(deg.toFixed(4))).join(' '), geodesic, 1e-5, () => geodesicM(...line)),
    ...(sphere === null
      ? []
      : [
          {
            ...distance(`${line.map((deg) => Number(deg.toFixed(4))).join(' ')}, on a sphere (oracle)`, sphere, 1e-3, () =>
              haversineM(...line),
            ),
            law: 'Distance (haversine, the oracle)',
          },
        ]),
    ...(outside === null
      ? []
      : [
          {
            ...distance(`${line.map((deg) => Number(deg.toFixed(4))).join(' ')}, published`, outside[0], outside[1], () =>
              geodesicM(...line),
            ),
            source: outside[2],
            known: 'read' as const,
          },
        ]),
  ]),
  // The package's other way round: 20,000 km from −32.06, 115.74 at azimuth 225; eight decimals as printed.
  {
    ...distance('20,000 km at azimuth 225: latitude', 32.11195529, 5e-9, () => far().lat2!),
    unit: 'deg',
    source: 'the geodesic library’s own page',
    known: 'read',
  },
  {
    ...distance('20,000 km at azimuth 225: longitude', -63.95925278, 5e-9, () => far().lon2!),
    unit: 'deg',
    source: 'the geodesic library’s own page',
    known: 'read',
  },
  ...lines.slice(7).map(([line, geodesic]) => distance(`${line.join(' ')}, near form`, geodesic, 1e-5, () => stepM(...line))),
  // Published with the sum 5 + 5 + 2 + 1; the page's text says 14, its own sum 13.
  {
    ...climb('published example, plain sum up', 13, () => climbOf(example, 0).upM),
    source: 'a cyclist’s page on elevation gain, its printed sum',
    known: 'read',
  },
  climb('published example, plain sum down', 13, () => climbOf(example, 0).downM),
  ...turning.flatMap(([heights, threshold, up, down]): Published[] => [
    climb(`${heights.join(' ')}, h ${threshold}: up`, up, () => climbOf(heights, threshold).upM),
    climb(`${heights.join(' ')}, h ${threshold}: down`, down, () => climbOf(heights, threshold).downM),
  ]),
  climb('noisy way, raw, h 0: up', 67, () => climbOf(noisy, 0).upM),
  climb('noisy way, raw, h 0: down', 63, () => climbOf(noisy, 0).downM),
  climb('noisy way, raw, h 5: up', 65, () => climbOf(noisy, 5).upM),
  climb('noisy way, raw, h 5: down', 61, () => climbOf(noisy, 5).downM),
  ...cleaned.map((height, i) => climb(`noisy way, despiked at ${placesM[i]!} m`, height, () => despiked(placesM, noisy)[i]!)),
  climb('noisy way, despiked, h 5: up', 13, () => climbOf(despiked(placesM, noisy), 5).upM),
  climb('noisy way, despiked, h 5: down', 9, () => climbOf(despiked(placesM, noisy), 5).downM),
  ...soft.map((height, i) => climb(`noisy way, smoothed at ${placesM[i]!} m`, height, () => softened()[i]!, 0.05)),
  climb('noisy way, smoothed, h 5: up', 11, () => climbOf(softened(), 5).upM, 5e-4),
  climb('noisy way, smoothed, h 5: down', 7, () => climbOf(softened(), 5).downM, 5e-4),
  ...[10, 20, 25, 50, 100, 200].map((spacing) =>
    climb(`clean hills at ${spacing} m, not smoothed`, 400, () => hillsUp(spacing, 0, 3), 1e-6),
  ),
  climb('clean hills at 10 m, w 20, h 3', 391.6, () => hillsUp(10, 20, 3), 0.05),
  timed('length', 189.978623, 2e-5, 'm', () => read().lengthM),
  timed('elapsed', 750, 0, 's', () => read().times!.elapsedS),
  timed('breaks', 600, 0, 's', () => read().times!.breakS),
  timed('moving', 150, 0, 's', () => read().times!.movingS),
  timed('mean moving speed', 1.266524, 5e-7, 'm/s', () => read().lengthM / read().times!.movingS),
  timed('climb', 5, 0, 'm', () => read().climb!.upM),
]
