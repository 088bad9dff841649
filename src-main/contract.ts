import * as v from 'valibot'
import type { Fault } from '../src-domain/figures/fault.ts'
import { kitAreas, lanes, statuses, ways } from '../src-domain/closet/vocabulary.ts'
import { comforts, doorStates, sleeps, uses, verdictChanges, verdicts } from '../src-domain/trips/record.ts'
import { principles } from '../src-domain/trips/walker.ts'
import type * as a from './answers.ts'

/**
 * The one table of calls. `ask` gets a read-only handle; `change` runs in one transaction with one undo step;
 * `note` runs in one transaction without an undo step (settings, staging, saved views' order); `program` gets the running program itself
 * (undo and redo, backups, restore, archive), opens its own transactions and may take long.
 * Only plain data passes, so both hosts carry it unchanged: numbers, strings, booleans, null, arrays, plain objects.
 */
export type Kind = 'ask' | 'change' | 'note' | 'program'

const row =
  <K extends Kind>(kind: K) =>
  // eslint-disable-next-line @typescript-eslint/no-unnecessary-type-parameters -- what a call answers can only be said, not inferred
  <O>() =>
  <S extends v.GenericSchema>(input: S): { readonly kind: K; readonly input: S; readonly output?: O } => ({ kind, input })
const ask = row('ask')
const change = row('change')
const note = row('note')
const program = row('program')

/** The pattern alone lets the 31st of February through, which dates in src-domain refuse by throwing. */
function isRealDay(text: string): boolean {
  const at = new Date(`${text}T00:00:00Z`)
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text)
}

// Parts of inputs. Limits keep a hostile or broken caller from filling memory; they are far above real use.
const nothing = v.strictObject({})
const id = v.pipe(v.number(), v.integer(), v.minValue(1))
const ids = v.pipe(v.array(id), v.minLength(1), v.maxLength(50_000))
const short = v.pipe(v.string(), v.maxLength(300))
const name = v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(300))
const long = v.pipe(v.string(), v.maxLength(20_000))
const day = v.pipe(v.string(), v.isoDate(), v.check(isRealDay, 'Not a day of the calendar'))
const mg = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000_000))
const signedMg = v.pipe(v.number(), v.integer(), v.minValue(-1_000_000_000), v.maxValue(1_000_000_000))
const pieces = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(100_000))
const minor = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000_000))
const currency = v.pipe(v.string(), v.regex(/^([A-Z]{3})?$/))
const sha256 = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/))
const code = v.pipe(v.string(), v.regex(/^[a-z0-9][a-z0-9-]{0,60}$/))
const json = v.pipe(v.string(), v.maxLength(2_000_000))
const area = v.picklist(kitAreas)
const lane = v.picklist(lanes)
const origin = v.picklist(['measured', 'claimed', 'estimated'])
const optional = <S extends v.GenericSchema>(schema: S) => v.optional(schema)

const itemFields = {
  maker: optional(short),
  pieces: optional(pieces),
  status: optional(v.picklist(statuses)),
  statusSince: optional(v.nullable(day)),
  lentTo: optional(short),
  claimedMg: optional(v.nullable(mg)),
  claimedBy: optional(short),
  estimatedMg: optional(v.nullable(mg)),
  usualLane: optional(lane),
  isContainer: optional(v.boolean()),
  setId: optional(v.nullable(id)),
  serial: optional(short),
  came: optional(v.picklist(ways)),
  cameOn: optional(v.nullable(day)),
  cameFrom: optional(short),
  priceMinor: optional(v.nullable(minor)),
  currency: optional(currency),
  soldMinor: optional(v.nullable(minor)),
  note: optional(long),
  lifeNote: optional(long),
  lastOutOn: optional(v.nullable(day)),
  archived: optional(v.boolean()),
}
const dutyInput = v.strictObject({ duty: code, shared: v.boolean() })
const needInput = v.strictObject({ duty: code, pieces, kind: v.picklist(['shared', 'reserved']) })
const texts = v.pipe(v.array(v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(100))), v.maxLength(100))
const traitInput = v.strictObject({
  code,
  number: v.nullable(v.pipe(v.number(), v.finite())),
  text: optional(short),
  typed: optional(short),
  typedUnit: optional(short),
  origin,
  source: optional(short),
  notedOn: optional(v.nullable(day)),
})
const newItem = v.strictObject({
  name,
  kitArea: area,
  ...itemFields,
  duties: optional(v.pipe(v.array(dutyInput), v.maxLength(60))),
  tags: optional(texts),
  materials: optional(texts),
  /** A mass that a scale said, typed with the item: kept as a weighing of that day. */
  weighedMg: optional(v.nullable(mg)),
  weighedOn: optional(day),
})
const linkInput = v.strictObject({ url: v.pipe(v.string(), v.url(), v.maxLength(2000), v.regex(/^https?:/i)), label: short })
const ruleInput = v.strictObject({
  per: v.picklist(['day', 'night', 'litre', 'boil', 'trip', 'stretch']),
  /** Thousandths of the supply's unit, each day, night, litre, …. */
  amountMilli: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000_000)),
})
const lineFields = {
  lane,
  pieces: optional(pieces),
  amountMilli: optional(v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000_000)))),
  amountFrom: optional(v.picklist(['brief', 'typed', 'weighed'])),
  rule: optional(v.nullable(ruleInput)),
  containerId: optional(v.nullable(id)),
  carriedBy: optional(short),
  note: optional(long),
}
const newLine = v.strictObject({ itemId: optional(id), supplyId: optional(id), ...lineFields })
const weighing = v.strictObject({
  itemId: id,
  scaleId: v.nullable(id),
  weighedOn: day,
  weighedMinute: optional(v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1439)))),
  /** Gross readings, repeats of one weighing, as the scale showed them. */
  readingsMg: v.pipe(v.array(signedMg), v.minLength(1), v.maxLength(100)),
  tareMg: mg,
  tareKind: v.picklist(['none', 'button', 'reading']),
  pieces,
  damp: v.boolean(),
  dirty: v.boolean(),
  incomplete: v.boolean(),
  entered: v.picklist(['typed', 'usb']),
  note: optional(long),
})
const seasonKind = v.picklist(['spring', 'summer', 'autumn', 'winter', 'any'])
const tripFields = {
  seasonId: optional(v.nullable(id)),
  walkerId: optional(v.nullable(id)),
  startsOn: optional(v.nullable(day)),
  endsOn: optional(v.nullable(day)),
  zone: optional(short),
  state: optional(v.picklist(['planned', 'out', 'back'])),
  /** The brief as JSON: `Brief` of src-domain/trips/brief.ts. */
  brief: optional(json),
  note: optional(long),
}
const supplyFields = {
  mgPerUnit: optional(mg),
  massFrom: optional(origin),
  rule: optional(v.nullable(ruleInput)),
  note: optional(long),
  archived: optional(v.boolean()),
}
const brought = v.strictObject({
  /** One new item, or the id of the one already in the closet that this row is. */
  itemId: v.nullable(id),
  item: v.nullable(newItem),
  /** The set by name that its new item goes into; made where there is none of that name. */
  set: optional(short),
  links: optional(v.pipe(v.array(linkInput), v.maxLength(100))),
  /** The earlier row of this batch (from 0) whose new item this row is too, in another lane; then the two above are null. */
  asRow: optional(v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0)))),
  /** What this row adds to the loadout, if the sheet is one; null: closet only. */
  line: v.nullable(v.strictObject({ lane, pieces })),
})

const real = v.pipe(v.number(), v.finite())
const celsius = v.nullable(v.pipe(real, v.minValue(-90), v.maxValue(70)))
const amount = (most: number) => v.nullable(v.pipe(real, v.minValue(0), v.maxValue(most)))
const whole = (most: number) => v.nullable(v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most)))
const dayNumber = v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(1000))
const month = v.pipe(v.string(), v.regex(/^\d{4}-(0[1-9]|1[0-2])$/))
const kmhLimit = 400
const milliLimit = 1_000_000_000
const metreLimit = 10_000_000
const minuteLimit = 100_000
const heldIn = {
  lowC: optional(celsius),
  windKmh: optional(amount(kmhLimit)),
  rainHours: optional(amount(10_000)),
  nights: optional(whole(1000)),
  lengthM: optional(amount(metreLimit)),
}
const packedFields = {
  name: optional(name),
  kitArea: optional(area),
  lane: optional(lane),
  pieces: optional(pieces),
  amountMilli: optional(whole(milliLimit)),
  massMg: optional(v.nullable(mg)),
  /** A mass typed afterwards has no weighing behind it. */
  massFrom: optional(v.picklist(['claimed', 'estimated'])),
  duties: optional(v.pipe(v.array(dutyInput), v.maxLength(60))),
  carriedBy: optional(short),
  note: optional(long),
}
const debriefLineFields = {
  ...heldIn,
  use: optional(v.picklist(uses)),
  verdict: optional(v.picklist(verdicts)),
  change: optional(v.picklist(verdictChanges)),
  onlyWhen: optional(short),
  what: optional(short),
  toItemId: optional(v.nullable(id)),
  /** A thing to be wished for, made in the same step; it becomes `toItemId`. */
  wish: optional(v.strictObject({ name, kitArea: area })),
  amountMilli: optional(whole(milliLimit)),
  note: optional(long),
}
const logFields = { leftOut: optional(v.boolean()), note: optional(long) }

export const contract = {
  'program.state': program<a.ProgramState>()(nothing),
  'step.list': ask<readonly a.StepName[]>()(v.strictObject({ limit: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(500)) })),
  'step.undo': program<a.StepName>()(nothing),
  'step.redo': program<a.StepName>()(nothing),

  'closet.all': ask<a.ClosetColumns>()(nothing),
  'closet.rows': ask<a.ClosetColumns>()(v.strictObject({ ids })),
  'closet.traits': ask<a.TraitColumns>()(nothing),
  'item.open': ask<a.ItemDetail>()(v.strictObject({ id })),
  'item.add': change<{ readonly id: number }>()(newItem),
  'item.edit': change<null>()(v.strictObject({ id, name: optional(name), kitArea: optional(area), ...itemFields })),
  'item.duplicate': change<{ readonly id: number }>()(v.strictObject({ id })),
  'item.duties': change<null>()(v.strictObject({ id, duties: v.pipe(v.array(dutyInput), v.maxLength(60)) })),
  'item.needs': change<null>()(v.strictObject({ id, needs: v.pipe(v.array(needInput), v.maxLength(60)) })),
  'item.labels': change<null>()(v.strictObject({ id, kind: v.picklist(['tag', 'material', 'season']), texts })),
  'item.links': change<null>()(
    v.strictObject({
      id,
      links: v.pipe(v.array(linkInput), v.maxLength(100)),
    }),
  ),
  'item.trait': change<null>()(v.strictObject({ id, trait: traitInput })),
  'item.untrait': change<null>()(v.strictObject({ id, code })),
  'item.counter': change<null>()(
    v.strictObject({
      id,
      code,
      amount: v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(1e9))),
      note: short,
      notedOn: v.nullable(day),
    }),
  ),
  'item.weigh': change<{ readonly weighingId: number; readonly massMg: number }>()(weighing),
  'items.weigh': change<{ readonly count: number }>()(
    v.strictObject({ weighings: v.pipe(v.array(weighing), v.minLength(1), v.maxLength(5000)) }),
  ),
  'items.edit': change<null>()(
    v.strictObject({
      ids,
      kitArea: optional(area),
      status: optional(v.picklist(statuses)),
      statusSince: optional(v.nullable(day)),
      lentTo: optional(short),
      usualLane: optional(lane),
      came: optional(v.picklist(ways)),
      archived: optional(v.boolean()),
      addTags: optional(texts),
      removeTags: optional(texts),
      addDuties: optional(v.pipe(v.array(code), v.maxLength(60))),
      removeDuties: optional(v.pipe(v.array(code), v.maxLength(60))),
    }),
  ),
  /** Deletes what nothing refers to and archives the rest. */
  'items.remove': change<{ readonly deleted: number; readonly archived: number }>()(v.strictObject({ ids })),
  'photo.add': change<{ readonly id: number }>()(v.strictObject({ itemId: id, sha256, thumbSha256: sha256, mime: short, name: short })),
  'photo.remove': change<null>()(v.strictObject({ id })),
  'photo.order': change<null>()(v.strictObject({ itemId: id, ids })),
  'weighing.day': ask<readonly a.WeighingRow[]>()(v.strictObject({ day })),
  'weighing.remove': change<null>()(v.strictObject({ id })),
  'weighing.mark': change<null>()(v.strictObject({ id, damp: v.boolean(), dirty: v.boolean(), incomplete: v.boolean(), note: long })),

  'set.all': ask<readonly a.KitSet[]>()(nothing),
  'set.add': change<{ readonly id: number }>()(v.strictObject({ name, itemIds: ids })),
  'set.edit': change<null>()(v.strictObject({ id, name })),
  'set.members': change<null>()(v.strictObject({ id: v.nullable(id), itemIds: ids })),
  'set.dissolve': change<null>()(v.strictObject({ id })),

  'scale.all': ask<readonly a.ScaleRow[]>()(nothing),
  'scale.add': change<{ readonly id: number }>()(
    v.strictObject({
      name,
      stepMg: v.pipe(mg, v.minValue(1)),
      capacityMg: v.pipe(mg, v.minValue(1)),
      kind: v.picklist(['typed', 'usb']),
      device: optional(short),
      note: optional(long),
    }),
  ),
  'scale.edit': change<null>()(
    v.strictObject({
      id,
      name: optional(name),
      stepMg: optional(v.pipe(mg, v.minValue(1))),
      capacityMg: optional(v.pipe(mg, v.minValue(1))),
      device: optional(short),
      note: optional(long),
      archived: optional(v.boolean()),
    }),
  ),
  'scale.check': change<{ readonly id: number }>()(
    v.strictObject({
      scaleId: id,
      readOn: day,
      nominalMg: v.pipe(mg, v.minValue(1)),
      mpeMg: mg,
      massClass: short,
      readingsMg: v.pipe(v.array(mg), v.minLength(1), v.maxLength(100)),
    }),
  ),
  'scale.uncheck': change<null>()(v.strictObject({ id })),

  'supply.all': ask<readonly a.SupplyRow[]>()(nothing),
  'supply.add': change<{ readonly id: number }>()(
    v.strictObject({ name, kitArea: area, unit: v.picklist(['g', 'ml', 'piece']), ...supplyFields }),
  ),
  'supply.edit': change<null>()(v.strictObject({ id, name: optional(name), kitArea: optional(area), ...supplyFields })),
  'supply.trait': change<null>()(v.strictObject({ id, trait: traitInput })),
  'supply.needs': change<null>()(v.strictObject({ id, needs: v.pipe(v.array(needInput), v.maxLength(60)) })),

  'word.all': ask<readonly a.WordRow[]>()(nothing),
  'word.set': change<null>()(
    v.strictObject({
      kind: v.picklist(['area', 'duty', 'trait']),
      code: v.pipe(v.string(), v.maxLength(60)),
      label: name,
      hidden: v.boolean(),
    }),
  ),
  'word.add': change<{ readonly code: string }>()(
    v.strictObject({ kind: v.picklist(['duty', 'trait']), label: name, area, unit: optional(short) }),
  ),

  'season.all': ask<readonly a.SeasonRow[]>()(nothing),
  'season.add': change<{ readonly id: number }>()(v.strictObject({ name, kind: seasonKind, brief: optional(v.nullable(json)) })),
  'season.edit': change<null>()(
    v.strictObject({ id, name: optional(name), kind: optional(seasonKind), brief: optional(v.nullable(json)) }),
  ),
  'season.remove': change<null>()(v.strictObject({ id })),
  'walker.all': ask<readonly a.WalkerRow[]>()(nothing),
  /** The profile as JSON: `Walker` of src-domain/trips/walker.ts. */
  'walker.add': change<{ readonly id: number }>()(v.strictObject({ name, profile: json })),
  'walker.edit': change<null>()(v.strictObject({ id, name: optional(name), profile: optional(json) })),
  'walker.remove': change<null>()(v.strictObject({ id })),
  'trip.all': ask<readonly a.TripRow[]>()(nothing),
  'trip.add': change<{ readonly id: number }>()(v.strictObject({ name, ...tripFields })),
  'trip.edit': change<null>()(v.strictObject({ id, name: optional(name), ...tripFields })),
  'trip.remove': change<null>()(v.strictObject({ id })),

  /** Freezes the trip: writes the packed lines of the loadout, the brief and the walker as they are, and sets it out. */
  'trip.close': change<{ readonly packed: number; readonly leftOut: number }>()(v.strictObject({ id, loadoutId: id })),

  'door.open': ask<a.DoorList>()(v.strictObject({ loadoutId: id })),
  /** Ticks lines, or says that they are open or missing. */
  'door.tick': change<null>()(v.strictObject({ loadoutId: id, lineIds: ids, state: v.picklist(doorStates) })),
  /** Where a line stands on the list, and a word to it. */
  'door.place': change<null>()(v.strictObject({ lineId: id, last: optional(v.nullable(v.boolean())), note: optional(short) })),
  /** A last thing of the person's own words. */
  'door.add': change<{ readonly id: number }>()(v.strictObject({ loadoutId: id, name })),
  'door.own': change<null>()(v.strictObject({ id, name: optional(name), state: optional(v.picklist(doorStates)) })),
  'door.remove': change<null>()(v.strictObject({ id })),
  'door.weigh': change<null>()(
    v.strictObject({ loadoutId: id, readingMg: v.nullable(mg), scaleId: v.nullable(id), withLast: v.boolean() }),
  ),

  'record.open': ask<a.TripRecord>()(v.strictObject({ tripId: id })),
  /** Everything that learning, wear and letting go read, of all trips that are out or back. */
  'record.all': ask<a.RecordColumns>()(nothing),
  /** What each trip says of its walker beside the laws, one log for each leg, night, burn and weighed food. */
  'learning.logs': ask<readonly a.LearningLog[]>()(nothing),
  /** Of every item what wear, care and letting go read besides closet and record. */
  'care.all': ask<a.CareColumns>()(nothing),
  /** Corrects the record: a packed line is changed and marked. */
  'packed.correct': change<null>()(v.strictObject({ id, ...packedFields })),
  /** It did go along after all: an item of the closet, or a thing by its name. */
  'packed.add': change<{ readonly id: number }>()(v.strictObject({ tripId: id, itemId: optional(id), ...packedFields, lane })),
  'packed.remove': change<null>()(v.strictObject({ id })),

  'debrief.trip': change<null>()(
    v.strictObject({
      tripId: id,
      lowC: optional(celsius),
      highC: optional(celsius),
      windKmh: optional(amount(kmhLimit)),
      rain: optional(v.picklist(['', 'none', 'showers', 'wet'])),
      rainHours: optional(amount(10_000)),
      nights: optional(whole(1000)),
      lengthM: optional(amount(metreLimit)),
      foodBeforeMg: optional(v.nullable(mg)),
      foodAfterMg: optional(v.nullable(mg)),
      foodLeftOut: optional(v.boolean()),
      note: optional(long),
    }),
  ),
  /** The person is done with it, or not after all. */
  'debrief.keep': change<null>()(v.strictObject({ tripId: id, kept: v.boolean() })),
  /** Of one packed line. */
  'debrief.line': change<{ readonly toItemId: number | null }>()(v.strictObject({ packedId: id, ...debriefLineFields })),
  /** The same of all packed lines of which nothing was said yet. */
  'debrief.rest': change<{ readonly count: number }>()(
    v.strictObject({ tripId: id, use: v.picklist(uses), verdict: v.picklist(verdicts) }),
  ),
  /** A thing that was missed and had not been packed: of the closet, or by its name. */
  'debrief.missed': change<{ readonly id: number }>()(
    v.strictObject({ tripId: id, itemId: optional(v.nullable(id)), name: optional(name) }),
  ),
  /** Of a thing that was missed and not packed. */
  'debrief.missing': change<{ readonly toItemId: number | null }>()(v.strictObject({ id, ...debriefLineFields })),
  /** Takes back what was said of a line. */
  'debrief.unsay': change<null>()(v.strictObject({ id })),
  'debrief.leg': change<{ readonly id: number }>()(
    v.strictObject({
      tripId: id,
      leg: v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1000)),
      day: dayNumber,
      name: optional(short),
      startedMinute: optional(whole(1439)),
      movingMin: optional(amount(minuteLimit)),
      breakMin: optional(amount(minuteLimit)),
      lengthM: optional(amount(metreLimit)),
      climbM: optional(amount(metreLimit)),
      descentM: optional(amount(metreLimit)),
      drunkMl: optional(whole(milliLimit)),
      leftMl: optional(whole(milliLimit)),
      origin: optional(v.picklist(['typed', 'track'])),
      ...logFields,
    }),
  ),
  'debrief.night': change<{ readonly id: number }>()(
    v.strictObject({
      tripId: id,
      night: dayNumber,
      lowC: optional(celsius),
      slept: optional(v.picklist(sleeps)),
      wokeMinute: optional(whole(1439)),
      ...logFields,
    }),
  ),
  'debrief.day': change<{ readonly id: number }>()(
    v.strictObject({
      tripId: id,
      day: dayNumber,
      shoulders: optional(v.picklist(comforts)),
      feet: optional(v.picklist(comforts)),
      hungry: optional(v.picklist(['', 'no', 'yes'])),
      ...logFields,
    }),
  ),
  /** Without an id a new one. */
  'debrief.burn': change<{ readonly id: number }>()(
    v.strictObject({
      tripId: id,
      id: optional(id),
      packedId: optional(v.nullable(id)),
      name: optional(short),
      beforeMg: optional(v.nullable(mg)),
      afterMg: optional(v.nullable(mg)),
      heatedMl: optional(whole(milliLimit)),
      boils: optional(amount(100_000)),
      fromC: optional(celsius),
      ...logFields,
    }),
  ),
  'debrief.unlog': change<null>()(v.strictObject({ kind: v.picklist(['leg', 'night', 'day', 'burn']), id })),
  /** Learning passes a log over, or counts it again. */
  'debrief.leaveOut': change<null>()(v.strictObject({ kind: v.picklist(['leg', 'night', 'day', 'burn']), id, leftOut: v.boolean() })),
  'debrief.photo': change<{ readonly id: number }>()(
    v.strictObject({ tripId: id, packedId: optional(v.nullable(id)), sha256, thumbSha256: sha256, mime: short, name: short }),
  ),
  'debrief.unphoto': change<null>()(v.strictObject({ id })),
  'trial.ask': change<{ readonly id: number }>()(v.strictObject({ itemId: id, text: name })),
  'trial.edit': change<null>()(v.strictObject({ id, text: optional(name), settled: optional(v.boolean()) })),
  'trial.remove': change<null>()(v.strictObject({ id })),
  /** An empty answer takes it back. */
  'trial.answer': change<null>()(v.strictObject({ id, tripId: id, text: long })),
  'trial.of': ask<readonly a.TrialQuestion[]>()(v.strictObject({ itemId: id })),
  /** Trips of before this program: what went, and what is known of them. They count as taken, never as used. */
  'past.add': change<{ readonly ids: readonly number[] }>()(
    v.strictObject({
      trips: v.pipe(
        v.array(
          v.strictObject({
            name,
            month,
            nights: optional(whole(1000)),
            lengthM: optional(amount(metreLimit)),
            lowC: optional(celsius),
            seasonId: optional(v.nullable(id)),
            walkerId: optional(v.nullable(id)),
            /** What went: the lines of a loadout less these items, and these items more. */
            loadoutId: optional(v.nullable(id)),
            stayedIds: optional(v.pipe(v.array(id), v.maxLength(5000))),
            itemIds: optional(v.pipe(v.array(id), v.maxLength(5000))),
            /** Things that are no longer in the closet, by name. */
            names: optional(v.pipe(v.array(name), v.maxLength(1000))),
          }),
        ),
        v.minLength(1),
        v.maxLength(200),
      ),
    }),
  ),

  'loadout.all': ask<readonly a.LoadoutHead[]>()(nothing),
  'loadout.open': ask<readonly a.LoadoutOpen[]>()(v.strictObject({ ids })),
  /** Lines of loadouts of planned trips and of those that are out, for the queue at the bench and for overlaps. */
  'loadout.planned': ask<readonly a.PlannedLine[]>()(nothing),
  'loadout.add': change<{ readonly id: number }>()(
    v.strictObject({
      name,
      seasonId: optional(v.nullable(id)),
      tripId: optional(v.nullable(id)),
      /** Start from a copy of this one. */
      fromId: optional(id),
      /** Keep the link to it and its lines as they were. */
      descend: optional(v.boolean()),
    }),
  ),
  'loadout.edit': change<null>()(
    v.strictObject({
      id,
      name: optional(name),
      seasonId: optional(v.nullable(id)),
      tripId: optional(v.nullable(id)),
      parentId: optional(v.nullable(id)),
      chosen: optional(v.boolean()),
      note: optional(long),
    }),
  ),
  'loadout.remove': change<null>()(v.strictObject({ id })),
  'lines.put': change<{ readonly ids: readonly number[] }>()(
    v.strictObject({ loadoutId: id, lines: v.pipe(v.array(newLine), v.minLength(1), v.maxLength(2000)) }),
  ),
  'lines.move': change<null>()(v.strictObject({ ids, lane })),
  'lines.remove': change<null>()(v.strictObject({ ids })),
  'lines.copy': change<{ readonly count: number }>()(v.strictObject({ ids, toLoadoutId: id })),
  'line.edit': change<null>()(v.strictObject({ id, ...lineFields, lane: optional(lane) })),
  /** Applies the parent's lines named by key to the child and renews its base for them. */
  'loadout.take': change<{ readonly count: number }>()(
    v.strictObject({ id, keys: v.pipe(v.array(short), v.minLength(1), v.maxLength(2000)) }),
  ),

  /** Starts working out the lightest choice that is enough; one at a time, the newest replaces the one before. Items by their uid. */
  'choice.start': ask<{ readonly ticket: number }>()(
    v.strictObject({
      loadoutId: id,
      principles: v.pipe(v.array(v.picklist(principles)), v.maxLength(10)),
      pinIn: v.pipe(v.array(short), v.maxLength(2000)),
      pinOut: v.pipe(v.array(short), v.maxLength(2000)),
      wants: v.boolean(),
      notShort: v.boolean(),
      wornFactor: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
    }),
  ),
  /** What has been found so far; null: another request took its place. */
  'choice.state': ask<a.ChoiceState | null>()(v.strictObject({ ticket: v.pipe(v.number(), v.integer()) })),
  'choice.stop': ask<null>()(nothing),
  /** Takes a choice, or lines of it, as one step. */
  'choice.take': change<{ readonly count: number }>()(
    v.strictObject({
      loadoutId: id,
      put: v.pipe(v.array(v.strictObject({ itemId: id, lane, pieces })), v.maxLength(2000)),
      removeIds: v.pipe(v.array(id), v.maxLength(2000)),
    }),
  ),

  'bringIn.stage': note<{ readonly staged: number }>()(
    v.strictObject({
      batch: v.pipe(v.string(), v.uuid()),
      from: v.pipe(v.number(), v.integer(), v.minValue(0)),
      rows: v.pipe(v.array(brought), v.maxLength(500)),
    }),
  ),
  'bringIn.drop': note<null>()(v.strictObject({ batch: v.pipe(v.string(), v.uuid()) })),
  'bringIn.accept': change<{ readonly items: number; readonly lines: number; readonly loadoutId: number | null }>()(
    v.strictObject({
      batch: v.pipe(v.string(), v.uuid()),
      rows: v.pipe(v.number(), v.integer(), v.minValue(1)),
      /** The loadout to make of the rows with a line; null: closet only. */
      loadout: v.nullable(v.strictObject({ name, seasonId: v.nullable(id), tripId: v.nullable(id) })),
    }),
  ),

  'view.all': ask<readonly a.SavedView[]>()(nothing),
  'view.save': change<{ readonly id: number }>()(v.strictObject({ room: short, name, state: json })),
  'view.remove': change<null>()(v.strictObject({ id })),
  'setting.all': ask<Readonly<Record<string, string>>>()(nothing),
  'setting.set': note<null>()(v.strictObject({ key: v.pipe(v.string(), v.regex(/^[a-z][a-zA-Z0-9.-]{0,80}$/)), value: json })),

  'backup.list': program<readonly a.BackupRow[]>()(nothing),
  'backup.now': program<a.BackupRow>()(nothing),
  'backup.restore': program<null>()(v.strictObject({ name: v.pipe(v.string(), v.regex(/^[A-Za-z0-9._-]{1,120}$/)) })),
  /** Writes the archive into the data folder's outbox; the window fetches it as /out/<name>. */
  'archive.write': program<a.ArchiveMade>()(nothing),
  /** Reads an archive that was put into the inbox (POST /in) and tells what it holds; nothing is changed. */
  'archive.look': program<a.ArchiveLook>()(v.strictObject({ token: v.pipe(v.string(), v.uuid()) })),
  /** Replaces everything by the archive that was looked at; a backup is kept first. */
  'archive.take': program<a.ArchiveLook>()(v.strictObject({ token: v.pipe(v.string(), v.uuid()) })),
  /** Makes a PDF of a page of its own into the data folder's outbox; the window fetches it as /out/<name>. */
  'print.pdf': program<a.ArchiveMade>()(v.strictObject({ page: v.picklist(['door']), id, name })),
  /** Copies the invented demo data into its own folder and tells the window where to go. */
  'demo.open': program<{ readonly url: string | null }>()(nothing),
} as const

export type Contract = typeof contract
export type Call = keyof Contract
export type InputOf<K extends Call> = v.InferInput<Contract[K]['input']>
export type CheckedOf<K extends Call> = v.InferOutput<Contract[K]['input']>
export type OutputOf<K extends Call> = Contract[K] extends { readonly output?: infer O } ? Exclude<O, undefined> : never

/** Rows that changed, by table; `rev` counts acknowledged changes so that a window can see a gap. */
export interface Touched {
  readonly rev: number
  readonly touched: readonly { readonly table: string; readonly ids: readonly number[] }[]
}

/** What every call answers. A change also tells what it touched, with the closet's changed rows ready to be patched in. */
export type Reply<T> =
  | ({ readonly ok: true; readonly value: T } & Partial<Touched> & {
        readonly closet?: a.ClosetColumns
        readonly undo?: a.StepName | null
        readonly redo?: a.StepName | null
      })
  | { readonly ok: false; readonly fault: Fault }

/** What other windows hear. `table` '*': everything may have changed, ask again. */
export type Heard = Touched & { readonly undo: a.StepName | null; readonly redo: a.StepName | null }

export type * from './answers.ts'
