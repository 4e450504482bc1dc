import { EXPOSURE_WORDS } from '#shared/calculations/lines/basis-words';
import { EXPOSURES } from '#shared/model/basis-of-design';
import type { Enclosure } from '#shared/model/plan';
import { capitalised } from '../fields/capitalised.ts';
import { Choice } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { Slip } from './slip.tsx';

type People = Enclosure['people'];

const STAYS = EXPOSURES.map((value) => ({ value, label: capitalised(EXPOSURE_WORDS[value]) }));
const MOST_s = 3600;
const MOST_dBA = 140;

interface PeopleSlipProps extends Pick<Enclosure, 'people' | 'ambientSound_dBA'> {
  change(part: Partial<Enclosure>): void;
}

/** What people in the room need: how long they may be in the gas, how long they take, how long the alarm gives them, and how loud it must be. */
export function PeopleSlip({ people, ambientSound_dBA, change }: PeopleSlipProps) {
  const { exposure, egress_s, delay_s } = people;
  const onCommit = (next: People): void => change({ people: next });
  const blankHelp = 'Until it is known, whether people are out in time is not checked.';
  return (
    <Slip title="People and alarm" part="people">
      <div className="fields">
        <Choice label="Longest stay in the gas to design for" value={exposure} options={STAYS} onCommit={(chosen) => onCommit({ ...people, exposure: chosen })} wide />
        <QuantityField
          kind="time"
          label="Time to leave"
          value={egress_s}
          least={0}
          most={MOST_s}
          blank={{ text: 'not known', commit: () => onCommit({ ...people, egress_s: null }) }}
          onCommit={(seconds) => onCommit({ ...people, egress_s: seconds })}
          help={egress_s === null ? blankHelp : 'From the alarm until the last one is out.'}
        />
        <QuantityField
          kind="time"
          label="Delay before discharge"
          value={delay_s}
          least={0}
          most={MOST_s}
          blank={{ text: 'not chosen', commit: () => onCommit({ ...people, delay_s: null }) }}
          onCommit={(seconds) => onCommit({ ...people, delay_s: seconds })}
          help={delay_s === null ? blankHelp : 'From the alarm until the gas comes.'}
        />
        <QuantityField
          kind="sound"
          label="Loudest usual noise"
          value={ambientSound_dBA}
          least={0}
          most={MOST_dBA}
          blank={{ text: 'not known', commit: () => change({ ambientSound_dBA: null }) }}
          onCommit={(level_dBA) => change({ ambientSound_dBA: level_dBA })}
          help={ambientSound_dBA === null ? 'In dB(A). Until it is known, whether the alarm is heard is not checked.' : 'In dB(A), with everything running.'}
          wide
        />
      </div>
    </Slip>
  );
}
