import { isAlike } from '#shared/derived/remember';
import type { Elevation } from '#shared/elevation/elevation';

/** Cylinders within rails within a wall, with their places. */
const DEPTH = 8;

/** All that a wall shows and says, without the rest of the network that hangs on it. The room stands for the frame of its face. */
function contentOf(elevation: Elevation) {
  const { network: derived, frame, pipes, supports, ...rest } = elevation;
  const { id, name, assembly, source, nodes } = derived.network;
  return {
    ...rest,
    pipes: pipes.map(({ pipe, from, to }) => ({ pipe: pipe.pipe, outside_m: pipe.outside_m, from, to })),
    supports: supports.map(({ support, at }) => ({ support: support.support, pipe: support.pipe?.pipe, at })),
    network: { id, name, assembly, source, at: nodes[source ?? '']?.at, profile: derived.profile, level: derived.level.id },
  };
}

/** Answers the walls of a plan, each the very same as before while nothing that it shows has changed: it need not be drawn again. */
export function wallKeeper(): (elevations: readonly Elevation[]) => readonly Elevation[] {
  let kept = new Map<string, { readonly elevation: Elevation; readonly content: object }>();
  return (elevations) => {
    const shown = elevations.map((elevation) => {
      const content = contentOf(elevation);
      const before = kept.get(elevation.key);
      return before && isAlike(before.content, content, DEPTH) ? before : { elevation, content };
    });
    kept = new Map(shown.map((each) => [each.elevation.key, each]));
    return shown.map(({ elevation }) => elevation);
  };
}
