import { resolve } from 'node:path';
import type { Folders } from '../services/folders.ts';
import type { LocalHost } from '../services/local-host.ts';
import { type HostOptions, makeHost } from '../services/make-host.ts';
import type { FindWindowFile } from '../services/window-files.ts';
import { APP_SCHEME, serveWindowFiles } from './app-protocol.ts';
import { ACTION_CHANNEL } from './channels.ts';
import { makeDialogs } from './dialogs.ts';
import type { AppWindow, ElectronParts } from './electron-parts.ts';
import { answerCalls } from './ipc.ts';
import { menuTemplate } from './menu.ts';
import { openAppWindow } from './window.ts';

/** Where this program's own parts are, and who it is. */
export interface Setup {
  readonly version: string;
  readonly folders: Folders;
  readonly preload: string;
  readonly findWindowFile: FindWindowFile;
  readonly now: () => Date;
  /** Called once the first window is there, for work that can wait. */
  readonly whenIdle: () => void;
}

/** What the command line asks for. */
export function readArguments(argv: readonly string[], workingFolder: string): { plan: string | null; demo: string | null; folder: string | null } {
  const optionOf = (option: string): string | null => argv.find((word) => word.startsWith(`${option}=`))?.slice(option.length + 1) ?? null;
  const plan = argv.slice(1).find((word) => !word.startsWith('-') && /\.(nzw|json|pdf)$/i.test(word));
  return { plan: plan === undefined ? null : resolve(workingFolder, plan), demo: optionOf('--demo'), folder: optionOf('--folder') };
}

interface Open {
  readonly window: AppWindow;
  host: LocalHost;
}

/** Runs the program in the desktop runtime: one process, one window a plan, each window with its own host. */
export async function startElectron(electron: ElectronParts, setup: Setup, workingFolder: string): Promise<void> {
  const { app, protocol, session } = electron;
  protocol.registerSchemesAsPrivileged([{ scheme: APP_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } }]);
  if (!app.requestSingleInstanceLock()) return app.quit();

  const open = new Map<number, Open>();
  let focused: AppWindow | undefined;
  const asked: string[] = [];
  let isReady = false;

  const openPlan = (plan: string | null, demo: string | null): void => {
    const dialogs = makeDialogs(electron, setup.folders.plansFolder);
    const options: HostOptions = { kind: 'electron', version: setup.version, ...setup.folders, startPlan: plan, startDemo: demo, dialogs, now: setup.now };
    const window = openAppWindow(electron, setup.preload);
    const shown: Open = { window, host: makeHost(options) };
    const id = window.webContents.id;
    open.set(id, shown);
    focused = window;
    let hasLoaded = false;
    window.webContents.on('did-navigate', () => {
      // A page that is loaded anew is a new window to the host: the old one's unsaved work can be recovered.
      if (hasLoaded) {
        void shown.host.end();
        shown.host = makeHost(options);
      }
      hasLoaded = true;
    });
    window.on('focus', () => {
      focused = window;
    });
    window.on('closed', () => {
      open.delete(id);
      void shown.host.end();
      if (focused === window) focused = [...open.values()].at(-1)?.window;
    });
  };

  const comeForward = (): void => {
    if (focused?.isMinimized()) focused.restore();
    focused?.focus();
  };

  app.on('second-instance', (_event, argv, folder) => {
    const { plan, demo } = readArguments(argv, folder);
    if (plan === null && open.size > 0) comeForward();
    else openPlan(plan, demo);
  });
  app.on('open-file', (event, path) => {
    event.preventDefault();
    if (isReady) openPlan(path, null);
    else asked.push(path);
  });
  app.on('activate', () => {
    if (isReady && open.size === 0) openPlan(null, null);
  });
  app.on('window-all-closed', () => {
    if (electron.platform !== 'darwin') app.quit();
  });

  await app.whenReady();
  isReady = true;
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.defaultSession.setPermissionCheckHandler(() => false);
  session.defaultSession.setDevicePermissionHandler(() => false);
  protocol.handle(APP_SCHEME, serveWindowFiles(setup.findWindowFile));
  answerCalls(electron.ipcMain, (contents) => open.get(contents)?.host);
  electron.menu.show(menuTemplate(electron.platform, (action) => focused?.webContents.send(ACTION_CHANNEL, action)));
  const { plan, demo } = readArguments(electron.argv, workingFolder);
  if (asked.length === 0 || plan !== null) openPlan(plan, demo);
  for (const path of asked) openPlan(path, null);
  setup.whenIdle();
}
