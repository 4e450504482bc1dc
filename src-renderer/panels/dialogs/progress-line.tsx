import type { JobState } from '#shared/host/contract';

/** How far a long piece of work is, and a way to end it. */
export function ProgressLine({ label, state, onCancel }: { readonly label: string; readonly state: JobState | null; onCancel(): void }) {
  return (
    <div className="progress">
      <p>
        {label}
        <span className="quiet"> {state?.doing ?? ''}</span>
      </p>
      <div className="row">
        <progress max={1} value={state?.progress ?? 0} aria-label={label} />
        <button type="button" className="button" onClick={onCancel}>
          Cancel
        </button>
      </div>
    </div>
  );
}
