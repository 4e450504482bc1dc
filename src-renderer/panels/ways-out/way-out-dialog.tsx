import { useRef, useState } from 'react';
import { planContents } from '#shared/sheets/plan-content';
import { billOf } from '../../actions/save-take-off.ts';
import { keepBytes, planName } from '../../actions/plan-file.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import { Choice } from '../fields/choice.tsx';
import { Dialog } from '../dialogs/dialog.tsx';
import { ProgressLine } from '../dialogs/progress-line.tsx';
import { useCloseDialog } from '../dialogs/use-close-dialog.ts';
import { useActionContext } from '../window-context.ts';
import { type SavedKind, makeWayOut } from './make-way-out.ts';
import { PICTURE_DPI, type PictureDpi } from './picture-of-view.ts';

const KINDS: readonly { readonly value: SavedKind; readonly label: string; readonly says: string }[] = [
  { value: 'dxf', label: 'Drawing in real measures (DXF)', says: 'For drawing programs: rooms, pipe, nozzles and dimensions on layers of their own, in the plan’s own unit. The imported floor plan is left out: lay the drawing over it.' },
  { value: 'svg', label: 'View as it is printed (SVG)', says: 'Sharp at any size, its texts can be searched, its layers can be hidden.' },
  { value: 'png', label: 'Picture of a view (PNG)', says: 'For a letter or a report. It cannot be measured.' },
  { value: 'xlsx', label: 'Every schedule, one spreadsheet (XLSX)', says: 'Rooms, nozzles, pipe, cut list, devices, findings and field dimensions, a sheet each. Numbers stay numbers, their units stand in the heads.' },
  { value: 'csv', label: 'Every schedule, plain tables (CSV)', says: 'The same tables as plain text, one file each, packed in one ZIP file.' },
];

const ALL = 'all';

/** Saving views as drawings, or schedules as tables. */
export function WayOutDialog() {
  const close = useCloseDialog();
  const context = useActionContext();
  const { store, drawings } = context;
  const [kind, setKind] = useState<SavedKind>('dxf');
  const [dpi, setDpi] = useState<PictureDpi>('300');
  const [wished, setView] = useState(ALL);
  const [progress, setProgress] = useState<{ readonly done: number; readonly doing: string } | null>(null);
  const [advice, setAdvice] = useState('');
  const cancel = useRef<AbortController | null>(null);
  const contents = planContents(presentEvaluation(store.get()).derived);
  const keyed = contents.map((content) => ({ key: `${content.level.id} ${content.layer}`, content }));
  const view = keyed.some(({ key }) => key === wished) ? wished : ALL;
  const isDrawing = kind === 'dxf' || kind === 'svg' || kind === 'png';

  const leave = (): void => {
    cancel.current?.abort();
    close();
  };
  const save = async (): Promise<void> => {
    const state = store.get();
    const evaluation = presentEvaluation(state);
    const { plan } = evaluation.derived;
    const controller = new AbortController();
    cancel.current = controller;
    setAdvice('');
    const underlays = Object.values(plan.levels).flatMap(({ underlays: own }) => Object.values(own));
    const found = new Map(underlays.flatMap((underlay) => {
      const drawing = drawings.find(plan, underlay);
      return drawing ? [[underlay.id, drawing] as const] : [];
    }));
    const made = await makeWayOut(
      evaluation,
      planName(state),
      kind,
      Number(dpi),
      { views: keyed.filter(({ key }) => view === ALL || key === view).map(({ content }) => content), drawings: found, bill: billOf(evaluation.derived, null, state.session.takeOff) },
      { signal: controller.signal, tell: (done, doing) => setProgress({ done, doing }) },
    );
    setProgress(null);
    if (made) await keepBytes(context, made.name, made.bytes, made.type);
    else if (!controller.signal.aborted) setAdvice('Nothing is drawn on that level yet. Draw a room or pipe first.');
  };

  return (
    <Dialog name="way-out" title="Save as drawing or table" onClose={leave} size="small">
      <div className="print-form">
        <div className="fields">
          <Choice label="As" value={kind} options={KINDS} onCommit={(value) => setKind(value)} wide />
          {isDrawing ? (
            <Choice label="View" value={view} options={[{ value: ALL, label: contents.length > 1 ? 'Every view, packed in one ZIP file' : 'The only view' }, ...(contents.length > 1 ? keyed.map(({ key, content }) => ({ value: key, label: content.title })) : [])]} onCommit={setView} wide />
          ) : null}
          {kind === 'png' ? <Choice label="Fineness" value={dpi} options={PICTURE_DPI.map((value) => ({ value, label: `${value} dots to the inch` }))} onCommit={(value) => setDpi(value)} /> : null}
        </div>
        <p className="quiet">{KINDS.find(({ value }) => value === kind)?.says}</p>
        {advice === '' ? null : <p className="advice">{advice}</p>}
        {progress === null ? (
          <div className="row">
            <button type="button" className="button is-main" onClick={() => void save()}>
              Save
            </button>
          </div>
        ) : (
          <ProgressLine label="Making" state={{ state: 'running', progress: progress.done, doing: progress.doing, problem: null }} onCancel={() => cancel.current?.abort()} />
        )}
        <p className="quiet">What is saved here is a copy for reference. The issued sheets come first.</p>
      </div>
    </Dialog>
  );
}
