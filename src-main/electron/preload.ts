import { contextBridge, ipcRenderer } from 'electron';
import { BRIDGE_NAME } from '#shared/host/bridge';
import { HOST_METHODS } from '#shared/host/methods';
import { ACTION_CHANNEL, CALL_CHANNEL } from './channels.ts';
import { makeBridge } from './make-bridge.ts';

contextBridge.exposeInMainWorld(
  BRIDGE_NAME,
  makeBridge(
    Object.keys(HOST_METHODS),
    (method, request) => ipcRenderer.invoke(CALL_CHANNEL, method, request),
    (listener) => {
      const hear = (_event: unknown, action: unknown): void => {
        if (typeof action === 'string') listener(action);
      };
      ipcRenderer.on(ACTION_CHANNEL, hear);
      return () => ipcRenderer.off(ACTION_CHANNEL, hear);
    },
  ),
);
