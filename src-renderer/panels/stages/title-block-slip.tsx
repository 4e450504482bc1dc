import { editTitleBlock } from '#shared/commands/edit-title-block';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { Tick } from '../fields/choice.tsx';
import { TextField } from '../fields/text-field.tsx';
import { RowButtons } from '../network/row-buttons.tsx';
import { useRun } from '../window-context.ts';
import { LogoField } from './logo-field.tsx';

/** Lines of the user's own that a title block takes. */
const MOST_LINES = 8;

/** What stands in the title block of every sheet: the project, a logo and lines of the user's own, a box for stamps. */
export function TitleBlockSlip() {
  const { titleBlock, hasStampBox } = useShownPlan().settings.sheets;
  const commit = useCommit();
  const run = useRun();
  const { lines } = titleBlock;
  const change = (next: typeof lines): boolean => commit(editTitleBlock({ titleBlock: { ...titleBlock, lines: next } }));
  const line = (i: number, part: Partial<(typeof lines)[number]>): void => void change(lines.map((each, k) => (k === i ? { ...each, ...part } : each)));
  return (
    <Slip title="Title block" part="title-block">
      <p className="quiet">Project, adopted code and edition, who drew and checked it; below, lines of your own for the head of every sheet.</p>
      <button type="button" className="button" onClick={() => run('info')}>
        Project, basis and revisions…
      </button>
      <LogoField />
      {lines.map((each, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has no identity beside its place
        <div key={i} className="part-fields">
          <TextField label={`Line ${i + 1}`} value={each.label} placeholder="Licence no." onCommit={(label) => line(i, { label })} />
          <TextField label="says" value={each.value} onCommit={(value) => line(i, { value })} />
          <RowButtons what={`line ${i + 1}`} onTakeOut={() => change(lines.filter((_, k) => k !== i))} />
        </div>
      ))}
      {lines.length < MOST_LINES ? (
        <button type="button" className="button is-slim" onClick={() => change([...lines, { label: '', value: '' }])}>
          Add a line
        </button>
      ) : null}
      <Tick label="Keep a box clear for stamps, 4 × 6 in where the paper allows" value={hasStampBox} onCommit={(value) => commit(editTitleBlock({ hasStampBox: value }))} />
    </Slip>
  );
}
