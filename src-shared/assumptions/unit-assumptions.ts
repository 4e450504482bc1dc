import type { Derived } from '../derived/derived.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import type { Assumption } from './assumption.ts';

const MOST_NAMED = 4;
/** Names in a sentence, the first few of them. */
export const namesOf = (names: readonly string[]): string => (names.length <= MOST_NAMED ? names.join(', ') : `${names.slice(0, MOST_NAMED).join(', ')} and ${names.length - MOST_NAMED} more`);

/** What the manual of the unit, or the place of a cylinder, stands in for. */
export function unitAssumptions({ networks, plan }: Derived): Assumption[] {
  const { lengths } = plan.settings;
  const profiles = new Map(networks.flatMap(({ profile }) => (profile?.isSample ? [[profile.id, profile] as const] : [])));
  const samples = [...profiles.values()].map(
    (profile): Assumption => ({
      id: `sample/${profile.id}`,
      topic: 'unit',
      name: profile.name,
      taken: 'Every limit comes from the sample profile, whose figures are invented.',
      affects: 'Every check and sum that rests on the manual of the unit.',
      change: 'Enter the limits of the unit’s own manual.',
      at: { kind: 'profile' },
    }),
  );
  return [
    ...samples,
    ...networks.flatMap(({ network, ref, profile }): Assumption[] => {
      const stated_Pa = profile?.limits.regulatorPressure_Pa?.value;
      const unset = network.assembly.filter(({ kind, setPressure_Pa }) => kind === 'regulator' && setPressure_Pa === null);
      const lengthless = network.assembly.filter(({ kind, length_m }) => kind === 'hose' && length_m === 0);
      const solenoids = network.release?.devices.filter(({ kind, current_A, leastVoltage_V }) => kind === 'solenoid' && (current_A === null || leastVoltage_V === null)) ?? [];
      const here = Object.values(network.cylinders).filter(({ storage }) => storage === null);
      const on = (id: string, taken: string, affects: string, change: string, label: string): Assumption => ({ id: `${id}/${network.id}`, topic: 'unit', name: network.name, taken, affects, change, at: { kind: 'field', on: ref, label } });
      return [
        ...(network.assembly.length === 0 && stated_Pa !== undefined
          ? [on('assembly', `Nobody has listed the discharge assembly: the regulator of the manual, set to ${formatQuantity(stated_Pa, 'pressure', lengths)}, is taken to stand before all pipe.`, 'Pressure that pipe and fittings must stand, flow, and time of the discharge.', 'List the parts of the discharge assembly.', 'Discharge assembly')]
          : []),
        ...(unset.length > 0 && stated_Pa !== undefined
          ? [on('set-pressure', `${namesOf(unset.map(({ name }) => name))}: taken as set to the ${formatQuantity(stated_Pa, 'pressure', lengths)} of the manual.`, 'Pressure that pipe and fittings must stand, flow, and time of the discharge.', 'Enter the set pressure.', 'Set pressure (absolute)')]
          : []),
        ...(lengthless.length > 0 ? [on('hose-length', `${namesOf(lengthless.map(({ name }) => name))}: its length is not entered, so that it is drawn as short as its bend allows.`, 'Where hose and first pipe lie, and what they meet.', 'Enter the length of the hose.', 'Length')] : []),
        ...(solenoids.length > 0 ? [on('solenoid', `${namesOf(solenoids.map(({ name }) => name))}: current and least voltage are those of the manual.`, 'Voltage at the devices and current that the panel gives.', 'Enter current and least voltage of the device.', 'Current')] : []),
        ...(here.length > 0
          ? [
              {
                id: `storage/${network.id}`,
                topic: 'unit' as const,
                name: network.name,
                taken: `${namesOf(here.map(({ name }) => name))}: as cold and warm as the room that they stand in.`,
                affects: 'Whether the cylinders keep to their range of temperature.',
                change: 'Enter how cold and warm it gets where they stand.',
                at: { kind: 'field' as const, on: { kind: 'cylinder' as const, network: network.id, id: here[0]?.id ?? '' }, label: 'Coldest' },
              },
            ]
          : []),
      ];
    }),
  ];
}
