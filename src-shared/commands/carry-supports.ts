import { heldPipe, shareAlong } from '../model/held-pipe.ts';
import type { Network, Plan, Support } from '../model/plan.ts';

/** Where a support goes when pipe moves: a new place, `null` when what it held has gone, undefined when it stays. */
function carried(before: Network, after: Network, { at }: Support): Support['at'] | null | undefined {
  if (heldPipe(after, at)) return undefined;
  const held = heldPipe(before, at);
  if (!held) return undefined;
  const now = after.pipes[held.id];
  const [a, b] = [after.nodes[now?.from ?? '']?.at, after.nodes[now?.to ?? '']?.at];
  const share = shareAlong(before, held, at);
  if (!now || !a || !b || share === undefined) return null;
  const along = now.from === held.from || now.to === held.to ? share : 1 - share;
  return { x: a.x + (b.x - a.x) * along, y: a.y + (b.y - a.y) * along, z: a.z + (b.z - a.z) * along };
}

/**
 * Supports ride on their pipe: where the pipe under one has moved it moves along, where the pipe has gone it goes.
 * @returns new places by network and support, null for a support that goes; empty when nothing has to follow
 */
export function carriedSupports(before: Plan, after: Plan): { readonly network: string; readonly support: string; readonly at: Support['at'] | null }[] {
  if (before.networks === after.networks) return [];
  return Object.values(after.networks).flatMap((network) => {
    const old = before.networks[network.id];
    if (!old || old === network || (old.nodes === network.nodes && old.pipes === network.pipes)) return [];
    return Object.values(network.supports).flatMap((support) => {
      const at = old.supports[support.id] === support ? carried(old, network, support) : undefined;
      return at === undefined ? [] : [{ network: network.id, support: support.id, at }];
    });
  });
}
