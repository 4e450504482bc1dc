import { useEffect, useRef, useState } from 'react';
import { VERDICTS, type Verdict, findingKey } from '#shared/rules/finding';
import { VERDICT_WORDS } from '../../plan-words.ts';
import { presentEvaluation, selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { FindingRow } from './finding-row.tsx';
import { OPEN_VERDICTS, countByVerdict, filterFindings, rulesOf } from './finding-words.ts';

const shownKey = (state: State) => state.session.finding;

/** Longer lists wait for the end of a drag: they are no help within a frame. */
const MOST_LIVE = 3000;
const listedEvaluation = (state: State) => {
  const live = selectEvaluation(state);
  return live.findings.length > MOST_LIVE ? presentEvaluation(state) : live;
};

/** Rows painted at once; more are one press away. */
const PAGE = 100;

/** Everything the checks say, to be filtered, gone to, understood and cured. */
export function FindingsPanel() {
  const { findings, derived } = useStore(listedEvaluation);
  const key = useStore(shownKey);
  const [verdicts, setVerdicts] = useState<ReadonlySet<Verdict>>(OPEN_VERDICTS);
  const [rule, setRule] = useState('');
  const [level, setLevel] = useState('');
  const [most, setMost] = useState(PAGE);
  const list = useRef<HTMLUListElement>(null);

  // Going to a finding by key brings its line into sight.
  useEffect(() => {
    if (key !== null) list.current?.querySelector(`[data-finding="${CSS.escape(key)}"]`)?.scrollIntoView({ block: 'nearest' });
  }, [key]);

  const counts = countByVerdict(findings);
  const levels = Object.values(derived.plan.levels);
  const passing = filterFindings(findings, { verdicts, rule: rule || null, level: level || null });
  // A finding that is open stays in the list though it was just cured.
  const open = key === null ? undefined : findings.find((finding) => findingKey(finding) === key);
  const shown = open && !passing.includes(open) ? [open, ...passing] : passing;
  const toggle = (verdict: Verdict): void => {
    const next = new Set(verdicts);
    if (!next.delete(verdict)) next.add(verdict);
    setVerdicts(next);
  };

  return (
    <div className="findings-panel">
      <fieldset className="verdict-filter">
        <legend className="out-of-sight">Show</legend>
        {VERDICTS.map((verdict) => (
          <button key={verdict} type="button" className="button is-slim" aria-pressed={verdicts.has(verdict)} data-verdict={verdict} onClick={() => toggle(verdict)}>
            <VerdictMark verdict={verdict} silent />
            {counts[verdict]} {counts[verdict] === 1 ? VERDICT_WORDS[verdict].one : VERDICT_WORDS[verdict].many}
          </button>
        ))}
      </fieldset>
      <div className="fields">
        <Choice label="Check" value={rule} options={[{ value: '', label: 'All checks' }, ...rulesOf(findings).map(({ id, title }) => ({ value: id, label: title }))]} onCommit={setRule} />
        {levels.length > 1 ? <Choice label="Level" value={level} options={[{ value: '', label: 'All levels' }, ...levels.map(({ id, name }) => ({ value: id, label: name }))]} onCommit={setLevel} /> : null}
      </div>
      {findings.length === 0 ? <p className="quiet">Nothing is drawn that a check could look at. Draw an enclosure first.</p> : null}
      {findings.length > 0 && shown.length === 0 ? <p className="quiet">Nothing of this kind.</p> : null}
      <ul className="finding-list" ref={list}>
        {shown.slice(0, most).map((finding) => {
          const own = findingKey(finding);
          return <FindingRow key={own} finding={finding} isOpen={own === key} />;
        })}
      </ul>
      {shown.length > most ? (
        <button type="button" className="button" onClick={() => setMost(most + PAGE)}>
          Show more ({shown.length - most} left)
        </button>
      ) : null}
      <p className="caution">These checks are a preliminary aid. The listing, the manual of the unit, the adopted code and licensed practice decide.</p>
    </div>
  );
}
