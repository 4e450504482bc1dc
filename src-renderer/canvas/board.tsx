import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { Stage } from 'react-konva';
import type { ScreenPoint } from '#shared/geometry/point';
import type { Ref, RefOf } from '#shared/model/plan';
import type { Verdict } from '#shared/rules/finding';
import { selectionWords } from '../input/board-words.ts';
import { PointerField } from '../input/pointer-field.tsx';
import { useResized } from '../input/use-resized.ts';
import { useSpaceHeld } from '../input/use-space-held.ts';
import { useToolLook } from '../input/use-tool-look.ts';
import { useDrawings, useToolRunner } from '../input/board-context.ts';
import { selectedNozzle } from '../store/room-to-move.ts';
import { selectShownFinding, shownPlan } from '../store/selectors.ts';
import type { Session, State } from '../store/state.ts';
import { useStore, useStoreItself } from '../store/use-store.ts';
import { ActiveLayer, FindingLayer, GroundLayer, MarkLayer, PlanLayer } from './board-layers.tsx';
import { BEYOND_px } from './board-layer.tsx';
import { ChangeLayer } from './change-layer.tsx';
import { MarginLayer } from './margin-layer.tsx';
import './board.css';
import { forgetLabels } from './draw-labels.ts';
import { whenLettersReady } from './lettering.ts';
import { type Typing, useBoardKeys, useBoardPointer, useKeyboardPointer } from './use-board-input.ts';
import { useBoardScenes } from './use-board-scenes.ts';
import { useDevicePixels } from './use-device-pixels.ts';
import { useFindingMarks } from './use-finding-marks.ts';
import { useInk } from './use-ink.ts';

const boardOf = (state: State): Session['board'] => state.session.board;
const selectionOf = (state: State): Session['selection'] => state.session.selection;
const pointedOf = (state: State): readonly Ref[] => state.session.pointed;
const showsIsometric = (state: State): boolean => state.session.sideView === 'isometric';
const cutOf = (state: State): Session['cut'] => state.session.cut;
const stageOf = (state: State): Session['stage'] => state.session.stage;
const comparingOf = (state: State): boolean => state.session.compared !== null;
const refusalOf = (state: State): string | null => state.session.refusal;
const levelNameOf = (state: State): string => shownPlan(state).levels[state.session.level]?.name ?? '';

/** The selected nozzle while something of where it may be put is shown. */
const marginedOf = (state: State): RefOf<'nozzle'> | undefined => {
  const { patch, map, dial } = state.session.margins;
  return patch || dial || map !== null ? selectedNozzle(state) : undefined;
};

/** Its layers are drawn somewhat larger than the board. */
const STAGE_PLACE = { left: -BEYOND_px, top: -BEYOND_px };

const NOTHING: readonly Ref[] = [];
const PROOF_VERDICTS: ReadonlySet<Verdict> = new Set(['stop', 'warn', 'not-checked', 'note']);
const OTHER_VERDICTS: ReadonlySet<Verdict> = new Set(['stop', 'warn']);

/** The drawing board: the plan, what the checks say about it, and the tool at work. Stands inside the store and the window's contexts. */
export function Board() {
  const runner = useToolRunner();
  const drawings = useDrawings();
  const ink = useInk();
  const pixelRatio = useDevicePixels();
  const scenes = useBoardScenes(ink);
  const { rest, live, moved } = scenes;
  const board = useStore(boardOf);
  const selection = useStore(selectionOf);
  const cut = useStore(cutOf);
  const stage = useStore(stageOf);
  const levelName = useStore(levelNameOf);
  const margined = useStore(marginedOf);
  const isComparing = useStore(comparingOf);
  const { tool, asks } = useToolLook();

  const element = useRef<HTMLDivElement>(null);
  const pointer = useRef<ScreenPoint | null>(null);
  const [typing, type] = useState<Typing | null>(null);
  const [isMoving, moving] = useState(false);
  const [isMovable, movable] = useState(false);
  const [hovered, hover] = useState<Ref | null>(null);
  const [letters, lettersCame] = useState(0);
  const spaceHeld = useSpaceHeld(movable);

  const hoveredAlone = useMemo(() => (hovered ? [hovered] : NOTHING), [hovered]);
  const pointed = useStore(pointedOf);
  const isBesideIsometric = useStore(showsIsometric);
  const store = useStoreItself();
  useEffect(() => {
    if (isBesideIsometric) store.session({ pointed: hoveredAlone });
  }, [store, hoveredAlone, isBesideIsometric]);

  const shown = live ?? rest;
  const { rest: marks, live: liveMarks } = useFindingMarks(scenes, stage === 'proof' ? PROOF_VERDICTS : OTHER_VERDICTS);
  const finding = useStore(selectShownFinding);
  useEffect(
    () =>
      whenLettersReady(() => {
        forgetLabels();
        lettersCame((count) => count + 1);
      }),
    [],
  );
  useBoardSize(element);
  useShownCamera(element);

  useBoardPointer({ element, pointer, spaceHeld, marks, hover, moving });
  useBoardKeys(type, pointer);
  useKeyboardPointer(element, pointer);

  const closeField = useCallback(() => {
    type(null);
    element.current?.focus({ preventScroll: true });
  }, []);

  const look = isMoving ? 'is-moving' : isMovable ? 'is-movable' : tool === 'select' ? 'is-picking' : '';
  return (
    <div
      ref={element}
      className={`board ${look}`}
      role="application"
      aria-label={`Drawing board${levelName ? `, ${levelName}` : ''}`}
      aria-keyshortcuts="ArrowUp ArrowDown ArrowLeft ArrowRight Space Enter Escape"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a drawing board takes the keys of its tools
      tabIndex={0}
    >
      <Stage key={`${pixelRatio}/${letters}`} className="board-canvas" style={STAGE_PLACE} width={board.width + 2 * BEYOND_px} height={board.height + 2 * BEYOND_px} listening={false}>
        <GroundLayer scene={shown} drawings={drawings} pixelRatio={pixelRatio} />
        <PlanLayer scene={rest} />
        {margined ? <MarginLayer scene={rest} nozzle={margined} /> : null}
        <MarkLayer scene={shown} drawings={drawings} hovered={live ? NOTHING : isBesideIsometric ? pointed : hoveredAlone} finding={finding} selection={selection} cut={cut} />
        {isComparing ? <ChangeLayer level={rest.level} marks={marks} ink={ink} /> : <FindingLayer marks={marks} ink={ink} />}
        <ActiveLayer rest={rest} scene={live} moved={moved} marks={liveMarks} runner={runner} ink={ink} />
      </Stage>
      {typing && asks.length > 0 ? (
        <PointerField
          asks={asks}
          begins={typing.begins}
          at={typing.at}
          board={board}
          lengths={rest.lengths}
          accept={(event) => {
            closeField();
            runner.send(event);
          }}
          close={closeField}
        />
      ) : null}
      <Announcements />
    </div>
  );
}

/** Says what is selected and why something was refused. */
function Announcements() {
  const plan = useStore(shownPlan);
  const selection = useStore(selectionOf);
  const refusal = useStore(refusalOf);
  const words = useMemo(() => selectionWords(plan, selection), [plan, selection]);
  return (
    <p className="out-of-sight" role="status" aria-live="polite">
      {refusal ?? words}
    </p>
  );
}

/** Tells the session how large the board is; the first time, the camera keeps showing what it was set to show. */
function useBoardSize(element: RefObject<HTMLDivElement | null>): void {
  const store = useStoreItself();
  const isMeasured = useRef(false);
  const measure = useCallback(
    ({ clientWidth, clientHeight }: HTMLDivElement): void => {
      const [width, height] = [Math.round(clientWidth), Math.round(clientHeight)];
      const { board, camera } = store.get().session;
      if (width < 1 || height < 1 || (board.width === width && board.height === height)) return;
      const fit = isMeasured.current ? 1 : Math.min(width / board.width, height / board.height);
      isMeasured.current = true;
      store.session({ board: { width, height }, camera: fit === 1 ? camera : { ...camera, scale_px_m: camera.scale_px_m * fit } });
    },
    [store],
  );
  useResized(element, measure);
}

/** Says on the board itself where it looks. Not by drawing it anew: a board that is moved is moved once a frame. */
function useShownCamera(element: { readonly current: HTMLDivElement | null }): void {
  const store = useStoreItself();
  useLayoutEffect(() => {
    let shown: unknown;
    const show = (): void => {
      const { camera } = store.get().session;
      if (camera === shown || !element.current) return;
      shown = camera;
      element.current.dataset.camera = `${camera.at.x} ${camera.at.y} ${camera.scale_px_m}`;
    };
    show();
    return store.subscribe(show);
  }, [element, store]);
}
