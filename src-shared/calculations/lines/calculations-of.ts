import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import { keeping, remembered } from '../../derived/remember.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Plan, Ref } from '../../model/plan.ts';
import type { LengthSystem } from '../../units/length-text.ts';
import type { Design, EnclosureDesign, NetworkDesign } from '../design/design.ts';
import { agentLines } from './agent-lines.ts';
import { batteryLines } from './battery-lines.ts';
import { CALCULATION_TOPICS, type Calculation } from './calculation.ts';
import { dischargeLines } from './discharge-lines.ts';
import type { LineContext } from './draft.ts';
import { fillingLines } from './filling-lines.ts';
import { holdLines } from './hold-lines.ts';
import { peopleLines } from './people-lines.ts';
import { strengthLines } from './strength-lines.ts';
import { supervisionLines } from './supervision-lines.ts';
import { supportLines } from './support-lines.ts';
import { ventLines } from './vent-lines.ts';
import { wiringLines } from './wiring-lines.ts';

const OF_ENCLOSURE = [agentLines, peopleLines, fillingLines, ventLines, holdLines];
const OF_NETWORK = [dischargeLines, strengthLines, supportLines, supervisionLines, wiringLines, batteryLines];

// A drag asks for the lines at every frame: those of a thing are kept with its design.
const contextOf = remembered((levels: Plan['levels'], profiles: LineContext['profiles'], basis: BasisOfDesign, lengths: LengthSystem): LineContext => ({ levels, profiles, basis, lengths }));
const linesOfNetwork = remembered((network: NetworkDesign, pipe: DerivedNetwork, context: LineContext) => OF_NETWORK.map((lines) => lines(context, network, pipe)));
const linesOfEnclosure = remembered((enclosure: EnclosureDesign, context: LineContext) => OF_ENCLOSURE.map((lines) => lines(context, enclosure)));
const keptProfiles = keeping<Plan['profiles'], LineContext['profiles']>(1);

/**
 * The sums of a plan as lines that somebody can follow by hand: by topic in the order of a design, then as the plan holds its things.
 * @param isWanted  which networks and enclosures to write out
 */
export function calculationsOf({ derived, design }: { readonly derived: Derived; readonly design: Design }, isWanted: (subject: Ref) => boolean = () => true): Calculation[] {
  const { basis, settings, levels, profiles } = derived.plan;
  const context = contextOf(levels, keptProfiles(profiles, Object.fromEntries(design.networks.map(({ ref, profile }) => [ref.id, profile]))), basis, settings.lengths);
  const pipes = new Map(derived.networks.map((network) => [network.ref.id, network]));
  const all = [
    ...design.networks.flatMap((network) => {
      const pipe = pipes.get(network.ref.id);
      return pipe && isWanted(network.ref) ? linesOfNetwork(network, pipe, context) : [];
    }),
    ...design.enclosures.flatMap((enclosure) => (isWanted(enclosure.ref) ? linesOfEnclosure(enclosure, context) : [])),
  ];
  return CALCULATION_TOPICS.flatMap((topic) => all.filter((calculation) => calculation.topic === topic));
}
