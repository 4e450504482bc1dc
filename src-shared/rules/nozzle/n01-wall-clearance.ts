import { nearestClearanceFace } from '../../derived/clearance-faces.ts';
import type { HungNozzle } from '../../derived/derived.ts';
import { planPoint } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Cure } from '../finding.ts';
import { atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, nozzleSubjects, placeOfNozzle } from '../subjects.ts';

/**
 * N1: a nozzle stands clear of every wall of the space it serves.
 * Measure: shortest plan distance from the orifice axis to a finished face or a full-height obstruction [m].
 * Limit: least distance, from the unit profile (common practice: 10 in).
 * Not checked: the nozzle serves no space, or the limit is blank.
 */
export const n01WallClearance = defineRule<NozzleSubject>({
  id: 'N1',
  title: 'Wall clearance',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'shortest plan distance, orifice axis to finished face or full-height obstruction ≥ limit',
    source: 'unit profile; common practice 10 in (254 mm)',
  },
  limitKeys: ['nozzleToWall_m'],
  subjects: nozzleSubjects,
  check(nozzle, { say }) {
    const { at, space, profile } = nozzle;
    const { limit, ...missing } = limitOrBlank(profile, 'nozzleToWall_m');
    if ('blank' in missing) return missing.blank;
    if (!at || !space || !limit) return notChecked('the nozzle hangs in no enclosure.');
    const near = nearestClearanceFace(space, at);
    if (!near) return notChecked('the enclosure has no walls.');
    const figures = atLeast(near.distance_m, limit, LENGTH_SLACK_m);
    const { value: far, limit: wanted } = say.against(near.distance_m, limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Stands ${far} from the nearest face; ${wanted} is enough.`
        : `Stands ${far} from ${near.name}: ${say.off(-figures.margin)} too near. Move it to ${wanted} or more.`,
      inputs: [{ label: 'Nearest face', value: near.name }],
      place: { ...placeOfNozzle(nozzle, at), dimension: { a: planPoint(at.x, at.y), b: near.at } },
      cure: figures.isKept ? undefined : slideOff(nozzle, near, limit.value, say.off(-figures.margin)),
    };
  },
});

/** Slides the nozzle off the face along its normal, when that leads to a place that keeps the limit. */
function slideOff(nozzle: HungNozzle, near: { at: { x: number; y: number }; inward_rad: number }, limit_m: number, by: string): Cure {
  const { at, space } = nozzle;
  const advice: Cure = { kind: 'advice', text: 'Move it away from the wall by hand: another face stands in the way of a straight slide.' };
  if (!at || !space) return advice;
  const to = { x: near.at.x + Math.cos(near.inward_rad) * limit_m, y: near.at.y + Math.sin(near.inward_rad) * limit_m, z: at.z };
  const there = nearestClearanceFace(space, to);
  if (!there || there.distance_m < limit_m - LENGTH_SLACK_m) return advice;
  return { kind: 'move-nozzle', text: `Slide it ${by} off the wall`, nozzle: { network: nozzle.ref.network, id: nozzle.ref.id }, to };
}
