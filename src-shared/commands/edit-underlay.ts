import type { RefOf, Underlay } from '../model/plan.ts';
import { underlaySchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { underlayOf } from './lookup.ts';
import { soundName } from './sound-value.ts';
import { refuseLocked, rescale, soundKnownLength } from './underlay-scale.ts';

const PICK = { name: true, opacity: true, hiddenLayers: true, visible: true, locked: true, knownLengths: true, metresPerUnit: true, calibration: true } as const;
const FIELDS = underlaySchema.pick(PICK).partial();

/**
 * Changes how a floor plan is shown, its name, or its scale. Its origin stays where it is.
 * Refuses a blank name, a value out of range, a scale without `calibration` of its kind, to take away the known
 * length that sets the scale, and to scale a locked floor plan.
 */
export const editUnderlay = command('Edit floor plan', (draft, ref: RefOf<'underlay'>, change: Partial<Pick<Underlay, keyof typeof PICK>>) => {
  const underlay = underlayOf(draft, ref);
  const { metresPerUnit, ...others } = change;
  if (change.name !== undefined) soundName('A floor plan', change.name);
  for (const known of change.knownLengths ?? []) soundKnownLength(known);
  if (metresPerUnit !== undefined && metresPerUnit !== underlay.metresPerUnit) {
    refuseLocked(underlay);
    if (metresPerUnit === null) underlay.metresPerUnit = null;
    else rescale(underlay, metresPerUnit, { x: 0, y: 0 });
  }
  applyChange(underlay, FIELDS, others);
  if ((underlay.calibration === 'none') !== (underlay.metresPerUnit === null)) refuse('Say where the scale comes from: the file’s units, or two points.');
  if (underlay.calibration === 'two-points' && underlay.knownLengths.length === 0) refuse('The first known length sets the scale. Set the scale anew instead of taking it away.');
});
