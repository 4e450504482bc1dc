import { useMemo } from 'react';
import { type Ref, isSameRef, refKey } from '#shared/model/plan';
import type { Session, State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { drawSection } from './draw-section.ts';
import { HeightBoard } from './height-board/height-board.tsx';
import { useFittedView } from './height-board/use-fitted-view.ts';
import { useHands } from './height-board/use-hands.ts';
import type { Paint } from './paint.ts';
import type { Px } from './pen.ts';
import type { SectionCut } from './section-cut.ts';
import { heightCommand, heightHandleOf } from './section-heights.ts';
import { type HeightHandle, heightHandleAt, sectionThingAt } from './section-pick.ts';
import { type SectionView, fittedSection, pannedSection, sectionPlace, sectionPx, zoomedSection } from './section-view.ts';
import { useInk } from './use-ink.ts';

const REACH_px = 9;
const selectionOf = (state: State): Session['selection'] => state.session.selection;

interface SectionBoardProps {
  readonly cut: SectionCut;
  readonly lengths: 'feet' | 'metric';
  readonly width: number;
  readonly height: number;
}

/** The section itself: heights can be dragged and typed, the view zoomed and moved. */
export function SectionBoard({ cut, lengths, width, height }: SectionBoardProps) {
  const ink = useInk();
  const selection = useStore(selectionOf);
  const hands = useHands<HeightHandle>();
  const way = cut.path.places.map(({ x, y }) => `${x} ${y}`).join(' ');
  const fitted = useMemo(() => fittedSection(cut, width, height), [cut, width, height]);
  const shown = useFittedView({ key: `${cut.path.kind} ${way} ${width} ${height}`, stillKey: `${width} ${height}`, fitted, isHeld: hands.held !== null });
  const { view } = shown;
  const held: Ref | null = hands.held?.ref ?? null;
  const paints = useMemo((): Paint[] => {
    const look = { ink, lengths, selection: new Set(selection.map(refKey)), held };
    return [(pen) => drawSection(pen, view, cut, look)];
  }, [view, cut, ink, lengths, selection, held]);
  return (
    <HeightBoard<SectionView, HeightHandle>
      name="section"
      label={`Section strip: ${cut.path.title}. Type a figure to set the height of what is selected.`}
      lies={`${view.at.s} ${view.at.z} ${view.scale_px_m}`}
      paints={paints}
      width={width}
      height={height}
      lengths={lengths}
      shown={shown}
      hands={hands}
      handleAt={(p) => heightHandleAt(cut, view, p, REACH_px)}
      isSame={(a, b) => a.ref.id === b.ref.id}
      selectedBy={({ ref }) => (selection.some((each) => isSameRef(each, ref)) ? selection : [ref])}
      thingAt={(p) => sectionThingAt(cut, view, p, REACH_px)}
      heightAt_m={(p) => sectionPlace(view, p).z}
      command={heightCommand}
      fieldAt={(handle) => handlePx(cut, view, handle)}
      handleOfSelected={() => heightHandleOf(cut, selection)}
      figures={/^[\d.,'"-]$/}
      panned={pannedSection}
      zoomed={zoomedSection}
    />
  );
}

/** Where a handle stands on the strip. */
function handlePx(cut: SectionCut, view: SectionView, handle: HeightHandle): Px {
  const isIt = ({ ref }: { readonly ref: Ref }): boolean => isSameRef(ref, handle.ref);
  const pipe = cut.pipes.find(isIt);
  const at = cut.nodes.find(isIt)?.at ?? cut.supports.find(isIt)?.at ?? cut.devices.find(isIt)?.at ?? cut.nozzles.find(({ nozzle }) => isIt(nozzle))?.at ?? (pipe && { s: (pipe.a.s + pipe.b.s) / 2, z: pipe.a.z });
  return at ? sectionPx(view, at) : { x: view.width / 2, y: view.height / 2 };
}
