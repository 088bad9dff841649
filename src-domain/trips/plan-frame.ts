/**
 * The plan of a way on paper: metres on the plane that touches the earth at the middle of the track, north up, one scale for both axes.
 *   x = east of the middle · s + w/2 · y = −north · s + h/2 · s chosen so that the track fits inside the margins
 * For drawing only: over 100 km the plane is off by less than a line is wide.
 */
import { metresPerDegree, turn } from '../laws/geodesic.ts'

export interface PlanFrame {
  /** [x, y] of each point of the plan. */
  readonly points: readonly (readonly [number, number])[]
  /** Distance along the drawn line to each point as a share of the whole, 0 … 1. */
  readonly share: readonly number[]
  /** Pixels a metre. */
  readonly scale: number
}

type Plan = readonly (readonly [number, number])[]

export function planFrame(plan: Plan, width: number, height: number, margin: number): PlanFrame {
  if (plan.length === 0) return { points: [], share: [], scale: 0 }
  const lats = plan.map(([lat]) => lat)
  const midLat = (Math.min(...lats) + Math.max(...lats)) / 2
  const { north, east } = metresPerDegree(midLat)
  const flat = plan.map(([lat, lon]): readonly [number, number] => [east * turn(lon - plan[0]![1]), -north * (lat - midLat)])
  const [xs, ys] = [flat.map(([x]) => x), flat.map(([, y]) => y)]
  const [minX, maxX, minY, maxY] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const scale = Math.min((width - 2 * margin) / Math.max(1, maxX - minX), (height - 2 * margin) / Math.max(1, maxY - minY))
  const place = ([x, y]: readonly [number, number]): readonly [number, number] => [
    width / 2 + (x - (minX + maxX) / 2) * scale,
    height / 2 + (y - (minY + maxY) / 2) * scale,
  ]
  return { points: flat.map(place), share: sharesOf(flat), scale }
}

function sharesOf(flat: readonly (readonly [number, number])[]): readonly number[] {
  let sum = 0
  const along = flat.map(([x, y], i) => (sum += i === 0 ? 0 : Math.hypot(x - flat[i - 1]![0], y - flat[i - 1]![1])))
  return along.map((at) => (sum === 0 ? 0 : at / sum))
}

/** The place at a share of the line. */
export function placeOnPlan({ points, share }: PlanFrame, at: number): readonly [number, number] {
  const after = share.findIndex((one) => one >= at)
  const i = after < 0 ? points.length - 1 : after
  if (i <= 0) return points[Math.max(0, i)] ?? [0, 0]
  const [a, b] = [points[i - 1]!, points[i]!]
  const part = share[i] === share[i - 1] ? 0 : (at - share[i - 1]!) / (share[i]! - share[i - 1]!)
  return [a[0] + part * (b[0] - a[0]), a[1] + part * (b[1] - a[1])]
}

/** The line between two shares, ends included. */
export function planBetween(frame: PlanFrame, from: number, to: number): readonly (readonly [number, number])[] {
  const inside = frame.points.filter((_, i) => frame.share[i]! > from && frame.share[i]! < to)
  return [placeOnPlan(frame, from), ...inside, placeOnPlan(frame, to)]
}

/** The first of 1, 2, 5, 10, 20 … of which at most `most` go into a span. */
export function niceStep(span: number, most: number): number {
  let step = 1e-3
  for (let i = 0; i < 60 && span / step > most; i++) step *= [2, 2.5, 2][i % 3]!
  return step
}

/** Latitude and longitude at a share of the way; null without a plan. */
export function placeAlong(plan: Plan, at: number): { readonly latDeg: number; readonly lonDeg: number } | null {
  if (plan.length === 0) return null
  const { share } = planFrame(plan, 1, 1, 0)
  const after = share.findIndex((one) => one >= at)
  const i = after < 0 ? plan.length - 1 : after
  const [b, a] = [plan[i]!, plan[Math.max(0, i - 1)]!]
  const part = i === 0 || share[i] === share[i - 1] ? 1 : Math.min(1, (at - share[i - 1]!) / (share[i]! - share[i - 1]!))
  return { latDeg: a[0] + part * (b[0] - a[0]), lonDeg: turn(a[1] + part * turn(b[1] - a[1])) }
}
