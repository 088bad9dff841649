import type { Fault, FaultCode } from '../../src-domain/figures/fault.ts'

type Facts = Fault['facts']
const text = (facts: Facts, name: string, otherwise = ''): string => String(facts[name] ?? otherwise)
/** “…” around what was typed, or nothing where the fault does not carry it. */
const typed = (facts: Facts): string => (facts['text'] === undefined ? 'This' : `“${facts['text']}”`)

/** Why a track file was refused (the GPX reader's codes), and the way out. */
const trackWords: Readonly<Record<string, string>> = {
  doctype: 'it declares a document type, which no track needs. Export it again from the program or device it comes from',
  'not-xml': 'it stops being XML there. It may have been cut off: export or download it again',
  'not-gpx': 'it is XML, but no GPX. Export the track as GPX',
  encoding: 'its letters are not in the encoding it names. Save it as UTF-8',
  coordinate: 'a point there has no latitude and longitude on earth. Correct or remove that point',
  'decimal-comma': 'a number there has a decimal comma. Write it with a point',
  'too-deep': 'its elements lie inside one another too deep. Export it again',
  'text-too-long': 'a text in it is longer than any name or height. Export it again',
  'no-points': 'it holds no track and no route of at least two points. Take the file with the way in it',
}

function unreadableTrack(facts: Facts): string {
  const line = facts['line'] === undefined ? '' : ` (line ${text(facts, 'line')})`
  return `The track cannot be read${line}: ${trackWords[text(facts, 'why')] ?? 'it must be GPX 1.1'}.`
}

/** One sentence a fault: what is wrong, and the way out. A code without a sentence does not compile. */
const sentences: Readonly<Record<FaultCode, (facts: Facts) => string>> = {
  'program.bug': () => 'Something in the program broke. Nothing was changed; the log in the data folder says what.',
  'program.unknown-call': (f) => `The program does not know the call ${text(f, 'call')}. Reload the window.`,
  'program.busy': () => 'The program is busy with a long task. Try again in a moment.',
  'program.shut': () => 'The program was started anew and does not know this window. What was acknowledged is kept.',
  'program.gone': () => 'The program stopped answering. Start Tarework again; what was acknowledged is kept.',
  'input.invalid': (f) => `${text(f, 'field', 'An entry')} does not fit: ${text(f, 'message', 'check it')}. Nothing was changed.`,
  'input.missing': (f) => `${text(f, 'field', 'An entry')} is missing. Fill it in.`,
  'quantity.unreadable': (f) => `${typed(f)} cannot be read as a quantity. Write a number and a unit, such as 412 g or 14.5 oz.`,
  'quantity.ambiguous': (f) =>
    `${typed(f)} can be read two ways${f['first'] === undefined ? '' : `: ${text(f, 'first')} or ${text(f, 'second')}`}. Write it without the comma.`,
  'quantity.negative': (f) => `${typed(f)} is below zero. A mass cannot be.`,
  'quantity.unit-missing': (f) => `${typed(f)} needs a unit.`,
  'quantity.unit-unknown': (f) => `${typed(f)} has a unit that is not known here.`,
  'quantity.too-large': (f) => `${typed(f)} is more than this field holds.`,
  'weighing.over-capacity': () => 'That is more than this scale carries. Check the reading, or choose another scale.',
  'weighing.negative': () => 'The net mass is below zero: the tare is heavier than the reading.',
  'weighing.no-reading': () => 'No reading yet. Put it on the plate or type what the scale shows.',
  'weighing.count-unsure': () => 'The pieces cannot be counted safely by weight. Count them by hand.',
  'scale.unreadable': () => 'The scale sent something that cannot be read. Type the reading.',
  'scale.unit-refused': () => 'The scale sends a unit that has no single value in grams. Switch it to grams or ounces.',
  'scale.fault': () => 'The scale reports a fault. Switch it off and on.',
  'scale.moving': () => 'The reading still moves. Wait until it is steady.',
  'scale.under-zero': () => 'The scale reads under zero. Take everything off and tare it.',
  'scale.over-limit': () => 'The scale is over its limit. Take it off.',
  'scale.needs-calibration': () => 'The scale asks for calibration. See its manual.',
  'scale.needs-zero': () => 'The scale asks to be zeroed. Take everything off and tare it.',
  'scale.unsuccessful': () => 'The scale could not weigh. Try again.',
  'scale.too-coarse': () => 'This scale is too coarse for single items.',
  'row.gone': () => 'It is not there any more. The list was brought up to date.',
  'row.in-use': (f) => `It is still in use${f['where'] === undefined ? '' : ` by ${text(f, 'where')}`}. Nothing was changed.`,
  'row.taken': (f) => `${f['name'] === undefined ? 'That name' : `“${text(f, 'name')}”`} is taken already. Choose another.`,
  'undo.nothing': () => 'There is nothing to undo.',
  'undo.changed-since': (f) =>
    `This cannot be undone: ${text(f, 'table', 'a row')}${f['field'] === undefined ? '' : `, ${text(f, 'field')},`} was changed since.`,
  'loadout.cycle': () => 'A loadout cannot descend from itself or from one of its own children.',
  'trip.frozen': () => 'The trip is out or back: what was packed stands. Use Correct the record.',
  'trip.planned': () => 'The trip has not left yet. Close its door list first.',
  'store.full': () => 'The disk is full. Nothing was changed. Free some space and try again.',
  'store.read-only': () => 'The data folder cannot be written. Nothing was changed. Check its permissions.',
  'store.damaged': () => 'The database is damaged. It was left as it is; restore a backup in Settings.',
  'store.newer': () => 'The data were written by a newer version of the program. Update it to open them.',
  'store.in-use': () => 'Another program holds the data. Close it and try again.',
  'file.unreadable': () => 'The file cannot be read.',
  'file.too-large': (f) => `The file is larger than the ${text(f, 'limit', 'limit')} allowed.`,
  'file.not-image': () => 'That is no picture this program shows. Take a PNG, JPEG or WebP.',
  'archive.unreadable': () => 'That is no archive of Tarework, or it is broken. Nothing was changed.',
  'archive.newer': () => 'The archive was made by a newer version of the program. Nothing was changed.',
  'archive.truncated': () => 'The archive ends too early: part of it is missing. Nothing was changed.',
  'archive.foreign-entry': (f) => `The archive holds a file it does not list (${text(f, 'entry')}). Nothing was changed.`,
  'archive.mismatch': (f) => `A file in the archive is not what it says (${text(f, 'entry')}). Nothing was changed.`,
  'sheet.unreadable': (f) =>
    `The sheet cannot be read${f['line'] === undefined ? '' : ` (line ${text(f, 'line')})`}. Save it as CSV, or paste its cells.`,
  'sheet.empty': () => 'There is nothing in that sheet.',
  'track.unreadable': unreadableTrack,
  'track.too-large': (f) =>
    `The track file is larger than ${Math.round(Number(f['limit'] ?? 0) / 1024 ** 2)} MB. Thin it, or take one day of it at a time.`,
  'print.no-browser': () => 'No browser was found that could make the PDF. Print instead, and choose “save as PDF” there.',
  'print.failed': () => 'The PDF could not be made. Print instead, and choose “save as PDF” there.',
  'backup.none': () => 'There is no sound backup.',
}

export const faultWords = (fault: Fault): string => sentences[fault.code](fault.facts)
