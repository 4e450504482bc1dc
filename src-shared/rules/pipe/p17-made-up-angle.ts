import { threadDepth_m } from '../../calculations/formulas/pipe-threads.ts';
import type { DerivedNozzle } from '../../derived/derived.ts';
import { blankArcLimits, legalArcs } from '../../derived/legal-arc.ts';
import { pipeAt } from '../../derived/pipe-at.ts';
import { normalAngle_rad } from '../../geometry/angle.ts';
import { ANGLE_SLACK_rad } from '../../geometry/tolerance.ts';
import { LIMIT_CATALOGUE } from '../../profile/limit-catalogue.ts';
import { defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, askedNozzle, perNetwork, placeOfNozzle } from '../subjects.ts';

const TURN_rad = 2 * Math.PI;
/** A taper thread is 0.8 of its pitch deep. */
const DEPTH_OF_PITCH = 0.8;

/** The size of the pipe that a nozzle is screwed to. */
const sizeAt = ({ network, nozzle }: DerivedNozzle) => pipeAt(network.network, nozzle.node)?.size;

interface Asked {
  readonly nozzle: NozzleSubject;
  readonly size: ReturnType<typeof sizeAt>;
}

/**
 * P17: the direction in which the holes of a nozzle end up is known only when its taper thread is tight.
 * Measure: turns either way from the direction drawn that N5, N6 and N7 allow [rad].
 * It is a note wherever not every direction will do: nothing on the plan can say where a thread gets tight.
 * Not checked: no space, or a limit of those checks is blank. A nozzle without drilled holes is not asked.
 */
export const p17MadeUpAngle = defineRule<Asked>({
  id: 'P17',
  title: 'Direction when tight',
  severity: 'note',
  measure: 'angle',
  basis: {
    formula: 'direction of the holes after the last turn of the wrench lies where corner shot, near-wall shot and free jet allow it; one turn moves the orifice by 1/n in, n threads an inch',
    source: 'common practice; threads an inch: ASME B1.20.1 (NPT)',
    caution: 'Never loosen a taper joint to correct a direction: tighten on, or remake it with another nipple.',
  },
  subjects: perNetwork(({ nozzles }) =>
    nozzles
      .filter(({ nozzle }) => nozzle.holes_rad.length > 0)
      .map((nozzle) => {
        const { subject, ...named } = askedNozzle(nozzle);
        return { ...named, subject: { nozzle: subject, size: sizeAt(nozzle) } };
      }),
  ),
  check({ nozzle, size }, { say }) {
    const { at, space } = nozzle;
    const place = at && placeOfNozzle(nozzle, at);
    if (!at || !space) return notChecked('it serves no space, so which directions will do is not known.', place);
    const [blank] = blankArcLimits(nozzle);
    if (blank) {
      const missing = limitOrBlank(nozzle.profile, blank);
      return 'blank' in missing ? missing.blank : notChecked(`“${LIMIT_CATALOGUE[blank].label}” is blank.`);
    }
    const arcs = legalArcs(nozzle);
    if (arcs.some(({ from_rad, to_rad }) => to_rad - from_rad >= TURN_rad - 2 * ANGLE_SLACK_rad)) return { kind: 'judged', isKept: true, text: 'Its holes may end up in any direction.', place };
    const pitch = size ? ` One turn of its ${size} in thread moves the orifice by ${say.length(threadDepth_m(size) / DEPTH_OF_PITCH)}.` : '';
    const drawn_rad = nozzle.nozzle.rotation_rad;
    const own = arcs.map(({ from_rad, to_rad }) => ({ back_rad: Math.max(0, normalAngle_rad(drawn_rad - from_rad + ANGLE_SLACK_rad) - ANGLE_SLACK_rad), width_rad: to_rad - from_rad })).find(({ back_rad, width_rad }) => back_rad <= width_rad + ANGLE_SLACK_rad);
    const others = arcs.length - (own ? 1 : 0);
    const besides = others > 0 ? ` ${others === 1 ? 'One other range' : `${others} other ranges`} would do too: see its dial.` : '';
    const text = own
      ? `When its thread is tight, its holes may stand at most ${say.angle(Math.max(0, own.width_rad - own.back_rad))} counter-clockwise or ${say.angle(own.back_rad)} clockwise of the direction drawn, seen from above.${besides}`
      : arcs.length > 0
        ? `The direction drawn will not do; ${arcs.length === 1 ? 'one range' : `${arcs.length} ranges`} would: see its dial.`
        : 'No direction will do where it hangs.';
    return { kind: 'judged', isKept: false, measured: own?.width_rad, text: `${text}${pitch} Verify the direction once it is tight, and mark it.`, place };
  },
});
