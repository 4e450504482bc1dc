import { ASSUMPTION_TOPICS, ASSUMPTION_TOPIC_WORDS, type Assumption } from '#shared/assumptions/assumption';
import { assumptionsOf } from '#shared/assumptions/assumptions-of';
import { goToBasis, goToForm } from '../../actions/go-to-form.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useActionContext, useRun } from '../window-context.ts';

/** Leads to where an assumption is confirmed or changed. */
function ChangeLink({ assumption: { change, at } }: { readonly assumption: Assumption }) {
  const context = useActionContext();
  const run = useRun();
  if (!at) return <p className="quiet">{change}</p>;
  const go = (): void => {
    if (at.kind === 'profile') run('profile');
    else if (at.kind === 'basis') goToBasis(context, at.label);
    else goToForm(context, at.on, at.label);
  };
  return (
    <button type="button" className="link" onClick={go}>
      {change}
    </button>
  );
}

/** Everything that was taken for granted because nobody said otherwise: what it affects, and where it is changed. */
export function AssumptionsView() {
  const evaluation = useStore(presentEvaluation);
  const all = assumptionsOf(evaluation);
  return (
    <>
      <p>Nobody said otherwise, so this was taken for granted. Go through it before the sheets are issued: it is printed with the findings.</p>
      {ASSUMPTION_TOPICS.map((topic) => {
        const about = all.filter((assumption) => assumption.topic === topic);
        if (about.length === 0) return null;
        return (
          <Slip key={topic} title={ASSUMPTION_TOPIC_WORDS[topic]} aside={<span className="quiet">{about.length}</span>}>
            <ul className="assumptions">
              {about.map((assumption) => (
                <li key={assumption.id} data-assumption={assumption.id}>
                  <p>
                    <strong>{assumption.name}</strong> {assumption.taken}
                  </p>
                  <p className="quiet">Affects: {assumption.affects.charAt(0).toLowerCase() + assumption.affects.slice(1)}</p>
                  <ChangeLink assumption={assumption} />
                </li>
              ))}
            </ul>
          </Slip>
        );
      })}
    </>
  );
}
