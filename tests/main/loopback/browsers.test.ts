import { describe, expect, test } from 'vitest';
import { findBrowser, hasDisplay } from '../../../src-main/loopback/browsers.mjs';
import { windowArguments } from '../../../src-main/loopback/open-window.ts';

const machine = (platform: NodeJS.Platform, env: Record<string, string>, present: readonly string[]) => ({ platform, env, exists: (path: string) => present.includes(path.replaceAll('\\', '/')) });

describe('finding a browser', () => {
  test.each([
    ['linux', { PATH: '/usr/bin' }, ['/usr/bin/chromium'], '/usr/bin/chromium'],
    ['linux', { PATH: '/home/x/bin:/usr/bin' }, ['/home/x/bin/google-chrome'], '/home/x/bin/google-chrome'],
    ['linux', {}, ['/snap/bin/chromium'], '/snap/bin/chromium'],
    ['darwin', { HOME: '/Users/x' }, ['/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge'], '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge'],
    ['darwin', { HOME: '/Users/x' }, ['/Users/x/Applications/Chromium.app/Contents/MacOS/Chromium'], '/Users/x/Applications/Chromium.app/Contents/MacOS/Chromium'],
    ['win32', { 'PROGRAMFILES(X86)': 'C:/Program Files (x86)' }, ['C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe'], 'C:/Program Files (x86)/Microsoft/Edge/Application/msedge.exe'],
  ] as const)('on %s with %j', (platform, env, present, found) => {
    expect(findBrowser(machine(platform, env, present))?.replaceAll('\\', '/')).toBe(found);
  });

  test('the one that the user named comes first, but only when it is there', () => {
    const env = { NOZZLEWRIGHT_BROWSER: '/opt/mine', PATH: '/usr/bin' };
    expect(findBrowser(machine('linux', env, ['/opt/mine', '/usr/bin/chromium']))).toBe('/opt/mine');
    expect(findBrowser(machine('linux', env, ['/usr/bin/chromium']))).toBe('/usr/bin/chromium');
  });

  test('none is none', () => expect(findBrowser(machine('linux', { PATH: '/usr/bin' }, []))).toBeUndefined());
});

test('a screen is there on Windows and macOS, and on Linux when it is named', () => {
  expect([hasDisplay(machine('win32', {}, [])), hasDisplay(machine('darwin', {}, []))]).toEqual([true, true]);
  expect([hasDisplay(machine('linux', {}, [])), hasDisplay(machine('linux', { DISPLAY: ':0' }, [])), hasDisplay(machine('linux', { WAYLAND_DISPLAY: 'wayland-0' }, []))]).toEqual([false, true, true]);
});

test('the browser keeps its own sandbox unless the system\'s own account runs it', () => {
  expect(windowArguments('http://127.0.0.1:1/', '/own', false)).not.toContain('--no-sandbox');
  expect(windowArguments('http://127.0.0.1:1/', '/own', true)).toContain('--no-sandbox');
  expect(windowArguments('http://127.0.0.1:1/', '/own', false)).toContain('--app=http://127.0.0.1:1/');
});
