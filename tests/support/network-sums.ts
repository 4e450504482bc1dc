import type { Design, NetworkDesign } from '#shared/calculations/design/design';
import { notWorked } from '#shared/calculations/design/worked';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Derived } from '#shared/derived/derived';
import type { Plan } from '#shared/model/plan';
import type { Finding } from '#shared/rules/finding';
import type { Rule } from '#shared/rules/rule';

/** Sums of the network of a layout: those that a test gives, all others not worked out. */
export type GivenSums = Partial<NetworkDesign> | ((derived: Derived['networks'][number]) => Partial<NetworkDesign>);

const unasked = notWorked('the test left it out.');

/** Asks a rule about the network of a layout with sums as given, so that a limit can be met to the last digit. */
export function checkSums(rule: Rule, plan: Plan, given: GivenSums): Finding[] {
  const derived = derivePlan(plan);
  const networks = derived.networks.map((each): NetworkDesign => ({
    ref: each.ref,
    name: each.network.name,
    network: each.network,
    profile: each.profile,
    discharge: unasked,
    orifices: unasked,
    shares: unasked,
    zones: unasked,
    supervision: unasked,
    supports: unasked,
    thrusts: unasked,
    turnThrusts: unasked,
    mounts: unasked,
    release: unasked,
    conduit: unasked,
    battery: unasked,
    ...(typeof given === 'function' ? given(each) : given),
  }));
  const design: Design = { enclosures: [], networks, asked: [] };
  return rule.run(derived, design);
}

/** The one finding of a rule about the network of a layout. */
export function checkSumsOnce(rule: Rule, plan: Plan, given: GivenSums): Finding {
  const findings = checkSums(rule, plan, given);
  const [finding] = findings;
  if (!finding || findings.length !== 1) throw new Error(`Expected one finding, got ${findings.length}.`);
  return finding;
}
