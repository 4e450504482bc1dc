import { useRef } from 'react';
import type { SideViewKind, State } from '../store/state.ts';
import { useStore, useStoreItself } from '../store/use-store.ts';
import { CylinderWallView } from './cylinder-wall-view.tsx';
import { IsometricView } from './isometric-view.tsx';
import './side-view.css';

const kindOf = (state: State): SideViewKind => state.session.sideView;
const widthOf = (state: State): number => state.session.sideViewWidth_px;

const LEAST_px = 240;
/** Share of the window that the side view takes at most. */
const MOST_SHARE = 0.5;
const WORDS = { isometric: 'Isometric', 'cylinder-wall': 'Cylinder wall' } as const;
const KINDS = Object.keys(WORDS) as (keyof typeof WORDS)[];
const VIEWS = { isometric: IsometricView, 'cylinder-wall': CylinderWallView } as const;

/** The same plan drawn another way, beside the board; what is picked in either is selected in both. */
export function SideView() {
  const store = useStoreItself();
  const kind = useStore(kindOf);
  const width = useStore(widthOf);
  if (kind === 'none') return null;
  const View = VIEWS[kind];
  return (
    <section className="side-view" aria-label={`${WORDS[kind]} beside the plan`} style={{ width: `min(${width}px, ${MOST_SHARE * 100}vw)` }}>
      <Grip width={width} />
      <header className="side-view-head">
        <div role="tablist" aria-label="Beside the plan" className="side-view-tabs">
          {KINDS.map((each) => (
            <button key={each} type="button" role="tab" aria-selected={each === kind} className="bench-tab" onClick={() => store.session({ sideView: each })}>
              {WORDS[each]}
            </button>
          ))}
        </div>
        <button type="button" className="button is-slim" onClick={() => store.session({ sideView: 'none' })}>
          Put away
        </button>
      </header>
      <div className="side-view-body">
        <View />
      </div>
    </section>
  );
}

/** The left edge, by which the view is made wider or narrower: dragged, or moved with the arrow keys. */
function Grip({ width }: { readonly width: number }) {
  const store = useStoreItself();
  const from = useRef<{ x: number; width: number } | null>(null);
  const become = (next: number): void => store.session({ sideViewWidth_px: Math.min(window.innerWidth * MOST_SHARE, Math.max(LEAST_px, next)) });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule that is dragged has no element of its own
    <div
      className="side-view-grip"
      role="separator"
      aria-orientation="vertical"
      aria-label="Width of the view beside the plan"
      aria-valuenow={Math.round(width)}
      aria-valuemin={LEAST_px}
      aria-valuemax={2000}
      tabIndex={0}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = { x: event.clientX, width };
      }}
      onPointerMove={(event) => {
        if (from.current) become(from.current.width + from.current.x - event.clientX);
      }}
      onPointerUp={() => {
        from.current = null;
      }}
      onPointerCancel={() => {
        from.current = null;
      }}
      onKeyDown={(event) => {
        const step = event.key === 'ArrowLeft' ? 20 : event.key === 'ArrowRight' ? -20 : 0;
        if (step === 0) return;
        event.preventDefault();
        event.stopPropagation();
        become(width + step);
      }}
    />
  );
}
