import { ANGLE_SLACK_rad } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, nozzleSubjects, placeOfNozzle } from '../subjects.ts';

/**
 * N4: a nozzle hangs straight down.
 * Measure: tilt of its axis against the vertical [rad].
 * Limit: greatest tilt, from the unit profile (common practice: 2°).
 * Not checked: the limit is blank.
 */
export const n04FacesDown = defineRule<NozzleSubject>({
  id: 'N4',
  title: 'Faces down',
  severity: 'stop',
  measure: 'angle',
  basis: { formula: 'tilt of the nozzle axis against the vertical ≤ limit', source: 'unit profile; common practice 2°' },
  limitKeys: ['nozzleTilt_rad'],
  subjects: nozzleSubjects,
  check(nozzle, { say }) {
    const { limit, ...missing } = limitOrBlank(nozzle.profile, 'nozzleTilt_rad');
    if ('blank' in missing) return missing.blank;
    if (!nozzle.at || !limit) return notChecked('the nozzle has lost its pipe end.');
    const { tilt_rad } = nozzle.nozzle;
    const figures = atMost(tilt_rad, limit, ANGLE_SLACK_rad);
    const { value: tilt, limit: allowed } = say.angleAgainst(tilt_rad, limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Hangs straight down within ${allowed}.`
        : `Leans ${tilt} off the vertical; ${allowed} is allowed. Square the drop.`,
      place: placeOfNozzle(nozzle, nozzle.at),
      cure: figures.isKept
        ? undefined
        : { kind: 'level-nozzle', text: 'Hang it straight down', nozzle: { network: nozzle.ref.network, id: nozzle.ref.id } },
    };
  },
});
