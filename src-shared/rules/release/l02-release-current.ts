import { type Answer, type CheckContext, atLeast, atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { type ReleasingCircuit, circuitSubjects } from './releasing-circuits.ts';

/**
 * L2: the panel's releasing output gives all devices their current, for as long as the solenoid needs it.
 * Measure: current of all devices on the circuit [A]; how long the panel gives it [s].
 * Limit: the panel's output; release pulse from the unit profile.
 * Not checked: a current, the panel's output or its pulse is not known, or the limit is blank. A fault of the other is reported even then.
 */
export const l02ReleaseCurrent = defineRule<ReleasingCircuit>({
  id: 'L2',
  title: 'Release current',
  severity: 'stop',
  measure: 'current',
  basis: {
    formula: 'sum of the currents of all devices ≤ output of the panel; pulse of the panel ≥ pulse that the solenoid needs',
    source: 'unit profile; manual of the panel',
    caution: 'The panel must be listed for releasing, and with this solenoid.',
  },
  limitKeys: ['solenoidCurrent_A', 'releasePulse_s'],
  subjects: circuitSubjects,
  check(circuit, { say }) {
    const [current, pulse] = [currentAnswer(circuit, say), pulseAnswer(circuit, say)];
    if (current.kind === 'judged' && pulse.kind === 'judged') {
      const leading = current.isKept && !pulse.isKept ? pulse : current;
      const text = current.isKept === pulse.isKept ? `${current.text} ${pulse.text}` : leading.text;
      return { ...leading, text };
    }
    const known = current.kind === 'judged' ? current : pulse;
    return known.kind === 'judged' && !known.isKept ? known : current.kind === 'judged' ? pulse : current;
  },
});

function currentAnswer({ network, release }: ReleasingCircuit, say: CheckContext['say']): Answer {
  if (!network.release.isKnown) return notChecked(network.release.because);
  const { total_A } = network.release.sums;
  if (release.panelCurrent_A === null) {
    return notChecked(`nobody has stated what the panel’s releasing output gives. The devices take ${say.quantity(total_A, 'current')} together.`);
  }
  const figures = atMost(total_A, { value: release.panelCurrent_A, source: 'panel, as stated on the plan' }, slackOf(release.panelCurrent_A));
  const { value: take, limit: gives } = say.quantityAgainst(total_A, release.panelCurrent_A, 'current');
  if (figures.isKept) return { ...figures, text: `The devices take ${take} together; the panel gives ${gives}.` };
  return {
    ...figures,
    text: `The devices take ${take} together; the panel gives only ${gives}. Add a releasing module.`,
    cure: { kind: 'advice', text: 'Add a releasing module, or a panel with a stronger output.' },
  };
}

function pulseAnswer({ network, release }: ReleasingCircuit, say: CheckContext['say']): Answer {
  const { limit, ...missing } = limitOrBlank(network.profile, 'releasePulse_s');
  if ('blank' in missing) return missing.blank;
  if (!limit) return notChecked('the release pulse of the unit is not known.');
  if (release.panelPulse_s === null) return notChecked('nobody has stated how long the panel gives its releasing output.');
  const figures = { ...atLeast(release.panelPulse_s, limit, slackOf(limit.value)), measure: 'time' as const };
  const { value: gives, limit: needs } = say.quantityAgainst(release.panelPulse_s, limit.value, 'time');
  if (figures.isKept) return { ...figures, text: `The panel holds its output for ${gives}; ${needs} is enough.` };
  return {
    ...figures,
    text: `The panel holds its output for only ${gives}; the solenoid needs ${needs}. Set a longer pulse.`,
    cure: { kind: 'advice', text: 'Set a longer release pulse at the panel.' },
  };
}
