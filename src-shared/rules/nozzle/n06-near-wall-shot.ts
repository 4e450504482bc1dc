import { polar } from '../../geometry/point.ts';
import { nearestOnSegment } from '../../geometry/segment.ts';
import { ANGLE_SLACK_rad } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, nozzleSubjects, placeOfNozzle } from '../subjects.ts';
import { nearWallShotsOf, turnCure } from './hole-faults.ts';

/**
 * N6: a nozzle near one wall blows along it, not at it.
 * Measure: greatest angle between a hole's axis and the near wall [rad].
 * Limit: parallel tolerance, from the unit profile (usual: ±10°).
 * Not checked: the nozzle serves no space, has no holes, or zones or tolerance are blank.
 */
export const n06NearWallShot = defineRule<NozzleSubject>({
  id: 'N6',
  title: 'Near-wall shot',
  severity: 'stop',
  measure: 'angle',
  basis: {
    formula: 'within the near-wall zone and in no corner: angle between hole axis and wall ≤ limit',
    source: 'unit profile',
  },
  limitKeys: ['nearWallZone_m', 'nearWallAngle_rad', 'cornerZone_m'],
  subjects: nozzleSubjects,
  check(nozzle, { say }) {
    const zone = limitOrBlank(nozzle.profile, 'nearWallZone_m');
    if (!zone.limit) return zone.blank;
    const angle = limitOrBlank(nozzle.profile, 'nearWallAngle_rad');
    if (!angle.limit) return angle.blank;
    const corner = limitOrBlank(nozzle.profile, 'cornerZone_m');
    if (!corner.limit) return corner.blank;
    const { at, space } = nozzle;
    if (!at || !space) return notChecked('the nozzle hangs in no enclosure.');
    if (nozzle.holes_rad.length === 0) return notChecked('its holes are not drawn.');
    const place = placeOfNozzle(nozzle, at);
    const worst = nearWallShotsOf(nozzle, zone.limit.value, corner.limit.value)[0];
    if (!worst) return { kind: 'judged', isKept: true, text: `Stands near no single wall (zone ${say.length(zone.limit.value)}).`, place };
    const figures = atMost(worst.off_rad, angle.limit, ANGLE_SLACK_rad);
    const { value: off, limit: allowed } = say.angleAgainst(worst.off_rad, angle.limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Blows along the wall ${say.length(worst.distance_m)} away, ${off} off parallel; ${allowed} is allowed.`
        : `The hole at ${say.angle(worst.hole_rad)} is ${off} off parallel to the wall ${say.length(worst.distance_m)} away, and ${allowed} is allowed: turn it along the wall.`,
      inputs: [{ label: 'Near-wall zone', value: say.length(zone.limit.value), source: zone.limit.source }, { label: 'Distance to the wall', value: say.length(worst.distance_m) }, { label: 'Hole', value: say.angle(worst.hole_rad) }],
      place: {
        ...place,
        rays: [{ from: at, to: polar(at, worst.hole_rad, zone.limit.value) }],
        dimension: { a: at, b: nearestOnSegment(at, worst.face.segment) },
      },
      cure: figures.isKept ? undefined : turnCure(nozzle, say),
    };
  },
});
