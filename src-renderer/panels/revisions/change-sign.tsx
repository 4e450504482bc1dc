import type { ChangeKind } from '#shared/revisions/plan-change';

const PATHS: Readonly<Record<ChangeKind, string>> = { added: 'M4 8h8M8 4v8', moved: 'M4 8h8M9 5l3 3-3 3', changed: 'M8 4.2l4 6.6H4z', removed: 'M5 5l6 6M5 11l6-6' };

/** The sign of a kind of change, as the board has it. The words beside it say the same. */
export function ChangeSign({ kind }: { readonly kind: ChangeKind }) {
  return (
    <svg className={`change-sign is-${kind}`} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      <circle cx="8" cy="8" r="7" />
      <path d={PATHS[kind]} />
    </svg>
  );
}
