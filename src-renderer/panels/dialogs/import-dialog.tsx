import { useEffect, useRef, useState } from 'react';
import type { Answer, ImportReport, JobState, KeptAsset, Problem } from '#shared/host/contract';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { followJob } from '../../host/follow-job.ts';
import { problemText } from '../../plan-words.ts';
import { useActionContext, useDesk } from '../window-context.ts';
import { CalibrateStep } from './calibrate-step.tsx';
import { Dialog } from './dialog.tsx';
import { FileField } from './file-field.tsx';
import { ProgressLine } from './progress-line.tsx';
import { useCloseDialog } from './use-close-dialog.ts';

/** A floor plan that was read, ready to be laid under the drawing. */
export interface ReadPlan {
  readonly asset: KeptAsset;
  readonly page: number;
  readonly report: ImportReport;
  readonly drawing: UnderlayDrawing;
}

type Phase =
  | { readonly at: 'pick' }
  | { readonly at: 'reading'; readonly name: string; readonly state: JobState | null }
  | { readonly at: 'failed'; readonly problem: Problem }
  | { readonly at: 'read'; readonly read: ReadPlan };

export const PLAN_FILES = '.dxf,.pdf,.svg,.png,.jpg,.jpeg';

/** Bringing in a floor plan: pick the file, watch it being read, see what it is, and give it its scale. */
export function ImportDialog() {
  const { host, desk } = useActionContext();
  const close = useCloseDialog();
  const given = useDesk((state) => state.importing);
  const [phase, setPhase] = useState<Phase>({ at: 'pick' });
  const cancel = useRef<AbortController | null>(null);

  const follow = async (name: string, begin: () => Promise<Answer<{ job: string; asset: KeptAsset }>>, page: number): Promise<void> => {
    cancel.current?.abort();
    const controller = new AbortController();
    cancel.current = controller;
    const fail = (problem: Problem): void => {
      if (!controller.signal.aborted) setPhase({ at: 'failed', problem });
    };
    setPhase({ at: 'reading', name, state: null });
    const begun = await begin();
    if (!begun.ok) return fail(begun.problem);
    const done = await followJob(
      host,
      begun.value.job,
      (state) => {
        if (!controller.signal.aborted) setPhase({ at: 'reading', name, state });
      },
      controller.signal,
    );
    if (!done.ok) return fail(done.problem);
    const result = await host.underlayResult({ job: begun.value.job });
    if (!result.ok) return fail(result.problem);
    if (controller.signal.aborted) return;
    setPhase({ at: 'read', read: { asset: begun.value.asset, page, report: result.value.report, drawing: decodeDrawing(result.value.bytes) } });
  };
  const start = (name: string, bytes: Uint8Array): void => void follow(name, () => host.importUnderlay({ name, bytes }), 1);
  const turnTo = (read: ReadPlan, page: number): void =>
    void follow(
      read.asset.name,
      async () => {
        const begun = await host.readUnderlay({ sha256: read.asset.sha256, page });
        return begun.ok ? { ok: true, value: { job: begun.value.job, asset: read.asset } } : begun;
      },
      page,
    );
  const stop = (): void => {
    cancel.current?.abort();
    setPhase({ at: 'pick' });
  };

  // biome-ignore lint/correctness/useExhaustiveDependencies: a file is read once, when it is given
  useEffect(() => {
    if (given) start(given.name, given.bytes);
  }, [given]);
  useEffect(() => () => cancel.current?.abort(), []);

  const leave = (): void => {
    desk.set({ importing: null });
    close();
  };
  return (
    <Dialog name="import" title={phase.at === 'read' ? phase.read.asset.name : 'Import a floor plan'} onClose={leave} size="middle">
      {phase.at === 'pick' ? (
        <div className="import-pick">
          <p>A floor plan lies under the drawing: you trace its walls and catch its corners. It is kept inside the plan file.</p>
          <FileField label="Choose a file…" accept={PLAN_FILES} isMain onFile={start} />
          <p className="quiet">DXF, PDF (one page), SVG, PNG or JPEG. You can drop the file anywhere on the window, too.</p>
        </div>
      ) : null}
      {phase.at === 'reading' ? <ProgressLine label={`Reading ${phase.name}`} state={phase.state} onCancel={stop} /> : null}
      {phase.at === 'failed' ? (
        <>
          <p className="field-fault" role="alert">
            {problemText(phase.problem)}
          </p>
          <FileField label="Choose another file…" accept={PLAN_FILES} onFile={start} />
        </>
      ) : null}
      {phase.at === 'read' ? <CalibrateStep key={`${phase.read.asset.sha256}/${phase.read.page}`} read={phase.read} onPage={(page) => turnTo(phase.read, page)} onDone={leave} /> : null}
    </Dialog>
  );
}
