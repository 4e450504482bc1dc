import type { Network, Release } from '../../model/plan.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import { celsius_K } from '../../units/convert.ts';
import { allowedFill, conductorArea_m2, conduitArea_m2 } from '../formulas/conduit-fill.ts';
import { type CircuitLoad, lumpedDrop_V, voltageDrops_V } from '../formulas/voltage-drop.ts';
import { wireResistance_ohm_m } from '../formulas/wire.ts';
import type { DeviceVoltage, FillOfConduit, ReleaseSums } from './design.ts';
import { type Worked, notWorked, workOut, worked } from './worked.ts';

/** Wire is reckoned at the temperature of its table, which errs toward a larger loss. */
const WIRE_K = celsius_K(75);

const drawnUp = ({ release, name }: Network): Worked<Release> => (release ? worked(release) : notWorked(`the releasing circuit of “${name}” is not drawn up.`));

/** Voltage at each device of the releasing circuit, its loads at their own places. */
export function releaseOf(network: Network, profile: UnitProfile | undefined): Worked<ReleaseSums> {
  const drawn = drawnUp(network);
  if (!drawn.isKnown) return drawn;
  const release = drawn.sums;
  if (release.devices.length === 0) return notWorked('the releasing circuit has no device.');
  const loads: CircuitLoad[] = [];
  for (const { name, kind, distance_m, current_A } of release.devices) {
    const drawn_A = current_A ?? (kind === 'solenoid' ? profile?.limits.solenoidCurrent_A?.value : undefined);
    if (distance_m === null) return notWorked(`how far “${name}” is from the panel is not known.`);
    if (drawn_A === undefined) return notWorked(`the current of “${name}” is not known.`);
    loads.push({ distance_m, current_A: drawn_A });
  }
  return workOut(() => {
    const resistance_ohm_m = wireResistance_ohm_m(release.wireGauge, release.stranding, WIRE_K);
    const drops = voltageDrops_V(loads, resistance_ohm_m);
    const drop_V = Math.max(...drops);
    const devices = release.devices.map(({ id, name, kind, leastVoltage_V }, i): DeviceVoltage => ({
      id,
      name,
      kind,
      distance_m: loads[i]?.distance_m ?? 0,
      current_A: loads[i]?.current_A ?? 0,
      voltage_V: release.supply_V - (drops[i] ?? 0),
      least_V: leastVoltage_V ?? (kind === 'solenoid' ? profile?.limits.solenoidLeastVoltage_V?.value : undefined),
    }));
    return worked({ devices, resistance_ohm_m, drop_V, lumpedDrop_V: lumpedDrop_V(loads, resistance_ohm_m), end_V: release.supply_V - drop_V, total_A: loads.reduce((sum, { current_A }) => sum + current_A, 0) });
  });
}

/** How full the conduit of the releasing circuit is. */
export function conduitOf(network: Network): Worked<FillOfConduit> {
  const drawn = drawnUp(network);
  if (!drawn.isKnown) return drawn;
  const { conduit, conductors } = drawn.sums;
  if (!conduit) return notWorked('no conduit is chosen for the releasing circuit.');
  const count = conductors.reduce((sum, each) => sum + each.count, 0);
  if (count === 0) return notWorked('no conductor is listed in the conduit.');
  return workOut(() =>
    worked({
      conductors: count,
      area_m2: conductors.reduce((sum, { type, wireGauge, count: each }) => sum + each * conductorArea_m2(type, wireGauge), 0),
      allowed_m2: conduitArea_m2(conduit.kind, conduit.size) * allowedFill(count),
    }),
  );
}
