import type { MenuItemConstructorOptions } from 'electron';

/**
 * The parts of the desktop runtime that this program uses, each no wider than needed. The runtime's own
 * objects fit them; so do the stand-ins of the tests, for only `main.ts` and `preload.ts` load the runtime.
 */

/** A frame of a page: only the window's own top frame may call the host. */
export interface Frame {
  readonly url: string;
  readonly parent: Frame | null;
}

export interface Prevented {
  preventDefault(): void;
}

export interface Contents {
  readonly id: number;
  send(channel: string, ...args: unknown[]): void;
  on(event: 'will-navigate' | 'will-redirect', listener: (event: Prevented, url: string) => void): unknown;
  on(event: 'will-attach-webview', listener: (event: Prevented) => void): unknown;
  on(event: 'will-prevent-unload', listener: (event: Prevented) => void): unknown;
  on(event: 'did-navigate', listener: () => void): unknown;
  setWindowOpenHandler(handler: () => { action: 'deny' }): void;
}

export interface AppWindow {
  readonly webContents: Contents;
  loadURL(address: string): Promise<void>;
  once(event: 'ready-to-show', listener: () => void): unknown;
  on(event: 'closed' | 'focus', listener: () => void): unknown;
  show(): void;
  focus(): void;
  isMinimized(): boolean;
  restore(): void;
}

/** How a window is made; the settings that keep the page away from the computer are not left to chance. */
export interface WindowSettings {
  readonly width: number;
  readonly height: number;
  readonly minWidth: number;
  readonly minHeight: number;
  readonly show: boolean;
  readonly title: string;
  readonly webPreferences: {
    readonly preload: string;
    readonly sandbox: true;
    readonly contextIsolation: true;
    readonly nodeIntegration: false;
    readonly nodeIntegrationInWorker: false;
    readonly nodeIntegrationInSubFrames: false;
    readonly webviewTag: false;
    readonly webSecurity: true;
    readonly spellcheck: false;
  };
}

export interface CallEvent {
  readonly sender: { readonly id: number };
  readonly senderFrame: Frame | null;
}

export interface ElectronParts {
  readonly app: {
    requestSingleInstanceLock(): boolean;
    quit(): void;
    whenReady(): Promise<unknown>;
    on(event: 'second-instance', listener: (event: unknown, argv: string[], workingFolder: string) => void): unknown;
    on(event: 'open-file', listener: (event: Prevented, path: string) => void): unknown;
    on(event: 'window-all-closed' | 'activate', listener: () => void): unknown;
  };
  readonly protocol: {
    registerSchemesAsPrivileged(schemes: { scheme: string; privileges: { standard: boolean; secure: boolean; supportFetchAPI: boolean } }[]): void;
    handle(scheme: string, handler: (request: Request) => Promise<Response>): void;
  };
  readonly ipcMain: {
    handle(channel: string, listener: (event: CallEvent, ...args: unknown[]) => Promise<unknown>): void;
  };
  readonly session: {
    readonly defaultSession: {
      setPermissionRequestHandler(handler: (contents: unknown, permission: string, answer: (granted: boolean) => void) => void): void;
      setPermissionCheckHandler(handler: () => boolean): void;
      setDevicePermissionHandler(handler: () => boolean): void;
    };
  };
  readonly dialog: {
    showOpenDialog(options: DialogChoice & { properties: 'openFile'[] }): Promise<{ canceled: boolean; filePaths: string[] }>;
    showMessageBoxSync(options: { type: 'question'; message: string; detail: string; buttons: string[]; defaultId: number; cancelId: number }): number;
    showSaveDialog(options: DialogChoice): Promise<{ canceled: boolean; filePath?: string }>;
  };
  readonly shell: { openPath(path: string): Promise<string> };
  readonly menu: { show(template: MenuItemConstructorOptions[]): void };
  makeWindow(settings: WindowSettings): AppWindow;
  readonly platform: NodeJS.Platform;
  readonly argv: readonly string[];
}

export interface DialogChoice {
  readonly title: string;
  readonly defaultPath?: string;
  readonly filters: { name: string; extensions: string[] }[];
}
