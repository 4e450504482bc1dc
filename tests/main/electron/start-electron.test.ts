import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { HOST_METHODS } from '#shared/host/methods';
import { newPlan } from '#shared/model/plan';
import { APP_ADDRESS } from '../../../src-main/electron/app-protocol.ts';
import { readArguments, startElectron } from '../../../src-main/electron/start-electron.ts';
import { listWindowFiles } from '../../../src-main/services/window-files.ts';
import { FakeElectron, type FakeWindow } from '../../support/fake-electron.ts';
import { TEST_TIME, goodOf } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';

async function started(electron = new FakeElectron()) {
  const folder = tempFolder();
  const windowFolder = join(folder, 'window');
  mkdirSync(windowFolder);
  writeFileSync(join(windowFolder, 'index.html'), '<title>Window</title>');
  writeFileSync(join(folder, 'secret.txt'), 'secret');
  const folders = { userDataFolder: join(folder, 'own'), plansFolder: join(folder, 'plans') };
  const setup = { version: '1.2.3', folders, preload: '/out/preload.cjs', findWindowFile: await listWindowFiles(windowFolder), now: () => TEST_TIME, whenIdle: () => undefined };
  await startElectron(electron.parts(), setup, folder);
  return { electron, folder, window: electron.windows[0] as FakeWindow };
}

const infoOf = async (electron: FakeElectron, window: FakeWindow) => goodOf(await electron.bridge(window).info({}));

describe('the window', () => {
  test('is sandboxed, isolated and without a way to Node', async () => {
    const { window } = await started();
    expect(window.settings.webPreferences).toEqual({
      preload: '/out/preload.cjs',
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      webSecurity: true,
      spellcheck: false,
    });
    expect(window.address).toBe(APP_ADDRESS);
    expect(window.isShown).toBe(false);
    window.events.emit('ready-to-show');
    expect(window.isShown).toBe(true);
  });

  test.each(['https://attacker.example/', 'http://127.0.0.1/', 'file:///etc/passwd', 'app://nozzlewright.attacker.example/', 'app://other/', 'javascript:alert(1)', 'data:text/html,x', 'app://nozzlewright@attacker.example/'])(
    'does not go to %s',
    async (address) => {
      const { window } = await started();
      expect(window.prevents('will-navigate', address)).toBe(true);
      expect(window.prevents('will-redirect', address)).toBe(true);
    },
  );

  test('may be loaded anew, opens no other window and takes no other page in', async () => {
    const { window } = await started();
    expect(window.prevents('will-navigate', APP_ADDRESS)).toBe(false);
    expect(window.openHandler?.()).toEqual({ action: 'deny' });
    expect(window.prevents('will-attach-webview')).toBe(true);
  });

  test('closes over unsaved work only when the user says so', async () => {
    const { electron, window } = await started();
    electron.boxAnswer = 1;
    expect(window.prevents('will-prevent-unload')).toBe(false);
    electron.boxAnswer = 0;
    expect(window.prevents('will-prevent-unload')).toBe(true);
  });

  test('is granted nothing', async () => {
    const { electron } = await started();
    const answers: boolean[] = [];
    for (const permission of ['media', 'geolocation', 'notifications', 'clipboard-read', 'fileSystem']) electron.permissions.request?.(null, permission, (granted) => answers.push(granted));
    expect(answers).toEqual([false, false, false, false, false]);
    expect([electron.permissions.check?.(), electron.permissions.device?.()]).toEqual([false, false]);
  });
});

describe('the scheme of the window', () => {
  test('is a standard, secure one', async () => {
    const { electron } = await started();
    expect(electron.schemes).toEqual([{ scheme: 'app', privileges: { standard: true, secure: true, supportFetchAPI: true } }]);
  });

  test('serves the built window with its headers, and nothing else', async () => {
    const { electron } = await started();
    const get = async (address: string, method = 'GET') => electron.protocolHandler?.(new Request(address, { method }));
    const page = await get(APP_ADDRESS);
    expect(await page?.text()).toBe('<title>Window</title>');
    expect(page?.headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(page?.headers.get('x-content-type-options')).toBe('nosniff');
    for (const address of ['app://nozzlewright/../secret.txt', 'app://nozzlewright/..%2fsecret.txt', 'app://nozzlewright/%2e%2e/secret.txt', 'app://other/index.html', 'app://nozzlewright/etc/passwd']) {
      const got = await get(address);
      expect(got?.status).toBe(404);
      expect(got?.headers.get('content-security-policy')).toContain("default-src 'none'");
    }
    expect((await get(APP_ADDRESS, 'POST'))?.status).toBe(404);
  });
});

describe('calls', () => {
  test('are answered to the top frame of the own window only', async () => {
    const { electron, window } = await started();
    const top = { url: APP_ADDRESS, parent: null };
    expect(await electron.invoke(window.id, top, 'info', {})).toMatchObject({ ok: true });
    const refused = { ok: false, problem: { code: 'refused' } };
    expect(await electron.invoke(window.id, null, 'info', {})).toMatchObject(refused);
    expect(await electron.invoke(window.id, { url: 'https://attacker.example/', parent: null }, 'info', {})).toMatchObject(refused);
    expect(await electron.invoke(window.id, { url: 'app://nozzlewright.attacker.example/', parent: null }, 'info', {})).toMatchObject(refused);
    expect(await electron.invoke(window.id, { url: APP_ADDRESS, parent: top }, 'info', {})).toMatchObject(refused);
    expect(await electron.invoke(99, top, 'info', {})).toMatchObject(refused);
  });

  test('of anything but a method are refused', async () => {
    const { electron, window } = await started();
    for (const method of ['end', 'constructor', '__proto__', 7, null, {}, ['info']]) {
      expect(await electron.invoke(window.id, { url: APP_ADDRESS, parent: null }, method, {})).toMatchObject({ ok: false, problem: { code: 'refused' } });
    }
  });

  test('the bridge has the methods of the contract and onAction, and no way to send anything else', async () => {
    const { electron, window } = await started();
    const bridge = electron.bridge(window);
    expect(Object.keys(bridge).sort()).toEqual([...Object.keys(HOST_METHODS), 'onAction'].sort());
    expect([...electron.handlers.keys()]).toEqual(['host-call']);
  });
});

describe('plans and windows', () => {
  test('a plan on the command line is the first shown', async () => {
    const { electron, window, folder } = await started(new FakeElectron(['electron', '.', '--demo=F1', 'job/hut.nzw']));
    expect(await infoOf(electron, window)).toMatchObject({ host: 'electron', version: '1.2.3', startPlan: join(folder, 'job', 'hut.nzw'), startDemo: 'F1' });
  });

  test.each([
    [['electron', '.'], { plan: null, demo: null, folder: null }],
    [['/opt/nozzlewright', '/a/b.NZW'], { plan: '/a/b.NZW', demo: null, folder: null }],
    [['electron', '.', '--folder=/tmp/x', 'a.json', '--inspect'], { plan: '/here/a.json', demo: null, folder: '/tmp/x' }],
    [['electron', '.', 'notes.txt'], { plan: null, demo: null, folder: null }],
  ])('the command line %j', (argv, expected) => expect(readArguments(argv, '/here')).toEqual(expected));

  test('a second start opens its plan here, or brings the window forward', async () => {
    const { electron, window, folder } = await started();
    window.minimized = true;
    electron.appEvents.emit('second-instance', {}, ['nozzlewright'], folder);
    expect([electron.windows.length, window.isFocused, window.minimized]).toEqual([1, true, false]);
    electron.appEvents.emit('second-instance', {}, ['nozzlewright', 'annex.nzw'], folder);
    const second = electron.windows[1] as FakeWindow;
    expect(await infoOf(electron, second)).toMatchObject({ startPlan: join(folder, 'annex.nzw') });
  });

  test('a second process opens nothing and ends', async () => {
    const electron = new FakeElectron();
    electron.isSecond = true;
    await started(electron);
    expect([electron.hasQuit, electron.windows.length]).toEqual([true, 0]);
  });

  test('a plan opened from the system gets a window of its own', async () => {
    const { electron } = await started();
    let isPrevented = false;
    const event = {
      preventDefault: () => {
        isPrevented = true;
      },
    };
    electron.appEvents.emit('open-file', event, '/plans/hut.nzw');
    expect(isPrevented).toBe(true);
    expect(await infoOf(electron, electron.windows[1] as FakeWindow)).toMatchObject({ startPlan: '/plans/hut.nzw' });
  });

  test('a plan asked for before the program is ready is the one that is shown', async () => {
    const early = new FakeElectron(['electron', '.'], 'darwin');
    const parts = early.parts();
    let makeReady: (value: unknown) => void = () => undefined;
    const ready = new Promise((resolve) => {
      makeReady = resolve;
    });
    const run = startElectron(
      { ...parts, app: { ...parts.app, whenReady: () => ready } },
      { version: '1', folders: { userDataFolder: tempFolder(), plansFolder: tempFolder() }, preload: '', findWindowFile: () => undefined, now: () => TEST_TIME, whenIdle: () => undefined },
      '/',
    );
    early.appEvents.emit('open-file', { preventDefault: () => undefined }, '/plans/hut.nzw');
    expect(early.windows).toHaveLength(0);
    makeReady(null);
    await run;
    expect(early.windows).toHaveLength(1);
    expect(await infoOf(early, early.windows[0] as FakeWindow)).toMatchObject({ startPlan: '/plans/hut.nzw' });
  });

  test('a closed window lets go of its plan; a window loaded anew is offered its unsaved work', async () => {
    const { electron, window, folder } = await started();
    electron.appEvents.emit('second-instance', {}, ['nozzlewright', 'b.nzw'], folder);
    const other = electron.windows[1] as FakeWindow;
    const bridge = electron.bridge(window);
    window.contentsEvents.emit('did-navigate');
    goodOf(await bridge.keepRecovery({ session: 's1', ref: null, name: 'Hut', steps: 1, plan: newPlan() }));
    expect(goodOf(await electron.bridge(other).listRecoveries({})).recoveries).toEqual([]);
    window.contentsEvents.emit('did-navigate');
    const offered = async () => goodOf(await electron.bridge(other).listRecoveries({})).recoveries.length;
    while ((await offered()) === 0) await new Promise((resolve) => setImmediate(resolve));
    window.events.emit('closed');
    expect(await electron.invoke(window.id, { url: APP_ADDRESS, parent: null }, 'info', {})).toMatchObject({ ok: false });
  });

  test('the program ends with its last window, but not on macOS', async () => {
    for (const [platform, quits] of [['linux', true], ['win32', true], ['darwin', false]] as const) {
      const { electron } = await started(new FakeElectron(['electron', '.'], platform));
      electron.appEvents.emit('window-all-closed');
      expect(electron.hasQuit).toBe(quits);
    }
  });
});

describe('the menu', () => {
  test('tells the focused window which action was chosen, and only that window', async () => {
    const { electron, window, folder } = await started();
    electron.appEvents.emit('second-instance', {}, ['nozzlewright', 'b.nzw'], folder);
    const other = electron.windows[1] as FakeWindow;
    window.events.emit('focus');
    const heard: string[] = [];
    const stop = electron.bridge(window).onAction((action) => heard.push(action));
    electron.bridge(other).onAction((action) => heard.push(`other ${action}`));
    const save = electron.menu.flatMap(({ submenu }) => (Array.isArray(submenu) ? submenu : [])).find(({ label }) => label === 'Save plan');
    const click = save?.click as (() => void) | undefined;
    click?.();
    stop();
    click?.();
    expect(heard).toEqual(['save']);
    expect(save).toMatchObject({ accelerator: 'CmdOrCtrl+S', registerAccelerator: false });
  });

  test('has the menus of its system', async () => {
    const roles = async (platform: NodeJS.Platform) => (await started(new FakeElectron(['electron', '.'], platform))).electron.menu.map(({ role, label }) => role ?? label);
    expect(await roles('linux')).toEqual(['Plan', 'Edit', 'View', 'Help']);
    expect(await roles('darwin')).toEqual(['appMenu', 'Plan', 'Edit', 'View', 'Help', 'windowMenu']);
  });
});
