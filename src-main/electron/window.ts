import { APP_ADDRESS, isOwnAddress } from './app-protocol.ts';
import type { AppWindow, ElectronParts, WindowSettings } from './electron-parts.ts';

/** Settings of every window: the page has no way to the computer but the bridge. */
export const windowSettings = (preload: string): WindowSettings => ({
  width: 1440,
  height: 900,
  minWidth: 960,
  minHeight: 600,
  show: false,
  title: 'Nozzlewright',
  webPreferences: {
    preload,
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webviewTag: false,
    webSecurity: true,
    spellcheck: false,
  },
});

/** Opens a window that shows the program and can go nowhere else. */
export function openAppWindow({ makeWindow, dialog }: Pick<ElectronParts, 'makeWindow' | 'dialog'>, preload: string): AppWindow {
  const window = makeWindow(windowSettings(preload));
  const contents = window.webContents;
  const stay = (event: { preventDefault(): void }, url: string): void => {
    if (!isOwnAddress(url)) event.preventDefault();
  };
  contents.on('will-navigate', stay);
  contents.on('will-redirect', stay);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.on('will-prevent-unload', (event) => {
    const answer = dialog.showMessageBoxSync({
      type: 'question',
      message: 'Close this window without saving?',
      detail: 'Your last changes were kept aside: they are offered to you when you start Nozzlewright again.',
      buttons: ['Close without saving', 'Stay'],
      defaultId: 1,
      cancelId: 1,
    });
    if (answer === 0) event.preventDefault();
  });
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  window.once('ready-to-show', () => window.show());
  void window.loadURL(APP_ADDRESS);
  return window;
}
