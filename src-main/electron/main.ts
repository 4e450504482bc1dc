import { join } from 'node:path';
import { BrowserWindow, Menu, app, dialog, ipcMain, protocol, session, shell } from 'electron';
import { version } from '../../package.json';
import { foldersIn, usualFolders } from '../services/folders.ts';
import { tidyUserData } from '../services/tidy.ts';
import { listWindowFiles } from '../services/window-files.ts';
import { readArguments, startElectron } from './start-electron.ts';

const now = (): Date => new Date();

// Every page, workers included, runs in the sandbox, whatever its own settings say.
app.enableSandbox();

const { folder } = readArguments(process.argv, process.cwd());
const folders = folder === null ? usualFolders() : foldersIn(folder);
// A folder of its own is a program of its own, with its own single instance.
if (folder !== null) app.setPath('userData', join(folders.userDataFolder, 'runtime'));

const findWindowFile = await listWindowFiles(join(import.meta.dirname, '..', 'renderer'));

// Not awaited: the runtime becomes ready only after this module has been read to its end.
void startElectron(
  {
    app,
    protocol,
    ipcMain,
    session,
    dialog,
    shell,
    menu: { show: (template) => Menu.setApplicationMenu(Menu.buildFromTemplate(template)) },
    makeWindow: (settings) => new BrowserWindow(settings),
    platform: process.platform,
    argv: process.argv,
  },
  {
    version,
    folders,
    preload: join(import.meta.dirname, '..', 'preload', 'preload.cjs'),
    findWindowFile,
    now,
    whenIdle: () => void tidyUserData(folders.userDataFolder, now).catch(() => undefined),
  },
  process.cwd(),
);
