import type { MenuItemConstructorOptions } from 'electron'

export interface MenuDeeds {
  readonly print: () => void
  readonly showDataFolder: () => void
}

/** The window's menus in our words. Undo of the program belongs to the window's own keys; here stands only that of a text field. */
export function menuTemplate(platform: NodeJS.Platform, deeds: MenuDeeds): MenuItemConstructorOptions[] {
  const mac = platform === 'darwin'
  const line: MenuItemConstructorOptions = { type: 'separator' }
  const own: MenuItemConstructorOptions[] = mac
    ? [
        { role: 'about', label: 'About Tarework' },
        line,
        { role: 'hide', label: 'Hide Tarework' },
        { role: 'unhide' },
        line,
        { role: 'quit', label: 'Quit Tarework' },
      ]
    : []
  return [
    ...(mac ? [{ label: 'Tarework', submenu: own }] : []),
    {
      label: '&File',
      submenu: [
        { label: 'Print …', accelerator: 'CmdOrCtrl+P', click: deeds.print },
        { label: 'Show the data folder', click: deeds.showDataFolder },
        line,
        mac ? { role: 'close', label: 'Close window' } : { role: 'quit', label: 'Quit Tarework' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        { role: 'undo', label: 'Undo typing' },
        { role: 'redo', label: 'Redo typing' },
        line,
        { role: 'cut', label: 'Cut' },
        { role: 'copy', label: 'Copy' },
        { role: 'paste', label: 'Paste' },
        { role: 'selectAll', label: 'Select all' },
      ],
    },
    {
      label: '&View',
      submenu: [
        { role: 'zoomIn', label: 'Larger' },
        { role: 'zoomOut', label: 'Smaller' },
        { role: 'resetZoom', label: 'Actual size' },
        line,
        { role: 'togglefullscreen', label: 'Full screen' },
      ],
    },
    { label: '&Window', submenu: [{ role: 'minimize', label: 'Minimise' }] },
  ]
}
