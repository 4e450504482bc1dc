import { END_OF_LINE_WORDS, WIRING_WORDS } from '../../model/circuit-words.ts';
import type { Release, ReleaseDevice } from '../../model/plan.ts';
import type { FindingInput } from '../finding.ts';
import { type Answer, defineRule, notChecked } from '../rule.ts';
import { together } from '../together.ts';
import { type DrawnCircuit, drawnCircuitSubjects } from './drawn-circuits.ts';
import { namesApart } from './releasing-circuits.ts';

const listed = (names: readonly string[]): string => names.map((name) => `“${name}”`).join(', ');

function wiringAnswer(devices: Release['devices']): Answer {
  const names = namesApart(devices.map(({ name }) => name), 'device');
  const those = (wiring: ReleaseDevice['wiring']): string[] => names.filter((_, i) => devices[i]?.wiring === wiring);
  const [tapped, unknown] = [those('tapped'), those('unknown')];
  if (devices.length === 0) return notChecked('the releasing circuit has no device.');
  if (tapped.length > 0) {
    const text = `${listed(tapped)} ${tapped.length === 1 ? 'hangs' : 'hang'} on a branch: the panel does not notice when ${tapped.length === 1 ? 'it is' : 'they are'} cut off. Lead both wires through every device.`;
    return { kind: 'judged', isKept: false, text, measured: tapped.length, limit: 0, limitSource: 'NFPA 72, memory', margin: -tapped.length };
  }
  if (unknown.length > 0) return notChecked(`nobody has said whether both wires go through ${listed(unknown)}, or a branch goes off to it.`);
  return { kind: 'judged', isKept: true, text: 'Both wires go through every device.', measured: 0, limit: 0, limitSource: 'NFPA 72, memory', margin: 0 };
}

function endAnswer(endOfLine: Release['endOfLine']): Answer {
  switch (endOfLine) {
    case 'unknown':
      return notChecked('nobody has said where the part at the end of the line stands.');
    case 'none':
      return { kind: 'judged', isKept: false, text: 'Nothing stands at the end of the line: the panel does not notice a broken wire. Put the end-of-line part behind the last device.' };
    case 'before-last':
      return { kind: 'judged', isKept: false, text: 'The end-of-line part stands before the last device: the panel does not watch the wire behind it. Put it behind the last device.' };
    case 'after-last':
      return { kind: 'judged', isKept: true, text: 'The end-of-line part stands behind the last device.' };
  }
}

/** The circuit as it went into the check. */
const inputsOf = ({ devices, endOfLine }: Release): FindingInput[] => [
  ...namesApart(devices.map(({ name }) => name), 'device').map((label, i) => ({ label, value: WIRING_WORDS[devices[i]?.wiring ?? 'unknown'], source: 'plan' })),
  { label: 'End of line', value: END_OF_LINE_WORDS[endOfLine], source: 'plan' },
];

/**
 * L5: the panel watches the releasing circuit up to its last device: both wires go through every device, none hangs on a
 * branch, and the end-of-line part stands behind the last one.
 * Measure: devices on a branch. Limit: none.
 * Not checked: how a device is wired, or where the end of the line is, has not been said. A fault of the other is reported even then.
 */
export const l05Supervision = defineRule<DrawnCircuit>({
  id: 'L5',
  title: 'Supervision of the circuit',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'no device on a branch; end-of-line part behind the last device',
    source: 'NFPA 72: circuits that release are monitored for integrity, without branches on a two-wire circuit with an end-of-line part (memory)',
    caution: 'A panel with addressed devices may be wired otherwise: its manual and its listing govern.',
  },
  subjects: drawnCircuitSubjects,
  check({ release, place }) {
    const answer = together([wiringAnswer(release.devices), endAnswer(release.endOfLine)]);
    if (answer.kind === 'not-checked') return { ...answer, place };
    const cure = answer.isKept ? undefined : { kind: 'advice' as const, text: 'Rewire the circuit from device to device, and put the end-of-line part behind the last one.' };
    return { ...answer, inputs: inputsOf(release), place, cure };
  },
});
