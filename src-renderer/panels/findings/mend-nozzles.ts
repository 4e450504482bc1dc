import { intakesInJets } from '#shared/derived/air-intakes';
import type { Derived, DerivedNozzle } from '#shared/derived/derived';
import { isUnknownShelf, struckBy } from '#shared/derived/struck-things';
import { type Enclosure, type Ref, type RefOf, isSameRef } from '#shared/model/plan';
import { LIMIT_CATALOGUE } from '#shared/profile/limit-catalogue';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { RULES } from '#shared/rules/index';
import type { Finding } from '#shared/rules/finding';
import type { MissingField } from '../sums/missing-fields.ts';

/** Checks of nozzles that ask for something that is typed. */
export const ABOUT_NOZZLES: ReadonlySet<string> = new Set(['N1', 'N2', 'N3', 'N4', 'N5', 'N6', 'N7', 'N8', 'N10', 'N11', 'N12', 'N13', 'N14', 'N15', 'N16', 'N17', 'N18', 'N19', 'N22', 'N23', 'N24']);

const field = (on: Ref, label: string, text: string): MissingField[] => [{ kind: 'field', on, label, text }];
const heightOf = (on: RefOf<'enclosure'>): MissingField[] => field(on, 'Floor to ceiling', 'Enter the height');

/** Figures of the manual that a check needs and that are blank. */
function blankLimits(rule: string, profile: UnitProfile | undefined): MissingField[] {
  const keys = RULES.find(({ id }) => id === rule)?.limitKeys ?? [];
  return profile ? keys.filter((limit) => !profile.limits[limit]).map((limit) => ({ kind: 'limit', limit, text: `Enter from the manual: ${LIMIT_CATALOGUE[limit].label.toLowerCase()}` })) : [];
}

/** Why a void is left out, who signed that and when: the first that is blank. Its own form says whether it is protected. */
function voidFields(on: RefOf<'enclosure'>, enclosure: Enclosure, rule: string): MissingField[] {
  const [drawn, label] = rule === 'N16' ? [enclosure.underFloor, 'Under-floor void'] : [enclosure.ceilingVoid, 'Void above the ceiling'];
  if (!drawn) return field(on, label, 'Enter the void');
  if (drawn.isProtected) return [];
  if (!drawn.exclusion?.reason.trim()) return field(on, `Why the ${label.toLowerCase()} is left out`, 'Say why it is left out');
  if (!drawn.exclusion.by.trim()) return field(on, 'Signed by', 'Enter who signed that');
  return drawn.exclusion.date.trim() ? field(on, label, 'Say whether it is protected') : field(on, 'On', 'Enter when that was signed');
}

function ceilingFields(on: RefOf<'enclosure'>, { ceiling }: Enclosure): MissingField[] {
  return ceiling.make === 'unknown' ? field(on, 'Ceiling', 'Say what the ceiling is made of') : field(on, 'Tiles clipped within', 'Enter how far the tiles are clipped');
}

/** What a nozzle waits for, once no figure of the manual is blank. */
function nozzleFields(nozzle: DerivedNozzle, rule: string): MissingField[] {
  const { space } = nozzle;
  if (rule === 'N8') {
    const [struck] = struckBy(nozzle, isUnknownShelf);
    return struck ? field(struck.solid.ref, 'Loose or light things on it', 'Say whether loose things lie on it') : [];
  }
  if (rule === 'N15') {
    const [blown] = intakesInJets(nozzle, false);
    return blown && space ? field({ kind: 'device', level: space.level.id, id: blown.intake.id }, 'Height above floor', 'Enter the height of the air intake') : [];
  }
  return (rule === 'N2' || rule === 'N3') && space && nozzle.localCeiling_m === undefined ? heightOf(space.enclosureRef) : [];
}

function thingFields({ spaces, plan }: Derived, on: RefOf<'obstruction'>, rule: string, profile: UnitProfile | undefined): MissingField[] {
  const thing = plan.levels[on.level]?.obstructions[on.id];
  if (rule === 'N19') return thing?.voltage_V === null ? field(on, 'Highest voltage to earth', 'Enter its voltage') : [];
  if (rule === 'N24' && thing?.hasDrives === null) return field(on, 'Running disk drives in it', 'Say whether it holds disk drives');
  const blank = blankLimits(rule, profile);
  if (blank.length > 0) return blank;
  const room = spaces.find(({ solids, grossVolume_m3 }) => grossVolume_m3 === undefined && solids.some(({ ref }) => isSameRef(ref, on)));
  return room ? heightOf(room.enclosureRef) : [];
}

/** The fields that clear a finding about nozzles; none where its cure does. */
export function mendNozzle(derived: Derived, { rule, subject, verdict }: Pick<Finding, 'rule' | 'subject' | 'verdict'>): MissingField[] {
  const isOpen = verdict === 'not-checked';
  const serving = (level: string, id: string): UnitProfile | undefined => derived.nozzles.find(({ space }) => space?.level.id === level && (space.enclosure.id === id || space.solids.some(({ ref }) => ref.id === id)))?.profile;
  switch (subject.kind) {
    case 'nozzle': {
      const nozzle = derived.nozzles.find(({ ref }) => isSameRef(ref, subject));
      if (!nozzle || !(isOpen || rule === 'N3')) return [];
      const blank = blankLimits(rule, nozzle.profile);
      return blank.length > 0 ? blank : nozzleFields(nozzle, rule);
    }
    case 'network':
      return isOpen ? blankLimits(rule, derived.networks.find(({ ref }) => ref.id === subject.id)?.profile) : [];
    case 'obstruction':
      return isOpen ? thingFields(derived, subject, rule, serving(subject.level, subject.id)) : [];
    case 'enclosure': {
      const enclosure = derived.plan.levels[subject.level]?.enclosures[subject.id];
      if (!enclosure) return [];
      if (rule === 'N16' || rule === 'N17') return voidFields(subject, enclosure, rule);
      if (rule === 'N23') return ceilingFields(subject, enclosure);
      if (!isOpen) return [];
      const blank = blankLimits(rule, serving(subject.level, subject.id));
      if (blank.length > 0) return blank;
      return enclosure.height_m === null ? heightOf(subject) : [];
    }
    default:
      return [];
  }
}
