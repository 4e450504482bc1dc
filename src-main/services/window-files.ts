import { readdir } from 'node:fs/promises';
import { extname, join, relative, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

export interface WindowFile {
  /** Place on the disk. */
  readonly path: string;
  readonly type: string;
  /** Its name carries a digest of its content, so that it may be kept for good. */
  readonly isLasting: boolean;
}

/** Looks up a file of the window by the path of its address; undefined for anything that was not built. */
export type FindWindowFile = (pathname: string) => WindowFile | undefined;

/**
 * Lists what was built for the window. Only listed files are ever served, so no address, however it is
 * written, leads to any other file.
 */
export async function listWindowFiles(folder: string): Promise<FindWindowFile> {
  const files = new Map<string, WindowFile>();
  for (const entry of await readdir(folder, { withFileTypes: true, recursive: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    const address = `/${relative(folder, path).split(sep).join('/')}`;
    const type = TYPES[extname(entry.name).toLowerCase()] ?? 'application/octet-stream';
    files.set(address, { path, type, isLasting: address.startsWith('/assets/') });
  }
  return (pathname) => files.get(pathname === '/' ? '/index.html' : pathname);
}
