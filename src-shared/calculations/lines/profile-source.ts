import type { LimitKey } from '../../profile/limit-catalogue.ts';
import type { LineContext } from './draft.ts';

/** Where a figure of a network's unit profile was read, as a line prints it. */
export function limitSource({ profiles }: LineContext, network: string, key: LimitKey): string {
  const limit = profiles[network]?.limits[key];
  return limit?.source ? `unit profile: ${limit.source}` : 'unit profile';
}
