import { CHANGE_WORDS, changeDetails } from '#shared/revisions/change-words';
import { CHANGE_KINDS, type PlanChange } from '#shared/revisions/plan-change';
import { comparableSets, compareIssues, showChange, stopComparing } from '../../actions/compare-issues.ts';
import { lengthSystem } from '../../plan-words.ts';
import { selectChanges } from '../../store/compared-changes.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { useActionContext } from '../window-context.ts';
import { ChangeSign } from './change-sign.tsx';

/** Value of the choice that means the plan as it is. */
const AS_IT_IS = 'now';
/** More of one kind are counted, not listed. */
const MOST_LISTED = 150;

const comparedOf = (state: State) => state.session.compared;

function ChangeRow({ change, isShown }: { readonly change: PlanChange; readonly isShown: boolean }) {
  const context = useActionContext();
  const system = useStore(lengthSystem);
  return (
    <li>
      <button type="button" className="change-row" aria-current={isShown} title="Show it on the board" onClick={() => showChange(context, change)}>
        <ChangeSign kind={change.kind} />
        <span>
          <strong>{change.name}</strong> <span className="quiet">{change.where}</span>
          {changeDetails(change, system).map((words) => (
            <span key={words} className="change-detail">
              {words}
            </span>
          ))}
        </span>
      </button>
    </li>
  );
}

/** Which two states are compared: an issued set, and another one or the plan as it is. */
function WhichIssues() {
  const context = useActionContext();
  const compared = useStore(comparedOf);
  const { issuedSets } = useShownPlan();
  const sets = issuedSets.filter(({ plan }) => plan !== null);
  const options = sets.map(({ id, mark, date }) => ({ value: id, label: [`Set ${mark}`, date].filter(Boolean).join(', ') }));
  const compare = (from: string | undefined, to: string | undefined): void => {
    const before = sets.find(({ id }) => id === from);
    if (before) void compareIssues(context, before, sets.find(({ id }) => id === to) ?? null);
  };
  return (
    <div className="fields">
      <Choice label="From" value={compared?.before.set ?? sets.at(-1)?.id ?? ''} options={options} onCommit={(from) => compare(from, compared?.now?.set)} />
      <Choice label="To" value={compared?.now?.set ?? AS_IT_IS} options={[...options, { value: AS_IT_IS, label: 'The plan as it is' }]} onCommit={(to) => compare(compared?.before.set ?? sets.at(-1)?.id, to)} />
    </div>
  );
}

/** What differs between two issues, or between an issue and the plan as it is, in words; each leads to its place. */
export function ComparePanel() {
  const context = useActionContext();
  const compared = useStore(comparedOf);
  const changes = useStore(selectChanges);
  const hasSets = useStore((state: State) => comparableSets(state).length > 0);
  if (!hasSets) {
    return (
      <Slip title="Changes" part="changes">
        <p className="quiet">No issued set is kept with this plan. Issue a set in the Sheets stage: whatever changes after it is listed here.</p>
      </Slip>
    );
  }
  const kinds = CHANGE_KINDS.map((kind) => ({ kind, list: changes.filter((change) => change.kind === kind) })).filter(({ list }) => list.length > 0);
  return (
    <>
      <Slip
        title="Compare"
        part="compare"
        aside={
          compared ? (
            <button type="button" className="button is-slim" onClick={() => stopComparing(context)}>
              Stop comparing
            </button>
          ) : null
        }
      >
        <WhichIssues />
        {compared ? (
          <p role="status">
            {changes.length === 0 ? 'Nothing differs between the two.' : `${kinds.map(({ kind, list }) => `${list.length} ${CHANGE_WORDS[kind].toLowerCase()}`).join(', ')}.`}
            {compared.now ? ' The board shows the plan as it is, with the differences painted over it.' : ''}
          </p>
        ) : (
          <p className="quiet">Choose what to compare.</p>
        )}
      </Slip>
      {kinds.map(({ kind, list }) => (
        <Slip key={kind} title={`${CHANGE_WORDS[kind]}: ${list.length}`} part={`changes-${kind}`}>
          <ul className="change-list">
            {list.slice(0, MOST_LISTED).map((change) => (
              <ChangeRow key={change.key} change={change} isShown={change.key === compared?.shown} />
            ))}
          </ul>
          {list.length > MOST_LISTED ? <p className="quiet">{list.length - MOST_LISTED} more are painted on the board.</p> : null}
        </Slip>
      ))}
    </>
  );
}
