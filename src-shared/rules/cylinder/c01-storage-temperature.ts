import type { Space } from '../../derived/derived.ts';
import { atLeast, atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { perNetworkOnLevel } from '../subjects.ts';
import { slackOf } from '../slack.ts';
import { type NetworkCylinder, cylindersOf, placeOfCylinder, roomAround } from './cylinders.ts';

interface StoredCylinder extends NetworkCylinder {
  readonly room: Space | undefined;
}

/**
 * C1: a cylinder stands where it gets neither colder nor warmer than its manual allows.
 * Measure: coldest and warmest temperature where it stands [K]: its own, else those of the enclosure that it stands in.
 * Limit: storage temperatures of the unit profile.
 * Not checked: neither temperature is known, or a limit is blank and the other is kept. A fault is reported even then.
 */
export const c01StorageTemperature = defineRule<StoredCylinder>({
  id: 'C1',
  title: 'Storage temperature',
  severity: 'stop',
  measure: 'temperature',
  basis: { formula: 'coldest place of storage ≤ coldest, and warmest ≤ warmest, where the cylinder stands', source: 'unit profile' },
  limitKeys: ['storageLeast_K', 'storageGreatest_K'],
  subjects: perNetworkOnLevel((network, { spaces }) => cylindersOf(network, ({ at }) => ({ room: roomAround(spaces, network.level.id, at) }))),
  check(subject, { say }) {
    const { cylinder, profile, room } = subject;
    const place = placeOfCylinder(subject);
    const range = cylinder.storage ?? room?.enclosure.temperature ?? null;
    const where = cylinder.storage ? 'where it stands' : `in ${room?.name ?? 'its room'}`;
    const least = limitOrBlank(profile, 'storageLeast_K');
    const greatest = limitOrBlank(profile, 'storageGreatest_K');
    if (!range) {
      if ('blank' in least) return least.blank;
      if ('blank' in greatest) return greatest.blank;
      return notChecked(room ? 'how cold and how warm it gets where it stands is not known.' : 'it stands in no drawn room, and how cold and how warm it gets there is not entered.', place);
    }
    const cold = least.limit && atLeast(range.least_K, least.limit, slackOf(least.limit.value));
    const warm = greatest.limit && atMost(range.greatest_K, greatest.limit, slackOf(greatest.limit.value));
    const texts: string[] = [];
    if (cold && !cold.isKept) {
      const { value, limit } = say.quantityAgainst(cold.measured, cold.limit, 'temperature');
      texts.push(`It gets as cold as ${value} ${where}; the manual allows ${limit}.`);
    }
    if (warm && !warm.isKept) {
      const { value, limit } = say.quantityAgainst(warm.measured, warm.limit, 'temperature');
      texts.push(`It gets as warm as ${value} ${where}; the manual allows ${limit}.`);
    }
    const fault = cold && !cold.isKept ? cold : warm && !warm.isKept ? warm : undefined;
    if (fault) return { ...fault, text: `${texts.join(' ')} Stand it elsewhere, or heat or cool that place.`, place, cure: { kind: 'advice', text: 'Stand the cylinder where it gets neither so cold nor so warm.' } };
    if ('blank' in least) return least.blank;
    if ('blank' in greatest) return greatest.blank;
    if (!cold || !warm) return notChecked('its storage temperatures are not known.', place);
    const nearer = cold.margin <= warm.margin ? cold : warm;
    return { ...nearer, text: `It gets ${say.quantity(range.least_K, 'temperature')} to ${say.quantity(range.greatest_K, 'temperature')} ${where}; ${say.quantity(cold.limit, 'temperature')} to ${say.quantity(warm.limit, 'temperature')} allowed.`, place };
  },
});
