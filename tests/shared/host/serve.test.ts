import { describe, expect, test } from 'vitest';
import { type Host, type HostMethod, answered } from '#shared/host/contract';
import { HOST_METHODS } from '#shared/host/methods';
import { REQUESTS } from '#shared/host/requests';
import { serve } from '#shared/host/serve';
import { newPlan } from '#shared/model/plan';

/** A host that answers what it was asked. */
const echo = Object.fromEntries(Object.keys(HOST_METHODS).map((method) => [method, async (request: unknown) => answered(request)])) as unknown as Host;

describe('serve', () => {
  test('every method has a parser', () => {
    expect(Object.keys(REQUESTS).sort()).toEqual(Object.keys(HOST_METHODS).sort());
  });

  test.each(['', 'toString', '__proto__', 'constructor', 'deleteEverything'])('%j is refused', async (method) => {
    expect(await serve(echo, method, {})).toMatchObject({ ok: false, problem: { code: 'refused' } });
  });

  test.each<[HostMethod, unknown]>([
    ['info', null],
    ['info', { more: 1 }],
    ['openPlan', { ref: 'a.nzw' }],
    ['openPlan', { session: '../../etc', ref: 'a.nzw' }],
    ['openPlan', { session: 's', ref: '' }],
    ['openPlan', { session: 's', ref: 'x'.repeat(5000) }],
    ['dropRecovery', { session: 'a/b' }],
    ['dropRecovery', { session: '..' }],
    ['readUnderlay', { sha256: '../../../etc/passwd', page: 1 }],
    ['readUnderlay', { sha256: 'a'.repeat(64), page: 0 }],
    ['readUnderlay', { sha256: 'a'.repeat(64), page: Number.NaN }],
    ['importUnderlay', { name: 'a.dxf', bytes: [1, 2] }],
    ['importUnderlay', { name: 'a.dxf' }],
    ['printSheets', { plan: newPlan(), paper: 'A3', scale: Number.POSITIVE_INFINITY, set: 'field' }],
    ['printSheets', { plan: newPlan(), paper: 'A3', scale: 'auto', set: 'all' }],
    ['savePlan', { session: 's', ref: 'a', plan: {}, stamp: null, overwrite: false }],
    ['savePlan', { session: 's', ref: 'a', plan: { ...newPlan(), settings: { lengths: 'feet', grid_m: Number.NaN } }, stamp: null, overwrite: false }],
    ['savePlan', { session: 's', ref: 'a', plan: { ...newPlan(), extra: 1 }, stamp: null, overwrite: false }],
    ['keepRecovery', { session: 's', ref: null, name: 'x', steps: -1, plan: newPlan() }],
    ['writePreferences', { preferences: { theme: { nested: true } } }],
  ])('%s with %j is refused', async (method, request) => {
    expect(await serve(echo, method, request)).toMatchObject({ ok: false, problem: { code: 'refused', where: expect.stringContaining(method) } });
  });

  test('a sound request goes through as it is', async () => {
    const request = { session: 's-1', ref: '/a.nzw', plan: newPlan(), stamp: null, overwrite: false };
    expect(await serve(echo, 'savePlan', request)).toEqual(answered(request));
  });

  test('a host that throws gives a problem', async () => {
    const host: Host = {
      ...echo,
      info: () => {
        throw new Error('out of order');
      },
    };
    expect(await serve(host, 'info', {})).toMatchObject({ ok: false, problem: { code: 'failed', where: 'out of order' } });
  });
});
