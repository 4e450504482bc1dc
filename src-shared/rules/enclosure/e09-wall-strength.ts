import { wallMiddle } from '../../derived/wall-places.ts';
import type { RefOf } from '../../model/plan.ts';
import { thingName } from '../../model/thing-name.ts';
import { defineRule } from '../rule.ts';
import { type EnclosureOnLevel, placeOfEnclosure, servedEnclosuresOnLevel } from '../enclosure-subjects.ts';

/**
 * E9: of every wall it is known what pressure it bears, doors and panes in it included.
 * Measure: walls of which it is not. Limit: none; a missing value is a stop, for no vent can be sized without it.
 */
export const e09WallStrength = defineRule<EnclosureOnLevel>({
  id: 'E9',
  title: 'Wall strength known',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'the pressure that each wall bears with its doors, panes and tiles is entered',
    source: 'project; a structural engineer declares it',
  },
  subjects: servedEnclosuresOnLevel,
  check({ design, level }, { say }) {
    const { enclosure, ref, weakest } = design;
    const walls = [enclosure.outline, ...enclosure.holes].flat();
    const unknown = walls.filter(({ wall }) => wall.allowablePressure_Pa === null);
    const figures = { kind: 'judged', measured: unknown.length, limit: 0, limitSource: 'project', margin: unknown.length > 0 ? -unknown.length : 0 } as const;
    const [first] = unknown;
    if (!first) {
      const text = weakest.isKnown ? `The weakest is ${weakest.sums.wallName} with ${say.quantity(weakest.sums.pressure_Pa, 'pressureDifference')}.` : 'What each wall bears is entered.';
      return { ...figures, isKept: true, text, place: placeOfEnclosure(design) };
    }
    const named = ({ id }: typeof first): string => thingName({ levels: { [level.id]: level }, networks: {} }, { kind: 'wall', level: ref.level, enclosure: ref.id, id } satisfies RefOf<'wall'>);
    const others = unknown.length === 1 ? ' bears' : unknown.length === 2 ? ' and 1 other wall bear' : ` and ${unknown.length - 1} other walls bear`;
    return {
      ...figures,
      isKept: false,
      text: `It is not known what pressure ${named(first)}${others}. Enter it, or no relief vent can be sized.`,
      place: { level: ref.level, at: unknown.flatMap(({ id }) => wallMiddle(enclosure, id) ?? []) },
      cure: { kind: 'advice', text: `Let a structural engineer declare what is borne by ${unknown.map(named).join(', ')}, doors and panes included, and enter it there.` },
    };
  },
});
