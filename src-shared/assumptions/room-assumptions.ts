import { ASSUMED_THICK_m } from '../derived/clash-bounds.ts';
import type { Derived } from '../derived/derived.ts';
import type { Level, Ref } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import type { Assumption, AssumptionPlace } from './assumption.ts';
import { namesOf } from './unit-assumptions.ts';

const onForm = (on: Ref, label: string): AssumptionPlace => ({ kind: 'field', on, label });

/** Things of a level that count as solid: gas does not fill them, so that they lessen the agent needed. */
function solidThings({ id: level, name, obstructions }: Level): Assumption[] {
  const solid = Object.values(obstructions).filter(({ isPermeable }) => !isPermeable);
  const [first] = solid;
  if (!first) return [];
  return [
    {
      id: `solid/${level}`,
      topic: 'room',
      name,
      taken: `${namesOf(solid.map((each) => each.name))}: taken as solid over the whole footprint, from bottom to top.`,
      affects: 'What stops jets and sight, and the volume: what is truly hollow asks for more agent.',
      change: 'Say of each whether gas passes through it.',
      at: onForm({ kind: 'obstruction', level, id: first.id }, 'Gas'),
    },
  ];
}

/** What is taken for granted of rooms, their leaks and their walls. */
export function roomAssumptions({ plan, networks }: Derived): Assumption[] {
  const { lengths } = plan.settings;
  const hasPipe = networks.some(({ pipes }) => pipes.length > 0);
  return Object.values(plan.levels).flatMap((level) => [
    ...Object.values(level.enclosures).flatMap((enclosure): Assumption[] => {
      const on: Ref = { kind: 'enclosure', level: level.id, id: enclosure.id };
      const about = (id: string, taken: string, affects: string, change: string, label: string): Assumption => ({ id: `${id}/${enclosure.id}`, topic: 'room', name: enclosure.name, taken, affects, change, at: onForm(on, label) });
      return [
        ...(enclosure.height_m === null && Object.keys(enclosure.ceilingZones).length === 0
          ? [about('ceiling', 'Its ceiling is not known: nothing is judged against it, and walls and things are taken to go up without end.', 'Every check of height, the volume, and all that follows from it.', 'Enter floor to ceiling.', 'Floor to ceiling')]
          : []),
        ...(enclosure.leakage.kind === 'area' ? [about('leak-area', 'Its leakage area was entered, not measured.', 'How long it holds the gas.', 'Enter the readings of a door-fan test.', 'What is known of the leaks')] : []),
        ...(enclosure.people.egress_s !== null ? [about('egress', 'The time to leave was entered as one figure; nobody walked it for this plan.', 'Whether people are out before the gas comes.', 'Walk the longest way out and enter the time.', 'Time to leave')] : []),
      ];
    }),
    ...(hasPipe && Object.keys(level.enclosures).length > 0
      ? [
          {
            id: `walls/${level.id}`,
            topic: 'room' as const,
            name: level.name,
            taken: `Walls with no other room behind them, and all slabs, are taken as ${formatLength(ASSUMED_THICK_m, lengths)} thick.`,
            affects: 'Which pipe counts as going through a wall, and how near pipe may come outside.',
            change: 'Draw the rooms on the other side where pipe goes there.',
          },
        ]
      : []),
    ...solidThings(level),
  ]);
}
