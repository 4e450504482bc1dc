/** The part of the PDF library that takes files apart; the library ships no types for it. */
declare module 'pdfjs-dist/legacy/build/pdf.worker.mjs' {
  import type { MessagePort } from 'node:worker_threads';

  export const WorkerMessageHandler: {
    /** Serves requests that arrive at a port. */
    initializeFromPort(port: MessagePort): void;
  };
}
