import type { Enclosure, Opening, Plan, Ref, RefOf } from '#shared/model/plan';
import type { Finding } from '#shared/rules/finding';
import type { MissingField } from '../sums/missing-fields.ts';

const field = (on: Ref, label: string, text: string): MissingField[] => [{ kind: 'field', on, label, text }];

/** The part of a vent's way that is not said, or too small. */
function wayOf(on: RefOf<'opening'>, { ventPath, leadsTo }: Opening): MissingField[] {
  if (ventPath.length === 0) return leadsTo === 'unknown' ? field(on, 'Leads to', 'Say where the vent leads') : field(on, 'Add a step of the way', 'List its way outdoors');
  const unsized = ventPath.findIndex(({ through, freeArea_m2 }) => through !== 'outdoors' && freeArea_m2 === null);
  const wrong = ventPath.findIndex(({ through }) => through === 'corridor' || through === 'exit' || through === 'protected');
  if (wrong < 0 && ventPath.at(-1)?.through !== 'outdoors') return field(on, 'Add a step of the way', 'List its way on to outdoors');
  if (wrong < 0 && unsized >= 0) return field(on, `Free area of step ${unsized + 1}`, `Enter the free area of step ${unsized + 1} of its way`);
  return field(on, `Step ${Math.max(0, wrong) + 1} leads through`, 'Change its way outdoors');
}

function openingField(on: RefOf<'opening'>, { kind, closes }: Opening): MissingField[] {
  return kind === 'door' && closes ? field(on, 'Gap under the leaf', 'Enter the gap under the door') : field(on, 'Closes before discharge', 'Say whether it closes');
}

function joiningField(on: RefOf<'enclosure'>, { ceiling, ceilingVoid }: Enclosure, verdict: Finding['verdict']): MissingField[] {
  if (verdict === 'not-checked' && ceilingVoid && ceiling.make === 'unknown') return field(on, 'Ceiling', 'Say what the ceiling is made of');
  return field(on, 'Discharged together with', 'Say what is discharged together');
}

function afterField(plan: Plan, on: RefOf<'enclosure'>, rule: string, { afterDischarge }: Enclosure): MissingField[] {
  if (rule === 'E16') return plan.basis.extract === 'unknown' ? [{ kind: 'basis', label: 'Extract after a discharge', text: 'Say whether extract is required' }] : field(on, 'Extract after a discharge', 'Say what extract there is');
  return afterDischarge.hasMeter !== true && afterDischarge.procedure.trim() !== '' ? field(on, 'Oxygen meter at hand', 'Say whether a meter is at hand') : field(on, 'How people come back in', 'Write how people come back in');
}

/** Checks of what stands in and around a room: where each is cleared. */
export const ABOUT_ROOMS: ReadonlySet<string> = new Set(['E10', 'E12', 'E13', 'E14', 'E15', 'E16', 'S9', 'S10']);

/** The field that clears a finding about what stands in and around a room. */
export function mendRoom(plan: Plan, { rule, subject, verdict }: Pick<Finding, 'rule' | 'subject' | 'verdict'>): MissingField[] {
  if (subject.kind === 'adjoining') return field(subject, 'Gas that drifts in', 'Say what gas does that drifts in');
  if (subject.kind === 'opening') {
    const opening = plan.levels[subject.level]?.enclosures[subject.enclosure]?.openings[subject.id];
    if (!opening) return [];
    return rule === 'E10' ? wayOf(subject, opening) : openingField(subject, opening);
  }
  if (subject.kind !== 'enclosure') return [];
  const enclosure = plan.levels[subject.level]?.enclosures[subject.id];
  if (!enclosure) return [];
  switch (rule) {
    case 'E13':
      return field(subject, 'Release matrix', 'Look at the release matrix');
    case 'E14':
      return field(subject, 'All walls go up to', 'Say how far up the walls go');
    case 'E15':
      return joiningField(subject, enclosure, verdict);
    case 'S9':
      return field(subject, 'What lies on the other sides', 'Say what lies on the other sides');
    default:
      return afterField(plan, subject, rule, enclosure);
  }
}
