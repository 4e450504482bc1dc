import { bandVerdict } from './band-verdict.ts';
import type { Design } from '#shared/calculations/design/design';
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
  /** Of all rooms together; undefined while one of them is not worked out. */
  readonly agent: { readonly needed_kg: number; readonly installed_kg: number; /** Rooms with less than they need. */ readonly short: number } | undefined;
  /** Least oxygen of all rooms when hottest, as at sea level [vol %]; undefined while one of them is not worked out. */
  readonly oxygenHot_pct: number | undefined;
  /** Whether full cylinders fit every room; the first that they do not fit says why. */
  readonly fill: 'fits' | 'too little agent' | 'too little oxygen left' | 'fits no volume' | undefined;
  readonly stops: number;
  readonly warnings: number;
  readonly notChecked: number;
}

/** Least of the numbers; undefined when there are none or one is not known. */
function leastOf(numbers: readonly (number | undefined)[]): number | undefined {
  const known = numbers.filter((each) => each !== undefined);
  return known.length === 0 || known.length < numbers.length ? undefined : Math.min(...known);
}

/** What all rooms come to; undefined when there are none or one is not worked out. */
function agentOf({ enclosures }: Design): Ledger['agent'] {
  if (enclosures.length === 0) return undefined;
  let total = { needed_kg: 0, installed_kg: 0, short: 0 };
  for (const { agent, supply } of enclosures) {
    if (!agent.isKnown || !supply.isKnown) return undefined;
    const isShort = supply.sums.installed_kg < agent.sums.massNeeded_kg;
    total = { needed_kg: total.needed_kg + agent.sums.massNeeded_kg, installed_kg: total.installed_kg + supply.sums.installed_kg, short: total.short + (isShort ? 1 : 0) };
  }
  return total;
}

function fillOf({ enclosures }: Design): Ledger['fill'] {
  const verdicts = enclosures.map(({ fill }) => (fill.isKnown ? bandVerdict(fill.sums.net_m3, fill.sums).words : undefined));
  const misfit = verdicts.find((verdict) => verdict !== undefined && verdict !== 'fits');
  return misfit ?? (verdicts.length > 0 && verdicts.every((verdict) => verdict === 'fits') ? 'fits' : undefined);
}

/** Reads the ledger from what follows from a plan. */
export function ledgerOf({ spaces, networks, nozzles }: Derived, design: Design, counts: Readonly<Record<Verdict, number>>): Ledger {
  const volumes = spaces.filter(({ isProtected }) => isProtected).map((space) => netVolumeOf_m3(space));
  const known = volumes.filter((volume) => volume !== undefined);
  const paths = networks.flatMap(({ profile, paths: ways }) => ways.map((path) => ({ path, limits: profile?.limits })));
  return {
    netVolume_m3: known.length === 0 || known.length < volumes.length ? undefined : known.reduce((sum, volume) => sum + volume, 0),
    longestPath_m: paths.length === 0 ? undefined : Math.max(...paths.map(({ path }) => path.length_m)),
    pathLeft_m: leastOf(paths.map(({ path, limits }) => limits?.pathLength_m && limits.pathLength_m.value - path.length_m)),
    elbowsLeft: leastOf(paths.map(({ path, limits }) => limits?.elbowsPerPath && limits.elbowsPerPath.value - path.elbows)),
    nozzles: nozzles.length,
    cylinders: networks.reduce((sum, { network }) => sum + Object.keys(network.cylinders).length, 0),
    agent: agentOf(design),
    oxygenHot_pct: leastOf(design.enclosures.map(({ people }) => (people.isKnown ? people.sums.hot.oxygenSeaLevel_pct : undefined))),
    fill: fillOf(design),
    stops: counts.stop,
    warnings: counts.warn,
    notChecked: counts['not-checked'],
  };
}
