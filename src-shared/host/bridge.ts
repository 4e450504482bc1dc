import type { Host } from './contract.ts';
import type { Transport } from './transport.ts';

/** Name under which the bridge stands in the window of the desktop shell. */
export const BRIDGE_NAME = 'nozzlewright';

/**
 * What the desktop shell puts into its window: the methods of the contract and nothing else to send with,
 * and a way to hear which action was chosen in the system's menu.
 */
export interface Bridge extends Host {
  /** Calls back with the id of each action chosen in the menu. Answers how to stop. */
  onAction(listener: (action: string) => void): () => void;
}

/** Reaches the host through the bridge. */
export const bridgeTransport =
  (bridge: Host): Transport =>
  (method, request) =>
    (bridge[method] as (request: unknown) => Promise<unknown>)(request);
