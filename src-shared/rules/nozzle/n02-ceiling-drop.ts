import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, nozzleSubjects, placeOfNozzle } from '../subjects.ts';

/** What is over a nozzle, in the middle of a sentence. */
const OVER = { room: 'ceiling', 'under-floor': 'raised floor', 'ceiling-void': 'top of the void' } as const;

/**
 * N2: the orifice hangs below the local ceiling, and not too far below.
 * Measure: local ceiling minus orifice height [m]; negative when the orifice is above it.
 * Limit: 0 up to the greatest drop of the unit profile (common practice: 12 in).
 * Not checked: local ceiling unknown (N3), the nozzle serves no space, or the limit is blank.
 */
export const n02CeilingDrop = defineRule<NozzleSubject>({
  id: 'N2',
  title: 'Ceiling drop',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: '0 ≤ local ceiling height − orifice height ≤ limit',
    source: 'unit profile; common practice 12 in (305 mm)',
  },
  limitKeys: ['nozzleToCeiling_m'],
  subjects: nozzleSubjects,
  check(nozzle, { say }) {
    const { at, space, profile, localCeiling_m } = nozzle;
    const { limit, ...missing } = limitOrBlank(profile, 'nozzleToCeiling_m');
    if ('blank' in missing) return missing.blank;
    if (!at || !space || !limit) return notChecked('the nozzle hangs in no enclosure.');
    if (localCeiling_m === undefined) return notChecked(`the height of the ceiling above it is unknown. Enter the height of ${space.name}.`);
    const drop_m = localCeiling_m - at.z;
    const over = OVER[space.kind];
    const inputs = [{ label: 'Orifice', value: say.length(at.z) }, { label: `Height of the ${over} there`, value: say.length(localCeiling_m) }];
    const toHeight = (z: number, text: string) =>
      ({ kind: 'move-nozzle', text, nozzle: { network: nozzle.ref.network, id: nozzle.ref.id }, to: { ...at, z } }) as const;
    const place = { ...placeOfNozzle(nozzle, at), heights: [at, { ...at, z: localCeiling_m }] };
    if (drop_m < -LENGTH_SLACK_m) {
      return {
        kind: 'judged',
        isKept: false,
        measured: drop_m,
        limit: 0,
        limitSource: limit.source,
        margin: drop_m,
        text: `Its orifice is ${say.off(-drop_m)} above the ${over}. Lower it.`,
        inputs,
        place,
        cure: toHeight(localCeiling_m - limit.value / 2, `Hang it ${say.length(limit.value / 2)} below the ${over}`),
      };
    }
    const figures = atMost(drop_m, limit, LENGTH_SLACK_m);
    const { value: far, limit: allowed } = say.against(drop_m, limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Hangs ${far} below the ${over}; up to ${allowed} is allowed.`
        : `Hangs ${far} below the ${over}: ${say.off(-figures.margin)} too low. Shorten the drop.`,
      inputs,
      place,
      cure: figures.isKept ? undefined : toHeight(localCeiling_m - limit.value, `Raise it ${say.off(-figures.margin)}`),
    };
  },
});
