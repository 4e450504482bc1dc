import type { Space } from '../../derived/derived.ts';
import { type PlanPoint3, planPoint, polar } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { feet_m } from '../../units/convert.ts';
import type { Place } from '../finding.ts';
import { atLeast, defineRule, notChecked } from '../rule.ts';
import { perServedSpace } from '../subjects.ts';

/** A room with the places of its nozzles. */
interface Asked {
  readonly space: Space;
  readonly orifices: readonly PlanPoint3[];
}

/** How far around each nozzle tiles are clipped down. */
const CLIPPED = { value: feet_m(4), source: 'common practice' };
const CORNERS = 48;

/**
 * N23: the tiles of a ceiling are clipped down around each nozzle, so that the discharge lifts none.
 * Measure: distance from a nozzle within which they are clipped [m]. Limit: 4 ft (common practice).
 * Not checked: the make of the ceiling, or how far its tiles are clipped, is not known.
 */
export const n23TilesClipped = defineRule<Asked>({
  id: 'N23',
  title: 'Tiles clipped',
  severity: 'note',
  measure: 'length',
  basis: { formula: 'tiles clipped down within 4 ft (1.22 m) of each nozzle', source: 'common practice' },
  subjects: perServedSpace((space, nozzles) => (space.kind === 'room' && nozzles.length > 0 ? [{ subject: { space, orifices: nozzles.flatMap(({ at }) => at ?? []) }, ref: space.enclosureRef, name: space.name }] : [])),
  check({ space, orifices }, { say }) {
    const { make, clipped_m } = space.enclosure.ceiling;
    const rings = orifices.map((at) => Array.from({ length: CORNERS }, (_, i) => polar(at, (2 * Math.PI * i) / CORNERS, CLIPPED.value)));
    const place: Place = { level: space.level.id, at: orifices.length > 0 ? orifices.map(({ x, y }) => planPoint(x, y)) : space.outline };
    if (make === 'hard' || make === 'open') return { kind: 'judged', isKept: true, text: make === 'hard' ? 'Its ceiling is hard: there are no tiles to lift.' : 'It has no ceiling of tiles.', place };
    if (make === 'unknown') return notChecked('nobody has said what its ceiling is made of.', place);
    if (clipped_m === null) return notChecked('nobody has said how far around each nozzle its tiles are clipped down.', { ...place, areas: rings.map((ring) => [ring]) });
    const figures = atLeast(clipped_m, CLIPPED, LENGTH_SLACK_m);
    const { value: far, limit: wanted } = say.against(clipped_m, CLIPPED.value);
    return {
      ...figures,
      text: figures.isKept ? `Its tiles are clipped down within ${far} of each nozzle; ${wanted} is enough.` : `Its tiles are clipped down only within ${far} of each nozzle; ${wanted} is usual.`,
      inputs: [{ label: 'Ceiling', value: 'tiles' }],
      place: { ...place, areas: rings.map((ring) => [ring]) },
      cure: figures.isKept ? undefined : { kind: 'advice', text: `Clip the tiles down within ${wanted} of each nozzle, and enter it.` },
    };
  },
});
