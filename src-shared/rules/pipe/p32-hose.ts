import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { type CylinderHose, hoseSubjects } from '../cylinder/hoses.ts';
import { placeOfCylinder } from '../cylinder/cylinders.ts';
import { type Answer, atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';

/** A hose whose ends are this far from one plane still counts as bent in one [rad]: 5°, common practice. */
export const IN_ONE_PLANE_rad = (5 * Math.PI) / 180;
/** Slack up to this share of a hose is wanted, since it shortens under pressure; SAE J1273 (memory). */
const WANTED_SLACK = 0.04;

/**
 * P32: the hose reaches from the outlet to its end without a bend sharper than it may have, and without a twist.
 * Measure: straight distance from outlet to end; hose that its bends take at the least radius; how far its ends are from
 * one plane. Limits: reach of the hose and its least bend radius, from the unit profile; the length it is listed with.
 * A hose that bends in two planes is twisted at its couplings when it moves. How much of that it stands no figure of the
 * profile says, so it is a warning, as is slack for which there is no gentle way: the hose may kink.
 * A height beyond the reach is C9’s to tell.
 * Not checked: an end, its direction, the length or a limit is not known.
 */
export const p32Hose = defineRule<CylinderHose>({
  id: 'P32',
  title: 'Hose bend, twist and reach',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'outlet to hose end ≤ reach; shortest way with the least bend radius ≤ length of the hose; both ends in one plane within 5°; slack that no gentle way takes up ≤ 4 %',
    source: 'unit profile; way: shortest curve of bounded curvature (Dubins 1957, Sussmann 1995); plane: common practice; slack: SAE J1273 (memory)',
    caution: 'Weight, stiffness and couplings of the hose are left out: look at it when it hangs.',
  },
  limitKeys: ['hoseBendRadius_m', 'hoseReach_m'],
  subjects: hoseSubjects,
  check(subject, { say }) {
    const { hose, listsHose, lacks, profile } = subject;
    const bend = limitOrBlank(profile, 'hoseBendRadius_m');
    const reach = limitOrBlank(profile, 'hoseReach_m');
    const outlet = limitOrBlank(profile, 'outletHeight_m');
    if (!listsHose) return notChecked('no hose is listed first in the discharge assembly.');
    for (const each of [bend, reach, outlet]) if ('blank' in each) return each.blank;
    if (!bend.limit || !reach.limit) return notChecked('a limit is blank.');
    const place = placeOfCylinder(subject);
    if (!hose) return notChecked(lacks, place);
    const { part, from, to, needed_m } = hose;
    const shown = { level: subject.level, at: hose.curve, heights: hose.curve };
    if (part.length_m <= 0) return notChecked(`the length of “${part.name}” is not entered.${needed_m === undefined ? '' : ` It takes ${say.length(needed_m)} at least.`}`, shown);
    if (needed_m === undefined) return notChecked('its least bend radius is no figure that a hose can have.', shown);
    const fault = (figures: Partial<Extract<Answer, { kind: 'judged' }>>, text: string, advice: string): Answer => ({ kind: 'judged', isKept: false, place: shown, text, cure: { kind: 'advice', text: advice }, ...figures });

    const straight = atMost(hose.reach_m, reach.limit, LENGTH_SLACK_m);
    const isTooHigh = Math.abs(to.at.z - from.at.z) - reach.limit.value > LENGTH_SLACK_m;
    if (!straight.isKept && !isTooHigh) {
      const { value, limit } = say.against(hose.reach_m, reach.limit.value);
      return fault(straight, `Its hose ends ${value} from the outlet; the manual allows ${limit}. Move the end of the hose nearer.`, 'Move the end of the hose nearer to the outlet.');
    }
    const bends = atMost(needed_m, { value: part.length_m, source: 'length in the discharge assembly' }, LENGTH_SLACK_m);
    if (!bends.isKept) {
      const { value, limit } = say.against(needed_m, part.length_m);
      return fault(bends, `Its hose of ${limit} is too short: with no bend sharper than ${say.length(bend.limit.value)} it takes ${value}. Move its end, turn the outlet, or take a longer hose.`, 'Move the end of the hose, turn the outlet, or take a longer hose.');
    }
    if (hose.twist_rad > IN_ONE_PLANE_rad + 1e-9) {
      const { value, limit } = say.angleAgainst(hose.twist_rad, IN_ONE_PLANE_rad);
      return fault({ severity: 'warn', measure: 'angle', measured: hose.twist_rad, limit: IN_ONE_PLANE_rad, limitSource: 'common practice', margin: IN_ONE_PLANE_rad - hose.twist_rad }, `Its hose bends in two planes, ${value} apart where ${limit} is usual, and twists. Turn the outlet or move the end, so that both lie in one plane.`, 'Turn the outlet toward the end of the hose.');
    }
    const wanted_m = WANTED_SLACK * part.length_m;
    if (hose.slack_m > wanted_m + LENGTH_SLACK_m) {
      return fault({ severity: 'warn', measured: hose.slack_m, limit: wanted_m, limitSource: 'SAE J1273 (memory)', margin: wanted_m - hose.slack_m }, `Its hose is ${say.off(hose.slack_m)} longer than any way without a sharp bend: it would kink. Move its end farther off, or take a hose of ${say.length(needed_m)} or little more.`, 'Move the end of the hose farther off, or take a shorter hose.');
    }
    const { value, limit } = say.against(needed_m, part.length_m);
    return { ...bends, place: shown, text: `Its hose of ${limit} takes ${value} with no bend sharper than ${say.length(bend.limit.value)}, and ends ${say.length(hose.reach_m)} from the outlet.` };
  },
});
