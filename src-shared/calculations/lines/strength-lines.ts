import type { DerivedPipe, FittingKind } from '../../derived/derived.ts';
import { PIPE_TABLE } from '../../profile/pipe-table.ts';
import { inches_m, toMillimetres, toPsi } from '../../units/convert.ts';
import type { LengthSystem } from '../../units/length-text.ts';
import type { NetworkDesign, ZoneSums } from '../design/design.ts';
import { expectedPressureBasis } from '../formulas/cylinder-gas.ts';
import { fittingRatingBasis, forgedRatingBasis } from '../formulas/fitting-rating.ts';
import { pipeRatingBasis } from '../formulas/pipe-rating.ts';
import { allowableStress_Pa, pipeStressBasis } from '../formulas/pipe-stress.ts';
import { threadDepth_m } from '../formulas/pipe-threads.ts';
import { SPECIFICATION_WORDS, STRESS_SET_WORDS } from './basis-words.ts';
import type { Calculation } from './calculation.ts';
import { CHOSEN, Draft, type LineContext, ownBasis } from './draft.ts';
import { amount, counted, figure, gauge, gaugesApart } from './line-text.ts';

const MPa = 1e6;
const weakestBasis = ownBasis('least rating of pipe and fittings on this side', 'a line is as strong as its weakest part');

/** What pipe and fittings bear on each side of the regulator, against what comes there. */
export function strengthLines(context: LineContext, network: NetworkDesign): Calculation {
  const { basis, lengths } = context;
  const draft = new Draft('strength', 'Strength of pipe and fittings', network.ref, network.name);
  draft.given('Pipe', SPECIFICATION_WORDS[basis.pipeSpecification], CHOSEN);
  draft.given('Hottest place of a cylinder', amount(basis.hottestCylinder_K, 'temperature', lengths), CHOSEN);
  draft.given('Share of the wall that is sure to be there, m; coefficient y', `${figure(basis.millFactor)}; ${figure(basis.yCoefficient)}`, CHOSEN);
  const stress_Pa = allowableStress_Pa(basis.stressSet, basis.pipeSpecification);
  if (stress_Pa === undefined) draft.lacks('allowable stress', 'the chosen set gives none for this pipe');
  else draft.step(`Allowable stress, S: ${STRESS_SET_WORDS[basis.stressSet]}`, pipeStressBasis, '', `${figure(stress_Pa / MPa, 4)} MPa${lengths === 'feet' ? ` = ${figure(toPsi(stress_Pa), 4)} psi` : ''}`);
  draft.with('pressures and ratings', network.zones, (zones) => {
    for (const zone of zones) zoneLines(draft, context, network, zone, stress_Pa);
  });
  return draft.done();
}

/** Pipes of one kind, which bear alike. */
const kindOf = ({ pipe }: DerivedPipe): string => `NPS ${pipe.size} Schedule ${pipe.schedule} ${pipe.joint}`;

function zoneLines(draft: Draft, { basis, lengths }: LineContext, network: NetworkDesign, zone: ZoneSums, stress_Pa: number | undefined): void {
  const { side, greatest_Pa, greatestSource, line_Pa } = zone;
  const where = side.charAt(0).toUpperCase() + side.slice(1);
  if (side === 'before the regulator') draft.step(`${where}: greatest pressure`, expectedPressureBasis, '', line_Pa === undefined ? gauge(greatest_Pa, lengths) : gaugesApart(greatest_Pa, line_Pa, lengths).value);
  else draft.given(`${where}: greatest pressure`, line_Pa === undefined ? gauge(greatest_Pa, lengths) : gaugesApart(greatest_Pa, line_Pa, lengths).value, greatestSource);
  const seen = new Set<string>();
  for (const { pipe, rating_Pa } of zone.pipes) {
    const kind = kindOf(pipe);
    if (seen.has(kind)) continue;
    seen.add(kind);
    const count = zone.pipes.filter((one) => kindOf(one.pipe) === kind).length;
    const { outside_in, wall_in } = PIPE_TABLE[pipe.pipe.size];
    const depth_m = pipe.pipe.joint === 'threaded' ? threadDepth_m(pipe.pipe.size) : 0;
    const [wall, cut, outside] = [inches_m(wall_in[pipe.pipe.schedule]), depth_m, inches_m(outside_in)].map(toMillimetres) as [number, number, number];
    const sound = `(${figure(basis.millFactor)}·${figure(wall)} − ${figure(cut)})`;
    const numbers = stress_Pa === undefined ? '' : `2·${figure(stress_Pa / MPa)}·${sound}/(${figure(outside)} − 2·${figure(basis.yCoefficient)}·${sound})`;
    draft.step(`${kind}, ${count} ${count === 1 ? 'piece' : 'pieces'}`, pipeRatingBasis, numbers, `${figure(rating_Pa / MPa, 5)} MPa = ${gauge(rating_Pa, lengths)}`);
  }
  fittingLines(draft, network, zone, lengths);
  if (line_Pa === undefined) draft.given(`${where}: weakest part`, 'no pipe and no fitting here', '');
  else draft.main(`${where}: weakest part`, weakestBasis, '', `${gaugesApart(line_Pa, greatest_Pa, lengths).value}${line_Pa < greatest_Pa ? ': too weak' : ''}`);
}

const FITTING_WORDS: Readonly<Record<FittingKind, readonly [one: string, many: string]>> = {
  'elbow-90': ['elbow 90°', 'elbows 90°'],
  'elbow-45': ['elbow 45°', 'elbows 45°'],
  'odd-bend': ['bend of another angle', 'bends of another angle'],
  tee: ['tee', 'tees'],
  cross: ['cross', 'crosses'],
  reducer: ['reducer', 'reducers'],
  coupling: ['coupling', 'couplings'],
  union: ['union', 'unions'],
  cap: ['cap', 'caps'],
  plug: ['plug', 'plugs'],
  drain: ['drain', 'drains'],
  joint: ['joint', 'joints'],
};

/** Fittings of one size and rating in one line. */
function fittingLines(draft: Draft, { profile }: NetworkDesign, { fittings }: ZoneSums, lengths: LengthSystem): void {
  const made = profile?.fittingClass ?? null;
  const basis = made === null || made === '300' ? fittingRatingBasis : forgedRatingBasis;
  const alike = new Map<string, ZoneSums['fittings'][number][]>();
  for (const one of fittings) {
    const key = `${one.size}/${one.rating_Pa}/${one.isEverAllowed}`;
    alike.set(key, [...(alike.get(key) ?? []), one]);
  }
  for (const group of alike.values()) {
    const [first] = group;
    if (!first) continue;
    const kinds = (Object.keys(FITTING_WORDS) as FittingKind[]).flatMap((kind) => {
      const count = group.filter(({ fitting }) => fitting.kind === kind).length;
      return count === 0 ? [] : [counted(count, ...FITTING_WORDS[kind])];
    });
    draft.step(`Fittings NPS ${first.size}${made === null ? '' : ` Class ${made}`}: ${kinds.join(', ')}`, basis, '', `${gauge(first.rating_Pa, lengths)}${first.isEverAllowed ? '' : ': not for this service'}`);
  }
}
