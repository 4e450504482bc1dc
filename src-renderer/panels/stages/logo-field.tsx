import { useEffect, useRef, useState } from 'react';
import { setLogo } from '#shared/commands/set-logo';
import { logoOf } from '#shared/sheets/logo-of';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { followJob } from '../../host/follow-job.ts';
import { useDrawings } from '../../input/board-context.ts';
import { problemText } from '../../plan-words.ts';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { FileField } from '../dialogs/file-field.tsx';
import { useActionContext } from '../window-context.ts';

/** The picture in the head of every sheet: chosen from a file, checked as it is read, taken out again. */
export function LogoField() {
  const { host } = useActionContext();
  const { assets, settings } = useShownPlan();
  const { logo } = settings.sheets.titleBlock;
  const commit = useCommit();
  const drawings = useDrawings();
  const [said, say] = useState<{ readonly text: string; readonly isFault: boolean } | null>(null);
  const reading = useRef<AbortController | null>(null);
  useEffect(() => () => reading.current?.abort(), []);

  const read = async (name: string, bytes: Uint8Array): Promise<void> => {
    reading.current?.abort();
    const controller = new AbortController();
    reading.current = controller;
    const { signal } = controller;
    const fail = (text: string): void => {
      if (!signal.aborted) say({ text, isFault: true });
    };
    say({ text: `Reading ${name}…`, isFault: false });
    const begun = await host.importUnderlay({ name, bytes });
    if (!begun.ok) return fail(problemText(begun.problem));
    const done = await followJob(host, begun.value.job, () => undefined, signal);
    if (!done.ok) return fail(problemText(done.problem));
    const result = await host.underlayResult({ job: begun.value.job });
    if (!result.ok) return fail(problemText(result.problem));
    const drawing = decodeDrawing(result.value.bytes);
    if (!logoOf(drawing)) return fail(`${name} is no picture. Choose a PNG or JPEG file.`);
    if (signal.aborted) return;
    const { asset } = begun.value;
    drawings.keep(asset.sha256, 1, drawing);
    say(null);
    commit(setLogo(asset));
  };
  return (
    <>
      <p>{logo === null ? 'No logo: sheets begin with your lines.' : `Logo: ${assets[logo]?.name ?? 'its file is missing. Choose it again.'}`}</p>
      <div className="row">
        <FileField label={logo === null ? 'Choose a logo…' : 'Choose another logo…'} accept=".png,.jpg,.jpeg" onFile={(name, bytes) => void read(name, bytes)} />
        {logo === null ? null : (
          <button type="button" className="button" onClick={() => commit(setLogo(null))}>
            Take the logo out
          </button>
        )}
      </div>
      {said ? (
        <p className={said.isFault ? 'field-fault' : 'quiet'} role={said.isFault ? 'alert' : 'status'}>
          {said.text}
        </p>
      ) : null}
    </>
  );
}
