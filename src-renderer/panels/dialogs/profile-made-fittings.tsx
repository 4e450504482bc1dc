import { useState } from 'react';
import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import type { MadeFitting, UnitProfile } from '#shared/profile/unit-profile';
import { countOf } from '../../plan-words.ts';
import { PIPE_SIZE_OPTIONS } from '../bench/pipe-form.tsx';
import { useCommit, useFigures } from '../bench/use-plan.ts';
import { Choice, Tick, optionsOf } from '../fields/choice.tsx';
import { LengthField, QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { changedAt } from '../network/list-edits.ts';
import { BLANK_MADE, LEG_WORDS, MADE_WORDS, type MadeDraft, canBeAlike, draftOfMade, isSameMade, legsAsked, madeText, wholeMade } from './made-fitting-draft.ts';

/** A longer list is put away until somebody asks for it. */
const SHOWN_AT_ONCE = 6;
const MOST_FITTINGS = 500;
const MOST_REACH_m = 2;

/** Fittings whose lengths come from their maker: listed, taken out, changed and added. */
export function ProfileMadeFittings({ profile }: { readonly profile: UnitProfile }) {
  const commit = useCommit();
  const { quantity, system } = useFigures();
  const [draft, setDraft] = useState<MadeDraft>(BLANK_MADE);
  const { madeFittings } = profile;
  const keep = (next: readonly MadeFitting[]): boolean => commit(saveProfileInPlan({ ...profile, madeFittings: [...next] }));
  const change = (part: Partial<MadeDraft>): void => setDraft({ ...draft, ...part });
  const whole = wholeMade(draft);
  const takes = whole && madeFittings.some((each) => isSameMade(each, whole));
  const isFull = madeFittings.length >= MOST_FITTINGS && !takes;
  const add = (): void => {
    if (!whole || isFull) return;
    if (keep(takes ? madeFittings.map((each) => (isSameMade(each, whole) ? whole : each)) : [...madeFittings, whole])) setDraft({ ...BLANK_MADE, kind: draft.kind, source: draft.source });
  };
  const names = legsAsked(draft) === 1 ? ['Every end'] : LEG_WORDS[draft.kind];
  return (
    <fieldset className="orifice-list" data-part="made-fittings">
      <legend>Fittings of their maker{madeFittings.length === 0 ? ' (none listed)' : ''}</legend>
      <p className="field-help">For what no table here holds: reducing, street, forged, welded and grooved fittings, unions. Their centre-to-end goes before any table; without it a piece of pipe has no cut length.</p>
      {madeFittings.length > 0 ? (
        <details open={madeFittings.length <= SHOWN_AT_ONCE}>
          <summary>{countOf(madeFittings.length, 'fitting')}, each end with its centre-to-end</summary>
          <table className="limit-table made-table">
            <tbody>
              {madeFittings.map((made, i) => {
                const { name, ends } = madeText(made, system);
                return (
                  // biome-ignore lint/suspicious/noArrayIndexKey: the same fitting may stand twice in a file that was taken in
                  <tr key={i}>
                    <th scope="row">{name}</th>
                    <td>{ends}</td>
                    <td>{made.weight_kg === null ? <span className="quiet">weight not given</span> : quantity(made.weight_kg, 'mass')}</td>
                    <td className="quiet">{made.source || 'no source'}</td>
                    <td>
                      <button type="button" className="link" aria-label={`Change ${name} ${ends}`} onClick={() => setDraft(draftOfMade(made))}>
                        change
                      </button>{' '}
                      <button type="button" className="link" aria-label={`Take out ${name} ${ends}`} onClick={() => keep(madeFittings.filter((_, k) => k !== i))}>
                        take out
                      </button>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </details>
      ) : null}
      <div className="fields">
        <Choice label="Kind of fitting" value={draft.kind} options={optionsOf(MADE_WORDS)} onCommit={(kind) => change({ kind })} />
        <QuantityField kind="mass" label="Weight of one" value={draft.weight_kg} least={0.001} most={1000} blank={{ text: 'not given', commit: () => change({ weight_kg: null }) }} onCommit={(weight_kg) => change({ weight_kg })} />
        <TextField label="Fitting read from" value={draft.source} most={400} placeholder="catalogue and page" onCommit={(source) => change({ source })} />
      </div>
      {canBeAlike(draft.kind) ? <Tick label="All ends alike" value={draft.isAlike} onCommit={(isAlike) => change({ isAlike })} /> : null}
      <div className="fields">
        {names.flatMap((name, i) => {
          const leg = draft.legs[i];
          if (!leg) return [];
          return [
            <Choice key={`${name} size`} label={`${name}: size`} value={leg.size} options={PIPE_SIZE_OPTIONS} onCommit={(size) => change({ legs: changedAt(draft.legs, i, { size }) })} />,
            <LengthField
              key={`${name} reach`}
              label={`${name}: centre to end`}
              value={leg.reach_m}
              least={0}
              most={MOST_REACH_m}
              blank={{ text: 'not known', commit: () => change({ legs: changedAt(draft.legs, i, { reach_m: null }) }) }}
              onCommit={(reach_m) => change({ legs: changedAt(draft.legs, i, { reach_m }) })}
            />,
          ];
        })}
      </div>
      {isFull ? <p className="field-fault">The list is full at {MOST_FITTINGS} fittings.</p> : null}
      <button type="button" className="button" aria-disabled={!whole || isFull} title={whole ? undefined : 'Type the centre-to-end of every end first'} onClick={add}>
        {takes ? 'Replace the listed one' : 'Add this fitting'}
      </button>
    </fieldset>
  );
}
