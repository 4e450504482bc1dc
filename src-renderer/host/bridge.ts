import { BRIDGE_NAME, type Bridge } from '#shared/host/bridge';

declare global {
  interface Window {
    readonly [BRIDGE_NAME]?: Bridge;
  }
}

/** What the desktop shell put into the page; undefined in a browser. */
export const findBridge = (): Bridge | undefined => window[BRIDGE_NAME];
