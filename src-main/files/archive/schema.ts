import type { Raw } from '../../store/handles.ts'
import { archivedColumns, archivedTables, archiveFormat, archiveSchemaNumber, documentColumns, type Column } from './shape.ts'

/**
 * The JSON Schema (draft 2020-12) of `tarework.json`, made from the store itself. src-main/files/archive-schema.json is this, kept in the
 * repository for whoever reads an archive without the program; a test says when they differ and how to write it anew.
 */
export function archiveSchema(raw: Raw): object {
  const tables = archivedTables(raw)
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: `tarework.json of a Tarework archive, schema ${archiveSchemaNumber}`,
    description: [
      'A .tarework file is a ZIP with this document as tarework.json and each photograph as files/<sha256>, and no other entry.',
      'Rows know each other by uid. Rows stand in the order in which they came to be.',
      'Units stand at the end of names: _mg milligrams of one piece, _milli thousandths of a unit, _minor minor units of a currency; days are local, YYYY-MM-DD.',
      'Columns that hold a document hold it as JSON text.',
    ].join(' '),
    type: 'object',
    required: ['format', 'schema', 'madeAt', 'program', 'migrations', 'files', 'tables'],
    additionalProperties: false,
    properties: {
      format: { const: archiveFormat },
      schema: { const: archiveSchemaNumber, description: 'The form of this document. A reader refuses a higher one.' },
      madeAt: { type: 'string', format: 'date-time' },
      program: { type: 'string', description: 'Version of the program that wrote it.' },
      migrations: {
        type: 'array',
        items: { type: 'string' },
        description: 'Which columns the tables have: the migrations of its store, in order.',
      },
      files: { type: 'array', items: fileSchema },
      tables: {
        type: 'object',
        required: tables,
        additionalProperties: false,
        properties: Object.fromEntries(tables.map((table) => [table, tableSchema(raw, table)])),
      },
    },
    $defs: { uid: { type: 'string', pattern: '^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$' } },
  }
}

const fileSchema = {
  type: 'object',
  required: ['sha256', 'mime', 'bytes'],
  additionalProperties: false,
  properties: {
    sha256: { type: 'string', pattern: '^[0-9a-f]{64}$', description: 'Of its bytes, and its name: files/<sha256>.' },
    mime: { enum: ['image/png', 'image/jpeg', 'image/webp'] },
    bytes: { type: 'integer', minimum: 1 },
  },
}

function tableSchema(raw: Raw, table: string): object {
  const columns = archivedColumns(raw, table)
  return {
    type: 'array',
    ...(aboutTable[table] === undefined ? {} : { description: aboutTable[table] }),
    items: {
      type: 'object',
      required: columns.map(({ as }) => as),
      additionalProperties: false,
      properties: Object.fromEntries(columns.map((column) => [column.as, columnSchema(table, column)])),
    },
  }
}

const jsonTypes: Readonly<Record<string, string>> = { TEXT: 'string', INTEGER: 'integer', REAL: 'number' }

function columnSchema(table: string, { name, type, notNull, refers }: Column): object {
  const plain = refers !== null || name === 'uid' ? { $ref: '#/$defs/uid' } : { type: jsonTypes[type] ?? 'string' }
  const value = notNull ? plain : { anyOf: [plain, { type: 'null' }] }
  const about =
    refers !== null ? `The uid of a row of ${refers}.` : documentColumns.has(`${table}.${name}`) ? 'A document as JSON text.' : undefined
  return about === undefined ? value : { ...value, description: about }
}

/** What a row of each table is. */
const aboutTable: Readonly<Record<string, string>> = {
  away: 'An item that was not simply owned when a trip froze.',
  burn_log: 'Fuel weighed before and after, container and all.',
  check_reading: 'What a scale read of a check mass on a day.',
  day_log: 'How a day of a trip sat.',
  debrief: 'What a whole trip was like.',
  debrief_line: 'What was said of a packed line, or of a thing that was missed.',
  door: 'The door list of a loadout: the reading of the packed pack.',
  door_line: 'How a line stands at the door, or a last thing in words.',
  item: 'One owned thing, or several identical pieces. Masses are of one piece.',
  item_counter: 'Use before this program, or counted apart from trips.',
  item_duty: 'A need that an item covers.',
  item_label: 'A tag, a material, or a season of an item.',
  item_link: 'A link of an item.',
  kit_set: 'Items that move together.',
  leg_log: 'Times, breaks and water of a leg.',
  line: 'An item or a supply in a lane of a loadout.',
  loadout: 'A loadout; base holds the lines of its parent as they were.',
  need: 'What an item or a supply cannot do without.',
  night_log: 'A night: its low and how one slept.',
  packed: 'A line as it was packed; mass_mg is of one piece or one unit, shares in g.',
  photo: 'A photograph of an item and its thumbnail, by the hashes of their files.',
  record: 'A trip that is out or back: brief and walker as they were.',
  saved_view: 'A view of a room that was kept by name.',
  scale: 'A scale of the bench.',
  season: 'A season with its standing brief.',
  setting: 'A setting of the program.',
  supply: 'Something used up, known by amount.',
  trait_value: 'A property of an item or a supply, with the figure as it was typed.',
  trial_answer: 'What a trip said to a question.',
  trial_question: 'What is to be found out about an item on trial.',
  trip: 'A trip with its brief.',
  trip_photo: 'A photograph of a trip and its thumbnail, by the hashes of their files.',
  walker: 'Who carries it.',
  weighing: 'One weighing: readings as the scale showed them, and what they give for one piece.',
  word: 'A word shown for a code, or a code of the person’s own.',
}
