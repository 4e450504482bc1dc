import { END_OF_LINE_WORDS } from '#shared/model/circuit-words';
import type { Release } from '#shared/model/plan';
import { capitalised } from '../fields/capitalised.ts';
import { Choice, KnownChoice, optionsOf } from '../fields/choice.tsx';

/** Where the end of the line is, as it is asked. */
const END_OF_LINE = optionsOf(END_OF_LINE_WORDS).map(({ value, label }) => ({ value, label: capitalised(label) }));

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
        options={END_OF_LINE}
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
