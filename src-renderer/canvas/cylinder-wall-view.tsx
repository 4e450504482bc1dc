import { useMemo, useState } from 'react';
import type { Elevation } from '#shared/elevation/elevation';
import { cylindersWithoutWall, elevationsOf } from '#shared/elevation/elevations-of';
import type { Ref } from '#shared/model/plan';
import { elevationPlace, mountNotes } from '#shared/sheets/elevation-words';
import { useFrameSize } from '../input/use-frame-size.ts';
import { selectEvaluation } from '../store/selectors.ts';
import type { Session, State } from '../store/state.ts';
import { useStore } from '../store/use-store.ts';
import { wallKeeper } from './cylinder-wall/keep-walls.ts';
import { WallBoard } from './cylinder-wall/wall-board.tsx';
import './cylinder-wall/cylinder-wall.css';

const levelOf = (state: State): string => state.session.level;
const selectionOf = (state: State): Session['selection'] => state.session.selection;

/** Whether a wall shows a thing, or carries the cylinders of the network that the thing is part of: the more it shows, the higher. */
function belongs(elevation: Elevation, ref: Ref): number {
  if (ref.kind === 'cylinder') return elevation.network.ref.id === ref.network && elevation.cylinders.some((each) => each.ref.id === ref.id) ? 2 : 0;
  if (ref.kind === 'wall' && ref.id === elevation.wall.id && ref.enclosure === elevation.wall.enclosure) return 2;
  if (ref.kind === 'network') return elevation.network.ref.id === ref.id ? 1 : 0;
  return 'network' in ref && ref.network === elevation.network.ref.id ? 1 : 0;
}

/** The wall that is shown: the chosen one until a thing of another is selected. */
function useShownWall(elevations: readonly Elevation[], selection: Session['selection']): readonly [Elevation | undefined, (key: string) => void] {
  const [chosen, choose] = useState<{ readonly key: string; readonly selection: Session['selection'] } | null>(null);
  const rated = elevations.map((elevation) => ({ elevation, rate: Math.max(0, ...selection.map((ref) => belongs(elevation, ref))) }));
  const best = Math.max(0, ...rated.map(({ rate }) => rate));
  const known = rated.find(({ elevation }) => elevation.key === chosen?.key);
  const isKept = known !== undefined && (chosen?.selection === selection || best === 0 || known.rate === best);
  const shown = isKept ? known.elevation : (rated.find(({ rate }) => rate === best)?.elevation ?? elevations[0]);
  if (shown && chosen?.key !== shown.key) choose({ key: shown.key, selection });
  return [shown, (key) => choose({ key, selection })];
}

/** The wall behind the cylinders, seen from the room: one wall at a time, that of the selected cylinder by itself. */
export function CylinderWallView() {
  const { derived } = useStore(selectEvaluation);
  const level = useStore(levelOf);
  const selection = useStore(selectionOf);
  const { ref, width, height } = useFrameSize();
  const [keep] = useState(wallKeeper);
  const walls = useMemo(() => keep(elevationsOf(derived)), [keep, derived]);
  const elevations = walls.filter(({ network }) => network.level.id === level);
  const [elevation, choose] = useShownWall(elevations, selection);
  const { lengths } = derived.plan.settings;

  const isElsewhere = cylindersWithoutWall(derived).some((ref) => derived.networks.some(({ network }) => network.id === ref.network && network.level === level));
  return (
    <div className="cylinder-wall">
      {elevation ? (
        <div className="cylinder-wall-head">
          {elevations.length > 1 ? (
            <select aria-label="Wall shown" value={elevation.key} onChange={(event) => choose(event.target.value)}>
              {elevations.map((each) => (
                <option key={each.key} value={each.key}>
                  {`${each.network.network.name}: ${elevationPlace(each)}`}
                </option>
              ))}
            </select>
          ) : (
            <span>{`${elevation.network.network.name}: ${elevationPlace(elevation)}`}</span>
          )}
        </div>
      ) : null}
      <div ref={ref} className="cylinder-wall-frame">
        {elevation && width > 0 && height > 0 ? (
          <WallBoard elevation={elevation} spaces={derived.spaces} lengths={lengths} width={width} height={height} />
        ) : elevation ? null : (
          <p className="side-view-empty">
            {isElsewhere ? 'No wall stands behind the cylinders of this level. Move them to a wall, or turn their backs to it.' : 'Stand a cylinder by a wall: the wall behind it appears here.'}
          </p>
        )}
      </div>
      {elevation ? (
        <details className="cylinder-wall-notes">
          <summary>{elevation.missing.length === 0 ? 'Notes' : `Notes, ${elevation.missing.length} not known`}</summary>
          <ul>
            {mountNotes(elevation, lengths).slice(1).map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}
