import { mkdirSync, writeFileSync } from 'node:fs';
import { type IncomingHttpHeaders, type IncomingMessage, request } from 'node:http';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { hostOver, framedTransport } from '#shared/host/transport';
import type { Host } from '#shared/host/contract';
import { type Loopback, type LoopbackOptions, startLoopback } from '../../src-main/loopback/server.ts';
import { hostIn } from './hosts.ts';

export const TEST_PAGE = '<!doctype html><title>Window</title>';

/** A running loopback host over a folder with a window of two files, closed with its test. */
export async function loopbackIn(folder: string, options: Partial<LoopbackOptions> = {}): Promise<Loopback> {
  const windowFolder = join(folder, 'window');
  mkdirSync(join(windowFolder, 'assets'), { recursive: true });
  writeFileSync(join(windowFolder, 'index.html'), TEST_PAGE);
  writeFileSync(join(windowFolder, 'assets', 'app-1.js'), 'export {};');
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  const loopback = await startLoopback({ windowFolder, makeHost: () => hostIn(folder), grace_ms: null, onGone: () => undefined, ...options });
  onTestFinished(() => loopback.close());
  return loopback;
}

export interface Sent {
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: Uint8Array | string;
  /** The path goes out as it is written, dots and all. */
  readonly path: string;
}
export interface Got {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Uint8Array;
}

/** Sends a request as written: no client library tidies it. */
export const send = (loopback: Loopback, { method = 'GET', headers = {}, body, path }: Sent): Promise<Got> =>
  new Promise((resolve, reject) => {
    const { hostname, port } = new URL(loopback.origin);
    const sent = request({ hostname, port, method, path, headers, agent: false }, (response: IncomingMessage) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body: new Uint8Array(Buffer.concat(chunks)) }));
    });
    sent.on('error', reject);
    sent.end(body);
  });

/** Goes through the first address and answers the cookie. */
export async function enter(loopback: Loopback): Promise<string> {
  const { pathname, search } = new URL(loopback.entry);
  const { headers } = await send(loopback, { path: pathname + search });
  return headers['set-cookie']?.[0]?.split(';')[0] ?? '';
}

/** What the window sends along with a call. */
export const callHeaders = (loopback: Loopback, cookie: string, window = 'w1'): Record<string, string> => ({
  Cookie: cookie,
  Origin: loopback.origin,
  'Content-Type': 'application/octet-stream',
  'X-Window': window,
});

/** The host as a window reaches it over the wire. */
export const hostAt = (loopback: Loopback, cookie: string, window = 'w1'): Host =>
  hostOver(
    framedTransport(async (method, body) => {
      const got = await send(loopback, { method: 'POST', path: `/api/${method}`, headers: callHeaders(loopback, cookie, window), body });
      if (got.status !== 200) throw new Error(`The host answered ${got.status}.`);
      return got.body;
    }),
  );
