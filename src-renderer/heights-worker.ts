import { pipeHeights, railHeights } from '#shared/margins/height-range';
import { frozen } from './frozen-plan.ts';
import type { HeightsReply, HeightsRequest } from './store/heights-to-raise.ts';

self.onmessage = ({ data: { serial, plan, raised } }: MessageEvent<HeightsRequest>): void => {
  const still = frozen(plan);
  const range = (raised.kind === 'cylinder' ? railHeights(still, raised) : pipeHeights(still, raised)) ?? null;
  self.postMessage({ serial, range } satisfies HeightsReply);
};
