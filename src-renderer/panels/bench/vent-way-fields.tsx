import type { VentStep } from '#shared/model/plan';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { changedAt, shifted, without } from '../network/list-edits.ts';
import { RowButtons } from '../network/row-buttons.tsx';

const THROUGH = {
  duct: 'A duct',
  louvre: 'A louvre or cowl',
  room: 'A room',
  corridor: 'A corridor',
  exit: 'A way out',
  protected: 'Another protected room',
  outdoors: 'Outdoors',
} as const satisfies Record<VentStep['through'], string>;
const MOST = 20;
const MOST_AREA_m2 = 1000;

/** The next step of a way: outdoors once something leads there. */
export const nextStep = (steps: readonly VentStep[]): VentStep => ({ name: '', through: steps.length === 0 ? 'duct' : 'outdoors', freeArea_m2: null });

/** What gas passes behind a relief vent until it is outdoors, in order. */
export function VentWayFields({ steps, onCommit }: { readonly steps: readonly VentStep[]; onCommit(steps: VentStep[]): void }) {
  const last = steps.at(-1);
  return (
    <>
      <h4>Way behind the vent</h4>
      {steps.length === 0 ? <p className="field-help">List what the gas passes on its way, ending outdoors. Leave it empty where the vent opens straight to outdoors.</p> : null}
      {steps.map((step, i) => {
        const change = (part: Partial<VentStep>): void => onCommit(changedAt(steps, i, part));
        const what = `step ${i + 1}`;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: steps have no ids; their order is what they are
          <fieldset className="part-fields" key={i}>
            <legend>Step {i + 1}</legend>
            <div className="fields">
              <Choice label={`Step ${i + 1} leads through`} value={step.through} options={optionsOf(THROUGH)} onCommit={(through) => change(through === 'outdoors' ? { through, freeArea_m2: null } : { through })} />
              {step.through === 'outdoors' ? null : (
                <QuantityField
                  kind="area"
                  label={`Free area of ${what}`}
                  value={step.freeArea_m2}
                  least={1e-6}
                  most={MOST_AREA_m2}
                  blank={{ text: 'not known', commit: () => change({ freeArea_m2: null }) }}
                  onCommit={(freeArea_m2) => change({ freeArea_m2 })}
                />
              )}
              <TextField label={`Name of ${what}`} value={step.name} onCommit={(name) => change({ name })} wide />
            </div>
            <div className="row">
              <RowButtons what={what} isFirst={i === 0} isLast={i === steps.length - 1} onShift={(by) => onCommit(shifted(steps, i, by))} onTakeOut={() => onCommit(without(steps, i))} />
            </div>
          </fieldset>
        );
      })}
      {last && last.through !== 'outdoors' ? <p className="field-help">It does not end outdoors yet.</p> : null}
      {steps.length < MOST && last?.through !== 'outdoors' ? (
        <button type="button" className="button is-slim" onClick={() => onCommit([...steps, nextStep(steps)])}>
          Add a step of the way
        </button>
      ) : null}
    </>
  );
}
