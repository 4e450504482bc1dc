import type { Network, RefOf } from '../model/plan.ts';
import { networkSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { networkOf } from './lookup.ts';
import { soundName } from './sound-value.ts';

const PICK = { name: true, source: true, assembly: true, manifold: true, installation: true, release: true } as const;
const FIELDS = networkSchema.pick(PICK).partial();

/**
 * Changes name, discharge assembly, manifold, how the pipe is put up, releasing circuit, or the node where the pipe begins. Refuses a blank name, a node that is not in
 * the network, two parts with one id, and a value out of range.
 */
export const editNetwork = command('Edit network', (draft, ref: RefOf<'network'>, change: Partial<Pick<Network, keyof typeof PICK>>) => {
  const network = networkOf(draft, ref.id);
  if (change.name !== undefined) soundName('A network', change.name);
  if (change.source && !Object.hasOwn(network.nodes, change.source)) refuse('This pipe end is not in the network.');
  const devices = change.release?.devices.map(({ id }) => id) ?? [];
  if (new Set(devices).size !== devices.length) refuse('Two devices of the releasing circuit have the same id.');
  const parts = change.assembly?.map(({ id }) => id) ?? [];
  if (new Set(parts).size !== parts.length) refuse('Two parts of the discharge assembly have the same id.');
  applyChange(network, FIELDS, change);
});
