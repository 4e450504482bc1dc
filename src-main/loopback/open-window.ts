import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { findBrowser, hasDisplay } from './browsers.mjs';

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

/** The browser to open a window with, or why there can be none and what to do. */
export function pickBrowser(): { readonly browser: string } | { readonly why: string } {
  if (!hasDisplay()) return { why: 'There is no screen here to open a window on. Open the address above in a Chromium-family browser on this computer.' };
  const browser = findBrowser();
  if (browser) return { browser };
  return { why: 'No Chromium-family browser was found. Install Chromium, Chrome or Edge (or set NOZZLEWRIGHT_BROWSER to its path), then start again; or open the address above.' };
}

/** Opens the address as a window of its own. Answers why that failed, or null. */
export async function openWindow(browser: string, address: string, userDataFolder: string): Promise<string | null> {
  const isRoot = process.platform === 'linux' && process.getuid?.() === 0;
  const child = spawn(browser, windowArguments(address, userDataFolder, isRoot), { stdio: 'ignore', detached: true });
  return new Promise((resolve) => {
    child.once('error', (error) => resolve(`The browser ${browser} could not be started (${error.message}). Open the address above yourself.`));
    child.once('spawn', () => {
      child.unref();
      resolve(null);
    });
  });
}
