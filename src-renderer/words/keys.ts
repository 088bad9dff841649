/** Every key and its meaning, as the sheet at `?` shows them. No letter has two meanings. */
export interface KeyWord {
  readonly keys: readonly string[]
  readonly means: string
}
export interface KeyGroup {
  readonly room: string
  readonly keys: readonly KeyWord[]
}

export const keyGroups: readonly KeyGroup[] = [
  {
    room: 'Everywhere',
    keys: [
      { keys: ['Alt', '1…6'], means: 'rooms' },
      { keys: ['/'], means: 'search' },
      { keys: ['W'], means: 'working of a number' },
      { keys: ['N'], means: 'new: item, line, loadout' },
      { keys: ['I'], means: 'bring in a sheet' },
      { keys: ['Ctrl', 'Z'], means: 'undo' },
      { keys: ['Shift', 'Ctrl', 'Z'], means: 'redo' },
      { keys: ['?'], means: 'all keys' },
      { keys: ['Esc'], means: 'close; put back' },
    ],
  },
  {
    room: 'Closet',
    keys: [
      { keys: ['↑', '↓'], means: 'row' },
      { keys: ['Shift', '↓'], means: 'select more' },
      { keys: ['Space'], means: 'select' },
      { keys: ['Enter'], means: 'open' },
      { keys: ['F2'], means: 'edit in place' },
      { keys: ['Ctrl', 'D'], means: 'duplicate' },
      { keys: ['S'], means: 'make a set' },
      { keys: ['G'], means: 'give: lend, sell, retire' },
      { keys: ['Shift', 'W'], means: 'weigh' },
    ],
  },
  {
    room: 'Bring in',
    keys: [
      { keys: ['Ctrl', 'V'], means: 'paste cells' },
      { keys: ['Tab'], means: 'next problem' },
      { keys: ['Space'], means: 'leave out, put back' },
      { keys: ['Enter'], means: 'to the answers' },
      { keys: ['F2'], means: 'edit in place' },
      { keys: ['Ctrl', 'Enter'], means: 'accept' },
    ],
  },
  {
    room: 'Scale',
    keys: [
      { keys: ['0–9'], means: 'start a reading' },
      { keys: ['Enter'], means: 'keep, next' },
      { keys: ['T'], means: 'tare' },
      { keys: ['Q'], means: 'pieces' },
      { keys: ['↓'], means: 'skip' },
      { keys: ['Ctrl', 'P'], means: 'print the queue' },
    ],
  },
  {
    room: 'Loadout',
    keys: [
      { keys: ['M'], means: 'move: lift' },
      { keys: ['←', '→'], means: 'lane, while lifted' },
      { keys: ['Enter'], means: 'drop' },
      { keys: ['Q'], means: 'pieces or amount' },
      { keys: ['C'], means: 'to the checks' },
      { keys: ['L'], means: 'other loadout' },
      { keys: ['E'], means: 'lightest enough' },
      { keys: ['Del'], means: 'take out' },
    ],
  },
  {
    room: 'Let go',
    keys: [
      { keys: ['↑', '↓'], means: 'item' },
      { keys: ['Enter'], means: 'do what is offered' },
      { keys: ['K'], means: 'keep' },
    ],
  },
  {
    room: 'Door',
    keys: [
      { keys: ['Space'], means: 'tick, next' },
      { keys: ['O'], means: 'leave open' },
      { keys: ['Del'], means: 'missing' },
      { keys: ['H'], means: 'hang the pack' },
      { keys: ['Enter'], means: 'close the list' },
      { keys: ['Ctrl', 'P'], means: 'print' },
    ],
  },
  {
    room: 'Profile',
    keys: [
      { keys: ['←', '→'], means: 'along the way' },
      { keys: ['W'], means: 'working of the load there' },
      { keys: ['T'], means: 'as a table' },
    ],
  },
  {
    room: 'Lightest enough',
    keys: [
      { keys: ['Enter'], means: 'take it' },
      { keys: ['←', '→'], means: 'next best' },
      { keys: ['Y'], means: 'with or without wants' },
      { keys: ['J'], means: 'tight is allowed, or not' },
      { keys: ['Esc'], means: 'keep mine' },
    ],
  },
  {
    room: 'Debrief',
    keys: [
      { keys: ['↑', '↓'], means: 'line' },
      { keys: ['U'], means: 'next of used, unused, missed, failed' },
      { keys: ['K'], means: 'keep' },
      { keys: ['A'], means: 'adjust' },
      { keys: ['D'], means: 'drop' },
      { keys: ['Enter'], means: 'open' },
      { keys: ['Ctrl', 'Enter'], means: 'keep the debrief' },
    ],
  },
  {
    room: 'Brief',
    keys: [
      { keys: ['I'], means: 'bring in a track' },
      { keys: ['R'], means: 'to the forecast' },
      { keys: ['N'], means: 'a day more' },
      { keys: ['Alt', '↑', '↓'], means: 'move the leg' },
      { keys: ['Alt', 'Del'], means: 'remove the leg' },
    ],
  },
  {
    room: 'Compare',
    keys: [
      { keys: ['F'], means: 'measure from the next' },
      { keys: ['X'], means: 'only what differs' },
      { keys: ['N'], means: 'add a loadout' },
      { keys: ['Ctrl', 'P'], means: 'print' },
    ],
  },
]
