import type { Derived } from '../derived/derived.ts';
import type { FieldDimension } from '../derived/field-dimensions.ts';
import { digestOf } from '../model/digest.ts';
import { thingDigests } from '../model/thing-digests.ts';
import type { Plan } from '../model/plan.ts';
import type { FieldFormAbout, FieldMatch } from './field-entries.ts';

/** Which plan, in which state, a form was printed from. */
export type FormIdentity = Pick<FieldFormAbout, 'project' | 'revision' | 'digest' | 'count'>;

/** Digest of all that is drawn on a plan: another one whenever anything on it is. What comes back from the site does not change it. */
export const fieldDigest = (plan: Pick<Plan, 'levels' | 'networks'>): string => digestOf(JSON.stringify(Object.entries(thingDigests(plan)).sort(([a], [b]) => (a < b ? -1 : 1))));

const oneLine = (text: string): string => text.replaceAll('|', '/').replace(/\s+/g, ' ').trim();

/** The identity of a form printed from this plan now. */
export function formIdentityOf({ plan }: Pick<Derived, 'plan'>, dimensions: readonly FieldDimension[]): FormIdentity {
  return { project: oneLine(plan.info.project), revision: oneLine(plan.info.revisions.at(-1)?.mark ?? ''), digest: fieldDigest(plan), count: dimensions.length };
}

/** As printed on every sheet of the form: "Form 0123456789abcdef | revision B | 96 dimensions | Archive annex". */
export const identityText = ({ project, revision, digest, count }: FormIdentity): string => `Form ${digest ?? ''} | revision ${revision || '-'} | ${count ?? 0} dimensions | ${project ?? ''}`;

const IDENTITY = /^\s*Form ([0-9a-f]{16}) ?\| ?revision (.{0,200}?) ?\| ?(\d{1,6}) dimensions ?\| ?(.{0,200})$/i;

/** Reads `identityText`; undefined: it is not one. */
export function readIdentity(text: string): FormIdentity | undefined {
  const [, digest, revision, count, project] = IDENTITY.exec(text.slice(0, 1000).replace(/\s+/g, ' ')) ?? [];
  if (digest === undefined || revision === undefined || project === undefined) return undefined;
  return { digest: digest.toLowerCase(), revision: revision === '-' ? '' : revision.trim(), count: Number(count), project: project.trim() };
}

/** A name without the letters that a change of encoding may spoil. */
const skeleton = (name: string | null): string => (name ?? '').replace(/[^\x20-\x7e]|\?/g, '').replace(/\s+/g, ' ').trim();

/** Whether a form is of this plan. Its project name says which plan; what is drawn says which state of it. */
export function matchOf(form: FormIdentity, own: FormIdentity): FieldMatch {
  if (form.digest === null) return 'not-told';
  if (form.digest === own.digest && skeleton(form.project) === skeleton(own.project)) return 'same';
  return form.project === own.project ? 'other-revision' : 'other-plan';
}
