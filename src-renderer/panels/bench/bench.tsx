import { type PointerEvent, useEffect, useRef } from 'react';
import type { BenchView } from '../../actions/desk.ts';
import { STAGE_WORDS } from '../../plan-words.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { BasisPanel } from '../basis/basis-panel.tsx';
import { FindingsPanel } from '../findings/findings-panel.tsx';
import { ComparePanel } from '../revisions/compare-panel.tsx';
import { LayoutPanel } from '../stages/layout-panel.tsx';
import { SheetsPanel } from '../stages/sheets-panel.tsx';
import { SitePanel } from '../stages/site-panel.tsx';
import { SurveyPanel } from '../stages/survey-panel.tsx';
import { SumsPanel } from '../sums/sums-panel.tsx';
import { TakeOffPanel } from '../take-off/take-off-panel.tsx';
import { useActionContext, useDesk } from '../window-context.ts';
import { FirstStepsList, useFirstDrawingDone } from '../first-steps-list.tsx';
import { LayersPanel } from './layers-panel.tsx';
import { SelectionPanel, selectionTitle } from './selection-panel.tsx';
import { SUM_TITLES, SumPanel } from './sum-panel.tsx';
import { Slip } from './slip.tsx';
import { ToolOptionsSlip } from './tool-options.tsx';

const stageOf = (state: State) => state.session.stage;
const widthOf = (state: State) => state.session.benchWidth_px;
const selectionOf = (state: State) => state.session.selection;
const comparingOf = (state: State) => state.session.compared !== null;
const STAGE_TITLES = { survey: 'Survey', layout: 'Rooms and units', proof: 'Findings', sheets: 'Sheets', site: 'Site' } as const;
const STAGE_PANELS = { survey: SurveyPanel, layout: LayoutPanel, proof: FindingsPanel, sheets: SheetsPanel, site: SitePanel } as const;
const LEAST_px = 300;
const GREATEST_px = 640;

function WidthHandle() {
  const { store } = useActionContext();
  const width = useStore(widthOf);
  const start = useRef<{ x: number; width: number } | null>(null);
  const take = (wanted: number): void => store.session({ benchWidth_px: Math.min(GREATEST_px, Math.max(LEAST_px, wanted)) });
  const onPointerMove = (event: PointerEvent): void => {
    if (start.current) take(start.current.width + start.current.x - event.clientX);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule between parts cannot be moved; this handle can
    <div
      className="bench-handle"
      role="separator"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label="Width of the bench"
      aria-valuenow={Math.round(width)}
      aria-valuemin={LEAST_px}
      aria-valuemax={GREATEST_px}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        start.current = { x: event.clientX, width };
      }}
      onPointerMove={onPointerMove}
      onPointerUp={() => {
        start.current = null;
      }}
      onKeyDown={(event) => {
        const step = event.key === 'ArrowLeft' ? 16 : event.key === 'ArrowRight' ? -16 : 0;
        if (step === 0) return;
        event.stopPropagation();
        event.preventDefault();
        take(width + step);
      }}
    />
  );
}

/** The stage's own panel, with the five steps of a first drawing above it until they are done or put away. */
function StageSide() {
  const { desk } = useActionContext();
  const stage = useStore(stageOf);
  const isWanted = useDesk((state) => state.showsSteps);
  const isDone = useFirstDrawingDone();
  const Panel = STAGE_PANELS[stage];
  return (
    <>
      {isWanted && !isDone && (stage === 'survey' || stage === 'layout') ? (
        <Slip
          title="Your first drawing"
          part="steps"
          aside={
            <button type="button" className="button is-slim" onClick={() => desk.set({ showsSteps: false })}>
              Put away
            </button>
          }
        >
          <FirstStepsList />
        </Slip>
      ) : null}
      <Panel />
    </>
  );
}

function BenchContent({ view }: { readonly view: BenchView }) {
  switch (view.kind) {
    case 'selection':
      return <SelectionPanel />;
    case 'sums':
      return <SumsPanel topic={view.topic} />;
    case 'take-off':
      return <TakeOffPanel network={view.network} />;
    case 'basis':
      return <BasisPanel />;
    case 'sum':
      return <SumPanel figure={view.figure} />;
    case 'layers':
      return <LayersPanel />;
    case 'compare':
      return <ComparePanel />;
    case 'stage':
      return <StageSide />;
  }
}

/** The side of the window: the stage's own panel, what is selected, or a sum of the ledger. */
export function Bench() {
  const { desk, store } = useActionContext();
  const view = useDesk((state) => state.bench);
  const stage = useStore(stageOf);
  const width = useStore(widthOf);
  const selection = useStore(selectionOf);
  const isComparing = useStore(comparingOf);
  const title = useStore(selectionTitle);
  const body = useRef<HTMLDivElement>(null);

  // What was picked on the board comes up; while findings are walked through, sums or a take-off are read, they stay: the sums are those of what is picked.
  useEffect(() => {
    const now = desk.get().bench.kind;
    if (now === 'sums' || now === 'take-off' || now === 'compare') return;
    if (selection.length > 0 && store.get().session.stage !== 'proof') desk.set({ bench: { kind: 'selection' } });
    else if (selection.length === 0 && now === 'selection') desk.set({ bench: { kind: 'stage' } });
  }, [selection, store, desk]);
  // A take-off is the same whatever is picked.
  const about = view.kind === 'take-off' || view.kind === 'compare' ? null : selection;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another content begins at its top
  useEffect(() => {
    body.current?.scrollTo({ top: 0 });
  }, [view.kind, stage, about]);

  const tabs: { readonly key: string; readonly label: string; readonly to: BenchView; readonly isOn: boolean }[] = [
    { key: 'stage', label: STAGE_TITLES[stage], to: { kind: 'stage' }, isOn: view.kind === 'stage' },
    ...(selection.length > 0 ? [{ key: 'selection', label: title, to: { kind: 'selection' } as const, isOn: view.kind === 'selection' }] : []),
    { key: 'sums', label: 'Sums', to: { kind: 'sums', topic: null }, isOn: view.kind === 'sums' },
    { key: 'take-off', label: 'Take-off', to: view.kind === 'take-off' ? view : { kind: 'take-off', network: null }, isOn: view.kind === 'take-off' },
    ...(view.kind === 'basis' ? [{ key: 'basis', label: 'Basis of design', to: view, isOn: true }] : []),
    ...(isComparing || view.kind === 'compare' ? [{ key: 'compare', label: 'Changes', to: { kind: 'compare' } as const, isOn: view.kind === 'compare' }] : []),
    ...(view.kind === 'layers' ? [{ key: 'layers', label: 'Layers', to: view, isOn: true }] : []),
    ...(view.kind === 'sum' ? [{ key: 'sum', label: SUM_TITLES[view.figure], to: view, isOn: true }] : []),
  ];
  return (
    <aside className="bench" style={{ width }} aria-label={`Bench: ${STAGE_WORDS[stage].name}`}>
      <WidthHandle />
      <div className="bench-tabs" role="tablist">
        {tabs.map(({ key, label, to, isOn }) => (
          <button key={key} type="button" role="tab" aria-selected={isOn} data-tab={key} className="bench-tab" onClick={() => desk.set({ bench: to })} title={label}>
            {label}
          </button>
        ))}
      </div>
      <div className="bench-body" ref={body} role="tabpanel" tabIndex={-1}>
        <ToolOptionsSlip />
        <BenchContent view={view} />
      </div>
    </aside>
  );
}
