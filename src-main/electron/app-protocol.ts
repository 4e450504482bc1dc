import { readFile } from 'node:fs/promises';
import type { FindWindowFile } from '../services/window-files.ts';
import { WINDOW_HEADERS } from '../services/window-headers.ts';

/** The window's own scheme: unlike `file:` its answers carry headers, and it leads to nothing but the built window. */
export const APP_SCHEME = 'app';
const APP_HOST = 'nozzlewright';
export const APP_ORIGIN = `${APP_SCHEME}://${APP_HOST}`;
export const APP_ADDRESS = `${APP_ORIGIN}/`;

/** Whether an address belongs to the window itself. */
export const isOwnAddress = (address: string): boolean => address === APP_ORIGIN || address.startsWith(APP_ADDRESS);

/** Answers requests of the window's scheme from the built files. */
export const serveWindowFiles =
  (findFile: FindWindowFile) =>
  async (request: Request): Promise<Response> => {
    const url = new URL(request.url);
    const file = url.host === APP_HOST && request.method === 'GET' ? findFile(url.pathname) : undefined;
    if (!file) return new Response('There is nothing at this address.', { status: 404, headers: { ...WINDOW_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' } });
    return new Response(await readFile(file.path), { headers: { ...WINDOW_HEADERS, 'Content-Type': file.type } });
  };
