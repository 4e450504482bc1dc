import { type DragEvent, type MouseEvent, useEffect, useState } from 'react';
import { isSameRef } from '#shared/model/plan';
import { ACTIONS, runAction } from './actions/actions.ts';
import { fitLevel } from './actions/fit-view.ts';
import { openBytes, planName } from './actions/plan-file.ts';
import { findByKey, worksInFields } from './actions/shortcuts.ts';
import { isChanged } from './actions/unsaved.ts';
import { Board } from './canvas/board.tsx';
import { SideView } from './canvas/side-view.tsx';
import { SectionStrip } from './canvas/section-strip.tsx';
import { useInk } from './canvas/use-ink.ts';
import { toPlanPlace } from './canvas/viewport.ts';
import { Bench } from './panels/bench/bench.tsx';
import { ContextMenu } from './panels/context-menu.tsx';
import { Dialogs } from './panels/dialogs/dialogs.tsx';
import { bytesOf } from './panels/dialogs/file-field.tsx';
import { isBare } from './panels/is-bare.ts';
import { JobLine } from './panels/job-line.tsx';
import { Ledger } from './panels/ledger.tsx';
import { NoticeLine } from './panels/notice-line.tsx';
import { PaperView } from './panels/paper/paper-view.tsx';
import { StartPage } from './panels/start-page.tsx';
import { StatusLine } from './panels/status-line.tsx';
import { ToolRail } from './panels/tool-rail.tsx';
import { closesPopover } from './input/closes-popover.ts';
import { useDrawings } from './input/board-context.ts';
import { focusBoard } from './input/focus-board.ts';
import { useActionContext } from './panels/window-context.ts';
import { setInk } from './styles/set-ink.ts';
import { presentEvaluation } from './store/selectors.ts';
import { useStore } from './store/use-store.ts';
import { makeToolView } from './tools/tool-view.ts';
import { viewSourceOf } from './tools/tool-runner.ts';

/** How near the right button picks [px]. */
const REACH_px = 8;

/** Writes the chosen ground into the page, where the styles read it. */
function useGround(): void {
  const ink = useInk();
  useEffect(() => setInk(document.documentElement, ink), [ink]);
}

/** Arrow keys move things only from the board: in a list or on a button they are pressed to get about. */
const isOnBoard = (target: EventTarget | null): boolean => target === document.body || (target instanceof Element && target.closest('.board-side') !== null);

/** Hears every shortcut that no field, menu or dialog wants for itself. */
function useShortcuts(): void {
  const context = useActionContext();
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.isComposing || closesPopover(event)) return;
      const { target } = event;
      const isTyping = target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable="true"]') !== null;
      if (isTyping && event.key === 'Escape') focusBoard(target);
      if (isTyping && !worksInFields(event)) return;
      const action = findByKey(ACTIONS, event);
      if (!action || (action.id.startsWith('nudge-') && !isOnBoard(target))) return;
      const isAsked = context.store.get().session.dialog !== null || document.querySelector('dialog[open]') !== null;
      // The browser's own answer to Ctrl+S or Ctrl+P would be wrong in front of a dialog, too.
      event.preventDefault();
      if (!isAsked) void runAction(context, action);
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [context]);
}

/** The window's title: which plan, and whether it is saved. */
function useTitle(): void {
  const name = useStore(planName);
  const changed = useStore(isChanged);
  useEffect(() => {
    document.title = `${name}${changed ? ' (not saved)' : ''} – Nozzlewright`;
  }, [name, changed]);
}

/** Fits the first plan to the board once the window has its size. */
function useFirstFit(): void {
  const context = useActionContext();
  useEffect(() => {
    if (isBare(context.store.get())) return;
    let frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(() => fitLevel(context));
    });
    return () => cancelAnimationFrame(frame);
  }, [context]);
}

/** A file dropped anywhere: a plan is opened, anything else is taken for a floor plan. */
function useDrop() {
  const context = useActionContext();
  const [isOver, setOver] = useState(false);
  const hasFiles = (event: DragEvent): boolean => event.dataTransfer.types.includes('Files');
  return {
    isOver,
    handlers: {
      onDragOver: (event: DragEvent): void => {
        if (!hasFiles(event)) return;
        event.preventDefault();
        setOver(true);
      },
      onDragLeave: (event: DragEvent): void => {
        if (!(event.relatedTarget instanceof Node) || !event.currentTarget.contains(event.relatedTarget)) setOver(false);
      },
      onDrop: (event: DragEvent): void => {
        if (!hasFiles(event)) return;
        event.preventDefault();
        setOver(false);
        const [file] = event.dataTransfer.files;
        if (!file) return;
        void bytesOf(file).then((bytes) => {
          if (/\.(nzw|json)$/i.test(file.name)) return openBytes(context, file.name, bytes);
          context.desk.set({ importing: { name: file.name, bytes } });
          context.store.session({ dialog: 'import' });
        });
      },
    },
  };
}

/** Opens the menu of what lies under the right button, selecting it unless it is selected already. */
function useContextMenu(): (event: MouseEvent) => void {
  const { store, desk } = useActionContext();
  const drawings = useDrawings();
  return (event) => {
    const board = event.target instanceof Element ? event.target.closest('.board') : null;
    if (!board) return;
    event.preventDefault();
    const state = store.get();
    const box = board.getBoundingClientRect();
    const { camera } = state.session;
    const at = toPlanPlace({ camera, width: box.width, height: box.height }, { x: event.clientX - box.left, y: event.clientY - box.top });
    const source = viewSourceOf(drawings);
    const view = makeToolView({ plan: state.history.present, session: state.session, underlays: source.underlays(state), derive: () => presentEvaluation(state).derived });
    const on = view.pick(at, REACH_px / camera.scale_px_m) ?? null;
    if (on && !state.session.selection.some((ref) => isSameRef(ref, on))) store.session({ selection: [on] });
    desk.set({ menu: { x: event.clientX, y: event.clientY, at, on } });
  };
}

/** The whole window: job line, tools, board with its section strip, bench, ledger, status line. */
export function App() {
  useGround();
  useTitle();
  useShortcuts();
  useFirstFit();
  const { isOver, handlers } = useDrop();
  const onContextMenu = useContextMenu();
  return (
    <div className={isOver ? 'window is-dropping' : 'window'} {...handlers}>
      <JobLine />
      <NoticeLine />
      <div className="middle">
        <ToolRail />
        <main className="board-side">
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the menu opens by the keyboard through the action list too */}
          <div className="board-place" onContextMenu={onContextMenu}>
            <Board />
            <PaperView />
            <StartPage />
            {isOver ? <p className="drop-here">Let go: a plan is opened, a floor plan is laid under the drawing.</p> : null}
          </div>
          <SectionStrip />
        </main>
        <SideView />
        <Bench />
      </div>
      <Ledger />
      <StatusLine />
      <ContextMenu />
      <Dialogs />
    </div>
  );
}
