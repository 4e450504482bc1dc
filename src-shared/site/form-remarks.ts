import { quoted } from './entry-texts.ts';
import type { FieldFormAbout } from './field-entries.ts';
import { type FormIdentity, matchOf } from './form-identity.ts';

/** What there is to say about a file as a whole, in sentences. */
export function formRemarks(about: FieldFormAbout, own: FormIdentity, { rows, missing, isTable }: { readonly rows: number; readonly missing: number; readonly isTable: boolean }): string[] {
  const remarks = [...about.remarks];
  const what = isTable ? 'table' : 'form';
  const match = matchOf(about, own);
  const named = (project: string | null): string => (project ? quoted(project) : 'a plan without a name');
  if (match === 'other-plan') remarks.push(`This ${what} belongs to another plan: it was printed for ${named(about.project)}, and this plan is ${named(own.project)}. Nothing of it is taken.`);
  if (match === 'other-revision') {
    const marks = about.revision === own.revision ? 'The plan has been changed since' : `It was printed at revision ${about.revision || '-'}, and the plan is at ${own.revision || '-'} now`;
    remarks.push(`This ${what} is of another state of this plan. ${marks}. What is planned as before is taken, the rest is asked about row by row.`);
  }
  if (match === 'not-told') remarks.push(`This ${what} does not say which plan it was printed from. Make sure that it is of this one.`);
  if (match === 'same' && about.revision !== own.revision) remarks.push(`This ${what} was printed at revision ${about.revision || '-'}; what is drawn has not changed since.`);
  if (rows > 0 && missing > 0) remarks.push(`${missing} ${missing === 1 ? 'dimension of this plan is' : 'dimensions of this plan are'} not in the file. ${isTable ? 'Rows' : 'Sheets'} may be missing.`);
  return remarks;
}
