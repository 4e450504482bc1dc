import type { Release } from '#shared/model/plan';
import { Choice, KnownChoice, optionsOf } from '../fields/choice.tsx';

/** Where the end of the line is, as it is asked. */
const END_OF_LINE = {
  unknown: 'Not yet known',
  none: 'There is none',
  'before-last': 'Before the last device',
  'after-last': 'Behind the last device',
} as const satisfies Record<Release['endOfLine'], string>;

interface ReleaseWatchProps {
  readonly release: Release;
  onCommit(part: Partial<Release>): void;
}

/** How the panel watches over the circuit and its actuator. */
export function ReleaseWatch({ release, onCommit }: ReleaseWatchProps) {
  return (
    <div className="fields">
      <Choice
        label="End-of-line part"
        value={release.endOfLine}
        options={optionsOf(END_OF_LINE)}
        onCommit={(endOfLine) => onCommit({ endOfLine })}
        help="By it the panel notices a broken wire, up to where it stands."
        wide
      />
      <KnownChoice
        label="Taking the actuator off shows at the panel"
        value={release.isActuatorWatched}
        onCommit={(isActuatorWatched) => onCommit({ isActuatorWatched })}
        yes="Yes, it is watched"
        no="No"
        wide
      />
    </div>
  );
}
