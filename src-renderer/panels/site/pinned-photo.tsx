import { useEffect, useId, useState } from 'react';
import type { DrawingState } from '../../store/underlay-drawings.ts';

interface PinnedPhotoProps {
  /** Name of its file. */
  readonly name: string;
  /** What it is pinned to, as printed. */
  readonly of: string;
  readonly state: DrawingState | undefined;
  onTakeOff(): void;
}

/** Address of a picture for as long as it is shown. */
function usePictureAddress(state: DrawingState | undefined): string | null {
  const [address, setAddress] = useState<string | null>(null);
  const image = state?.state === 'ready' ? state.drawing.images[0] : undefined;
  useEffect(() => {
    if (!image) return setAddress(null);
    const made = URL.createObjectURL(new Blob([new Uint8Array(image.bytes)], { type: image.mime }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [image]);
  return address;
}

/** One photograph, small; a press shows it large. */
export function PinnedPhoto({ name, of, state, onTakeOff }: PinnedPhotoProps) {
  const id = useId();
  const address = usePictureAddress(state);
  return (
    <li className="pinned-photo" data-state={state?.state ?? 'missing'}>
      {address ? (
        <>
          <button type="button" className="photo-button" popoverTarget={id} title={`Look at ${name}`}>
            <img src={address} alt={`${name}, of ${of}`} />
          </button>
          <figure id={id} popover="auto" className="photo-large">
            <img src={address} alt="" />
            <figcaption>
              {of}: {name}
              <button type="button" className="button is-slim" popoverTarget={id} popoverTargetAction="hide">
                Close
              </button>
            </figcaption>
          </figure>
        </>
      ) : (
        <span className="photo-lost">{state?.state === 'loading' ? 'Reading it…' : 'Its file is missing or damaged. Choose it again.'}</span>
      )}
      <span className="photo-name" title={name}>
        {name}
      </span>
      <button type="button" className="link" aria-label={`Take ${name} off`} onClick={onTakeOff}>
        Take off
      </button>
    </li>
  );
}
