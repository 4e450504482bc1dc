import type { Space } from '../../derived/derived.ts';
import { type Deduction, type VolumeSums } from './design.ts';
import { netVolumeOf_m3 } from './net-volume.ts';
import { type Worked, notWorked, worked } from './worked.ts';

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
  return worked({ gross_m3: measured.reduce((sum, each) => sum + each.gross_m3, 0), net_m3, spaces: measured, deductions: deductionsOf(spaces) });
}

function deductionsOf(spaces: readonly Space[]): Deduction[] {
  const found = new Map<string, Deduction>();
  for (const space of spaces) {
    for (const solid of space.solids) {
      if (solid.obstruction.isPermeable) continue;
      const left_m3 = netVolumeOf_m3({ ...space, solids: [solid] });
      const volume_m3 = (space.grossVolume_m3 ?? 0) - (left_m3 ?? 0);
      const known = found.get(solid.ref.id);
      if (volume_m3 > 0) found.set(solid.ref.id, { ref: solid.ref, name: solid.obstruction.name, volume_m3: volume_m3 + (known?.volume_m3 ?? 0) });
    }
  }
  return [...found.values()];
}
