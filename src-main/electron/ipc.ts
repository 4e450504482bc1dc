import { failed } from '#shared/host/contract';
import { serve } from '#shared/host/serve';
import type { LocalHost } from '../services/local-host.ts';
import { isOwnAddress } from './app-protocol.ts';
import { CALL_CHANNEL } from './channels.ts';
import type { CallEvent, ElectronParts } from './electron-parts.ts';

/** Whether a call comes from the top frame of a page of the program's own. */
const isOwnFrame = ({ senderFrame }: CallEvent): boolean => senderFrame !== null && senderFrame.parent === null && isOwnAddress(senderFrame.url);

/**
 * Answers the calls of the windows, each with its own host.
 * @param hostOf  host of a window by the id of its contents; undefined for a window that is not ours
 */
export function answerCalls(ipcMain: ElectronParts['ipcMain'], hostOf: (contents: number) => LocalHost | undefined): void {
  ipcMain.handle(CALL_CHANNEL, async (event, method, request) => {
    const host = isOwnFrame(event) ? hostOf(event.sender.id) : undefined;
    if (!host || typeof method !== 'string') return failed('refused', 'This page may not use the program.', '', 'Close it.');
    return serve(host, method, request);
  });
}
