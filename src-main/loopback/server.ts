import { createReadStream } from 'node:fs';
import { type IncomingMessage, type ServerResponse, createServer } from 'node:http';
import { failed } from '#shared/host/contract';
import { BadFrame, packFrame } from '#shared/host/frame';
import { HOST_METHODS, isHostMethod } from '#shared/host/methods';
import { serve } from '#shared/host/serve';
import { packAnswer, unpackRequest } from '#shared/host/transport';
import type { LocalHost } from '../services/local-host.ts';
import { listWindowFiles } from '../services/window-files.ts';
import { WINDOW_HEADERS } from '../services/window-headers.ts';
import { type Refusal, makeGate } from './gate.ts';
import { makeWindowHosts } from './window-hosts.ts';

/** Header and query word by which a window says which one it is. */
const WINDOW_WORD = 'window';
const WINDOW_NAME = /^[A-Za-z0-9-]{1,80}$/;
const FRAME_TYPE = 'application/octet-stream';
/** Room for the frame around a request of the largest size. */
const FRAME_bytes = 1024;

export interface LoopbackOptions {
  /** Folder of the built window. */
  readonly windowFolder: string;
  /** Makes the host of one window. */
  readonly makeHost: () => LocalHost;
  /** How long the program stays after its last window has gone [ms]; null: until it is stopped. */
  readonly grace_ms: number | null;
  /** The last window has gone and did not come back. */
  readonly onGone: () => void;
}

export interface Loopback {
  readonly origin: string;
  /** Address that opens the window; works once. */
  readonly entry: string;
  close(): Promise<void>;
}

/** Serves the window and its host on this computer only, at a port that the system picks. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const findFile = await listWindowFiles(options.windowFolder);
  const windows = makeWindowHosts(options.makeHost, options.grace_ms, options.onGone);
  const server = createServer();
  const port = await new Promise<number>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      resolve(typeof address === 'object' && address ? address.port : 0);
    });
  });
  const origin = `http://127.0.0.1:${port}`;
  const gate = makeGate(port);

  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    for (const [name, value] of Object.entries(WINDOW_HEADERS)) response.setHeader(name, value);
    response.setHeader('Cache-Control', 'no-store');
    answer(request, response).catch(() => {
      if (response.headersSent) response.destroy();
      else refuse(response, { status: 400, text: 'The request broke off.' });
    });
  });

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const url = URL.canParse(request.url ?? '', origin) ? new URL(request.url ?? '', origin) : undefined;
    if (!url || url.origin !== origin) return refuse(response, { status: 400, text: 'This is no address.' });
    const isEntry = url.pathname === '/open';
    const refusal = gate.check(request, !isEntry);
    if (refusal) return refuse(response, refusal);
    if (url.pathname.startsWith('/api/')) return call(url.pathname.slice('/api/'.length), request, response);
    if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, { status: 405, text: 'This address is only read.' });
    if (isEntry) return enter(url, response);
    if (url.pathname === '/alive') return stream(url, request, response);
    return sendFile(url, request, response);
  };

  const enter = (url: URL, response: ServerResponse): void => {
    const cookie = gate.enter(url);
    if (cookie) response.writeHead(303, { Location: '/', 'Set-Cookie': cookie }).end();
    else refuse(response, { status: 403, text: 'This address was used already, or is not whole. Start Nozzlewright again.' });
  };

  const stream = (url: URL, request: IncomingMessage, response: ServerResponse): void => {
    const window = url.searchParams.get(WINDOW_WORD) ?? '';
    if (!WINDOW_NAME.test(window)) {
      refuse(response, { status: 400, text: 'The window does not say which one it is.' });
      return;
    }
    windows.came(window);
    request.socket.setKeepAlive(true);
    response.writeHead(200, { 'Content-Type': 'text/event-stream' });
    response.write('retry: 500\n\n');
    response.once('close', () => windows.went(window));
  };

  const call = async (method: string, request: IncomingMessage, response: ServerResponse): Promise<void> => {
    if (request.method !== 'POST') return refuse(response, { status: 405, text: 'A method is called by POST.' });
    if (request.headers['content-type'] !== FRAME_TYPE) return refuse(response, { status: 415, text: `A request is sent as ${FRAME_TYPE}.` });
    if (!isHostMethod(method)) {
      const unknown = failed('refused', 'The window asked for something that this version cannot do.', method.slice(0, 80), 'Start Nozzlewright again.');
      response.writeHead(404, { 'Content-Type': FRAME_TYPE }).end(packFrame({ words: unknown, bytes: null }));
      return;
    }
    const window = request.headers[`x-${WINDOW_WORD}`] ?? 'unnamed';
    const host = typeof window === 'string' && WINDOW_NAME.test(window) ? windows.hostOf(window) : undefined;
    if (!host) return refuse(response, { status: 403, text: 'Too many windows are open, or this one has no proper name.' });
    const body = await bodyOf(request, HOST_METHODS[method].limit_bytes + FRAME_bytes);
    if (!body) return refuse(response, { status: 413, text: 'This is larger than Nozzlewright takes.' });
    let words: unknown;
    try {
      words = unpackRequest(method, body);
    } catch (error) {
      if (error instanceof BadFrame) return refuse(response, { status: 400, text: error.message });
      throw error;
    }
    const answered = await serve(host, method, words);
    response.writeHead(200, { 'Content-Type': FRAME_TYPE }).end(packAnswer(method, answered));
  };

  const sendFile = (url: URL, request: IncomingMessage, response: ServerResponse): void => {
    const file = findFile(url.pathname);
    if (!file) {
      response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('There is nothing at this address.');
      return;
    }
    response.setHeader('Content-Type', file.type);
    if (file.isLasting) response.setHeader('Cache-Control', 'private, max-age=31536000, immutable');
    response.writeHead(200);
    if (request.method === 'HEAD') response.end();
    else createReadStream(file.path).on('error', () => response.destroy()).pipe(response);
  };

  return {
    origin,
    entry: `${origin}${gate.entry}`,
    async close() {
      const closed = new Promise<void>((resolve) => server.close(() => resolve()));
      server.closeAllConnections();
      await windows.endAll();
      await closed;
    },
  };
}

function refuse(response: ServerResponse, { status, text }: Refusal): void {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', Connection: 'close' }).end(text);
}

/** The whole body, or undefined as soon as it proves larger than the limit. */
async function bodyOf(request: IncomingMessage, limit_bytes: number): Promise<Uint8Array | undefined> {
  const announced_bytes = Number(request.headers['content-length'] ?? Number.NaN);
  if (announced_bytes > limit_bytes) return undefined;
  // Put in its place piece by piece: gathered pieces and the whole together would take twice the memory.
  if (Number.isSafeInteger(announced_bytes)) {
    const whole = Buffer.alloc(announced_bytes);
    let filled_bytes = 0;
    for await (const chunk of request.iterator({ destroyOnReturn: false })) {
      whole.set(chunk, filled_bytes);
      filled_bytes += chunk.length;
    }
    return whole.subarray(0, filled_bytes);
  }
  const chunks: Uint8Array[] = [];
  let size_bytes = 0;
  for await (const chunk of request.iterator({ destroyOnReturn: false })) {
    size_bytes += chunk.length;
    if (size_bytes > limit_bytes) return undefined;
    chunks.push(chunk);
  }
  return Buffer.concat(chunks);
}
