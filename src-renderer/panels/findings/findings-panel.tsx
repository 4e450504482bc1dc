import { useMemo, useState } from 'react';
import type { Evaluation } from '#shared/evaluate';
import { partOf } from '#shared/rules/catalogue';
import { type Finding, VERDICTS, type Verdict } from '#shared/rules/finding';
import { VERDICT_WORDS } from '../../plan-words.ts';
import { presentEvaluation, selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { useDesk } from '../window-context.ts';
import { AssumptionsView } from './assumptions-view.tsx';
import { CatalogueView } from './catalogue-view.tsx';
import { CureAllSlip, type CureReport } from './cure-all-slip.tsx';
import { ARRANGEMENTS, ARRANGEMENT_WORDS, type Arrangement, groupFindings, matchesWords, partsIn } from './finding-groups.ts';
import { FindingList } from './finding-list.tsx';
import { OPEN_VERDICTS, filterFindings } from './finding-words.ts';
import { ToleranceView } from './tolerance-view.tsx';
import { AcceptedSlip, LapsedSlip } from './waivers-slip.tsx';

const shownKey = (state: State) => state.session.finding;

/** Longer lists wait for the end of a drag: they are no help within a frame. */
const MOST_LIVE = 1000;
const liveEvaluation = (state: State): Evaluation => {
  const live = selectEvaluation(state);
  return live.found.size > MOST_LIVE ? presentEvaluation(state) : live;
};

/** Lines painted at once; more are one press away. */
const PAGE = 100;

const VIEWS = { findings: 'Findings', catalogue: 'Every check', assumptions: 'Taken for granted', tolerance: 'On site' } as const;
type View = keyof typeof VIEWS;

/** Everything the checks say, to be filtered, gone to, understood, cured or accepted; every check; every assumption. */
export function FindingsPanel() {
  // While a cure is tried out the list keeps to the plan as it is: what is pointed at must not go away.
  const isTrying = useDesk((desk) => desk.isTrying);
  const evaluation = useStore(isTrying ? presentEvaluation : liveEvaluation);
  const [view, setView] = useState<View>('findings');
  const [rule, setRule] = useState<string | null>(null);
  const show = (id: string): void => {
    setRule(id);
    setView('findings');
  };
  return (
    <div className="findings-panel">
      <fieldset className="view-choice">
        <legend className="out-of-sight">What is listed</legend>
        {(Object.keys(VIEWS) as View[]).map((each) => (
          <button key={each} type="button" className="button is-slim" aria-pressed={view === each} data-view={each} onClick={() => setView(each)}>
            {VIEWS[each]}
          </button>
        ))}
      </fieldset>
      {view === 'findings' ? <FindingsView evaluation={evaluation} rule={rule} onRule={setRule} /> : null}
      {view === 'catalogue' ? <CatalogueView findings={evaluation.findings} onShow={show} /> : null}
      {view === 'assumptions' ? <AssumptionsView /> : null}
      {view === 'tolerance' ? <ToleranceView /> : null}
      <p className="caution">These checks are a preliminary aid. The listing, the manual of the unit, the adopted code and licensed practice decide.</p>
    </div>
  );
}

interface FindingsViewProps {
  readonly evaluation: Evaluation;
  /** Only the findings of this check; null: of every check. */
  readonly rule: string | null;
  onRule(rule: string | null): void;
}

function FindingsView({ evaluation, rule, onRule }: FindingsViewProps) {
  const { derived, lapsed, found } = evaluation;
  const key = useStore(shownKey);
  const [verdicts, setVerdicts] = useState<ReadonlySet<Verdict>>(OPEN_VERDICTS);
  const [part, setPart] = useState('');
  const [level, setLevel] = useState('');
  const [words, setWords] = useState('');
  const [arrangement, arrange] = useState<Arrangement>('thing');
  const [most, setMost] = useState(PAGE);
  const [cured, setCured] = useState<CureReport | null>(null);

  const { counts } = found;
  const levels = Object.values(derived.plan.levels);
  // Kept limits are by far the most: they are looked through only where somebody asks for them.
  const findings = rule !== null || verdicts.has('ok') ? evaluation.findings : found.open;
  const unaccepted = useMemo(() => findings.filter(({ waiver }) => !waiver), [findings]);
  const parts = useMemo(() => partsIn(unaccepted), [unaccepted]);
  const passing = useMemo(() => {
    const isAsked = (finding: Finding): boolean => (rule === null ? verdicts.has(finding.verdict) : finding.rule === rule) && (part === '' || partOf(finding.rule) === part) && matchesWords(finding, words);
    return filterFindings(unaccepted.filter(isAsked), { verdicts: new Set(VERDICTS), rule, level: level || null });
  }, [unaccepted, verdicts, rule, part, words, level]);
  // A finding that is open stays in the list though it was just cured.
  const open = key === null ? undefined : found.withKey(key);
  const shown = useMemo(() => (open && !open.waiver && !passing.includes(open) ? [open, ...passing] : passing), [open, passing]);
  const groups = useMemo(() => groupFindings(shown, arrangement, derived.plan, most), [shown, arrangement, derived.plan, most]);
  const accepted = counts.accepted === 0 ? [] : found.open.filter((finding) => finding.waiver);
  const toggle = (verdict: Verdict): void => {
    const next = new Set(verdicts);
    if (!next.delete(verdict)) next.add(verdict);
    setVerdicts(next);
  };
  const title = rule === null ? undefined : passing[0]?.title;

  return (
    <>
      <fieldset className="verdict-filter">
        <legend className="out-of-sight">Show</legend>
        {VERDICTS.map((verdict) => (
          <button key={verdict} type="button" className="button is-slim" aria-pressed={verdicts.has(verdict)} data-verdict={verdict} onClick={() => toggle(verdict)}>
            <VerdictMark verdict={verdict} silent />
            {counts[verdict]} {counts[verdict] === 1 ? VERDICT_WORDS[verdict].one : VERDICT_WORDS[verdict].many}
          </button>
        ))}
        {counts.accepted > 0 ? (
          <button type="button" className="button is-slim" data-verdict="accepted" onClick={() => document.querySelector('[data-part="accepted"]')?.scrollIntoView({ block: 'start' })}>
            {counts.accepted} accepted
          </button>
        ) : null}
      </fieldset>
      <div className="fields">
        <div className="field">
          <label htmlFor="finding-words">Find</label>
          <input id="finding-words" type="search" value={words} placeholder="N2, ceiling…" onChange={(event) => setWords(event.target.value)} />
        </div>
        <Choice label="About" value={part} options={[{ value: '', label: 'Everything' }, ...parts.map(({ letter, name }) => ({ value: letter as string, label: name }))]} onCommit={setPart} />
        <Choice<Arrangement> label="Arrange" value={arrangement} options={ARRANGEMENTS.map((value) => ({ value, label: ARRANGEMENT_WORDS[value] }))} onCommit={arrange} />
        {levels.length > 1 ? <Choice label="Level" value={level} options={[{ value: '', label: 'All levels' }, ...levels.map(({ id, name }) => ({ value: id, label: name }))]} onCommit={setLevel} /> : null}
      </div>
      {rule === null ? null : (
        <p className="row">
          Only “{title ?? rule}”.
          <button type="button" className="link" onClick={() => onRule(null)}>
            Show every check
          </button>
        </p>
      )}
      <CureAllSlip found={found} result={cured} onResult={setCured} />
      {found.size === 0 ? <p className="quiet">Nothing is drawn that a check could look at. Draw an enclosure first.</p> : null}
      {found.size > 0 && shown.length === 0 ? <p className="quiet">{[...OPEN_VERDICTS].some((verdict) => counts[verdict] > 0) ? 'Nothing of this kind.' : 'Nothing is left to clear here. Look through what was taken for granted, then issue the sheets.'}</p> : null}
      <FindingList groups={groups} open={key} most={most} />
      {shown.length > most ? (
        <button type="button" className="button" onClick={() => setMost(most + PAGE)}>
          Show more ({shown.length - most} left)
        </button>
      ) : null}
      <AcceptedSlip findings={accepted} open={key} />
      <LapsedSlip lapsed={lapsed} />
    </>
  );
}
