import { jetsOf } from '../../derived/jets.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, askedNozzle, perNetwork, placeOfNozzle } from '../subjects.ts';
import { stoppedHoles, turnCure } from './hole-faults.ts';

/**
 * N7: every jet runs free before it meets anything.
 * Measure: shortest way from a hole to the first thing its jet meets at the height of the orifice [m].
 * Limit: least free jet, from the unit profile (common practice: 3 ft). A nozzle in a void is N18's, with a limit of its own.
 * Not checked: the nozzle serves no space, has no holes, or the limit is blank. A hole that N5 or N6 stops already
 * is not judged again: turning it cures both.
 */
export const n07FreeJet = defineRule<NozzleSubject>({
  id: 'N7',
  title: 'Free jet',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'distance along each hole to the first wall or thing at orifice height ≥ limit',
    source: 'unit profile; common practice 3 ft (0.9 m)',
  },
  limitKeys: ['freeJet_m'],
  subjects: perNetwork(({ nozzles }) => nozzles.filter(({ space }) => !space || space.kind === 'room').map(askedNozzle)),
  check(nozzle, { say }) {
    const free = limitOrBlank(nozzle.profile, 'freeJet_m');
    if (!free.limit) return free.blank;
    const { at, space } = nozzle;
    if (!at || !space) return notChecked('the nozzle hangs in no enclosure.');
    const jets = jetsOf(nozzle);
    if (jets.length === 0) return notChecked('its holes are not drawn.');
    const stopped = stoppedHoles(nozzle);
    const shortest = jets.filter(({ azimuth_rad }) => !stopped.has(azimuth_rad)).sort((a, b) => a.length_m - b.length_m)[0];
    if (!shortest) return notChecked('its holes already blow at a corner or a near wall. Turn them first.', placeOfNozzle(nozzle, at));
    const figures = atLeast(shortest.length_m, free.limit, LENGTH_SLACK_m);
    const { value: far, limit: wanted } = say.against(shortest.length_m, free.limit.value);
    const thing = shortest.hit?.kind === 'obstruction' ? nozzle.blockers.find(({ ref }) => ref.id === shortest.hit?.id) : undefined;
    const what = thing ? thing.obstruction.name || 'a thing in the room' : 'a wall';
    return {
      ...figures,
      text: figures.isKept
        ? `Its shortest jet runs free for ${far}; ${wanted} is enough.`
        : `The hole at ${say.angle(shortest.azimuth_rad)} meets ${what} after ${far}; ${wanted} must stay free.`,
      inputs: [{ label: 'Hole', value: say.angle(shortest.azimuth_rad) }, { label: 'It meets', value: what }],
      place: { ...placeOfNozzle(nozzle, at), rays: [{ from: shortest.from, to: shortest.to }] },
      cure: figures.isKept ? undefined : turnCure(nozzle, say),
    };
  },
});
