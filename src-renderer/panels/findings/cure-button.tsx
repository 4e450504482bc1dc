import { useEffect, useRef, useState } from 'react';
import { applyCure } from '#shared/commands/apply-cure';
import { type Cure, type Finding, findingKey } from '#shared/rules/finding';
import { presentEvaluation, selectEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { useActionContext } from '../window-context.ts';

const NONE: readonly Finding[] = [];

/** Stops that the shown plan would have and the present one has not; none while nothing is tried. */
function useBroughtStops(isTrying: boolean): readonly Finding[] {
  const present = useStore(presentEvaluation);
  const shown = useStore(isTrying ? selectEvaluation : presentEvaluation);
  if (!isTrying || shown === present) return NONE;
  const known = new Set(present.found.of('stop').map(findingKey));
  return shown.found.of('stop').filter((finding) => !finding.waiver && !known.has(findingKey(finding)));
}

/** Carries a cure out as one step. While it is pointed at, or has the keyboard, the board shows what it would do. */
export function CureButton({ cure }: { readonly cure: Exclude<Cure, { kind: 'advice' }> }) {
  const { store, desk } = useActionContext();
  const isTrying = useRef(false);
  const [isShown, show] = useState(false);
  const brought = useBroughtStops(isShown);
  const tryIt = (): void => {
    if (isTrying.current) return;
    isTrying.current = true;
    show(true);
    desk.set({ isTrying: true });
    store.preview(applyCure(cure));
  };
  const leave = (): void => {
    if (!isTrying.current) return;
    isTrying.current = false;
    show(false);
    desk.set({ isTrying: false });
    store.preview(null);
  };
  const end = useRef(leave);
  end.current = leave;
  // A button that goes away while it is pointed at tells nobody.
  useEffect(() => () => end.current(), []);
  return (
    <div className="cure">
      <button
        type="button"
        className="button is-main"
        // Moved onto, not merely come under a pointer that rests: after an undo the plan must not look as if it had not been.
        onPointerMove={tryIt}
        onPointerLeave={leave}
        onFocus={tryIt}
        onBlur={leave}
        onClick={() => {
          leave();
          store.commit(applyCure(cure));
        }}
      >
        {cure.text}
      </button>
      {brought.length > 0 ? <p className="doubt">It would bring another stop: {brought.map(({ name, title }) => `${title.toLowerCase()}, ${name}`).join('; ')}.</p> : null}
      <p className="field-help">The plan shows what this does while you point at it. Undo takes it back.</p>
    </div>
  );
}
