import { polar } from '../../geometry/point.ts';
import { ANGLE_SLACK_rad } from '../../geometry/tolerance.ts';
import { atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, nozzleSubjects, placeOfNozzle } from '../subjects.ts';
import { cornerShotsOf, turnCure } from './hole-faults.ts';

/**
 * N5: no hole blows into a corner that the nozzle stands in.
 * Measure: least angle between a hole and the direction to the corner [rad].
 * Limit: least angle off the corner, from the unit profile.
 * Not checked: the nozzle serves no space, has no holes, or zone or angle are blank.
 */
export const n05CornerShot = defineRule<NozzleSubject>({
  id: 'N5',
  title: 'Corner shot',
  severity: 'stop',
  measure: 'angle',
  basis: {
    formula: 'within the corner zone of both walls: angle between hole and direction to the corner ≥ limit',
    source: 'unit profile',
  },
  limitKeys: ['cornerZone_m', 'cornerAngle_rad'],
  subjects: nozzleSubjects,
  check(nozzle, { say }) {
    const zone = limitOrBlank(nozzle.profile, 'cornerZone_m');
    if (!zone.limit) return zone.blank;
    const angle = limitOrBlank(nozzle.profile, 'cornerAngle_rad');
    if (!angle.limit) return angle.blank;
    const { at, space } = nozzle;
    if (!at || !space) return notChecked('the nozzle hangs in no enclosure.');
    if (nozzle.holes_rad.length === 0) return notChecked('its holes are not drawn.');
    const place = placeOfNozzle(nozzle, at);
    const worst = cornerShotsOf(nozzle, zone.limit.value)[0];
    if (!worst) return { kind: 'judged', isKept: true, text: `Stands in no corner (zone ${say.length(zone.limit.value)}).`, place };
    const figures = atLeast(worst.off_rad, angle.limit, ANGLE_SLACK_rad);
    const hole = say.angle(worst.hole_rad);
    const { value: off, limit: wanted } = say.angleAgainst(worst.off_rad, angle.limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Its nearest hole is ${off} off the corner; ${wanted} is enough.`
        : `The hole at ${hole} blows into the corner, ${off} off it: turn it ${say.turn(-figures.margin)} or more.`,
      inputs: [{ label: 'Corner zone', value: say.length(zone.limit.value), source: zone.limit.source }, { label: 'Hole', value: hole }],
      place: { ...place, rays: [{ from: at, to: polar(at, worst.hole_rad, zone.limit.value) }], dimension: { a: at, b: worst.corner.at } },
      cure: figures.isKept ? undefined : turnCure(nozzle, say),
    };
  },
});
