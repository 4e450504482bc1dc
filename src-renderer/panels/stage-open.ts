import type { Derived } from '#shared/derived/derived';
import { fieldDimensionsOf } from '#shared/derived/field-dimensions';
import type { Evaluation } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { LIMIT_KEYS } from '#shared/profile/limit-catalogue';
import { countOf } from '../plan-words.ts';
import type { Stage } from '../store/state.ts';

/** What is still open in a stage, in a few words. */
export interface StageOpen {
  readonly text: string;
  /** Nothing is open. */
  readonly isDone: boolean;
  /** Something stops the job here. */
  readonly isGrave: boolean;
}

const open = (text: string, isGrave = false): StageOpen => ({ text, isDone: false, isGrave });
const done = (text: string): StageOpen => ({ text, isDone: true, isGrave: false });

function openInSurvey(plan: Plan): StageOpen {
  const levels = Object.values(plan.levels);
  const enclosures = levels.flatMap((level) => Object.values(level.enclosures));
  const unscaled = levels.flatMap((level) => Object.values(level.underlays)).filter((underlay) => underlay.metresPerUnit === null).length;
  if (unscaled > 0) return open(unscaled === 1 ? 'scale not set' : `${unscaled} scales not set`);
  if (enclosures.length === 0) return open('no enclosure yet');
  const unknown = enclosures.filter((enclosure) => enclosure.height_m === null).length;
  return unknown > 0 ? open(`${countOf(unknown, 'height')} unknown`) : done('heights known');
}

function openInLayout(plan: Plan, { found: { counts } }: Evaluation): StageOpen {
  const networks = Object.values(plan.networks);
  if (!networks.some((network) => Object.keys(network.nozzles).length > 0)) return open('no nozzle yet');
  return counts.stop > 0 ? open(countOf(counts.stop, 'stop'), true) : done('no stops');
}

/** Limits of the profiles in use that were never entered. */
export const blankLimitsOf = (plan: Plan): number => {
  const used = new Set(Object.values(plan.networks).map((network) => network.profile));
  return Object.values(plan.profiles)
    .filter((profile) => used.has(profile.id))
    .reduce((sum, profile) => sum + LIMIT_KEYS.filter((key) => !profile.limits[key]).length, 0);
};

function openInProof(plan: Plan, { found: { counts } }: Evaluation): StageOpen {
  const blank = blankLimitsOf(plan);
  if (blank > 0) return open(`${countOf(blank, 'limit')} blank`);
  if (!Object.values(plan.networks).some(({ nozzles }) => Object.keys(nozzles).length > 0)) return open('nothing to check');
  if (counts['not-checked'] > 0) return open(`${counts['not-checked']} not checked`);
  if (counts.warn > 0) return open(countOf(counts.warn, 'warning'));
  return done(counts.accepted > 0 ? `${counts.accepted} accepted` : 'all checked');
}

function openInSheets(plan: Plan, { found }: Evaluation): StageOpen {
  const last = plan.info.revisions.at(-1);
  if (found.open.some(({ rule, verdict }) => rule === 'D7' && verdict === 'warn')) return open(`changed since ${last?.mark || 'the issue'}`);
  return last ? done(`issued as ${last.mark || 'unmarked'}`) : open('not issued');
}

function openInSite(derived: Derived): StageOpen {
  const { plan } = derived;
  if (Object.values(plan.networks).every(({ nozzles }) => Object.keys(nozzles).length === 0)) return open('nothing to measure');
  const { measurements } = plan.siteRecord;
  // Listing them takes long in a large building: nobody waits for it while nothing is measured.
  if (Object.keys(measurements).length === 0) return open('nothing measured');
  const left = fieldDimensionsOf(derived).filter(({ id }) => !Object.hasOwn(measurements, id)).length;
  return left > 0 ? open(`${left} to measure`) : done('all measured');
}

/** What is still open in every stage of the job. */
export const openInStages = (plan: Plan, evaluation: Evaluation): Readonly<Record<Stage, StageOpen>> => ({
  survey: openInSurvey(plan),
  layout: openInLayout(plan, evaluation),
  proof: openInProof(plan, evaluation),
  sheets: openInSheets(plan, evaluation),
  site: openInSite(evaluation.derived),
});
