import about from '../../package.json' with { type: 'json' }

/** The program's version as package.json states it. */
export const version: string = about.version
