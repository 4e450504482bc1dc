import type { MenuItemConstructorOptions } from 'electron';
import type { Bridge } from '#shared/host/bridge';
import { HOST_METHODS } from '#shared/host/methods';
import { ACTION_CHANNEL, CALL_CHANNEL } from '../../src-main/electron/channels.ts';
import type { AppWindow, CallEvent, ElectronParts, Frame, WindowSettings } from '../../src-main/electron/electron-parts.ts';
import { makeBridge } from '../../src-main/electron/make-bridge.ts';

type Listener = (...words: never[]) => void;

/** Remembers listeners and calls them, as the runtime's own emitters do. */
class Emitter {
  readonly #listeners = new Map<string, Listener[]>();
  on(event: string, listener: Listener): void {
    this.#listeners.set(event, [...(this.#listeners.get(event) ?? []), listener]);
  }
  emit(event: string, ...words: unknown[]): void {
    for (const listener of this.#listeners.get(event) ?? []) (listener as (...words: unknown[]) => void)(...words);
  }
}

/** A window of the stand-in runtime. */
export class FakeWindow {
  readonly events = new Emitter();
  readonly contentsEvents = new Emitter();
  readonly sent: unknown[][] = [];
  address = '';
  isShown = false;
  isFocused = false;
  minimized = false;
  openHandler: (() => { action: string }) | undefined;

  constructor(
    readonly id: number,
    readonly settings: WindowSettings,
  ) {
    this.window.webContents.id = id;
  }

  /** The same window as the program holds it. */
  readonly window = {
    webContents: {
      id: 0,
      send: (...words: unknown[]) => void this.sent.push(words),
      on: (event: string, listener: Listener) => this.contentsEvents.on(event, listener),
      setWindowOpenHandler: (handler: () => { action: 'deny' }) => {
        this.openHandler = handler;
      },
    },
    loadURL: async (address: string) => {
      this.address = address;
    },
    once: (event: string, listener: Listener) => this.events.on(event, listener),
    on: (event: string, listener: Listener) => this.events.on(event, listener),
    show: () => {
      this.isShown = true;
    },
    focus: () => {
      this.isFocused = true;
    },
    isMinimized: () => this.minimized,
    restore: () => {
      this.minimized = false;
    },
  };

  /** Sends an event that can be prevented; answers whether it was. */
  prevents(event: string, ...words: unknown[]): boolean {
    let isPrevented = false;
    const prevented = {
      preventDefault: () => {
        isPrevented = true;
      },
    };
    this.contentsEvents.emit(event, prevented, ...words);
    return isPrevented;
  }
}

/** A stand-in for the desktop runtime: it holds what was registered and lets a test play the system's part. */
export class FakeElectron {
  readonly appEvents = new Emitter();
  readonly windows: FakeWindow[] = [];
  readonly handlers = new Map<string, (event: CallEvent, ...words: unknown[]) => Promise<unknown>>();
  readonly schemes: { scheme: string; privileges: object }[] = [];
  readonly permissions: { request?: (contents: unknown, permission: string, answer: (granted: boolean) => void) => void; check?: () => boolean; device?: () => boolean } = {};
  protocolHandler: ((request: Request) => Promise<Response>) | undefined;
  menu: MenuItemConstructorOptions[] = [];
  hasQuit = false;
  isSecond = false;
  picked: string | null = null;
  boxAnswer = 1;
  opened: string[] = [];

  constructor(
    readonly argv: readonly string[] = ['electron', '.'],
    readonly platform: NodeJS.Platform = 'linux',
  ) {}

  readonly parts = (): ElectronParts => ({
    app: {
      requestSingleInstanceLock: () => !this.isSecond,
      quit: () => {
        this.hasQuit = true;
      },
      whenReady: async () => undefined,
      on: (event: string, listener: Listener) => this.appEvents.on(event, listener),
    },
    protocol: {
      registerSchemesAsPrivileged: (schemes) => void this.schemes.push(...schemes),
      handle: (_scheme, handler) => {
        this.protocolHandler = handler;
      },
    },
    ipcMain: { handle: (channel, handler) => void this.handlers.set(channel, handler) },
    session: {
      defaultSession: {
        setPermissionRequestHandler: (handler) => {
          this.permissions.request = handler;
        },
        setPermissionCheckHandler: (handler) => {
          this.permissions.check = handler;
        },
        setDevicePermissionHandler: (handler) => {
          this.permissions.device = handler;
        },
      },
    },
    dialog: {
      showOpenDialog: async () => ({ canceled: this.picked === null, filePaths: this.picked === null ? [] : [this.picked] }),
      showSaveDialog: async () => ({ canceled: this.picked === null, filePath: this.picked ?? '' }),
      showMessageBoxSync: () => this.boxAnswer,
    },
    shell: {
      openPath: async (path) => {
        this.opened.push(path);
        return '';
      },
    },
    menu: {
      show: (template) => {
        this.menu = template;
      },
    },
    makeWindow: (settings) => {
      const made = new FakeWindow(this.windows.length + 1, settings);
      this.windows.push(made);
      return made.window as unknown as AppWindow;
    },
    platform: this.platform,
    argv: this.argv,
  });

  /** Sends a call as a frame of a window would: request and answer are cloned, as between processes. */
  async invoke(sender: number, senderFrame: Frame | null, ...words: unknown[]): Promise<unknown> {
    const handler = this.handlers.get(CALL_CHANNEL);
    if (!handler) throw new Error('Nothing answers calls.');
    return structuredClone(await handler({ sender: { id: sender }, senderFrame }, ...structuredClone(words)));
  }

  /** What the page of a window finds as its bridge. */
  bridge(window: FakeWindow): Bridge {
    const frame: Frame = { url: window.address, parent: null };
    const listeners = new Set<(action: string) => void>();
    window.sent.push = (...sent: unknown[][]) => {
      for (const [channel, action] of sent) if (channel === ACTION_CHANNEL) for (const listener of listeners) listener(String(action));
      return Array.prototype.push.apply(window.sent, sent);
    };
    return makeBridge(
      Object.keys(HOST_METHODS),
      (method, request) => this.invoke(window.id, frame, method, request),
      (listener) => {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
    ) as unknown as Bridge;
  }
}
