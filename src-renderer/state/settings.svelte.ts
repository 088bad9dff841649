import { program } from './program.svelte.ts'

export type Theme = 'system' | 'light' | 'dark'
export type System = 'metric' | 'us'
export const unitKinds = ['mass', 'length', 'temp', 'volume'] as const
export type UnitKind = (typeof unitKinds)[number]

/** US customary units where the system's region uses them; metric everywhere else. */
export function regionSystem(language: string): System {
  const region = new Intl.Locale(language).maximize().region
  return region === 'US' || region === 'LR' || region === 'MM' ? 'us' : 'metric'
}

/** What the person set for this program: kept in the store, not undone. */
class Settings {
  theme = $state<Theme>('system')
  units = $state.raw<Readonly<Record<UnitKind, System>>>({ mass: 'metric', length: 'metric', temp: 'metric', volume: 'metric' })
  unitsFromRegion = $state(false)
  letterKeys = $state(true)
  #all = $state.raw<Readonly<Record<string, string>>>({})

  async load(): Promise<void> {
    const answer = await program.ask('setting.all', {})
    if (answer.ok) this.#all = answer.value
    this.theme = this.get('theme', 'system')
    this.letterKeys = this.get('letterKeys', true)
    const system = regionSystem(navigator.language)
    this.unitsFromRegion = this.#all['units'] === undefined
    this.units = this.get('units', { mass: system, length: system, temp: system, volume: system })
    this.#paint()
  }

  get<T>(key: string, otherwise: T): T {
    const json = this.#all[key]
    return json === undefined ? otherwise : (JSON.parse(json) as T)
  }

  async set(key: string, value: unknown): Promise<void> {
    const json = JSON.stringify(value)
    this.#all = { ...this.#all, [key]: json }
    await program.change('setting.set', { key, value: json })
  }

  setTheme(theme: Theme): void {
    this.theme = theme
    this.#paint()
    void this.set('theme', theme)
  }

  setUnits(units: Readonly<Record<UnitKind, System>>): void {
    this.units = units
    this.unitsFromRegion = false
    void this.set('units', units)
  }

  setLetterKeys(on: boolean): void {
    this.letterKeys = on
    void this.set('letterKeys', on)
  }

  #paint(): void {
    if (this.theme === 'system') delete document.documentElement.dataset['theme']
    else document.documentElement.dataset['theme'] = this.theme
  }
}

export const settings = new Settings()
