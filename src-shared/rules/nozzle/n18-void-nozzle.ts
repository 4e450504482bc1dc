import type { HungNozzle, Solid } from '../../derived/derived.ts';
import { findConeHit } from '../../derived/jet-cone.ts';
import { jetsOf } from '../../derived/jets.ts';
import { findLeastTurn } from '../../derived/least-turn.ts';
import { type PlanPoint, planPoint } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Cure, FindingInput } from '../finding.ts';
import { type Answer, type CheckContext, atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { placeOfNozzle } from '../subjects.ts';
import { stoppedHoles } from './hole-faults.ts';
import { type NozzleInSpace, VOID_NOZZLES } from './nozzles-in-spaces.ts';
import { turnBy } from './turn-by.ts';

/** What a jet in a void comes to first. */
interface VoidHit {
  readonly azimuth_rad: number;
  readonly along_m: number;
  readonly to: PlanPoint;
  /** undefined for a wall. */
  readonly solid: Solid | undefined;
}

/** What the jets of a void nozzle come to first, nearest first: a wall on their axis, or a thing anywhere in their cone. */
function voidHitsOf(nozzle: HungNozzle, spread_rad: number): VoidHit[] {
  const { at, space } = nozzle;
  if (!at || !space) return [];
  const stopped = stoppedHoles(nozzle);
  const half_rad = Math.min(spread_rad + nozzle.nozzle.tilt_rad, 1.4);
  return jetsOf(nozzle)
    .filter(({ azimuth_rad }) => !stopped.has(azimuth_rad))
    .flatMap(({ azimuth_rad, length_m, to, hit }): VoidHit[] => {
      const beside = space.solids.flatMap((solid): VoidHit[] => {
        const struck = findConeHit({ azimuth_rad, from: at, half_rad, reach_m: length_m }, solid);
        return struck ? [{ azimuth_rad, along_m: struck.along_m, to: planPoint(struck.at.x, struck.at.y), solid }] : [];
      });
      const axis = { azimuth_rad, along_m: length_m, to, solid: space.solids.find(({ ref }) => hit?.kind === 'obstruction' && ref.id === hit.id) };
      return [axis, ...beside];
    })
    .sort((a, b) => a.along_m - b.along_m);
}

function cureOf({ nozzle, nozzles }: NozzleInSpace, spread_rad: number, least_m: number, { say }: Pick<CheckContext, 'say'>): Cure {
  const turn_rad = findLeastTurn(nozzle, nozzles, (turned) => voidHitsOf(turned, spread_rad).every(({ along_m }) => along_m >= least_m - LENGTH_SLACK_m));
  return turn_rad === undefined ? { kind: 'advice', text: 'Move the nozzle between the trays and pedestals: no turn clears it without bringing a new stop.' } : turnBy(nozzle, turn_rad, say);
}

/**
 * N18: a void is deep enough for its nozzle, and its jets run free of trays, pedestals and walls.
 * Measure: clear depth of the void [m]; shortest way along a jet to a wall, or to a thing in the cone of the jet [m].
 * Limit: least depth and least free jet in a void, from the unit profile.
 * A hole that N5 or N6 stops already is not judged again.
 * Not checked: a limit or the spread of a jet is blank, or holes are not drawn.
 */
export const n18VoidNozzle = defineRule<NozzleInSpace>({
  id: 'N18',
  title: 'Void nozzle',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: 'clear depth of the void ≥ limit; distance along each jet to the first wall, or to the first thing within its spread ≥ limit',
    source: 'unit profile',
  },
  limitKeys: ['voidDepth_m', 'voidFreeJet_m', 'jetSpread_rad'],
  isHeavy: true,
  subjects: VOID_NOZZLES,
  check(asked, { say }): Answer {
    const { nozzle } = asked;
    const { at, space, profile } = nozzle;
    const drawn = space?.kind === 'under-floor' ? space.enclosure.underFloor : space?.enclosure.ceilingVoid;
    if (!at || !space || !drawn) return notChecked('the nozzle hangs in no void.');
    const place = placeOfNozzle(nozzle, at);
    const inputs: FindingInput[] = [{ label: 'Depth of the void', value: say.length(drawn.depth_m) }];
    const depth = limitOrBlank(profile, 'voidDepth_m');
    if (depth.limit && drawn.depth_m < depth.limit.value - LENGTH_SLACK_m) {
      const { value: deep, limit: wanted } = say.against(drawn.depth_m, depth.limit.value);
      return {
        ...atLeast(drawn.depth_m, depth.limit, LENGTH_SLACK_m),
        text: `Hangs in a void ${deep} deep; ${wanted} is wanted.`,
        place: { ...place, heights: [at, { ...at, z: space.ceilingAt_m(at) ?? at.z }, { ...at, z: (space.ceilingAt_m(at) ?? at.z) - drawn.depth_m }] },
        cure: { kind: 'advice', text: 'Choose a unit whose nozzle suits so low a void, or ask its maker.' },
      };
    }
    const free = limitOrBlank(profile, 'voidFreeJet_m');
    if (!free.limit) return free.blank;
    const spread = limitOrBlank(profile, 'jetSpread_rad');
    if (!spread.limit) return spread.blank;
    if (nozzle.holes_rad.length === 0) return notChecked('its holes are not drawn.', place);
    const hits = voidHitsOf(nozzle, spread.limit.value);
    const [first] = hits;
    if (!first) return notChecked('its holes already blow at a corner or a near wall. Turn them first.', place);
    const figures = atLeast(first.along_m, free.limit, LENGTH_SLACK_m);
    const { value: far, limit: wanted } = say.against(first.along_m, free.limit.value);
    const from = planPoint(at.x, at.y);
    if (!figures.isKept) {
      const least_m = free.limit.value;
      return {
        ...figures,
        text: `The jet at ${say.angle(first.azimuth_rad)} meets ${first.solid ? first.solid.obstruction.name : 'a wall'} after ${far}; ${wanted} must stay free.`,
        inputs,
        place: { ...place, rays: hits.filter((hit, i) => hit.along_m < least_m - LENGTH_SLACK_m && hits.findIndex(({ azimuth_rad }) => azimuth_rad === hit.azimuth_rad) === i).map(({ to }) => ({ from, to })) },
        cure: cureOf(asked, spread.limit.value, least_m, { say }),
      };
    }
    if (!depth.limit) return depth.blank;
    return { ...figures, text: `Its jets run free for ${far}; ${wanted} is enough, and the void is ${say.length(drawn.depth_m)} deep.`, inputs, place: { ...place, rays: [{ from, to: first.to }] } };
  },
});
