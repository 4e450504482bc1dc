import type { Host } from '#shared/host/contract';

/** A host with an end: it lets go of every plan it holds and stops its work. One serves one window. */
export interface LocalHost extends Host {
  end(): Promise<void>;
}
