/** Where a command writes, and the time it prints. */
export interface ConsoleOut {
  /** Writes a line of the result. */
  line(text: string): void;
  /** Writes a line about what is going on or wrong. */
  aside(text: string): void;
  /** Characters to a line. */
  readonly width: number;
  readonly now: () => Date;
}

/** How a command ended: 0 fine, 1 the layout has findings that stop it, 2 bad input. */
export type ExitCode = 0 | 1 | 2;

/** Breaks text at blanks into lines of at most so many characters, each begun with the indent. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const lines: string[] = [];
  let line = indent;
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const isFirst = line === indent;
    if (!isFirst && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent + word;
    } else line += isFirst ? word : ` ${word}`;
  }
  return line === indent ? lines : [...lines, line];
}
