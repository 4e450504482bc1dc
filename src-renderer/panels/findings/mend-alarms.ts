import type { Device, Network, Plan, Ref, RefOf } from '#shared/model/plan';
import type { Finding } from '#shared/rules/finding';
import type { MissingField } from '../sums/missing-fields.ts';

const field = (on: Ref, label: string, text: string): MissingField[] => [{ kind: 'field', on, label, text }];

/** The first thing that nobody has said of a device, as far as a check asks for it. */
function deviceLack(device: Device): readonly [label: string, text: string] | undefined {
  switch (device.kind) {
    case 'sounder':
      if (device.isHeard && device.sound_dBA === null) return ['Loudness at 3 m', 'Enter how loud it is'];
      if (device.isHeard && device.height_m === null) return ['Height above floor', 'Enter how high it hangs'];
      return device.isSeen && device.light_cd === null ? ['Light in candela', 'Enter how strong its light is'] : undefined;
    case 'sign':
      return device.wording.trim() === '' ? ['Wording', 'Write down what the sign says'] : undefined;
    case 'manual-release':
      if (device.height_m === null) return ['Height above floor', 'Enter its height'];
      return device.isGuarded === null ? ['Guarded against a chance pull', 'Say whether it is guarded'] : undefined;
    case 'abort':
      if (device.isHeld === null) return ['Works only while it is held', 'Say how it works'];
      return device.yieldsToRelease === null ? ['Manual release works although it is held', 'Say which goes first'] : undefined;
    case 'disconnect':
      if (device.isKeyed === null) return ['Needs a key', 'Say whether it needs a key'];
      return device.isSupervised === null ? ['Supervised', 'Say whether the panel watches it'] : undefined;
    case 'lock-out-valve':
      return device.isSupervised === null ? ['Supervised', 'Say whether the panel watches it'] : undefined;
    case 'detector':
      return device.zone.trim() === '' ? ['Zone', 'Enter its zone'] : undefined;
    default:
      return undefined;
  }
}

/** A device at one of the places of a finding of which something is not said. */
function lackAt(plan: Plan, { level, at }: NonNullable<Finding['place']>, kinds: readonly Device['kind'][]): MissingField[] {
  const devices = Object.values(plan.levels[level]?.devices ?? {}).filter((device) => kinds.includes(device.kind) && at.some(({ x, y }) => x === device.at.x && y === device.at.y));
  for (const device of devices) {
    const lack = deviceLack(device);
    if (lack) return field({ kind: 'device', level, id: device.id }, ...lack);
  }
  return [];
}

/** The sign at the end of the measuring line of a finding, or anywhere in the enclosure, that says nothing yet. */
function blankSign(plan: Plan, { place }: Pick<Finding, 'place'>): MissingField[] {
  const level = place && plan.levels[place.level];
  const end = place?.dimension?.b;
  const blank = Object.values(level?.devices ?? {}).filter((device) => device.kind === 'sign' && device.wording.trim() === '');
  const sign = blank.find(({ at }) => end && at.x === end.x && at.y === end.y) ?? (end ? undefined : blank[0]);
  return place && sign ? field({ kind: 'device', level: place.level, id: sign.id }, 'Wording', 'Write down what the sign says') : [];
}

/** The part of a releasing circuit that a check asks for. */
function circuitField(on: RefOf<'network'>, rule: string, { release }: Network): MissingField[] {
  if (!release) return field(on, 'Draw up the circuit', 'Draw up the releasing circuit');
  switch (rule) {
    case 'L5':
      return release.devices.some(({ wiring }) => wiring !== 'in-line') ? field(on, 'Wired', 'Say how its devices are wired') : field(on, 'End-of-line part', 'Say where the line ends');
    case 'L7':
      return field(on, 'Taking the actuator off shows at the panel', 'Say whether the actuator is watched');
    default: {
      const { isListed, isCompatible } = release.panel;
      if (isListed !== true) return field(on, 'Listed for releasing', 'Say whether the panel is listed');
      return isCompatible === true ? field(on, 'Which listing says so', 'Write down the listing') : field(on, 'Listed with this solenoid', 'Say whether it is listed with the solenoid');
    }
  }
}

/** Checks of alarm, signs, buttons and detectors, and of how a circuit is watched. */
export const ABOUT_ALARMS: ReadonlySet<string> = new Set(['S3', 'S4', 'S5', 'S6', 'S7', 'L5', 'L7', 'L8', 'L10']);

/** The field that clears a finding about them; none where something has to be placed or moved. */
export function mendAlarm(plan: Plan, finding: Pick<Finding, 'rule' | 'subject' | 'verdict' | 'place'>): MissingField[] {
  const { rule, subject, verdict, place } = finding;
  if (subject.kind === 'network' && rule !== 'S7' && rule !== 'S4') {
    const network = plan.networks[subject.id];
    return network ? circuitField(subject, rule, network) : [];
  }
  if (verdict !== 'not-checked') return [];
  if (rule === 'S4') return subject.kind === 'adjoining' && blankSign(plan, finding).length === 0 ? field(subject, 'Gas that drifts in', 'Say what gas does that drifts in') : blankSign(plan, finding);
  if (subject.kind === 'device') {
    const device = plan.levels[subject.level]?.devices[subject.id];
    const lack = device && deviceLack(device);
    return lack ? field(subject, ...lack) : [];
  }
  if (rule === 'S3' && subject.kind === 'enclosure' && plan.levels[subject.level]?.enclosures[subject.id]?.ambientSound_dBA === null) return field(subject, 'Loudest usual noise', 'Enter how loud it usually is');
  const lack = place ? lackAt(plan, place, rule === 'S3' ? ['sounder'] : rule === 'S7' ? ['disconnect', 'lock-out-valve'] : ['detector']) : [];
  if (lack.length > 0) return lack;
  return rule === 'S7' && plan.basis.lockOutValve === 'unknown' ? [{ kind: 'basis', label: 'Lock-out valve', text: 'Say whether a lock-out valve is required' }] : [];
}
