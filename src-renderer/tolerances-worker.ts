import { derivePlan } from '#shared/derived/derive-plan';
import { fieldRooms } from '#shared/margins/field-room';
import type { Plan } from '#shared/model/plan';
import { printedTolerances } from '#shared/sheets/field-tables';
import { frozen } from './frozen-plan.ts';
import type { TolerancesReply } from './store/printed-tolerances.ts';

self.onmessage = ({ data: plan }: MessageEvent<Plan>): void => {
  const derived = derivePlan(frozen(plan));
  self.postMessage({ printed: [...printedTolerances(derived, fieldRooms(derived))] } satisfies TolerancesReply);
};
