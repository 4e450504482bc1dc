import { type ReactNode, useRef } from 'react';

interface FileFieldProps {
  readonly label: ReactNode;
  /** Endings that the file list shows: ".dxf,.pdf". */
  readonly accept: string;
  readonly isMain?: boolean;
  onFile(name: string, bytes: Uint8Array): void;
}

/** Bytes of a file that the user picked or dropped. */
export const bytesOf = async (file: File): Promise<Uint8Array> => new Uint8Array(await file.arrayBuffer());

/** A button that lets the user pick a file. */
export function FileField({ label, accept, isMain, onFile }: FileFieldProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className={isMain ? 'button is-main' : 'button'} onClick={() => input.current?.click()}>
        {label}
      </button>
      <input
        ref={input}
        type="file"
        className="out-of-sight"
        tabIndex={-1}
        aria-hidden="true"
        accept={accept}
        onChange={(event) => {
          const [file] = event.target.files ?? [];
          event.target.value = '';
          if (file) void bytesOf(file).then((bytes) => onFile(file.name, bytes));
        }}
      />
    </>
  );
}
