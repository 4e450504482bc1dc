import { useEffect, useRef, useState, useSyncExternalStore } from 'react';
import { pinPhotos, unpinPhoto } from '#shared/commands/pin-photos';
import type { FieldDimension } from '#shared/derived/field-dimensions';
import { readPictures } from '../../actions/read-pictures.ts';
import { useDrawings } from '../../input/board-context.ts';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { bytesOf } from '../dialogs/file-field.tsx';
import { useActionContext } from '../window-context.ts';
import { PinnedPhoto } from './pinned-photo.tsx';

interface PinnedPhotosProps {
  readonly dimension: FieldDimension;
  /** Ids of the kept files. */
  readonly photos: readonly string[];
}

/** The photographs of a measured dimension: looked at, added and taken off. */
export function PinnedPhotos({ dimension: { id, name }, photos }: PinnedPhotosProps) {
  const { host } = useActionContext();
  const plan = useShownPlan();
  const commit = useCommit();
  const drawings = useDrawings();
  useSyncExternalStore(drawings.subscribe, drawings.version);
  const input = useRef<HTMLInputElement>(null);
  const reading = useRef<AbortController | null>(null);
  const [isBusy, setBusy] = useState(false);
  const [faults, setFaults] = useState<readonly string[]>([]);
  useEffect(() => () => reading.current?.abort(), []);
  useEffect(() => {
    for (const asset of photos) drawings.wantPage(plan, { asset, page: 1 });
  }, [drawings, plan, photos]);

  const add = async (files: readonly File[]): Promise<void> => {
    reading.current?.abort();
    const controller = new AbortController();
    reading.current = controller;
    const { signal } = controller;
    setBusy(true);
    setFaults([]);
    const picked = await Promise.all(files.map(async (file) => ({ name: file.name, bytes: await bytesOf(file) })));
    const read = await readPictures(host, picked, signal);
    if (signal.aborted) return;
    setBusy(false);
    setFaults(read.faults);
    for (const { asset, drawing } of read.pictures) drawings.keep(asset.sha256, 1, drawing);
    if (read.pictures.length > 0) commit(pinPhotos(id, read.pictures.map(({ asset }) => asset)));
  };
  return (
    <div className="pinned-photos" data-part="photographs">
      {photos.length > 0 ? (
        <ul aria-label={`Photographs of ${name}`}>
          {photos.map((asset) => (
            <PinnedPhoto key={asset} name={plan.assets[asset]?.name ?? 'Photograph'} of={name} state={drawings.stateOf(plan, { asset, page: 1 })} onTakeOff={() => commit(unpinPhoto(id, asset))} />
          ))}
        </ul>
      ) : null}
      <button type="button" className="button is-slim" disabled={isBusy} onClick={() => input.current?.click()}>
        {isBusy ? 'Reading…' : 'Pin photographs…'}
      </button>
      <input
        ref={input}
        type="file"
        multiple
        className="out-of-sight"
        tabIndex={-1}
        aria-hidden="true"
        accept=".png,.jpg,.jpeg"
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          if (files.length > 0) void add(files);
        }}
      />
      {faults.map((why) => (
        <p key={why} className="field-fault" role="alert">
          {why}
        </p>
      ))}
    </div>
  );
}
