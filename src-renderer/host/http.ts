import { type Transport, framedTransport } from '#shared/host/transport';

/**
 * Reaches the host at the address that this window came from.
 * @param windowName  tells this window from others of the same program
 */
export const httpTransport = (windowName: string): Transport =>
  framedTransport(async (method, body) => {
    const answer = await fetch(`/api/${method}`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/octet-stream', 'X-Window': windowName },
      body: new Uint8Array(body),
      cache: 'no-store',
    });
    if (!answer.ok && answer.status !== 404) throw new Error(`The host answered ${answer.status}.`);
    return new Uint8Array(await answer.arrayBuffer());
  });

/** Tells the host for as long as the window lives that it does; the host ends some time after the last one has gone. */
export const stayAlive = (windowName: string): EventSource => new EventSource(`/alive?window=${encodeURIComponent(windowName)}`);
