import { neighbourName } from '../../derived/neighbours.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Opening } from '../../model/plan.ts';
import { inches_m } from '../../units/convert.ts';
import { type AskedOpening, openingsOf, placeOfOpening } from '../openings.ts';
import { type Answer, type CheckContext, atMost, defineRule, notChecked } from '../rule.ts';
import { areTogether, perServedRoom } from '../served-rooms.ts';

/** A gap under a door that needs no seal [m]. */
const GAP_m = inches_m(0.125);
const GAP_SOURCE = 'common practice: 1/8 in';
const SOURCE = 'ISO 14520-1 and NFPA 2001: openings close before or with the discharge (memory)';

const CLOSING: ReadonlySet<Opening['kind']> = new Set<Opening['kind']>(['door', 'damper', 'grille', 'window']);
const SHUTS: Readonly<Record<string, string>> = { door: 'close by itself', damper: 'close', grille: 'close', window: 'close, or is not fixed shut' };
const CURES: Readonly<Record<string, string>> = {
  door: 'Fit a closer, with a holder that lets go at the alarm where it stands open.',
  damper: 'Take a damper that closes on the signal of the panel.',
  grille: 'Fit a damper that closes before the discharge, or close the grille up.',
  window: 'Fix it shut, or fit a closer.',
};

/** How the gap under a door leaf is judged: narrow enough, counted among the leaks, or neither. */
function gapOf({ opening, enclosure }: AskedOpening, { say }: CheckContext): Answer {
  const { undercut_m, width_m } = opening;
  const { leakage } = enclosure;
  if (leakage.kind === 'door-fan') return { kind: 'judged', isKept: true, text: 'Closes by itself; the gap under it is in the leaks that the door fan measured.' };
  if (undercut_m === null) return notChecked('it closes by itself, but the gap under it is not known.');
  const figures = atMost(undercut_m, { value: GAP_m, source: GAP_SOURCE }, LENGTH_SLACK_m);
  const { value, limit } = say.against(undercut_m, GAP_m);
  if (figures.isKept) return { ...figures, text: `Closes by itself; the gap under it is ${value}, and ${limit} needs no seal.` };
  const gap_m2 = undercut_m * width_m;
  if (leakage.kind === 'area' && leakage.area_m2 >= gap_m2) return { kind: 'judged', isKept: true, text: `Closes by itself; the gap of ${value} under it, ${say.area(gap_m2)}, is counted among the leaks of ${say.area(leakage.area_m2)}.` };
  const counted = leakage.kind === 'area' ? `more than all the leaks that are counted, ${say.area(leakage.area_m2)}` : 'and no leaks are counted';
  return {
    ...figures,
    text: `The gap under it is ${value}, ${say.area(gap_m2)}: ${counted}. Gas would leave there.`,
    cure: { kind: 'advice', text: 'Fit a seal that drops when the door shuts, or count the gap among the leaks.' },
  };
}

/**
 * E12: doors close by themselves, and grilles, dampers and windows are shut before the discharge; no door leaves a gap
 * that nobody counts.
 * Measure: gap under a door leaf [m]. Limit: 1/8 in, common practice; a wider one is kept where the leaks count it.
 * An opening that stays open to another enclosure alone is E15's; one that is discharged together with this may be open to it.
 * Not checked: nobody has said whether it closes, or how wide the gap under a door is.
 */
export const e12OpeningsClose = defineRule<AskedOpening>({
  id: 'E12',
  title: 'Openings close',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'door: closes by itself, and its gap ≤ 1/8 in (3 mm) or counted among the leaks; damper, grille, window: shut before the discharge',
    source: `${SOURCE}; gap: common practice`,
    caution: 'A fire door has limits of its own for the gap under it and for seals.',
  },
  subjects: perServedRoom((room) =>
    openingsOf(room, ({ kind }) => CLOSING.has(kind)).filter(({ subject: { opening, behind } }) => {
      const staysOpenTo = opening.closes === false ? behind.map(({ beyond }) => beyond) : [];
      return !staysOpenTo.some((beyond) => beyond.kind === 'enclosure' && !areTogether(beyond.enclosure, room.enclosure)) || staysOpenTo.some(({ kind }) => kind === 'adjoining');
    }),
  ),
  check(asked, context) {
    const { opening, behind, enclosure } = asked;
    const place = placeOfOpening(asked);
    const { kind, closes } = opening;
    const rooms = behind.filter(({ beyond }) => beyond.kind === 'enclosure');
    const inputs = [{ label: 'Closes before the discharge', value: closes === null ? 'not known' : closes ? 'yes' : 'no' }];
    if (closes === null) return notChecked(`nobody has said whether it ${kind === 'door' ? 'closes by itself' : 'closes before the discharge'}.`, place);
    if (!closes) {
      const joined = rooms.find(({ beyond }) => beyond.kind === 'enclosure' && areTogether(beyond.enclosure, enclosure));
      if (joined) return { kind: 'judged', isKept: true, text: `Stays open to ${neighbourName(joined)}, which is discharged together with this room.`, inputs, place };
      const [beyond] = behind;
      const to = beyond ? ` It leads to ${neighbourName(beyond)}.` : '';
      return { kind: 'judged', isKept: false, text: `Does not ${SHUTS[kind] ?? 'close'}: the gas would leave through it.${to}`, inputs, place, cure: { kind: 'advice', text: CURES[kind] ?? 'Make it close.' } };
    }
    if (kind !== 'door') return { kind: 'judged', isKept: true, text: 'Closes before the discharge.', inputs, place };
    const gap = gapOf(asked, context);
    return gap.kind === 'judged' ? { ...gap, inputs: [...inputs, ...(opening.undercut_m === null ? [] : [{ label: 'Gap under the leaf', value: context.say.length(opening.undercut_m) }])], place } : { ...gap, place };
  },
});
