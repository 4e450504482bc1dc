import type { EnclosureDesign } from '#shared/calculations/design/design';
import { notWorked } from '#shared/calculations/design/worked';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Derived } from '#shared/derived/derived';
import type { Plan } from '#shared/model/plan';
import type { Finding } from '#shared/rules/finding';
import type { Rule } from '#shared/rules/rule';
import { at3, layout, type LayoutSpec } from './layout.ts';

/** Sums of the room of a layout: those that a test gives, all others not worked out. */
export type GivenSums = Partial<EnclosureDesign> | ((derived: Derived) => Partial<EnclosureDesign>);

const unasked = notWorked('the test left it out.');

/** A room that one nozzle serves. */
export const servedRoom = (spec: LayoutSpec = {}): Plan => layout({ nozzles: [{ at: at3(3, 2, 2.5) }], ...spec });

/** Asks a rule about the enclosures of a layout with sums as given, so that a limit can be met to the last digit. */
export function checkEnclosures(rule: Rule, plan: Plan, given: GivenSums): Finding[] {
  const derived = derivePlan(plan);
  const served = new Set(derived.nozzles.map(({ space }) => space?.enclosure.id));
  const enclosures = Object.values(plan.levels).flatMap(({ id: level, enclosures: all }) =>
    Object.values(all).map((enclosure): EnclosureDesign => ({
      ref: { kind: 'enclosure', level, id: enclosure.id },
      name: enclosure.name,
      enclosure,
      isServed: served.has(enclosure.id),
      volume: unasked,
      supply: unasked,
      agent: unasked,
      cylindersNeeded: unasked,
      minimum: unasked,
      people: unasked,
      fill: unasked,
      weakest: unasked,
      vent: unasked,
      leaks: unasked,
      hold: unasked,
      filling: unasked,
      ...(typeof given === 'function' ? given(derived) : given),
    })),
  );
  return rule.run(derived, { enclosures, networks: [], asked: [] });
}

/** The one finding of a rule about the one room of a layout. */
export function checkEnclosure(rule: Rule, plan: Plan, given: GivenSums = {}): Finding {
  const findings = checkEnclosures(rule, plan, given);
  const [finding] = findings;
  if (!finding || findings.length !== 1) throw new Error(`Expected one finding, got ${findings.length}.`);
  return finding;
}
