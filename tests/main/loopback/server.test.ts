import { connect } from 'node:net';
import { describe, expect, test } from 'vitest';
import { packFrame, unpackFrame } from '#shared/host/frame';
import type { Loopback } from '../../../src-main/loopback/server.ts';
import { goodOf } from '../../support/hosts.ts';
import { type Sent, TEST_PAGE, callHeaders, enter, hostAt, loopbackIn, send } from '../../support/loopback.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const textOf = (body: Uint8Array): string => new TextDecoder().decode(body);
const empty = packFrame({ words: {}, bytes: null });
const portOf = (loopback: Loopback): number => Number(new URL(loopback.origin).port);

describe('first address', () => {
  test('gives a cookie once and leads to an address without the token', async () => {
    const loopback = await loopbackIn(tempFolder());
    const { pathname, search, searchParams } = new URL(loopback.entry);
    expect(searchParams.get('token')?.length).toBeGreaterThanOrEqual(43);
    const first = await send(loopback, { path: pathname + search });
    expect(first.status).toBe(303);
    expect(first.headers.location).toBe('/');
    expect(first.headers['set-cookie']?.[0]).toMatch(/^nozzlewright-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
    expect((await send(loopback, { path: pathname + search })).status).toBe(403);
  });

  test.each(['/open', '/open?token=', '/open?token=x', `/open?token=${'A'.repeat(43)}`])('%s opens nothing and spends nothing', async (path) => {
    const loopback = await loopbackIn(tempFolder());
    const got = await send(loopback, { path });
    expect(got.status).toBe(403);
    expect(got.headers['set-cookie']).toBeUndefined();
    expect(await enter(loopback)).not.toBe('');
  });
});

describe('who may ask', () => {
  test('nothing is served without the cookie, or with another', async () => {
    const loopback = await loopbackIn(tempFolder());
    const cookie = await enter(loopback);
    for (const wrong of [undefined, '', 'x=y', `${cookie}x`, cookie.slice(0, -1), cookie.replace('nozzlewright', 'other')]) {
      const headers = { ...callHeaders(loopback, wrong ?? ''), ...(wrong === undefined ? { Cookie: '' } : {}) };
      for (const path of ['/', '/index.html', '/assets/app-1.js', '/alive?window=w1']) expect((await send(loopback, { path, headers: { Cookie: wrong ?? '' } })).status).toBe(403);
      expect((await send(loopback, { method: 'POST', path: '/api/info', headers, body: empty })).status).toBe(403);
    }
    expect(textOf((await send(loopback, { path: '/', headers: { Cookie: cookie } })).body)).toBe(TEST_PAGE);
    expect((await send(loopback, { path: '/', headers: { Cookie: `a=b; ${cookie}; c=d` } })).status).toBe(200);
  });

  test('a name that was made to lead here is turned away, cookie or not', async () => {
    const loopback = await loopbackIn(tempFolder());
    const cookie = await enter(loopback);
    for (const host of ['attacker.example', `attacker.example:${portOf(loopback)}`, `localhost:${portOf(loopback)}`, '127.0.0.1', `127.0.0.1:${portOf(loopback) + 1}`, `[::1]:${portOf(loopback)}`]) {
      expect((await send(loopback, { path: '/', headers: { Cookie: cookie, Host: host } })).status).toBe(421);
      expect((await send(loopback, { method: 'POST', path: '/api/info', headers: { ...callHeaders(loopback, cookie), Host: host }, body: empty })).status).toBe(421);
      expect((await send(loopback, { path: new URL(loopback.entry).pathname, headers: { Host: host } })).status).toBe(421);
    }
  });

  test('a call from another origin, or from none, is turned away', async () => {
    const loopback = await loopbackIn(tempFolder());
    const cookie = await enter(loopback);
    for (const origin of ['http://attacker.example', 'null', `https://127.0.0.1:${portOf(loopback)}`, `http://localhost:${portOf(loopback)}`, `${loopback.origin}/`, `http://127.0.0.1:${portOf(loopback) + 1}`]) {
      expect((await send(loopback, { method: 'POST', path: '/api/info', headers: { ...callHeaders(loopback, cookie), Origin: origin }, body: empty })).status).toBe(403);
      expect((await send(loopback, { path: '/', headers: { Cookie: cookie, Origin: origin } })).status).toBe(403);
    }
    const { Origin: _origin, ...without } = callHeaders(loopback, cookie);
    expect((await send(loopback, { method: 'POST', path: '/api/info', headers: without, body: empty })).status).toBe(403);
  });

  test('a page of another site can neither frame nor load the window', async () => {
    const loopback = await loopbackIn(tempFolder());
    const cookie = await enter(loopback);
    for (const site of ['cross-site', 'same-site']) expect((await send(loopback, { path: '/', headers: { Cookie: cookie, 'Sec-Fetch-Site': site } })).status).toBe(403);
    for (const site of ['same-origin', 'none']) expect((await send(loopback, { path: '/', headers: { Cookie: cookie, 'Sec-Fetch-Site': site } })).status).toBe(200);
  });

  test('it listens on this computer only', async () => {
    const loopback = await loopbackIn(tempFolder());
    expect(loopback.origin).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    const outcome = await new Promise<string>((resolve) => {
      const socket = connect(portOf(loopback), '127.0.0.2');
      socket.once('connect', () => resolve('connected'));
      socket.once('error', () => resolve('refused'));
    });
    expect(outcome).toBe('refused');
  });
});

describe('every answer', () => {
  test('carries the headers that lock the window in, refusals and answers of calls too', async () => {
    const loopback = await loopbackIn(tempFolder());
    const cookie = await enter(loopback);
    const asked: Sent[] = [
      { path: '/', headers: { Cookie: cookie } },
      { path: '/assets/app-1.js', headers: { Cookie: cookie } },
      { path: '/nowhere', headers: { Cookie: cookie } },
      { path: '/' },
      { path: '/open' },
      { path: '/', headers: { Host: 'attacker.example' } },
      { method: 'POST', path: '/api/info', headers: callHeaders(loopback, cookie), body: empty },
      { method: 'POST', path: '/api/nothing', headers: callHeaders(loopback, cookie), body: empty },
      { method: 'DELETE', path: '/', headers: { Cookie: cookie } },
    ];
    for (const each of asked) {
      const { headers } = await send(loopback, each);
      expect(headers['content-security-policy'], each.path).toBe(
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
      );
      expect(headers).toMatchObject({ 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'cross-origin-opener-policy': 'same-origin', 'cross-origin-resource-policy': 'same-origin' });
      expect(headers).not.toHaveProperty('access-control-allow-origin');
    }
  });
});

describe('files of the window', () => {
  test('are served with their type; only what carries a digest is kept by the browser', async () => {
    const loopback = await loopbackIn(tempFolder());
    const headers = { Cookie: await enter(loopback) };
    const page = await send(loopback, { path: '/', headers });
    expect(page.headers).toMatchObject({ 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' });
    const script = await send(loopback, { path: '/assets/app-1.js', headers });
    expect(script.headers['content-type']).toBe('text/javascript; charset=utf-8');
    expect(script.headers['cache-control']).toContain('immutable');
    const head = await send(loopback, { method: 'HEAD', path: '/', headers });
    expect([head.status, head.body.length]).toEqual([200, 0]);
  });

  test.each([
    '/../secret.txt',
    '/assets/../../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/..\\secret.txt',
    '/..%5csecret.txt',
    '/assets/..%252f..%252fsecret.txt',
    '//secret.txt',
    '/./../secret.txt',
    '/assets',
    '/assets/',
    '/index.html%00.js',
    '/INDEX.HTML',
    '/etc/passwd',
    '/file:///etc/passwd',
  ])('%s leads to nothing', async (path) => {
    const loopback = await loopbackIn(tempFolder());
    const got = await send(loopback, { path, headers: { Cookie: await enter(loopback) } });
    expect([400, 404]).toContain(got.status);
    expect(textOf(got.body)).not.toContain('secret');
  });

  test.each(['http://attacker.example/', 'http://127.0.0.1:1/'])('an address of another host, %s, is turned away', async (path) => {
    const loopback = await loopbackIn(tempFolder());
    expect((await send(loopback, { path, headers: { Cookie: await enter(loopback) } })).status).toBe(400);
  });

  test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS'])('%s is no way to read a file', async (method) => {
    const loopback = await loopbackIn(tempFolder());
    const got = await send(loopback, { method, path: '/', headers: { Cookie: await enter(loopback), Origin: loopback.origin } });
    expect(got.status).toBe(405);
  });
});

describe('calls', () => {
  test('only POST, only frames, only methods of the contract', async () => {
    const loopback = await loopbackIn(tempFolder());
    const headers = callHeaders(loopback, await enter(loopback));
    for (const method of ['GET', 'PUT', 'OPTIONS']) expect((await send(loopback, { method, path: '/api/info', headers })).status).toBe(405);
    for (const type of ['application/json', 'text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data']) {
      expect((await send(loopback, { method: 'POST', path: '/api/info', headers: { ...headers, 'Content-Type': type }, body: '{}' })).status).toBe(415);
    }
    for (const name of ['', 'toString', '__proto__', 'constructor', 'info/', 'INFO', 'end']) {
      const got = await send(loopback, { method: 'POST', path: `/api/${name}`, headers, body: empty });
      expect(got.status).toBe(404);
      expect(unpackFrame(got.body, false).words).toMatchObject({ ok: false, problem: { code: 'refused' } });
    }
  });

  test('a broken frame is turned away', async () => {
    const loopback = await loopbackIn(tempFolder());
    const headers = callHeaders(loopback, await enter(loopback));
    for (const body of [new Uint8Array(), Uint8Array.of(255, 255, 255, 255), Uint8Array.of(2, 0, 0, 0, 0x7b, 0x7b), new Uint8Array(empty.length + 1)]) {
      expect((await send(loopback, { method: 'POST', path: '/api/info', headers, body })).status).toBe(400);
    }
  });

  test('a request larger than its method takes is not read', async () => {
    const loopback = await loopbackIn(tempFolder());
    const headers = callHeaders(loopback, await enter(loopback));
    const large = packFrame({ words: { ref: 'x'.repeat(70_000) }, bytes: null });
    expect((await send(loopback, { method: 'POST', path: '/api/forgetRecent', headers, body: large })).status).toBe(413);
    const chunked = await send(loopback, { method: 'POST', path: '/api/forgetRecent', headers: { ...headers, 'Transfer-Encoding': 'chunked' }, body: large });
    expect(chunked.status).toBe(413);
    const claimed = await send(loopback, { method: 'POST', path: '/api/importUnderlay', headers: { ...headers, 'Content-Length': '0', 'Transfer-Encoding': 'identity' }, body: '' }).catch(() => ({ status: 400 }));
    expect(claimed.status).toBe(400);
  });

  test('a window without a proper name is turned away, and so is one too many', async () => {
    const loopback = await loopbackIn(tempFolder());
    const cookie = await enter(loopback);
    for (const window of ['', '../x', 'a b', 'x'.repeat(200)]) {
      expect((await send(loopback, { method: 'POST', path: '/api/info', headers: callHeaders(loopback, cookie, window), body: empty })).status).toBe(403);
    }
    for (let i = 0; i < 64; i += 1) expect((await send(loopback, { method: 'POST', path: '/api/info', headers: callHeaders(loopback, cookie, `w${i}`), body: empty })).status).toBe(200);
    expect((await send(loopback, { method: 'POST', path: '/api/info', headers: callHeaders(loopback, cookie, 'w64'), body: empty })).status).toBe(403);
  });

  test('two programs have passes of their own', async () => {
    const [first, second] = [await loopbackIn(tempFolder()), await loopbackIn(tempFolder())];
    const cookie = await enter(first);
    await enter(second);
    expect((await send(second, { path: '/', headers: { Cookie: cookie } })).status).toBe(403);
    const renamed = cookie.replace(String(portOf(first)), String(portOf(second)));
    expect((await send(second, { path: '/', headers: { Cookie: renamed } })).status).toBe(403);
    expect(goodOf(await hostAt(first, cookie).info({})).host).toBe('loopback');
  });
});
