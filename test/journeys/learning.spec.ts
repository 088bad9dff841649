import { emptyBrief } from '../../src-domain/trips/brief.ts'
import { emptyWalker } from '../../src-domain/trips/walker.ts'
import { expect, expectAccessible, inGrams, test } from './support.ts'

/** Six trips of one flat leg, each a fifth slower than the law; flat pace 1.14813 m/s (walking.md 1.1). */
const lawMin = 18_000 / 1.14813 / 60

test('What the record says stands beside the walker, log by log, and moves the next trip’s check', async ({ page, program }) => {
  const { id: walkerId } = await program.call('walker.add', { name: 'Me', profile: JSON.stringify(emptyWalker) })
  const leg = {
    day: 1,
    name: 'Along the lake',
    lengthM: 18_000,
    climbM: 0,
    descentM: 0,
    terrain: 'path',
    endHeightM: 0,
    camp: false,
  } as const
  const brief = JSON.stringify({ ...emptyBrief, legs: [leg], place: { latDeg: 45, lonDeg: 0 }, nightsOut: 0, highC: 20 })
  for (let n = 0; n < 6; n++) {
    const { id: tripId } = await program.call('trip.add', { name: `Walk ${n + 1}`, walkerId, startsOn: `2025-0${n + 1}-05`, endsOn: `2025-0${n + 1}-05`, zone: 'UTC', brief }) // prettier-ignore
    const { id: loadoutId } = await program.call('loadout.add', { name: 'Day kit', tripId })
    await program.call('trip.close', { id: tripId, loadoutId })
    await program.call('debrief.leg', { tripId, leg: 0, day: 1, movingMin: 1.2 * lawMin, breakMin: 60 })
  }
  const { id: nextId } = await program.call('trip.add', { name: 'Next', walkerId, startsOn: '2030-06-05', endsOn: '2030-06-05', zone: 'UTC', brief }) // prettier-ignore
  await program.call('loadout.add', { name: 'Kit of the next', tripId: nextId })

  await inGrams(page)
  await page.goto(`${new URL(page.url()).origin}/#/walker`)
  const record = page.getByRole('region', { name: 'From the record' })
  // Six logs at 1.2 with weight 1 each, σ0 0.12, τ 0.20, worked out apart (walking.md 1.4): μ = 6y/σ² ÷ (6/σ² + 25), σ² about 0.0064 → × 1.19.
  await expect(record).toContainText('× 1.00 → × 1.19')
  // (1.5 h + 6 h)/(10 h + 6 × 5.2258 h) of breaks: 0.1813, 11 min an hour (walking.md 1.3).
  await expect(record).toContainText('9 min an hour → 11 min an hour')
  await expect(record).toContainText(/Next\. In camp before dark: have .* → /)
  await expectAccessible(page)
  if (process.env['SHOTS']) await page.screenshot({ path: `${process.env['SHOTS']}/walker.png` })

  await record.getByRole('button', { name: 'Pace: 6 legs' }).click()
  const logs = page.getByRole('list', { name: 'Logs of Pace' })
  await logs.getByRole('checkbox').first().uncheck()
  await expect(record.getByRole('button', { name: 'Pace: 5 legs' })).toBeVisible()
  await expect(logs).toContainText('left out by you')
  await page.keyboard.press('Control+z')
  await expect(record.getByRole('button', { name: 'Pace: 6 legs' })).toBeVisible()

  await record.getByRole('radiogroup', { name: 'Pace is read' }).getByRole('radio', { name: 'as typed' }).click()
  await expect(record).toContainText('What was typed stands; the record waits.')
})
