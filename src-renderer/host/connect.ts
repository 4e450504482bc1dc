import { bridgeTransport } from '#shared/host/bridge';
import type { Host } from '#shared/host/contract';
import { hostOver } from '#shared/host/transport';
import { findBridge } from './bridge.ts';
import { httpTransport, stayAlive } from './http.ts';

/** The host behind this window, and what its menu asks for. */
export interface Connection {
  readonly host: Host;
  /** Calls back with the id of each action chosen in the system's menu; never, where there is none. */
  onAction(listener: (action: string) => void): void;
}

/**
 * Reaches the host: over the desktop shell's bridge where there is one, over the loopback address otherwise.
 * @param windowName  made anew at each load
 */
export function connectHost(windowName: string): Connection {
  const bridge = findBridge();
  if (bridge) return { host: hostOver(bridgeTransport(bridge)), onAction: (listener) => void bridge.onAction(listener) };
  stayAlive(windowName);
  return { host: hostOver(httpTransport(windowName)), onAction: () => undefined };
}
