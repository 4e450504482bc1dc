import { editSettings } from '#shared/commands/edit-settings';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { LengthField } from '../fields/quantity-field.tsx';
import { Dialog } from './dialog.tsx';
import { InfoForm, RevisionsSlip } from './info-form.tsx';
import { useCloseDialog } from './use-close-dialog.ts';

/** Project, basis of design, revisions, and how the plan shows lengths. */
export function InfoDialog() {
  const close = useCloseDialog();
  const { settings } = useShownPlan();
  const commit = useCommit();
  return (
    <Dialog
      name="info"
      title="Project, basis and revisions"
      onClose={close}
      size="large"
      footer={
        <button type="button" className="button is-main" onClick={close}>
          Done
        </button>
      }
    >
      <InfoForm />
      <RevisionsSlip />
      <Slip title="This plan">
        <div className="fields">
          <Choice
            label="Lengths are shown in"
            value={settings.lengths}
            options={[
              { value: 'feet', label: 'Feet and inches' },
              { value: 'metric', label: 'Metres and millimetres' },
            ]}
            onCommit={(lengths) => commit(editSettings({ lengths }))}
            help="Either may be typed at any time."
          />
          <LengthField label="Grid" value={settings.grid_m} least={0.001} most={10} onCommit={(grid_m) => commit(editSettings({ grid_m }))} />
        </div>
      </Slip>
    </Dialog>
  );
}
