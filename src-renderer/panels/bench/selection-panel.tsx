import type { Ref } from '#shared/model/plan';
import { findingKey } from '#shared/rules/finding';
import { thingName } from '#shared/model/thing-name';
import { findingsOf, selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { FindingRow } from '../findings/finding-row.tsx';
import { NetworkForm } from '../network/network-form.tsx';
import { AdjoiningForm } from './adjoining-form.tsx';
import { CylinderForm } from './cylinder-form.tsx';
import { DeviceForm } from './device-form.tsx';
import { EnclosureForm } from './enclosure-form.tsx';
import { EnclosureSums } from './enclosure-sums.tsx';
import { DimensionForm, NoteForm } from './note-form.tsx';
import { NozzleForm } from './nozzle-form.tsx';
import { ObstructionForm } from './obstruction-form.tsx';
import { CeilingZoneForm, OpeningForm } from './opening-form.tsx';
import { NodeForm } from './node-form.tsx';
import { PipeForm } from './pipe-form.tsx';
import { PathSums } from './path-sums.tsx';
import { useDesk } from '../window-context.ts';
import { AlignSlip, ArrangeSlip, SeveralForm } from './several-form.tsx';
import { Slip } from './slip.tsx';
import { SupportForm } from './support-form.tsx';
import { UnitSlip } from './unit-slip.tsx';
import { UnderlayForm } from './underlay-form.tsx';
import { CornerForm, WallForm } from './wall-form.tsx';

const shownKey = (state: State) => state.session.finding;
const selectionOf = (state: State) => state.session.selection;
const levelOf = (state: State) => state.session.level;

function FormOf({ at }: { readonly at: Ref }) {
  switch (at.kind) {
    case 'enclosure':
      return <EnclosureForm at={{ ...at, kind: 'enclosure' }} />;
    case 'wall':
      return <WallForm at={at} />;
    case 'corner':
      return <CornerForm at={at} />;
    case 'opening':
      return <OpeningForm at={{ ...at, kind: 'opening' }} />;
    case 'ceiling-zone':
      return <CeilingZoneForm at={{ ...at, kind: 'ceiling-zone' }} />;
    case 'obstruction':
      return <ObstructionForm at={{ ...at, kind: 'obstruction' }} />;
    case 'device':
      return <DeviceForm at={{ ...at, kind: 'device' }} />;
    case 'adjoining':
      return <AdjoiningForm at={{ ...at, kind: 'adjoining' }} />;
    case 'underlay':
      return <UnderlayForm at={{ ...at, kind: 'underlay' }} />;
    case 'dimension':
      return <DimensionForm at={{ ...at, kind: 'dimension' }} />;
    case 'note':
      return <NoteForm at={{ ...at, kind: 'note' }} />;
    case 'network':
      return <NetworkForm at={at} />;
    case 'cylinder':
      return <CylinderForm at={{ ...at, kind: 'cylinder' }} />;
    case 'node':
      return <NodeForm at={{ ...at, kind: 'node' }} />;
    case 'pipe':
      return <PipeForm key={`${at.network}/${at.id}`} refs={[{ ...at, kind: 'pipe' }]} />;
    case 'support':
      return <SupportForm at={{ ...at, kind: 'support' }} />;
    case 'nozzle':
      return <NozzleForm at={{ ...at, kind: 'nozzle' }} />;
  }
}

function TouchingFindings({ at }: { readonly at: Ref }) {
  const key = useStore(shownKey);
  useStore(selectEvaluation);
  // While a cure is tried out the list keeps to the plan as it is: what is pointed at must not go away.
  const isTrying = useDesk((desk) => desk.isTrying);
  const findings = useStore((state) => findingsOf(isTrying ? { ...state, preview: null } : state, at));
  const open = findings.filter(({ verdict }) => verdict !== 'ok');
  const kept = findings.length - open.length;
  if (findings.length === 0) return null;
  return (
    <Slip title="What the checks say" part="touching">
      <ul className="finding-list">
        {open.map((finding) => (
          <FindingRow key={findingKey(finding)} finding={finding} isOpen={findingKey(finding) === key} />
        ))}
      </ul>
      {kept > 0 ? <p className="quiet">{kept === 1 ? '1 limit is kept.' : `${kept} limits are kept.`}</p> : null}
    </Slip>
  );
}

/** The selection as a form, what the checks say of it, and the sums that it feeds. */
export function SelectionPanel() {
  const selection = useStore(selectionOf);
  const level = useStore(levelOf);
  const [only] = selection;
  if (!only) return <p className="quiet">Nothing is selected. Click something on the board, or press Ctrl+A for everything.</p>;
  if (selection.length > 1) {
    return (
      <>
        <SeveralForm selection={selection} />
        <ArrangeSlip selection={selection} />
        <AlignSlip level={level} />
      </>
    );
  }
  const networkId = only.kind === 'network' ? only.id : 'network' in only ? only.network : null;
  const canBeAligned = ['nozzle', 'cylinder', 'obstruction', 'node', 'pipe', 'device', 'note'].includes(only.kind);
  return (
    <>
      <FormOf at={only} />
      <TouchingFindings at={only} />
      {only.kind === 'enclosure' ? <EnclosureSums at={{ ...only, kind: 'enclosure' }} /> : null}
      {networkId !== null && only.kind !== 'support' ? <PathSums network={networkId} nozzle={only.kind === 'nozzle' ? only.id : null} /> : null}
      {networkId === null || only.kind === 'support' ? null : <UnitSlip networkId={networkId} />}
      {canBeAligned ? <AlignSlip level={level} /> : null}
      {only.kind === 'wall' || only.kind === 'corner' || only.kind === 'opening' || only.kind === 'ceiling-zone' || only.kind === 'support' ? null : <ArrangeSlip selection={selection} />}
    </>
  );
}

/** Heading of the selection's tab. */
export const selectionTitle = (state: State): string => {
  const { selection } = state.session;
  const [only] = selection;
  if (!only) return 'Selection';
  return selection.length === 1 ? thingName(state.history.present, only) : `${selection.length} things`;
};
