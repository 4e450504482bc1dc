import { useId, useState } from 'react';
import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { countOf } from '../../plan-words.ts';
import { useCommit, useFigures } from '../bench/use-plan.ts';
import { type ReadOrifices, readOrifices } from './orifice-lines.ts';

/** A longer list is put away until somebody asks for it. */
const SHOWN_AT_ONCE = 24;

/** The orifices that the unit's nozzles are made with: listed, taken out, and typed or pasted many at once. */
export function ProfileOrifices({ profile }: { readonly profile: UnitProfile }) {
  const commit = useCommit();
  const { quantity, system } = useFigures();
  const id = useId();
  const [text, setText] = useState('');
  const [faults, setFaults] = useState<readonly string[]>([]);
  const { orifices } = profile;
  const keep = (next: ReadOrifices['orifices']): boolean => commit(saveProfileInPlan({ ...profile, orifices: [...next] }));
  const add = (): void => {
    const read = readOrifices(text, orifices, system);
    setFaults(read.faults);
    if (text.trim() !== '' && keep(read.orifices) && read.faults.length === 0) setText('');
  };
  return (
    <fieldset className="orifice-list">
      <legend>Orifices that the nozzles are made with{orifices.length === 0 ? ' (none listed: none can be chosen)' : ''}</legend>
      {orifices.length > 0 ? (
        <details open={orifices.length <= SHOWN_AT_ONCE}>
          <summary>
            {countOf(orifices.length, 'orifice')}: {orifices[0]?.code} to {orifices.at(-1)?.code}
          </summary>
          <ul>
            {orifices.map(({ code, area_m2 }) => (
              <li key={code}>
                <strong>{code}</strong> {quantity(area_m2, 'orificeArea')}{' '}
                <button type="button" className="link" aria-label={`Take out orifice ${code}`} onClick={() => keep(orifices.filter((each) => each.code !== code))}>
                  take out
                </button>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      <div className="field is-wide">
        <label htmlFor={id}>Add orifices, one to a line: code and area of all holes</label>
        <textarea id={id} rows={3} value={text} placeholder={`S58 ${quantity(2.61e-5, 'orificeArea')}`} onChange={(event) => setText(event.target.value)} aria-describedby={`${id}-help`} />
        {faults.length > 0 ? (
          <div className="field-fault" id={`${id}-help`} role="alert">
            {faults.slice(0, 5).map((fault) => (
              <p key={fault}>{fault}</p>
            ))}
            {faults.length > 5 ? <p>And {faults.length - 5} more lines.</p> : null}
          </div>
        ) : (
          <p className="field-help" id={`${id}-help`}>
            A table can be pasted from the manual. A code that is listed already gets the new area.
          </p>
        )}
      </div>
      <button type="button" className="button" onClick={add}>
        Add these orifices
      </button>
    </fieldset>
  );
}
