import { useEffect, useState } from 'react';
import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import { PIPE_SCHEDULES, PIPE_SIZES } from '#shared/profile/pipe-table';
import { type Footprint, TEE_ATTITUDES, type UnitProfile } from '#shared/profile/unit-profile';
import { useCommit } from '../bench/use-plan.ts';
import { Choice, Tick } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';

const FITTING_CLASSES = ['300', '2000', '3000', '6000'] as const;

/** Sides of the covered floor as far as they were typed: nothing is guessed, so a shape counts only when it is whole. */
interface Draft {
  readonly shape: Footprint['shape'];
  readonly first_m: number | null;
  readonly second_m: number | null;
  readonly source: string;
}

const draftOf = (footprint: Footprint | null): Draft | null =>
  footprint && {
    shape: footprint.shape,
    first_m: footprint.shape === 'circle' ? footprint.radius_m : footprint.length_m,
    second_m: footprint.shape === 'circle' ? null : footprint.width_m,
    source: footprint.source,
  };

function footprintOf({ shape, first_m, second_m, source }: Draft): Footprint | null {
  if (first_m === null) return null;
  if (shape === 'circle') return { shape, radius_m: first_m, source };
  return second_m === null ? null : { shape, length_m: first_m, width_m: second_m, source };
}

function FootprintFields({ footprint, onCommit }: { readonly footprint: Footprint | null; onCommit(footprint: Footprint | null): void }) {
  const [draft, setDraft] = useState(draftOf(footprint));
  useEffect(() => setDraft((now) => (footprint ? draftOf(footprint) : now && footprintOf(now) ? null : now)), [footprint]);
  const take = (next: Draft | null): void => {
    setDraft(next);
    const whole = next && footprintOf(next);
    if (whole || footprint) onCommit(whole);
  };
  return (
    <div className="fields">
      <Choice
        label="Floor that one nozzle covers"
        value={draft?.shape ?? 'blank'}
        options={[
          { value: 'blank', label: 'Blank: not checked' },
          { value: 'circle', label: 'A circle' },
          { value: 'rectangle', label: 'A rectangle, turned with the nozzle' },
        ]}
        onCommit={(shape) => take(shape === 'blank' ? null : { shape, first_m: null, second_m: null, source: draft?.source ?? '' })}
      />
      {draft ? (
        <>
          <LengthField label={draft.shape === 'circle' ? 'Radius' : 'Along the holes'} value={draft.first_m} least={0.01} onCommit={(first_m) => take({ ...draft, first_m })} />
          {draft.shape === 'rectangle' ? <LengthField label="Across" value={draft.second_m} least={0.01} onCommit={(second_m) => take({ ...draft, second_m })} /> : null}
          <TextField label="Read from" value={draft.source} most={400} onCommit={(source) => take({ ...draft, source })} />
          {footprintOf(draft) ? null : <p className="field-help">Not checked until its size is typed.</p>}
        </>
      ) : null}
    </div>
  );
}

const ATTITUDE_WORDS: Readonly<Record<(typeof TEE_ATTITUDES)[number], string>> = {
  side: 'Branch to the side',
  up: 'Branch upward',
  down: 'Branch downward',
  bull: 'Fed through its branch (bull-head)',
};

/** Ways in which tees may be turned; with none ticked the manual says nothing. */
function TeeAttitudes({ attitudes, onCommit }: { readonly attitudes: UnitProfile['teeAttitudes']; onCommit(attitudes: UnitProfile['teeAttitudes']): void }) {
  const take = (attitude: (typeof TEE_ATTITUDES)[number], isAllowed: boolean): void => {
    const next = TEE_ATTITUDES.filter((each) => (each === attitude ? isAllowed : attitudes?.includes(each)));
    onCommit(next.length === 0 ? null : next);
  };
  return (
    <fieldset className="size-ticks" data-part="tee-attitudes">
      <legend>Ways in which a tee may be turned{attitudes === null ? ' (none ticked: not checked)' : ''}</legend>
      {TEE_ATTITUDES.map((attitude) => (
        <Tick key={attitude} label={ATTITUDE_WORDS[attitude]} value={attitudes?.includes(attitude) ?? false} onCommit={(isAllowed) => take(attitude, isAllowed)} />
      ))}
    </fieldset>
  );
}

/** What of the manual is no single figure: the covered floor, the sizes, schedule, fittings and tees that are allowed. */
export function PipeRulesSlip({ profile, part }: { readonly profile: UnitProfile; readonly part: 'Pipe' | 'Nozzle' }) {
  const commit = useCommit();
  const change = (changes: Partial<UnitProfile>): void => {
    commit(saveProfileInPlan({ ...profile, ...changes }));
  };
  if (part === 'Nozzle') return <FootprintFields footprint={profile.footprint} onCommit={(footprint) => change({ footprint })} />;
  return (
    <>
      <fieldset className="size-ticks">
        <legend>Pipe sizes that the unit allows{profile.pipeSizes.length === 0 ? ' (none ticked: not checked)' : ''}</legend>
        {PIPE_SIZES.map((size) => (
          <Tick
            key={size}
            label={size}
            value={profile.pipeSizes.includes(size)}
            onCommit={(isAllowed) => change({ pipeSizes: PIPE_SIZES.filter((each) => (each === size ? isAllowed : profile.pipeSizes.includes(each))) })}
          />
        ))}
      </fieldset>
      <div className="fields">
        <Choice label="Pipe schedule" value={profile.schedule ?? 'blank'} options={[{ value: 'blank', label: 'Blank: not checked' }, ...PIPE_SCHEDULES.map((value) => ({ value, label: value }))]} onCommit={(schedule) => change({ schedule: schedule === 'blank' ? null : schedule })} />
        <Choice label="Fitting class" value={profile.fittingClass ?? 'blank'} options={[{ value: 'blank', label: 'Blank: not checked' }, ...FITTING_CLASSES.map((value) => ({ value, label: `Class ${value}` }))]} onCommit={(value) => change({ fittingClass: value === 'blank' ? null : value })} />
      </div>
      <TeeAttitudes attitudes={profile.teeAttitudes} onCommit={(teeAttitudes) => change({ teeAttitudes })} />
    </>
  );
}
