import { useState } from 'react';
import type { Enclosure } from '#shared/model/plan';
import { Choice, Tick } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { LongTextField, TextField } from '../fields/text-field.tsx';

type Void = Enclosure['underFloor'];
type Exclusion = NonNullable<NonNullable<Void>['exclusion']>;

const NOTHING: Exclusion = { reason: '', by: '', date: '' };

/** An exclusion with a part of it changed; null once nothing of it is left. */
export function exclusionWith(exclusion: Exclusion | null, part: Partial<Exclusion>): Exclusion | null {
  const next = { ...NOTHING, ...exclusion, ...part };
  return next.reason === '' && next.by === '' && next.date === '' ? null : next;
}

/** Why a void is left out, and who signed for it. */
function ExclusionFields({ exclusion, what, onCommit }: { readonly exclusion: Exclusion | null; readonly what: string; onCommit(exclusion: Exclusion | null): void }) {
  const { reason, by, date } = exclusion ?? NOTHING;
  return (
    <div className="fields is-inset">
      <LongTextField label={`Why the ${what} is left out`} value={reason} rows={2} onCommit={(said) => onCommit(exclusionWith(exclusion, { reason: said.trim() }))} />
      <TextField label="Signed by" value={by} onCommit={(name) => onCommit(exclusionWith(exclusion, { by: name }))} />
      <TextField label="On" value={date} placeholder="2026-03-31" onCommit={(day) => onCommit(exclusionWith(exclusion, { date: day }))} />
    </div>
  );
}

interface VoidFieldsProps {
  readonly label: string;
  readonly space: Void;
  onCommit(space: Void): void;
}

/** A void begins with the depth that the user types: no depth is ever assumed. */
export function VoidFields({ label, space, onCommit }: VoidFieldsProps) {
  const [isAsked, ask] = useState(false);
  const tick = (has: boolean): void => {
    ask(has);
    if (!has && space) onCommit(null);
  };
  return (
    <>
      <Tick label={label} value={space !== null || isAsked} onCommit={tick} />
      {space || isAsked ? (
        <div className="fields is-inset">
          <LengthField
            label="Clear depth"
            value={space?.depth_m ?? null}
            least={0.01}
            onCommit={(depth_m) => onCommit({ isProtected: true, exclusion: null, ...space, depth_m })}
            help={space ? undefined : 'Type its depth: until then it is not in the plan and not checked.'}
          />
          {space ? (
            <Choice
              label="Agent there"
              value={space.isProtected ? 'yes' : 'no'}
              options={[
                { value: 'yes', label: 'Protected' },
                { value: 'no', label: 'Left out, signed for' },
              ]}
              onCommit={(chosen) => onCommit({ ...space, isProtected: chosen === 'yes' })}
            />
          ) : null}
        </div>
      ) : null}
      {space && !space.isProtected ? <ExclusionFields exclusion={space.exclusion} what={label.toLowerCase()} onCommit={(exclusion) => onCommit({ ...space, exclusion })} /> : null}
    </>
  );
}
