import type { Derived } from '#shared/derived/derived';
import type { Verdict } from '#shared/rules/finding';
import { netVolumeOf_m3 } from '#shared/calculations/design/net-volume';

/** The live numbers that a designer keeps in mind. undefined: not known, or a limit is blank. */
export interface Ledger {
  /** Net volume of all protected spaces. */
  readonly netVolume_m3: number | undefined;
  /** Longest way from a source to a nozzle; undefined while no nozzle is reached. */
  readonly longestPath_m: number | undefined;
  /** Pipe that the most used path may still grow. */
  readonly pathLeft_m: number | undefined;
  /** Elbows that the most bent path may still take; negative when there are too many. */
  readonly elbowsLeft: number | undefined;
  readonly nozzles: number;
  readonly cylinders: number;
  readonly stops: number;
  readonly warnings: number;
  readonly notChecked: number;
}

/** Least of the numbers; undefined when there are none or one is not known. */
function leastOf(numbers: readonly (number | undefined)[]): number | undefined {
  const known = numbers.filter((each) => each !== undefined);
  return known.length === 0 || known.length < numbers.length ? undefined : Math.min(...known);
}

/** Reads the ledger from what follows from a plan. */
export function ledgerOf({ spaces, networks, nozzles }: Derived, counts: Readonly<Record<Verdict, number>>): Ledger {
  const volumes = spaces.filter(({ isProtected }) => isProtected).map(netVolumeOf_m3);
  const known = volumes.filter((volume) => volume !== undefined);
  const paths = networks.flatMap(({ profile, paths: ways }) => ways.map((path) => ({ path, limits: profile?.limits })));
  return {
    netVolume_m3: known.length === 0 || known.length < volumes.length ? undefined : known.reduce((sum, volume) => sum + volume, 0),
    longestPath_m: paths.length === 0 ? undefined : Math.max(...paths.map(({ path }) => path.length_m)),
    pathLeft_m: leastOf(paths.map(({ path, limits }) => limits?.pathLength_m && limits.pathLength_m.value - path.length_m)),
    elbowsLeft: leastOf(paths.map(({ path, limits }) => limits?.elbowsPerPath && limits.elbowsPerPath.value - path.elbows)),
    nozzles: nozzles.length,
    cylinders: networks.reduce((sum, { network }) => sum + Object.keys(network.cylinders).length, 0),
    stops: counts.stop,
    warnings: counts.warn,
    notChecked: counts['not-checked'],
  };
}
