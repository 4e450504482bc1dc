import type { Plan } from '../model/plan.ts';
import { asItStood } from './as-it-stood.ts';
import { refuse } from './command.ts';
import { namesIn } from './next-name.ts';
import { soundName } from './sound-value.ts';

/** Refuses a blank name, and one that another cylinder or nozzle of the plan has: sheets tell them apart by name alone. */
export function refuseTakenName(plan: Plan, kind: 'cylinder' | 'nozzle', present: string, wanted: string): void {
  const name = soundName(`A ${kind}`, wanted);
  if (name !== present && namesIn(asItStood(plan), kind).includes(name)) refuse(`Another ${kind} is called “${name}”. Choose a name of its own, so that sheets can be read.`);
}
