import type { EnclosureDesign, VolumeSums } from '../design/design.ts';
import { type Draft, type LineContext, PLAN, ownBasis } from './draft.ts';
import { amount, bracketed, figure } from './line-text.ts';

/** More solid things than this are summed in one line. */
const MOST_SOLIDS = 24;

const spaceBasis = ownBasis('V_gross = floor area·mean height', 'geometry of the plan');
const netBasis = ownBasis('V = Σ V_gross − V_solid, what overlaps counted once', 'geometry of the plan; only fixed, gas-tight things are taken off');

/** The net volume as every later step uses it. */
export function volumeLines(draft: Draft, { lengths }: LineContext, { volume }: EnclosureDesign): void {
  draft.with('net volume', volume, ({ spaces, deductions, gross_m3, net_m3 }: VolumeSums) => {
    for (const { space, gross_m3: gross } of spaces) {
      draft.step(`Gross volume of ${space.name}`, spaceBasis, `${figure(space.area_m2)}·${bracketed(gross / space.area_m2)}`, amount(gross, 'volume', lengths));
    }
    for (const { name, volume_m3 } of deductions.slice(0, MOST_SOLIDS)) draft.given(`Gas-tight: ${name}`, amount(volume_m3, 'volume', lengths), PLAN);
    const rest = deductions.slice(MOST_SOLIDS);
    if (rest.length > 0) draft.given(`Gas-tight: ${rest.length} more`, amount(rest.reduce((sum, { volume_m3 }) => sum + volume_m3, 0), 'volume', lengths), PLAN);
    draft.main('Net volume, V', netBasis, `${figure(gross_m3)} − ${figure(gross_m3 - net_m3)}`, amount(net_m3, 'volume', lengths));
  });
}
