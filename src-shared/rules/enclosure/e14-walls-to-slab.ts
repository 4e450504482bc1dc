import { wallMiddle } from '../../derived/wall-places.ts';
import type { Corner, Enclosure, RefOf } from '../../model/plan.ts';
import { thingName } from '../../model/thing-name.ts';
import { defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, perServedRoom } from '../served-rooms.ts';

interface AskedWalls extends Pick<ServedRoom, 'ref' | 'enclosure'> {
  /** Name of each wall, in the order of the outline. */
  readonly walls: readonly { readonly corner: Corner; readonly name: string }[];
}

/** What hangs under the slab, so that a wall can end below it; undefined where the ceiling is the slab. */
function hangingOf({ ceilingVoid, ceiling }: Enclosure): 'open' | 'protected' | 'not-entered' | undefined {
  if (ceilingVoid) return ceilingVoid.isProtected ? 'protected' : 'open';
  return ceiling.make === 'tiles' || ceiling.make === 'open' ? 'not-entered' : undefined;
}

const listOf = (names: readonly string[]): string => {
  const [first = '', second] = names;
  if (names.length === 1) return first;
  return names.length === 2 ? `${first} and ${second}` : `${first} and ${names.length - 1} more`;
};

/**
 * E14: walls go up to the slab, not only to a ceiling that hangs below it.
 * Measure: walls that end at the ceiling. Limit: none. Where no void lies over the ceiling, the ceiling is the slab.
 * Not checked: nobody has said how far up a wall goes under a ceiling that hangs.
 */
export const e14WallsToSlab = defineRule<AskedWalls>({
  id: 'E14',
  title: 'Walls up to the slab',
  severity: 'warn',
  measure: 'count',
  basis: { formula: 'every wall reaches the slab where a ceiling hangs below it', source: 'common practice', caution: 'Lift a tile and look: a wall is often drawn higher than it was built.' },
  subjects: perServedRoom(({ ref, name, enclosure, on }) => {
    const walls = [enclosure.outline, ...enclosure.holes].flat().map((corner) => {
      const at: RefOf<'wall'> = { kind: 'wall', level: ref.level, enclosure: ref.id, id: corner.id };
      return { corner, name: thingName({ levels: { [ref.level]: on.level }, networks: {} }, at).replace(/^W/, 'w').replace(` of ${enclosure.name}`, '') };
    });
    return [{ subject: { ref, enclosure, walls }, ref, name }];
  }),
  check({ ref, enclosure, walls }) {
    const hanging = hangingOf(enclosure);
    const placeOf = (found: AskedWalls['walls']) => ({ level: ref.level, at: found.flatMap(({ corner }) => wallMiddle(enclosure, corner.id) ?? []) });
    const low = walls.filter(({ corner }) => corner.wall.reaches === 'ceiling');
    const unknown = walls.filter(({ corner }) => corner.wall.reaches === 'unknown');
    const inputs = [
      { label: 'Walls up to the slab', value: String(walls.length - low.length - unknown.length) },
      { label: 'Walls up to the ceiling', value: String(low.length) },
      { label: 'Walls not looked at', value: String(unknown.length) },
    ];
    const figures = { kind: 'judged', measured: hanging ? low.length : 0, limit: 0, limitSource: 'common practice', inputs } as const;
    if (!hanging) return { ...figures, isKept: true, margin: 0, text: 'No void lies over its ceiling: the ceiling is the slab.', place: placeOf(walls) };
    if (low.length > 0) {
      const over = hanging === 'protected' ? 'the protected void over it is open to the sides' : hanging === 'open' ? 'gas leaves over it through the void' : 'its ceiling hangs under a void that is not entered';
      const end = low.length === 1 ? 'ends' : 'end';
      const first = listOf(low.map(({ name }) => name));
      return {
        ...figures,
        isKept: false,
        margin: -low.length,
        text: `${first.charAt(0).toUpperCase()}${first.slice(1)} ${end} at the ceiling: ${over}.`,
        place: placeOf(low),
        cure: { kind: 'advice', text: `Build ${low.map(({ name }) => name).join(', ')} up to the slab, or close the void over ${low.length === 1 ? 'it' : 'them'}.` },
      };
    }
    if (unknown.length > 0) return notChecked(`a ceiling hangs over the room, and how far up ${listOf(unknown.map(({ name }) => name))} ${unknown.length === 1 ? 'goes' : 'go'} is not said.`, placeOf(unknown));
    return { ...figures, isKept: true, margin: 0, text: 'All its walls go up to the slab.', place: placeOf(walls) };
  },
});
