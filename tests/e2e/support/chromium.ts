import { type Browser, chromium } from '@playwright/test';
import { findBrowser } from '../../../src-main/loopback/browsers.mjs';

/** Flags under which an installed Chromium runs quietly, without a screen and without asking the network. */
const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** Starts the installed Chromium; `NOZZLEWRIGHT_BROWSER` names another one. */
export async function startChromium(): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error('No Chromium-family browser was found. Install one, or name it in NOZZLEWRIGHT_BROWSER.');
  return chromium.launch({ executablePath, args: FLAGS });
}
