// @ts-check
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/**
 * @typedef {object} Machine
 * @property {NodeJS.Platform} platform
 * @property {Readonly<Record<string, string | undefined>>} env
 * @property {(path: string) => boolean} exists
 */

const LINUX_NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge-stable', 'microsoft-edge', 'brave-browser', 'vivaldi-stable', 'vivaldi'];
const LINUX_FOLDERS = ['/usr/bin', '/usr/local/bin', '/snap/bin', '/opt/google/chrome', '/opt/microsoft/msedge', '/var/lib/flatpak/exports/bin'];
const MAC_APPLICATIONS = ['Google Chrome', 'Chromium', 'Microsoft Edge', 'Brave Browser', 'Vivaldi'];
const WINDOWS_PLACES = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['BraveSoftware', 'Brave-Browser', 'Application', 'brave.exe'],
  ['Vivaldi', 'Application', 'vivaldi.exe'],
];

/**
 * Places where a Chromium-family browser is usually installed, likeliest first. `NOZZLEWRIGHT_BROWSER`
 * comes before all of them.
 * @param {Machine} machine
 * @returns {string[]}
 */
function browserPlaces({ platform, env }) {
  const chosen = env.NOZZLEWRIGHT_BROWSER ? [env.NOZZLEWRIGHT_BROWSER] : [];
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA].filter((root) => root !== undefined);
    return [...chosen, ...WINDOWS_PLACES.flatMap((place) => roots.map((root) => join(root, ...place)))];
  }
  if (platform === 'darwin') {
    const roots = ['/Applications', ...(env.HOME ? [join(env.HOME, 'Applications')] : [])];
    return [...chosen, ...MAC_APPLICATIONS.flatMap((name) => roots.map((root) => join(root, `${name}.app`, 'Contents', 'MacOS', name)))];
  }
  const folders = [...new Set([...(env.PATH ?? '').split(delimiter).filter(Boolean), ...LINUX_FOLDERS])];
  return [...chosen, ...LINUX_NAMES.flatMap((name) => folders.map((folder) => join(folder, name)))];
}

/** @type {Machine} */
const thisMachine = { platform: process.platform, env: process.env, exists: existsSync };

/**
 * The first installed Chromium-family browser, or undefined.
 * @param {Machine} [machine]
 * @returns {string | undefined}
 */
export function findBrowser(machine = thisMachine) {
  return browserPlaces(machine).find((place) => machine.exists(place));
}

/**
 * Whether there is a screen to open a window on.
 * @param {Machine} [machine]
 * @returns {boolean}
 */
export function hasDisplay({ platform, env } = thisMachine) {
  return platform === 'win32' || platform === 'darwin' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}
