/// <reference path="./pdf-worker.d.ts" />
import { MessageChannel } from 'node:worker_threads';
import { OPS, type PDFDocumentProxy, PDFWorker, VerbosityLevel, getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { WorkerMessageHandler } from 'pdfjs-dist/legacy/build/pdf.worker.mjs';
import { type ReadProgress, UnderlayProblem } from '#shared/underlay/drawing';
import { LocalCharacterMaps, LocalTypefaces, LocalUnpackers } from './local-files.ts';

/** Most pixels of one picture in a document; a larger one is left out by the library. */
const MOST_PIXELS = 70_000_000;
/** Most painting steps of a page, and most forms (symbols) painted in it: more of them are no floor plan. */
const MOST_STEPS = 3_000_000;
const MOST_FORMS = 50_000;

/** How far before the end of the file the end mark may stand: mail and web servers append a little. */
const END_MARK_WITHIN = 4096;

/** @throws {UnderlayProblem} when the end mark is missing: the library would mend the file and lose what was cut off */
function checkEnd(bytes: Uint8Array): void {
  const tail = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).subarray(-END_MARK_WITHIN);
  if (!tail.includes('%%EOF')) {
    throw new UnderlayProblem('The PDF ends in the middle: its end mark is missing, so a part of the plan may be lost.', '', 'Copy or download the file again, or print it to a new PDF in a PDF viewer.');
  }
}

/** An open document, to be closed in the end. */
export interface OpenPdf {
  readonly document: PDFDocumentProxy;
  /** What went wrong while steps were handed over; the library then ends the list of steps early and says no more. */
  fault(): string | undefined;
  /** Rejects when the document grows without end; never resolves. */
  readonly endless: Promise<never>;
  close(): Promise<void>;
}

/**
 * Opens a PDF. The library's two halves talk over a channel of this thread: each message is a turn of the
 * event loop, so that progress can be told and a runaway document is noticed. Nothing is fetched from anywhere.
 * @param strict a fault in the page's own steps ends the reading; otherwise what can be painted is painted
 * @throws {UnderlayProblem} the document is cut, asks for a password or is beyond repair
 */
export async function openPdf(bytes: Uint8Array, strict: boolean, progress: ReadProgress): Promise<OpenPdf> {
  checkEnd(bytes);
  const { port1, port2 } = new MessageChannel();
  let messages = 0;
  let steps = 0;
  let forms = 0;
  let refuse: (problem: unknown) => void = () => undefined;
  const endless = new Promise<never>((_, reject) => {
    refuse = reject;
  });
  endless.catch(() => undefined);
  WorkerMessageHandler.initializeFromPort(port2);
  // @ts-expect-error The library types the port as a browser's Worker; a message port has all it uses.
  const worker = PDFWorker.create({ port: port1, verbosity: VerbosityLevel.ERRORS });
  let fault: string | undefined;
  port1.on('message', (message: unknown) => {
    messages += 1;
    fault ??= streamFault(message);
    for (const step of stepsIn(message)) {
      steps += 1;
      if (step === OPS.paintFormXObjectBegin) forms += 1;
    }
    if (steps > MOST_STEPS || forms > MOST_FORMS) {
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
    stopAtErrors: strict,
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
    return { document, fault: () => fault, endless, close };
  } catch (error) {
    await close();
    throw problemOfOpening(error);
  }
}

/** The painting steps that a message of the library hands over. */
function stepsIn(message: unknown): readonly unknown[] {
  if (typeof message !== 'object' || message === null || !('chunk' in message)) return [];
  const { chunk } = message;
  return typeof chunk === 'object' && chunk !== null && 'fnArray' in chunk && Array.isArray(chunk.fnArray) ? chunk.fnArray : [];
}

/** Mark of the library's message that a stream of steps broke off. */
const STREAM_BROKE_OFF = 5;

function streamFault(message: unknown): string | undefined {
  if (typeof message !== 'object' || message === null || !('stream' in message) || message.stream !== STREAM_BROKE_OFF) return undefined;
  const reason = 'reason' in message ? message.reason : undefined;
  return typeof reason === 'object' && reason !== null && 'message' in reason ? String(reason.message) : 'unknown fault';
}

function problemOfOpening(error: unknown): unknown {
  if (error instanceof UnderlayProblem || !(error instanceof Error)) return error;
  if (error.name === 'PasswordException') {
    return new UnderlayProblem('The PDF is protected by a password.', '', 'Open it in a PDF viewer with the password, print it to a new PDF, and import that.');
  }
  return new UnderlayProblem('The PDF is damaged and cannot be opened.', error.message.slice(0, 120), 'Copy or download the file again, or export the plan again.');
}
