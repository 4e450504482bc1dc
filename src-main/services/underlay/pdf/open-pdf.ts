/// <reference path="./pdf-worker.d.ts" />
import { MessageChannel } from 'node:worker_threads';
import { type PDFDocumentProxy, PDFWorker, VerbosityLevel, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { WorkerMessageHandler } from 'pdfjs-dist/legacy/build/pdf.worker.mjs';
import { type ReadProgress, UnderlayProblem } from '#shared/underlay/drawing';
import { LocalCharacterMaps, LocalTypefaces, LocalUnpackers } from './local-files.ts';

/** Most pixels of one picture in a document; a larger one is left out by the library. */
const MOST_PIXELS = 70_000_000;
/** Messages carry about a thousand painting steps each: more of them are no floor plan. */
const MOST_MESSAGES = 12_000;

/** An open document, to be closed in the end. */
export interface OpenPdf {
  readonly document: PDFDocumentProxy;
  /** Rejects when the document grows without end; never resolves. */
  readonly endless: Promise<never>;
  close(): Promise<void>;
}

/**
 * Opens a PDF. The library's two halves talk over a channel of this thread: each message is a turn of the
 * event loop, so that progress can be told and a runaway document is noticed. Nothing is fetched from anywhere.
 * @throws {UnderlayProblem} the document asks for a password or is beyond repair
 */
export async function openPdf(bytes: Uint8Array, progress: ReadProgress): Promise<OpenPdf> {
  const { port1, port2 } = new MessageChannel();
  let messages = 0;
  let refuse: (problem: unknown) => void = () => undefined;
  const endless = new Promise<never>((_, reject) => {
    refuse = reject;
  });
  endless.catch(() => undefined);
  WorkerMessageHandler.initializeFromPort(port2);
  // @ts-expect-error The library types the port as a browser's Worker; a message port has all it uses.
  const worker = PDFWorker.create({ port: port1, verbosity: VerbosityLevel.ERRORS });
  port1.on('message', () => {
    messages += 1;
    if (messages > MOST_MESSAGES) {
      refuse(new UnderlayProblem('The page paints more than a floor plan ever needs.', '', 'Export only the floor you need, without furniture and hatching, and import that.'));
      return;
    }
    try {
      progress(0.1 + 0.5 * (1 - 1 / (1 + messages / 100)), 'Reading the page');
    } catch (error) {
      refuse(error);
    }
  });
  const task = getDocument({
    data: bytes.slice(),
    worker,
    verbosity: VerbosityLevel.ERRORS,
    maxImageSize: MOST_PIXELS,
    isEvalSupported: false,
    isOffscreenCanvasSupported: false,
    isImageDecoderSupported: false,
    disableFontFace: true,
    useSystemFonts: false,
    useWorkerFetch: false,
    enableXfa: false,
    CMapReaderFactory: LocalCharacterMaps,
    StandardFontDataFactory: LocalTypefaces,
    WasmFactory: LocalUnpackers,
  });
  const close = async (): Promise<void> => {
    await task.destroy().catch(() => undefined);
    worker.destroy();
    port1.close();
    port2.close();
  };
  try {
    const document = await Promise.race([task.promise, endless]);
    return { document, endless, close };
  } catch (error) {
    await close();
    throw problemOfOpening(error);
  }
}

function problemOfOpening(error: unknown): unknown {
  if (error instanceof UnderlayProblem || !(error instanceof Error)) return error;
  if (error.name === 'PasswordException') {
    return new UnderlayProblem('The PDF is protected by a password.', '', 'Open it in a PDF viewer with the password, print it to a new PDF, and import that.');
  }
  return new UnderlayProblem('The PDF is damaged and cannot be opened.', error.message.slice(0, 120), 'Copy or download the file again, or export the plan again.');
}
