import type { DeviceChange } from '#shared/commands/edit-device';
import type { Device } from '#shared/model/plan';
import { AIR_WORDS, SENSES_WORDS, SIGN_WORDS, SPACE_WORDS } from '#shared/model/surroundings-words';
import { Choice, KnownChoice, Tick, optionsOf } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';

interface DeviceFieldsProps {
  readonly device: Device;
  change(part: DeviceChange): void;
}

/** What an answer is called while there is none. */
export const NOBODY_HAS_LOOKED = 'Nobody has looked';

/** What is asked of one kind of device besides its place. */
export function DeviceFields({ device, change }: DeviceFieldsProps) {
  switch (device.kind) {
    case 'detector':
      return (
        <>
          <Choice
            label="Senses"
            value={device.senses ?? 'unknown'}
            options={[{ value: 'unknown', label: NOBODY_HAS_LOOKED }, ...optionsOf(SENSES_WORDS)]}
            onCommit={(senses) => change({ senses: senses === 'unknown' ? null : senses })}
          />
          <TextField label="Zone" value={device.zone} placeholder="not known" onCommit={(zone) => change({ zone })} help="The detection circuit it counts to: two zones release together." />
          <Choice label="Watches" value={device.space} options={optionsOf(SPACE_WORDS)} onCommit={(space) => change({ space })} wide />
        </>
      );
    case 'sounder':
      return (
        <>
          <QuantityField kind="sound" label="Loudness at 3 m" value={device.sound_dBA} least={0} most={160} blank={{ text: 'not known', commit: () => change({ sound_dBA: null }) }} onCommit={(sound_dBA) => change({ sound_dBA })} />
          {/* Candela have no other unit that is used for alarms: they are typed as they stand on the device. */}
          <QuantityField kind="count" label="Light in candela" value={device.light_cd} least={0} most={10_000} blank={{ text: 'not known', commit: () => change({ light_cd: null }) }} onCommit={(light_cd) => change({ light_cd })} />
          <Tick label="Is heard" value={device.isHeard} onCommit={(isHeard) => change({ isHeard })} />
          <Tick label="Is seen" value={device.isSeen} onCommit={(isSeen) => change({ isSeen })} />
        </>
      );
    case 'sign':
      return (
        <>
          <Choice label="Stands" value={device.sign} options={optionsOf(SIGN_WORDS)} onCommit={(sign) => change({ sign })} wide />
          <LongTextField label="Wording" value={device.wording} rows={3} placeholder="what it says, word for word" onCommit={(wording) => change({ wording })} />
        </>
      );
    case 'manual-release':
      return <KnownChoice label="Guarded against a chance pull" value={device.isGuarded} unknown={NOBODY_HAS_LOOKED} onCommit={(isGuarded) => change({ isGuarded })} wide />;
    case 'abort':
      return (
        <>
          <KnownChoice label="Works only while it is held" value={device.isHeld} unknown={NOBODY_HAS_LOOKED} onCommit={(isHeld) => change({ isHeld })} wide />
          <KnownChoice label="Manual release works although it is held" value={device.yieldsToRelease} unknown={NOBODY_HAS_LOOKED} onCommit={(yieldsToRelease) => change({ yieldsToRelease })} wide />
        </>
      );
    case 'disconnect':
      return (
        <>
          <KnownChoice label="Needs a key" value={device.isKeyed} unknown={NOBODY_HAS_LOOKED} onCommit={(isKeyed) => change({ isKeyed })} />
          <KnownChoice label="Supervised" value={device.isSupervised} unknown={NOBODY_HAS_LOOKED} onCommit={(isSupervised) => change({ isSupervised })} />
        </>
      );
    case 'lock-out-valve':
      return <KnownChoice label="Supervised" value={device.isSupervised} unknown={NOBODY_HAS_LOOKED} onCommit={(isSupervised) => change({ isSupervised })} />;
    case 'diffuser':
      return <Choice label="Air" value={device.air} options={optionsOf(AIR_WORDS)} onCommit={(air) => change({ air })} wide />;
    case 'door-button':
    case 'control-panel':
    case 'air-intake':
      return null;
  }
}
