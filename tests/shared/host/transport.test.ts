import { describe, expect, test } from 'vitest';
import { answered, failed } from '#shared/host/contract';
import { HOST_METHODS, isHostMethod } from '#shared/host/methods';
import { framedTransport, hostOver, packAnswer, packRequest, unpackAnswer, unpackRequest } from '#shared/host/transport';

describe('host over a transport', () => {
  test('has every method of the contract and nothing else', () => {
    expect(Object.keys(hostOver(async () => null)).sort()).toEqual(Object.keys(HOST_METHODS).sort());
  });

  test('a lost connection is an answer', async () => {
    const host = hostOver(async () => {
      throw new Error('gone');
    });
    expect(await host.info({})).toMatchObject({ ok: false, problem: { code: 'failed', remedy: expect.stringContaining('kept') } });
  });

  test.each([[null], [undefined], ['ok'], [{ ok: true }], [{ ok: false }], [{ ok: false, problem: null }], [{ ok: 'yes', value: 1 }]])('%j is no answer', async (answer) => {
    expect(await hostOver(async () => answer).info({})).toMatchObject({ ok: false, problem: { code: 'failed' } });
  });

  test('bytes cross only where they are declared', () => {
    const request = { name: 'a.dxf', bytes: Uint8Array.of(1, 2) };
    expect(unpackRequest('importUnderlay', packRequest('importUnderlay', request))).toEqual(request);
    expect(unpackRequest('openPlan', packRequest('openPlan', request))).not.toEqual(request);
    const answer = answered({ name: 'sheets.pdf', bytes: Uint8Array.of(3), remark: null });
    expect(unpackAnswer('printResult', packAnswer('printResult', answer))).toEqual(answer);
  });

  test('a failed answer of a method with bytes comes back whole', () => {
    const answer = failed('refused', 'Not yet.', '', 'Wait.');
    expect(unpackAnswer('printResult', packAnswer('printResult', answer))).toEqual(answer);
  });

  test('a framed transport carries both ways', async () => {
    const host = hostOver(framedTransport(async (method, body) => packAnswer(method, answered({ seen: unpackRequest(method, body) }))));
    expect(await host.forgetRecent({ ref: 'x' })).toEqual({ ok: true, value: { seen: { ref: 'x' } } });
  });

  test('what is larger than its method takes is told, not sent', async () => {
    let sent = 0;
    const host = hostOver(
      framedTransport(async (method, body) => {
        sent += 1;
        return packAnswer(method, answered(body.length));
      }),
    );
    expect(await host.forgetRecent({ ref: 'x'.repeat(70_000) })).toMatchObject({ ok: false, problem: { code: 'too-large' } });
    expect(sent).toBe(0);
  });

  test.each(['toString', '__proto__', 'constructor', 'hasOwnProperty', ''])('%s is no method', (name) => {
    expect(isHostMethod(name)).toBe(false);
  });
});
