import type { Space } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import { isThere } from '../../derived/solids.ts';
import type { Deduction, VolumeSums } from './design.ts';
import { netVolumeOf_m3 } from './net-volume.ts';
import { type Worked, notWorked, worked } from './worked.ts';

/** What each solid thing in a space takes off it by itself. */
const deductionsOf = remembered((space: Space): readonly Deduction[] =>
  space.solids.flatMap((solid) => {
    if (solid.obstruction.isPermeable || !isThere(solid)) return [];
    const volume_m3 = (space.grossVolume_m3 ?? 0) - (netVolumeOf_m3({ ...space, solids: [solid] }) ?? 0);
    return volume_m3 > 0 ? [{ ref: solid.ref, name: solid.obstruction.name, volume_m3 }] : [];
  }),
);

/** What each thing takes off all of the spaces together: a column may stand in a room and in the void under it. */
function allDeductions(spaces: readonly Space[]): Deduction[] {
  const found = new Map<string, Deduction>();
  for (const each of spaces.flatMap((space) => deductionsOf(space))) {
    const volume_m3 = each.volume_m3 + (found.get(each.ref.id)?.volume_m3 ?? 0);
    found.set(each.ref.id, { ...each, volume_m3 });
  }
  return [...found.values()];
}

/** Gross and net volume of the protected spaces of one enclosure, with what each solid thing takes off. */
export function volumeOf(spaces: readonly Space[]): Worked<VolumeSums> {
  const measured: VolumeSums['spaces'][number][] = [];
  for (const space of spaces) {
    const net_m3 = netVolumeOf_m3(space);
    if (space.grossVolume_m3 === undefined || net_m3 === undefined) return notWorked(`the height of “${space.name}” is not known.`);
    measured.push({ space, gross_m3: space.grossVolume_m3, net_m3 });
  }
  const net_m3 = measured.reduce((sum, each) => sum + each.net_m3, 0);
  if (!(net_m3 > 0)) return notWorked('the enclosure has no volume.');
  return worked({ gross_m3: measured.reduce((sum, each) => sum + each.gross_m3, 0), net_m3, spaces: measured, deductions: allDeductions(spaces) });
}
