import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { findBrowser, hasDisplay } from './browsers.mjs';

/** Why no window was opened, and what to do, in a sentence or two. */
export interface NotOpened {
  readonly why: string;
}

/** What an app window of a browser is started with. */
export const windowArguments = (address: string, userDataFolder: string, isRoot: boolean): string[] => [
  `--app=${address}`,
  `--user-data-dir=${join(userDataFolder, 'window')}`,
  '--window-size=1440,900',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // A browser run by the system's own account refuses to start inside its sandbox.
  ...(isRoot ? ['--no-sandbox'] : []),
];

/** Opens the address in an installed Chromium-family browser, as a window of its own. Answers why not. */
export async function openWindow(address: string, userDataFolder: string): Promise<NotOpened | null> {
  if (!hasDisplay()) return { why: 'There is no screen here to open a window on. Open the address above in a Chromium-family browser on this computer.' };
  const browser = findBrowser();
  if (!browser) {
    return { why: 'No Chromium-family browser was found. Install Chromium, Chrome or Edge (or set NOZZLEWRIGHT_BROWSER to its path), then start again; or open the address above.' };
  }
  const isRoot = process.getuid?.() === 0;
  const child = spawn(browser, windowArguments(address, userDataFolder, isRoot && process.platform === 'linux'), { stdio: 'ignore', detached: true });
  return new Promise((resolve) => {
    child.once('error', (error) => resolve({ why: `The browser ${browser} could not be started (${error.message}). Open the address above yourself.` }));
    child.once('spawn', () => {
      child.unref();
      resolve(null);
    });
  });
}
