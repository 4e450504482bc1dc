import type { DerivedNetwork, Space } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import { type RefOf, isSameRef, refKey } from '../../model/plan.ts';
import type { DischargeSums, SupplySums } from './design.ts';
import { type Worked, notWorked, worked } from './worked.ts';

const isOf = ({ enclosureRef }: Space, ref: RefOf<'enclosure'>): boolean => isSameRef(enclosureRef, ref);

/** Keys of the enclosures that a network blows into. */
export const servedBy = remembered(({ nozzles }: DerivedNetwork): ReadonlySet<string> => new Set(nozzles.flatMap(({ space }) => (space ? [refKey(space.enclosureRef)] : []))));

/** The networks that blow into an enclosure. */
export function networksServing(ref: RefOf<'enclosure'>, networks: readonly DerivedNetwork[]): DerivedNetwork[] {
  const key = refKey(ref);
  return networks.filter((network) => servedBy(network).has(key));
}

/** Share of a network's agent that comes into one enclosure. */
function shareOf(derived: DerivedNetwork, ref: RefOf<'enclosure'>, discharge: Worked<DischargeSums> | undefined): Worked<number> {
  const { network: { name }, nozzles } = derived;
  for (const { nozzle, space } of nozzles) {
    if (!space) return notWorked(`nozzle ${nozzle.name} of “${name}” serves no space, and what it takes away is not known.`);
    if (isOf(space, ref) && !space.isProtected) return notWorked(`nozzle ${nozzle.name} of “${name}” blows into “${space.name}”, which is not marked as protected.`);
  }
  if (servedBy(derived).size === 1) return worked(1);
  if (!discharge?.isKnown) return notWorked(`“${name}” also serves another enclosure, and how it parts its agent is not worked out: ${discharge ? discharge.because : 'there is no discharge yet.'}`);
  const { input, result } = discharge.sums;
  const total_kg = result.spaces.reduce((sum, { mass_kg }) => sum + mass_kg, 0);
  const here_kg = result.spaces.reduce((sum, { mass_kg }, i) => sum + (input.enclosures[input.spaces[i]?.enclosure ?? -1]?.id === ref.id ? mass_kg : 0), 0);
  return total_kg > 0 ? worked(here_kg / total_kg) : notWorked(`nothing comes out of “${name}”.`);
}

/** What is installed for one enclosure: the full cylinders of every network that blows into it. */
export function supplyOf(ref: RefOf<'enclosure'>, networks: readonly DerivedNetwork[], dischargeOf: (network: DerivedNetwork) => Worked<DischargeSums> | undefined): Worked<SupplySums> {
  const serving = networksServing(ref, networks);
  if (serving.length === 0) return notWorked('no nozzle serves the enclosure.');
  const parts: SupplySums['networks'][number][] = [];
  for (const network of serving) {
    const { name } = network.network;
    const massEach_kg = network.profile?.limits.agentMass_kg?.value;
    if (!network.profile) return notWorked(`“${name}” has no unit profile.`);
    if (!massEach_kg) return notWorked(`“Agent mass” is blank in the unit profile “${network.profile.name}”.`);
    const cylinders = Object.keys(network.network.cylinders).length;
    if (cylinders === 0) return notWorked(`“${name}” has no cylinder yet.`);
    const share = shareOf(network, ref, dischargeOf(network));
    if (!share.isKnown) return share;
    parts.push({ ref: network.ref, name, cylinders, massEach_kg, share: share.sums });
  }
  const [first] = parts;
  if (!first || parts.some(({ massEach_kg }) => massEach_kg !== first.massEach_kg)) return notWorked('the networks that serve the enclosure have cylinders with different fills.');
  const cylinders = parts.reduce((sum, part) => sum + part.cylinders * part.share, 0);
  return worked({ networks: parts, cylinders, massEach_kg: first.massEach_kg, installed_kg: cylinders * first.massEach_kg });
}
