import { createContext, useContext, useSyncExternalStore } from 'react';
import type { Heights, HeightsToRaise } from '../store/heights-to-raise.ts';
import type { StartTolerancesWorker } from '../store/printed-tolerances.ts';
import type { Room, RoomToMove } from '../store/room-to-move.ts';
import type { UnderlayDrawings } from '../store/underlay-drawings.ts';
import type { ToolRunner } from '../tools/tool-runner.ts';

/** What the board works with beside the store: made once a window. */
export interface BoardParts {
  readonly drawings: UnderlayDrawings;
  readonly runner: ToolRunner;
  /** Where the selected nozzle may be put; left out where nobody asks. */
  readonly room?: RoomToMove;
  /** How far the selected rail or pipe may be raised; left out where nobody asks. */
  readonly heights?: HeightsToRaise;
  /** Works out what the field sheet prints as tolerances; left out where nobody asks. */
  readonly startTolerances?: StartTolerancesWorker;
}

/** Gives the board and every panel the floor plans that were read and the runner of the tools. */
export const BoardContext = createContext<BoardParts | null>(null);

const useBoardParts = (): BoardParts => {
  const parts = useContext(BoardContext);
  if (!parts) throw new Error('The board stands outside the window.');
  return parts;
};

/** What the tool under way shows and expects. */
export const useToolRunner = (): ToolRunner => useBoardParts().runner;

/** The window's keep of floor plan drawings. */
export const useDrawings = (): UnderlayDrawings => useBoardParts().drawings;

const NO_ROOM: RoomToMove = { get: () => null, subscribe: () => () => undefined };

/** Where the selected nozzle may be put, as far as it is known. */
export function useRoomToMove(): Room | null {
  const { room = NO_ROOM } = useBoardParts();
  return useSyncExternalStore(room.subscribe, room.get);
}

const NO_HEIGHTS: HeightsToRaise = { get: () => null, subscribe: () => () => undefined };

/** How far the selected rail or pipe may be raised, as far as it is known. */
export function useHeightsToRaise(): Heights | null {
  const heights = useContext(BoardContext)?.heights ?? NO_HEIGHTS;
  return useSyncExternalStore(heights.subscribe, heights.get);
}

/** Starts the worker of the printed tolerances, where the window has one. */
export const useTolerancesWorker = (): StartTolerancesWorker | undefined => useContext(BoardContext)?.startTolerances;
