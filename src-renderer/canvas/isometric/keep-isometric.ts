import type { DerivedNetwork } from '#shared/derived/derived';
import { type AssemblyWays, clearestWays } from '#shared/isometric/assembly-line';
import { type Isometric, layoutIsometric, middleRun_m } from '#shared/isometric/layout-isometric';

/** An isometric as the window shows it. */
export interface ShownIsometric {
  readonly iso: Isometric;
  /** How the discharge assembly leaves the pipe; undefined where no pipe begins. */
  readonly ways: AssemblyWays | undefined;
  /** Counts the searches for the clearest drawing: the view fits itself anew after one. */
  readonly search: number;
}

/** Length of the drawing that one part of the assembly takes, in middle runs. */
const PITCH = 0.5;
/** A drawing at rest that has become harder to read by this much is searched anew. */
const WORSE = 2;

function waysOf(iso: Isometric): AssemblyWays | undefined {
  const source = iso.nodes.find(({ isSource }) => isSource);
  const { network } = iso.network;
  if (!source || (network.assembly.length === 0 && Object.keys(network.cylinders).length === 0)) return undefined;
  const pitch = PITCH * middleRun_m(iso);
  const about = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: (x - source.place.x) / pitch, y: (y - source.place.y) / pitch });
  return clearestWays(network, iso.runs.map(({ a, b, from, to }) => ({ a: about(a), b: about(b), isHere: from === source.id || to === source.id })), () => true);
}

/** Keeps the drawings of a window's networks, so that they hold still while the plan is edited. */
export interface IsometricKeeper {
  /**
   * The drawing of a network: the very same while the network is, else like the one before. The clearest is searched
   * when a network is first seen, and when one at rest has become hard to read.
   */
  shown(network: DerivedNetwork, isHeld: boolean): ShownIsometric;
  /** Searches the clearest drawing of a network anew when it is shown next. */
  forget(network: string): void;
}

/** Makes a keeper that knows no network yet. */
export function isometricKeeper(): IsometricKeeper {
  const kept = new Map<string, ShownIsometric & { readonly clear: number }>();
  let searches = 0;
  const searched = (network: DerivedNetwork): ShownIsometric & { readonly clear: number } => {
    const iso = layoutIsometric(network);
    searches += 1;
    return { iso, ways: waysOf(iso), search: searches, clear: iso.crowding };
  };
  const next = (network: DerivedNetwork, isHeld: boolean): ShownIsometric & { readonly clear: number } => {
    const before = kept.get(network.network.id);
    if (!before) return searched(network);
    const { network: was } = before.iso;
    if (was === network) return before;
    const iso = layoutIsometric(network, before.iso.like);
    if (!isHeld && iso.crowding > before.clear + WORSE) return searched(network);
    const isSameAssembly = was.network.assembly === network.network.assembly && was.network.cylinders === network.network.cylinders && was.network.source === network.network.source;
    return { ...before, iso, ways: isSameAssembly ? before.ways : waysOf(iso) };
  };
  return {
    shown(network, isHeld) {
      const found = next(network, isHeld);
      kept.set(network.network.id, found);
      return found;
    },
    forget: (network) => void kept.delete(network),
  };
}
