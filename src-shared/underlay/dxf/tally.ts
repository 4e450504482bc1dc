type Kind =
  | 'paper'
  | 'picture'
  | 'reference'
  | 'dimension-without-lines'
  | 'missing-block'
  | 'pattern'
  | 'tilted'
  | 'mesh'
  | 'construction'
  | 'unsound-spline'
  | 'fit-points'
  | 'damaged-hatch';

const things = (count: number, one: string, many: string): string => (count === 1 ? `1 ${one}` : `${count} ${many}`);

const SENTENCES: Readonly<Record<Kind, (count: number) => string>> = {
  paper: (n) => `${things(n, 'thing', 'things')} on paper layouts left out: only the model is read.`,
  picture: (n) => `${things(n, 'picture or attached page lies', 'pictures or attached pages lie')} in other files and cannot be shown.`,
  reference: (n) => `${things(n, 'other drawing is', 'other drawings are')} only referred to and not shown: join them into this file if they matter.`,
  'dimension-without-lines': (n) => `${things(n, 'dimension has', 'dimensions have')} no drawn lines in the file and cannot be shown.`,
  'missing-block': (n) => `${things(n, 'symbol is', 'symbols are')} placed whose lines are not in the file.`,
  pattern: (n) => `${things(n, 'hatched area is', 'hatched areas are')} shown by outline, without the pattern.`,
  tilted: (n) => `${things(n, 'tilted symbol is', 'tilted symbols are')} shown as seen from above; its lines may lie slightly off.`,
  mesh: (n) => `${things(n, 'surface mesh', 'surface meshes')} left out.`,
  construction: (n) => `${things(n, 'endless construction line', 'endless construction lines')} left out.`,
  'unsound-spline': (n) => `${things(n, 'curve', 'curves')} left out: the numbers do not fit together.`,
  'fit-points': (n) => `${things(n, 'curve is', 'curves are')} drawn straight between the places it passes through.`,
  'damaged-hatch': (n) => `${things(n, 'hatched area', 'hatched areas')} left out: the outline cannot be read.`,
};

/** Counts what a reading leaves out or guesses, and says it in sentences. */
export class Tally {
  private readonly counts = new Map<Kind, number>();
  private readonly unread = new Map<string, number>();

  note(kind: Kind): void {
    this.counts.set(kind, (this.counts.get(kind) ?? 0) + 1);
  }

  /** Notes an entity of a kind that is not read. */
  noteUnread(type: string): void {
    this.unread.set(type, (this.unread.get(type) ?? 0) + 1);
  }

  get sentences(): string[] {
    const said = [...this.counts].map(([kind, count]) => SENTENCES[kind](count));
    if (this.unread.size > 0) {
      const list = [...this.unread].slice(0, 12).map(([type, count]) => `${count} × ${type}`);
      said.push(`Kinds of things that are not read: ${list.join(', ')}${this.unread.size > 12 ? ' and others' : ''}.`);
    }
    return said;
  }
}
