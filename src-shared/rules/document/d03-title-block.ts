import type { Info, Settings } from '../../model/plan.ts';
import { defineRule } from '../rule.ts';
import { perPlan } from '../subjects.ts';
import { planSubject } from './plan-subject.ts';

/** What every sheet must say, in the user's words; approval comes last, and is asked once the plan is built. */
const ASKED = [
  ['project', 'project'],
  ['site', 'site'],
  ['client', 'client'],
  ['code', 'adopted code'],
  ['edition', 'edition'],
  ['drawnBy', 'who drew it'],
  ['checkedBy', 'who checked it'],
] as const satisfies readonly (readonly [keyof Info, string])[];

const listed = (words: readonly string[]): string => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`);

/** Papers too small for a reviewer's stamp of 4 × 6 in beside the title block. */
const WITHOUT_STAMP: readonly Settings['sheets']['paper'][] = ['A4', 'ANSI-A'];

/**
 * D3: title block, code and edition are filled in, and the paper has room for a stamp.
 * Measure: fields that are blank.
 * Limit: none.
 */
export const d03TitleBlock = defineRule<Pick<Info, (typeof ASKED)[number][0] | 'approvedBy' | 'state'> & Pick<Settings['sheets'], 'paper'>>({
  id: 'D3',
  title: 'Title block filled in',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'blank fields = 0', source: 'project data; what authorities ask for is common practice' },
  subjects: perPlan(({ plan }) => {
    const { project, site, client, code, edition, drawnBy, checkedBy, approvedBy, state } = plan.info;
    return [planSubject(plan, { project, site, client, code, edition, drawnBy, checkedBy, approvedBy, state, paper: plan.settings.sheets.paper })];
  }),
  check(info) {
    const blank = [...ASKED, ...(info.state === 'built' ? ([['approvedBy', 'who approved it']] as const) : [])].filter(([key]) => info[key].trim() === '').map(([, word]) => word);
    const isTooSmall = WITHOUT_STAMP.includes(info.paper);
    const figures = { kind: 'judged', measured: blank.length, limit: 0, limitSource: 'common practice', margin: -blank.length } as const;
    if (blank.length > 0) return { ...figures, isKept: false, text: `The title block does not say ${listed(blank)}. Enter it under project data.` };
    if (isTooSmall) return { ...figures, isKept: false, severity: 'warn', text: `${info.paper} has no room for a stamp of 4 × 6 in. Choose a larger paper.` };
    return { ...figures, margin: 0, isKept: true, text: 'The title block is filled in.' };
  },
});
