import { derivePlan } from '#shared/derived/derive-plan';
import { allowedPatch } from '#shared/margins/allowed-patch';
import { nozzleHeights } from '#shared/margins/height-range';
import { provenPatch } from '#shared/margins/proven-patch';
import { frozen } from './frozen-plan.ts';
import type { RoomReply, RoomRequest } from './store/room-to-move.ts';

let latest = 0;
const reply = (message: RoomReply): void => self.postMessage(message);
/** Lets what the window has sent meanwhile come in: an older question is dropped between two steps. */
const breath = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

self.onmessage = async ({ data: { serial, plan, nozzle } }: MessageEvent<RoomRequest>): Promise<void> => {
  latest = serial;
  const derived = derivePlan(frozen(plan));
  reply({ serial, patch: allowedPatch(derived, nozzle), isTried: false, heights: undefined });
  await breath();
  if (latest !== serial) return;
  const patch = provenPatch(derived, nozzle);
  reply({ serial, patch, isTried: true, heights: undefined });
  await breath();
  if (latest !== serial) return;
  const shape = derived.nozzles.find(({ ref }) => ref.id === nozzle.id && ref.network === nozzle.network);
  const drop_m = shape?.profile?.limits.nozzleToCeiling_m?.value;
  const local = shape?.localCeiling_m !== undefined && drop_m !== undefined ? { ceiling_m: shape.localCeiling_m, drop_m } : undefined;
  reply({ serial, patch, isTried: true, heights: nozzleHeights(derived.plan, nozzle, local) });
};
