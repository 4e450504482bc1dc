import { useDeferredValue, useMemo, useRef } from 'react';
import { useFrameSize } from '../input/use-frame-size.ts';
import { selectEvaluation } from '../store/selectors.ts';
import type { Session, State } from '../store/state.ts';
import { useStore, useStoreItself } from '../store/use-store.ts';
import { SectionBoard } from './section-board.tsx';
import { cutSection } from './section-cut.ts';
import { findSectionPath } from './section-path.ts';
import './section-strip.css';

const heightOf = (state: State): number => state.session.sectionHeight_px;
const levelOf = (state: State): string => state.session.level;
const cutOf = (state: State): Session['cut'] => state.session.cut;
const selectionOf = (state: State): Session['selection'] => state.session.selection;

/** A strip lower than this is put away [px]. */
const LEAST_px = 60;
/** Height of a strip that is pulled up again [px]. */
const PULLED_UP_px = 200;
/** Share of the window that the strip leaves to the board at least. */
const MOST_SHARE = 0.7;

/** The section strip under the board: the same plan cut and seen from the side, heights true. */
export function SectionStrip() {
  const store = useStoreItself();
  const height = useStore(heightOf);
  const isAway = height < LEAST_px;
  const become = (next: number): void => store.session({ sectionHeight_px: next < LEAST_px ? 0 : Math.min(next, window.innerHeight * MOST_SHARE) });

  if (isAway) {
    return (
      <section className="section-strip is-away" aria-label="Section strip">
        <button type="button" className="button is-slim is-plain" onClick={() => become(PULLED_UP_px)}>
          Pull up the section
        </button>
      </section>
    );
  }
  return (
    <section className="section-strip" aria-label="Section strip" ref={(element) => element?.style.setProperty('height', `${height}px`)}>
      <Grip height={height} become={become} />
      <SectionButtons putAway={() => become(0)} />
      <Section height={height} />
    </section>
  );
}

/** The upper edge, by which the strip is made higher or lower: dragged, or moved with the arrow keys. */
function Grip({ height, become }: { readonly height: number; become(next: number): void }) {
  const from = useRef<{ y: number; height: number } | null>(null);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule that is dragged has no element of its own
    <div
      className="section-grip"
      role="separator"
      aria-orientation="horizontal"
      aria-label="Height of the section strip"
      aria-valuenow={Math.round(height)}
      aria-valuemin={0}
      aria-valuemax={1200}
      tabIndex={0}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        from.current = { y: event.clientY, height };
      }}
      onPointerMove={(event) => {
        if (from.current) become(from.current.height + from.current.y - event.clientY);
      }}
      onPointerUp={() => {
        from.current = null;
      }}
      onPointerCancel={() => {
        from.current = null;
      }}
      onKeyDown={(event) => {
        const step = event.key === 'ArrowUp' ? 20 : event.key === 'ArrowDown' ? -20 : 0;
        if (step === 0) return;
        event.preventDefault();
        event.stopPropagation();
        become(height + step);
      }}
    />
  );
}

function SectionButtons({ putAway }: { putAway(): void }) {
  const store = useStoreItself();
  const cut = useStore(cutOf);
  return (
    <div className="section-buttons">
      {cut ? (
        <button type="button" className="button is-slim" onClick={() => store.session({ cut: null })}>
          Follow the selection
        </button>
      ) : (
        <button type="button" className="button is-slim" onClick={() => store.session({ tool: 'section' })}>
          Choose the cut
        </button>
      )}
      <button type="button" className="button is-slim" onClick={putAway}>
        Put away
      </button>
    </div>
  );
}

function Section({ height }: { readonly height: number }) {
  const { derived: shown } = useStore(selectEvaluation);
  // The board comes first: the section follows a drag as far as there is time.
  const derived = useDeferredValue(shown);
  const level = useStore(levelOf);
  const line = useStore(cutOf);
  const selection = useStore(selectionOf);
  const { ref, width } = useFrameSize();
  const cut = useMemo(() => {
    const path = findSectionPath(derived, { level, cut: line, selection });
    return path && cutSection(derived, path, level);
  }, [derived, level, line, selection]);

  return (
    <div ref={ref} className="section-board-frame">
      {cut && width > 0 ? (
        <SectionBoard cut={cut} lengths={derived.plan.settings.lengths} width={width} height={height - 1} />
      ) : (
        <p className="section-empty">Draw an enclosure: its section appears here.</p>
      )}
    </div>
  );
}
