import type { XmlElement } from './parse-xml.ts';

/** One rule of a style sheet: what it applies to and what it sets. */
interface StyleRule {
  readonly tag: string | undefined;
  readonly id: string | undefined;
  readonly classes: readonly string[];
  readonly weight: number;
  readonly sets: ReadonlyMap<string, string>;
}

/** Properties that matter for a plan. Those that children take over come first. */
const INHERITED = ['fill', 'stroke', 'fill-rule', 'visibility', 'font-size', 'text-anchor', 'fill-opacity', 'stroke-opacity', 'stroke-width', 'color'] as const;
const OWN = ['display', 'opacity', 'clip-path', 'mask'] as const;

/** Values of properties of one element, own ones and those taken over. */
export type Style = Readonly<Partial<Record<(typeof INHERITED)[number] | (typeof OWN)[number], string>>>;

/** Rules that hold only for some screens or printers, and orders to fetch more. */
const CONDITIONAL = /@[^{};]*(;|\{(?:[^{}]*\{[^{}]*\})*[^{}]*\})/g;

const declarationsOf = (text: string): Map<string, string> => {
  const sets = new Map<string, string>();
  for (const part of text.split(';')) {
    const colon = part.indexOf(':');
    if (colon > 0) sets.set(part.slice(0, colon).trim().toLowerCase(), part.slice(colon + 1).replace(/!important\s*$/i, '').trim());
  }
  return sets;
};

/** Rules for single elements by tag, class and id; rules for elements inside others are passed over. */
export class StyleSheet {
  private rules: StyleRule[] = [];

  add(css: string): void {
    const plain = css.replace(/\/\*[\s\S]*?\*\//g, '').replace(/<!--|-->/g, '').replace(CONDITIONAL, '');
    for (const [, selectors, body] of plain.matchAll(/([^{}@;]+)\{([^{}]*)\}/g)) {
      const sets = declarationsOf(body ?? '');
      for (const selector of (selectors ?? '').split(',')) {
        const parts = /^\s*([\w-]+|\*)?((?:[.#][\w-]+)*)\s*$/.exec(selector);
        if (!parts) continue;
        const marks = parts[2]?.match(/[.#][\w-]+/g) ?? [];
        const classes = marks.filter((mark) => mark.startsWith('.')).map((mark) => mark.slice(1));
        const id = marks.find((mark) => mark.startsWith('#'))?.slice(1);
        const tag = parts[1] === '*' ? undefined : parts[1];
        if (!tag && !id && classes.length === 0 && parts[1] !== '*') continue;
        this.rules.push({ tag, id, classes, weight: (id ? 100 : 0) + classes.length * 10 + (tag ? 1 : 0), sets });
      }
    }
    this.rules.sort((a, b) => a.weight - b.weight);
  }

  /** What the sheet sets for an element, the strongest rule last. */
  valuesFor({ name, attributes }: XmlElement): Map<string, string> {
    const values = new Map<string, string>();
    if (this.rules.length === 0) return values;
    const classes = new Set((attributes.get('class') ?? '').split(/\s+/));
    const id = attributes.get('id');
    for (const rule of this.rules) {
      if (rule.tag && rule.tag !== name) continue;
      if (rule.id && rule.id !== id) continue;
      if (!rule.classes.every((one) => classes.has(one))) continue;
      for (const [key, value] of rule.sets) values.set(key, value);
    }
    return values;
  }
}

/** The style of an element inside a parent: its attributes, then the sheet, then its `style`. */
export function styleOf(element: XmlElement, parent: Style, sheet: StyleSheet): Style {
  const fromSheet = sheet.valuesFor(element);
  const own = declarationsOf(element.attributes.get('style') ?? '');
  const style: Record<string, string | undefined> = {};
  for (const key of INHERITED) {
    const value = own.get(key) ?? fromSheet.get(key) ?? element.attributes.get(key);
    style[key] = value === undefined || value === 'inherit' ? parent[key] : value;
  }
  for (const key of OWN) {
    const value = own.get(key) ?? fromSheet.get(key) ?? element.attributes.get(key);
    if (value !== undefined) style[key] = value;
  }
  return style;
}
