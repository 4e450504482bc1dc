import { useEffect, useMemo, useState } from 'react';
import { editBasis } from '#shared/commands/edit-basis';
import { type FindingChange, type SumChange, compareEvaluations } from '#shared/compare-evaluations';
import type { BasisOfDesign } from '#shared/model/basis-of-design';
import type { Finding } from '#shared/rules/finding';
import { VERDICT_WORDS, countOf } from '../../plan-words.ts';
import { isWorkingOut, presentEvaluation, selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useFigures } from '../bench/use-plan.ts';
import { figuresOf } from '../findings/finding-words.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { useActionContext } from '../window-context.ts';
import { BASIS_GROUPS } from './basis-choices.ts';
import { BasisField, fieldText } from './basis-field.tsx';

/** Longer lists are no help; what was left out is counted. */
const MOST_SHOWN = 60;
const hasPreview = (state: State): boolean => state.preview !== null;
const presentBasis = (state: State): BasisOfDesign => state.history.present.basis;

/** A basis that is chosen step by step, shown on the plan as it would be while this stands, and gone when it is left. */
function useTrial(draft: Partial<BasisOfDesign>): void {
  const { store, desk } = useActionContext();
  const isShown = useStore(hasPreview);
  const isEmpty = Object.keys(draft).length === 0;
  useEffect(() => {
    if (isEmpty) store.preview(null);
    else if (!isShown) store.preview(editBasis(draft));
  }, [store, draft, isEmpty, isShown]);
  // Another choice takes the place of the one before.
  useEffect(() => {
    if (Object.keys(draft).length > 0) store.preview(editBasis(draft));
  }, [store, draft]);
  useEffect(() => {
    desk.set({ isTrying: true });
    return () => {
      desk.set({ isTrying: false });
      store.preview(null);
    };
  }, [store, desk]);
}

/** A verdict with its figures, or that nothing is asked. */
function Said({ finding }: { readonly finding: Finding | undefined }) {
  const { system } = useFigures();
  if (!finding) return <span className="quiet">not asked</span>;
  const { limit } = figuresOf(finding, system);
  return (
    <span className="compare-said">
      <VerdictMark verdict={finding.verdict} silent /> {VERDICT_WORDS[finding.verdict].one}
      {limit ? <span className="quiet">limit {limit}</span> : null}
    </span>
  );
}

function FindingChanges({ changes }: { readonly changes: readonly FindingChange[] }) {
  if (changes.length === 0) return <p className="quiet">No check comes out differently.</p>;
  return (
    <ul className="compare-list">
      {changes.slice(0, MOST_SHOWN).map(({ key, before, now }) => {
        const shown = now ?? before;
        if (!shown) return null;
        const [was, is] = [before?.limitSource ?? before?.basis.source, now?.limitSource ?? now?.basis.source];
        return (
          <li key={key} data-change={key}>
            <p>
              <strong>{shown.name}</strong> {shown.title}
            </p>
            <p className="compare-pair">
              <Said finding={before} /> <span aria-hidden="true">→</span>
              <span className="out-of-sight">becomes</span> <Said finding={now} />
            </p>
            {now && now.verdict !== 'ok' && now.verdict !== before?.verdict ? <p>{now.text}</p> : null}
            <p className="quiet">{was === is ? is : `${was ?? 'not asked'} → ${is ?? 'not asked'}`}</p>
          </li>
        );
      })}
    </ul>
  );
}

function SumChanges({ changes }: { readonly changes: readonly SumChange[] }) {
  if (changes.length === 0) return <p className="quiet">No sum comes out differently.</p>;
  const titles = [...new Set(changes.map(({ title, subjectName }) => `${title}: ${subjectName}`))];
  return titles.map((title) => (
    <div key={title}>
      <h4>{title}</h4>
      <ul className="compare-list">
        {changes
          .filter((change) => `${change.title}: ${change.subjectName}` === title)
          .slice(0, MOST_SHOWN)
          .map(({ key, label, isMain, before, now }) => (
            <li key={key}>
              <p className="compare-sum">
                <span>{isMain ? <strong>{label}</strong> : label}</span>
                <span>
                  {before?.result ?? 'not worked out'} → <strong>{now?.result ?? 'not worked out'}</strong>
                </span>
              </p>
              {before && now && before.source !== now.source ? (
                <p className="quiet">
                  {before.source} → {now.source}
                </p>
              ) : (
                <p className="quiet">{(now ?? before)?.source}</p>
              )}
            </li>
          ))}
      </ul>
    </div>
  ));
}

/** Other editions and methods, tried out: which limits, sums and verdicts would change, before anything is applied. */
export function BasisCompare({ onClose }: { onClose(): void }) {
  const { store } = useActionContext();
  const [draft, setDraft] = useState<Partial<BasisOfDesign>>({});
  useTrial(draft);
  const figures = useFigures();
  const basis = useStore(presentBasis);
  const before = useStore(presentEvaluation);
  const now = useStore(selectEvaluation);
  const isBusy = useStore(isWorkingOut);
  const { choices, findings, sums } = useMemo(() => compareEvaluations(before, now), [before, now]);
  const tried: BasisOfDesign = { ...basis, ...draft };
  const take = (part: Partial<BasisOfDesign>): void => {
    const next = { ...draft, ...part };
    const differing = (Object.keys(next) as (keyof BasisOfDesign)[]).filter((key) => next[key] !== basis[key]);
    setDraft(Object.fromEntries(differing.map((key) => [key, next[key]])));
  };
  const apply = (): void => {
    if (store.commit(editBasis(draft))) onClose();
  };
  const verdicts = findings.filter(({ before: was, now: is }) => was?.verdict !== is?.verdict).length;
  const fields = BASIS_GROUPS.map(({ title, fields: all }) => ({ title, fields: all.filter(({ kind }) => kind === 'words') })).filter(({ fields: all }) => all.length > 0);
  const changed = BASIS_GROUPS.flatMap(({ fields: all }) => all).filter(({ key }) => choices.includes(key));
  return (
    <div className="basis basis-compare" data-part="compare">
      <p>Choose another edition or method. What it would change is listed below and shown on the plan; nothing is changed until you apply it.</p>
      <Slip title="Try instead">
        <div className="fields is-single">
          {fields.flatMap(({ fields: all }) =>
            all.map((field) => (
              <div key={field.key} className="basis-choice" data-changed={draft[field.key] === undefined ? undefined : 'yes'}>
                <BasisField field={{ ...field, help: draft[field.key] === undefined ? '' : `Now: ${fieldText(field, basis, figures)}.` }} basis={tried} change={take} />
              </div>
            )),
          )}
        </div>
      </Slip>
      <div className="compare-result" aria-live="polite">
        <Slip title="What would change">
          {changed.length === 0 ? (
            <p className="quiet">Choose something else above.</p>
          ) : (
            <>
              <ul className="compare-list">
                {changed.map((field) => (
                  <li key={field.key}>
                    <p className="quiet">{field.label}</p>
                    <p>
                      {fieldText(field, basis, figures)} → <strong>{fieldText(field, tried, figures)}</strong>
                    </p>
                  </li>
                ))}
              </ul>
              <p>
                <strong>{countOf(verdicts, 'verdict')}</strong>, {countOf(findings.length - verdicts, 'other limit or figure', 'other limits or figures')} and {countOf(sums.length, 'line')} of the sums would change.
              </p>
              {isBusy || now.isStale ? <p className="doubt">A discharge is still being worked out for these choices: what rests on it follows.</p> : null}
            </>
          )}
        </Slip>
        {changed.length > 0 ? (
          <>
            <Slip title="Checks">
              <FindingChanges changes={findings} />
            </Slip>
            <Slip title="Sums">
              <SumChanges changes={sums} />
            </Slip>
          </>
        ) : null}
      </div>
      <div className="row compare-end">
        <button type="button" className="button is-main" disabled={changed.length === 0} onClick={apply}>
          Apply these choices
        </button>
        <button type="button" className="button" onClick={onClose}>
          Leave everything as it is
        </button>
      </div>
    </div>
  );
}
