import { useMemo } from 'react';
import type { Finding } from '#shared/rules/finding';
import { drawWhy } from '#shared/why/draw-why';
import { whatWouldChange } from '#shared/why/what-would-change';
import { lengthSystem } from '../../plan-words.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { capitalised } from '../fields/capitalised.ts';
import { WhereToEnter } from '../sums/where-to-enter.tsx';
import { useRun } from '../window-context.ts';
import { AcceptSlip } from './accept-slip.tsx';
import { CureButton } from './cure-button.tsx';
import { asksForProfile, figuresOf } from './finding-words.ts';
import { whereToMend } from './where-to-mend.ts';
import { WhyPicture } from './why-picture.tsx';

/** Everything that a finding rests on, as a table. */
function InputsTable({ finding }: { readonly finding: Finding }) {
  const system = useStore(lengthSystem);
  const { measured, limit, margin } = figuresOf(finding, system);
  const rows: { readonly label: string; readonly value: string; readonly source?: string }[] = [
    ...(measured ? [{ label: 'Measured', value: measured }] : []),
    ...(limit ? [{ label: 'Limit', value: limit, ...(finding.limitSource ? { source: finding.limitSource } : {}) }] : []),
    ...(margin ? [{ label: 'Margin', value: margin }] : []),
    ...(finding.inputs ?? []),
  ];
  if (rows.length === 0) return null;
  return (
    <dl className="readings why-inputs">
      {rows.map(({ label, value, source }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>
            {value}
            {source ? <span className="why-source">{source}</span> : null}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** Why a check says what it says, what would cure it, and what else would change its verdict. */
export function FindingWhy({ finding }: { readonly finding: Finding }) {
  const run = useRun();
  const system = useStore(lengthSystem);
  const { derived } = useStore(presentEvaluation);
  const drawing = useMemo(() => drawWhy(finding, derived), [finding, derived]);
  const { basis, cure, waiver } = finding;
  const changes = whatWouldChange(finding, system);
  return (
    <div className="finding-detail">
      {cure && cure.kind !== 'advice' && finding.verdict !== 'ok' && !waiver ? <CureButton cure={cure} /> : null}
      {cure?.kind === 'advice' ? <p className="advice">{cure.text}</p> : null}
      <WhereToEnter fields={whereToMend(derived, finding)} />
      {asksForProfile(finding) ? (
        <button type="button" className="button" onClick={() => run('profile')}>
          Open the unit profile…
        </button>
      ) : null}
      {drawing ? <WhyPicture drawing={drawing} verdict={finding.verdict} /> : null}
      <InputsTable finding={finding} />
      <dl className="why-texts">
        <dt>How it is judged</dt>
        <dd>{capitalised(basis.formula)}</dd>
        {changes.length > 0 ? (
          <>
            <dt>What would change this</dt>
            {changes.map((sentence) => (
              <dd key={sentence}>{sentence}</dd>
            ))}
          </>
        ) : null}
        <dt>Source</dt>
        <dd>{capitalised(basis.source)}</dd>
      </dl>
      {basis.caution ? <p className="caution">{basis.caution}</p> : null}
      <AcceptSlip finding={finding} />
    </div>
  );
}
