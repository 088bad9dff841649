import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron'

// The whole of what a page may reach: two functions. Neither ipcRenderer nor its event objects pass to the page.
contextBridge.exposeInMainWorld('tarework', {
  call: (name: string, input: unknown): Promise<unknown> => ipcRenderer.invoke('tarework:call', name, input),
  onChange(listener: (heard: unknown) => void): () => void {
    const hear = (_event: IpcRendererEvent, heard: unknown): void => listener(heard)
    ipcRenderer.on('tarework:heard', hear)
    return () => void ipcRenderer.off('tarework:heard', hear)
  },
})
